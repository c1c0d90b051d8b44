package boardside.engine.skill.simulated;

import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.statistics.distribution.TDistribution;

/** Laws with mean 0 and variance 1, none of them normal. */
public enum Spread {
    /** Between minus and plus the root of 3. */
    UNIFORM {
        @Override
        double quantile(double u) {
            return Math.sqrt(3) * (2 * u - 1);
        }
    },
    /** Student's t with 5 degrees of freedom, scaled: now and then far out. */
    HEAVY {
        @Override
        double quantile(double u) {
            return T5.inverseCumulativeProbability(u) * Math.sqrt(3.0 / 5);
        }
    },
    /** Minus 1 or 1: two kinds of bags, two kinds of days. */
    TWO_POINT {
        @Override
        double quantile(double u) {
            return u < 0.5 ? -1 : 1;
        }
    };

    private static final TDistribution T5 = TDistribution.of(5);

    /** The value below which a share u of the law lies, 0 < u < 1. */
    abstract double quantile(double u);

    double sample(UniformRandomProvider random) {
        return quantile(1e-9 + (1 - 2e-9) * random.nextDouble());
    }
}
