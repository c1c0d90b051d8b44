package boardside.engine.skill;

/**
 * How good and bad days, and good and bad runs within them, move the two predictors, at one value of the hyperparameters.
 * What they move is averaged by Gauss-Hermite quadrature with three nodes along what they have in common, exact for
 * polynomials of the fifth degree, and to second order in what moves the second predictor alone.
 */
final class DaySpread {
    private static final double NODE = Math.sqrt(3);
    private static final double[] NODES = {-NODE, 0, NODE};
    private static final double[] WEIGHTS = {1 / 6.0, 2 / 3.0, 1 / 6.0};

    /** Covariance of a day's effects and of a run's: 00, 01, 11. */
    final double[] day;

    final double[] run;
    private final double[] root;

    DaySpread(Variances variances, double[] theta) {
        day = covariance(theta, variances.daysAt());
        run = covariance(theta, variances.runsAt());
        root = Block.root(new double[] {day[0] + run[0], day[1] + run[1], day[2] + run[2]}, 0);
    }

    private static double[] covariance(double[] theta, int at) {
        double s0 = Math.exp(theta[at]);
        double s1 = Math.exp(theta[at + 1]);
        return new double[] {s0 * s0, s0 * s1 * Math.tanh(theta[at + 2]), s1 * s1};
    }

    /**
     * Adds a bag's chances, averaged over good and bad days.
     *
     * @param sums in the hole, kept, and all four of a round in the hole; each is added times the weight
     */
    void add(double eta0, double eta1, double weight, double[] sums) {
        double rest = root[2] * root[2] / 2;
        for (int i = 0; i < 3; i++) {
            double kept = BagCounts.logistic(eta0 + root[0] * NODES[i]);
            double p = BagCounts.logistic(eta1 + root[1] * NODES[i]);
            double q = p * (1 - p);
            double in = p + rest * q * (1 - 2 * p);
            // (p^4)'' = 4 p^3 p'' + 12 p^2 p'^2
            double four = p * p * (p * p + rest * q * (4 * p * (1 - 2 * p) + 12 * q));
            double w = weight * WEIGHTS[i];
            double k2 = kept * kept;
            sums[0] += w * kept * in;
            sums[1] += w * kept;
            sums[2] += w * k2 * k2 * four;
        }
    }

    /** The predictors of one run of one day: z are two standard normal numbers. */
    double moved(int k, double eta, double z0, double z1) {
        return k == 0 ? eta + root[0] * z0 : eta + root[1] * z0 + root[2] * z1;
    }
}
