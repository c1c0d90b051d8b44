package boardside.engine.skill.simulated;

import java.util.Arrays;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * How skill moves, on the logit scale. Time is in half years, 0 today; logs go back to a year.
 */
public enum Drift {
    /** Not at all. */
    NONE {
        @Override
        Curve draw(UniformRandomProvider random) {
            return t -> 0;
        }
    },
    /** A slope of up to 0.4 a half year, and half to two waves of up to 0.2 a half year. */
    SMOOTH {
        @Override
        Curve draw(UniformRandomProvider random) {
            double slope = between(random, -0.4, 0.4);
            double height = between(random, 0, 0.2);
            double waves = between(random, 0.5, 2);
            double phase = random.nextDouble();
            return t -> slope * t + height * Math.sin(2 * Math.PI * (waves * t + phase));
        }
    },
    /** One to three jumps of up to 0.3 each a half year, a new grip or a sore arm, on a slope of up to 0.2. */
    STEPPED {
        @Override
        Curve draw(UniformRandomProvider random) {
            double[] when = new double[2 + random.nextInt(5)];
            double[] jump = new double[when.length];
            Arrays.setAll(when, i -> between(random, -2, 0));
            Arrays.setAll(jump, i -> between(random, -0.3, 0.3));
            double slope = between(random, -0.2, 0.2);
            return t -> {
                double sum = slope * t;
                for (int i = 0; i < when.length; i++) {
                    sum += t >= when[i] ? jump[i] : 0;
                }
                return sum;
            };
        }
    },

    /** A straight rise that makes a point a round over the log; the player has the scale. */
    RISE {
        @Override
        Curve draw(UniformRandomProvider random) {
            return t -> t;
        }
    };

    /** A path through time. */
    interface Curve {
        double at(double t);
    }

    abstract Curve draw(UniformRandomProvider random);

    static double between(UniformRandomProvider random, double low, double high) {
        return low + (high - low) * random.nextDouble();
    }
}
