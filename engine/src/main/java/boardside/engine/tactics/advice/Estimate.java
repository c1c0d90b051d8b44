package boardside.engine.tactics.advice;

import boardside.engine.physics.Range;
import java.util.Arrays;

/**
 * What a shot's samples say of its value, with the shot's rate put right by what is known of it.
 *
 * <p>With the rate p, and S and F the means of the value over samples in which it worked and did not, the value is p S + (1 -
 * p) F (post-stratification). Where nothing but the simulation speaks, p is the samples' own share and the value their mean.
 *
 * <p>Two kinds of not knowing are kept apart. {@link #error}: sampling, told by the spread over replicates of each sample's
 * influence on the value (the delta method). {@link #byDraw}: the player, told by the value at each draw of the throw model
 * and of the rate; what sampling adds to the spread over draws is taken out by drawing them together (Louis 1984, "Estimating
 * a population of parameter values using Bayes and empirical Bayes methods", JASA 79, 393-398).
 */
final class Estimate {
    private final double value;
    private final double rate;
    private final double ifWorked;
    private final double ifNot;
    private final double[] replicates;
    private final double[] byDraw;

    private Estimate(double value, double rate, double ifWorked, double ifNot, double[] replicates, double[] byDraw) {
        this.value = value;
        this.rate = rate;
        this.ifWorked = ifWorked;
        this.ifNot = ifNot;
        this.replicates = replicates;
        this.byDraw = byDraw;
    }

    /**
     * The estimate.
     *
     * @param values what each end is worth, by draw and end
     * @param doubts of the rate, by draw; see {@link Evidence#doubts}
     */
    static Estimate of(Sampled<?> sampled, double[][] values, Evidence evidence, double[] doubts) {
        int size = sampled.perReplicate();
        int draws = values.length;
        double[] sums = new double[2];
        int[] counts = new int[2];
        for (int r = 0; r < Rollouts.REPLICATES; r++) {
            for (int n = 0; n < size; n++) {
                int worked = sampled.worked(r, n) ? 1 : 0;
                sums[worked] += values[Rollouts.draw(r, n, draws)][sampled.result(r, n)];
                counts[worked]++;
            }
        }
        int all = counts[0] + counts[1];
        double share = (double) counts[1] / all;
        double mean = (sums[0] + sums[1]) / all;
        // Where all samples went one way, the other is worth what all are: nothing is known of it.
        double ifWorked = counts[1] > 0 ? sums[1] / counts[1] : mean;
        double ifNot = counts[0] > 0 ? sums[0] / counts[0] : mean;
        double rate = evidence.rate(share);
        double up = counts[1] > 0 ? rate / share : 0;
        double down = counts[0] > 0 ? (1 - rate) / (1 - share) : 0;
        double value = rate * ifWorked + (1 - rate) * ifNot;
        double follow = evidence.follows() * (ifWorked - ifNot);

        double[] replicates = new double[Rollouts.REPLICATES];
        double[] byDraw = new double[draws];
        double[] squares = new double[draws];
        int[] number = new int[draws];
        for (int r = 0; r < Rollouts.REPLICATES; r++) {
            double influence = 0;
            for (int n = 0; n < size; n++) {
                int draw = Rollouts.draw(r, n, draws);
                boolean worked = sampled.worked(r, n);
                double v = values[draw][sampled.result(r, n)];
                double one = (worked ? up * (v - ifWorked) : down * (v - ifNot)) + follow * ((worked ? 1 : 0) - share);
                influence += one;
                byDraw[draw] += one;
                squares[draw] += one * one;
                number[draw]++;
            }
            replicates[r] = value + influence / size;
        }
        together(byDraw, squares, number);
        for (int k = 0; k < draws; k++) {
            byDraw[k] += value + doubts[k] * (ifWorked - ifNot);
        }
        return new Estimate(value, rate, ifWorked, ifNot, replicates, byDraw);
    }

    /** Sums by draw become deviations without what sampling adds to their spread. */
    private static void together(double[] sums, double[] squares, int[] number) {
        int known = 0;
        double mean = 0;
        double within = 0;
        double noise = 0;
        for (int k = 0; k < sums.length; k++) {
            if (number[k] > 0) {
                sums[k] /= number[k];
                mean += sums[k];
                known++;
            }
        }
        mean /= known;
        double between = 0;
        double freedom = 0;
        for (int k = 0; k < sums.length; k++) {
            if (number[k] > 0) {
                between += (sums[k] - mean) * (sums[k] - mean);
                within += squares[k] - number[k] * sums[k] * sums[k];
                freedom += number[k] - 1;
                noise += 1.0 / number[k];
            }
        }
        double variance = known > 1 ? between / (known - 1) : 0;
        double sampling = freedom > 0 ? within / freedom * noise / known : variance;
        double shrink = variance > 0 ? Math.sqrt(Math.max(0, 1 - sampling / variance)) : 0;
        for (int k = 0; k < sums.length; k++) {
            sums[k] = number[k] > 0 ? shrink * (sums[k] - mean) : 0;
        }
    }

    double value() {
        return value;
    }

    /** How often the shot works. */
    double rate() {
        return rate;
    }

    /** The value where it works. */
    double ifWorked() {
        return ifWorked;
    }

    /** The value where it does not. */
    double ifNot() {
        return ifNot;
    }

    /** The value at each draw of what is not known of the player. */
    double[] byDraw() {
        return byDraw.clone();
    }

    /** Standard error of sampling. */
    double error() {
        return spread(replicates);
    }

    /** Standard error of sampling in the difference from another shot, which had the same luck. */
    double errorAgainst(Estimate other) {
        double[] differences = new double[replicates.length];
        for (int r = 0; r < differences.length; r++) {
            differences[r] = replicates[r] - other.replicates[r];
        }
        return spread(differences);
    }

    private static double spread(double[] independent) {
        double mean = 0;
        for (double one : independent) {
            mean += one / independent.length;
        }
        double squares = 0;
        for (double one : independent) {
            squares += (one - mean) * (one - mean);
        }
        return Math.sqrt(squares / (independent.length - 1) / independent.length);
    }

    /** The value with its range, which is what is not known of the player. */
    Range range() {
        double[] equal = new double[byDraw.length];
        Arrays.fill(equal, 1.0 / equal.length);
        Range range = Range.of(byDraw, equal);
        return new Range(Math.max(range.low(), Math.min(range.high(), value)), range.low(), range.high());
    }
}
