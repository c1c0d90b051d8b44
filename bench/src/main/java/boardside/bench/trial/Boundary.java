package boardside.bench.trial;

import boardside.engine.trial.SimulatedTrial;
import boardside.engine.trial.TrialDesign;
import java.util.Arrays;
import java.util.Locale;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/**
 * Calibrates the boundaries of trials: of simulated throwers with candidates that are all alike, the constant that 4.75 %
 * of trials would pass (a little under the 5 % promised, since the quantile is itself measured), and for two candidates
 * the one that 9.5 % would pass on either side, 4.75 % on one. Prints the rows of {@code
 * boardside.engine.trial.Boundaries}; the same numbers each time.
 *
 * <pre>
 * mvn -q -B -ntp -pl bench -am -DskipTests package
 * java -cp bench/target/bench.jar boardside.bench.trial.Boundary [trials, 10000]
 * </pre>
 */
public final class Boundary {
    private static final long SEED = 19_490_149;
    private static final double ALPHA = 0.0475;

    private Boundary() {}

    public static void main(String[] args) {
        int trials = args.length > 0 ? Integer.parseInt(args[0]) : 10_000;
        for (int candidates = 2; candidates <= TrialDesign.MOST; candidates++) {
            UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(SEED + candidates);
            double[][] peaks = new double[TrialDesign.LENGTHS.size()][trials];
            for (int trial = 0; trial < trials; trial++) {
                double[] of = SimulatedTrial.peaks(candidates, random.nextLong(), random);
                for (int length = 0; length < of.length; length++) {
                    peaks[length][trial] = of[length];
                }
            }
            print(candidates + " candidates, winner", peaks, ALPHA);
            if (candidates == 2) {
                print("as good as equal", peaks, 2 * ALPHA);
            }
        }
    }

    private static void print(String what, double[][] peaks, double alpha) {
        StringBuilder row = new StringBuilder();
        for (double[] of : peaks) {
            double[] sorted = of.clone();
            Arrays.sort(sorted);
            row.append(String.format(Locale.ROOT, "%.3f, ", sorted[(int) Math.ceil((1 - alpha) * sorted.length) - 1]));
        }
        System.out.println(what + ": " + row);
    }
}
