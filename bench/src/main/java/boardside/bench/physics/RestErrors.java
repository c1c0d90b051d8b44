package boardside.bench.physics;

import boardside.engine.physics.Scene;
import boardside.engine.physics.Simulator;
import boardside.engine.rules.Outcome;
import java.util.Locale;

/**
 * How far from fine steps of the same contact model bags come to rest: mean distance, inches, over the bags that lie on the
 * board in both; a bag that ended otherwise counts as 6 in. From the project's folder:
 *
 * <pre>java -cp bench/target/bench.jar boardside.bench.physics.RestErrors</pre>
 */
public final class RestErrors {
    private static final double FINE = 2e-5;
    private static final double OTHERWISE = 6;
    private static final double STEP = 1.0 / 240;
    private static final int THROWS = 200;

    private RestErrors() {}

    /** Prints the table. */
    public static void main(String[] args) {
        Throws throwsMade = new Throws(1);
        for (int bags : new int[] {0, 1, 3, 7}) {
            double[] errors = of(throwsMade, bags, THROWS, STEP);
            System.out.printf(
                    Locale.ROOT,
                    "%d bags: engine %.5f, dyn4j %.3f, JBox2D %.3f in%n",
                    bags,
                    errors[0],
                    errors[1],
                    errors[2]);
        }
    }

    /** Mean error of the engine, dyn4j and JBox2D. */
    static double[] of(Throws throwsMade, int bags, int count, double step) {
        Scene scene = Throws.scene(bags);
        Simulator simulator = new Simulator(scene, Throws.BAG);
        SteppedBoard[] peers = {new Dyn4jBoard(scene, Throws.BAG, step), new Jbox2dBoard(scene, Throws.BAG, step)};
        double[] sums = new double[3];
        for (int n = 0; n < count; n++) {
            double x = throwsMade.x[n];
            double y = throwsMade.y[n];
            double across = throwsMade.across[n];
            double up = throwsMade.up[n];
            FineSteps fine = new FineSteps(scene, Throws.BAG, x, y, across, up, FINE);
            simulator.slide(x, y, across, up);
            for (int i = 0; i <= bags; i++) {
                sums[0] += apart(fine, i, simulator.outcome(i), simulator.restX(i), simulator.restY(i));
            }
            for (int p = 0; p < peers.length; p++) {
                peers[p].slide(x, y, across, up);
                for (int i = 0; i <= bags; i++) {
                    sums[p + 1] += apart(
                            fine,
                            i,
                            peers[p].outcome(i),
                            peers[p].x(i) / Simulator.INCH,
                            peers[p].y(i) / Simulator.INCH);
                }
            }
        }
        for (int k = 0; k < sums.length; k++) {
            sums[k] /= count * (bags + 1.0);
        }
        return sums;
    }

    private static double apart(FineSteps fine, int i, Outcome outcome, double x, double y) {
        if (outcome != fine.outcome[i]) {
            return OTHERWISE;
        }
        return outcome == Outcome.ON ? Math.hypot(x - fine.x[i], y - fine.y[i]) : 0;
    }
}
