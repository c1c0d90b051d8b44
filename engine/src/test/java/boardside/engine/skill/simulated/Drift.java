package boardside.engine.skill.simulated;

import java.util.Arrays;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * How skill moves over a log, on the logit scale. Time is 0 on the first day and 1 on the last, or after half a year in a
 * shorter log; before 0 it goes on alike.
 */
public enum Drift {
    /** Not at all. */
    NONE {
        @Override
        Curve draw(UniformRandomProvider random) {
            return t -> 0;
        }
    },
    /** A slope of up to 0.4 over the log and a wave of up to 0.2. */
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
    /** One to three jumps of up to 0.3 each: a new grip, a sore arm. */
    STEPPED {
        @Override
        Curve draw(UniformRandomProvider random) {
            double[] when = new double[1 + random.nextInt(3)];
            double[] jump = new double[when.length];
            Arrays.setAll(when, i -> random.nextDouble());
            Arrays.setAll(jump, i -> between(random, -0.3, 0.3));
            return t -> {
                double sum = 0;
                for (int i = 0; i < when.length; i++) {
                    sum += t >= when[i] ? jump[i] : 0;
                }
                return sum;
            };
        }
    },

    /** A straight rise that makes a point a round over the log. */
    RISE {
        @Override
        Curve draw(UniformRandomProvider random) {
            // The player stretches it to their own point a round.
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
