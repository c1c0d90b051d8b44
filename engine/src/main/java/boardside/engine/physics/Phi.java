package boardside.engine.physics;

import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * The normal distribution function, quickly: cubic Hermite interpolation between values 1/64 apart, which errs by less than
 * h^4 / 384 times the fourth derivative's bound, 3e-10.
 */
public final class Phi {
    private static final double FARTHEST = 8;
    private static final int PER_UNIT = 64;
    private static final int CELLS = (int) (2 * FARTHEST) * PER_UNIT;
    private static final double[] VALUES = new double[CELLS + 1];
    private static final double[] SLOPES = new double[CELLS + 1];
    private static final double PER_ROOT_TWO_PI = 0.3989422804014327;

    static {
        NormalDistribution normal = NormalDistribution.of(0, 1);
        for (int i = 0; i <= CELLS; i++) {
            double z = i / (double) PER_UNIT - FARTHEST;
            VALUES[i] = normal.cumulativeProbability(z);
            SLOPES[i] = density(z) / PER_UNIT;
        }
    }

    private Phi() {}

    /** The chance of at most z standard deviations above the mean; 0 and 1 beyond 8. */
    public static double at(double z) {
        double place = (z + FARTHEST) * PER_UNIT;
        if (!(place > 0)) {
            return 0;
        }
        if (place >= CELLS) {
            return 1;
        }
        int i = (int) place;
        double t = place - i;
        double rise = VALUES[i + 1] - VALUES[i];
        double m0 = SLOPES[i];
        double m1 = SLOPES[i + 1];
        return VALUES[i] + t * (m0 + t * (3 * rise - 2 * m0 - m1 + t * (m0 + m1 - 2 * rise)));
    }

    /** The chance of lying between two values; 0 where the second is not above the first. */
    static double between(double low, double high) {
        return high > low ? at(high) - at(low) : 0;
    }

    /** The density at z. */
    static double density(double z) {
        return PER_ROOT_TWO_PI * Elementary.exp(-z * z / 2);
    }

    /** Natural logarithm of the density of a normal variable. */
    static double logDensity(double value, double mean, double deviation) {
        double z = (value - mean) / deviation;
        return -0.9189385332046727 - Elementary.log(deviation) - z * z / 2;
    }
}
