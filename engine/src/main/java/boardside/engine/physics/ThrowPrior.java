package boardside.engine.physics;

import boardside.engine.rules.Face;
import org.jspecify.annotations.Nullable;

/**
 * What is believed of a throw before any record: seven independent normal variables.
 *
 * <p>In this order: mean across (in), log of the spread across (in), mean reach (in), log of the landing place's spread (in),
 * log of the speed's spread (share), log of the slide (in), and log of how far the friction lies above
 * {@link ThrowModel#HOLDS}. Where the player's steepness is known from another bag ({@link #like}), it stands in the slide's
 * place, in degrees, and the slide follows from it and the friction.
 *
 * <p>No measurement of players or bags was found; the middles and widths are common practice (a bag is landed in the lower
 * half and slides 15 to 30 in; a typical player puts a third in and misses the board with a tenth), and docs/physics.md
 * shows what counts they make.
 */
public final class ThrowPrior {
    /** Number of variables. */
    static final int SIZE = 7;

    static final int X = 0;
    static final int SPREAD_X = 1;
    static final int REACH = 2;
    static final int SPREAD_Y = 3;
    static final int SPREAD_SPEED = 4;
    static final int SLIDE = 5;
    static final int FRICTION = 6;

    private static final double FRICTION_AT_ZERO = 0.5;
    private static final double FRICTION_PER_SPEED = 0.028;
    private static final double UNKNOWN_SLOW = 0.4;
    private static final double UNKNOWN_FAST = 0.31;
    private static final double UNKNOWN = 0.355;
    private static final double KNOWN_WIDTH = 0.35;
    private static final double UNKNOWN_WIDTH = 0.45;

    /** How much one player's bags differ, beyond what is not known of either. */
    private static final double[] BETWEEN_BAGS = {0.5, 0.15, 1.5, 0.15, 0.2, 1, 0};

    private final double[] means;
    private final double[] deviations;
    private final boolean steepnessKnown;

    private ThrowPrior(double[] means, double[] deviations, boolean steepnessKnown) {
        this.means = means;
        this.deviations = deviations;
        this.steepnessKnown = steepnessKnown;
    }

    /**
     * Of any player with a bag of which the friction is roughly known.
     *
     * @param middle middle of the belief in the friction, above {@link ThrowModel#HOLDS}
     * @param width standard deviation of the log of how far it lies above that
     */
    static ThrowPrior ofFriction(double middle, double width) {
        return new ThrowPrior(
                new double[] {
                    0,
                    StrictMath.log(3),
                    Board.HOLE_Y,
                    StrictMath.log(6),
                    StrictMath.log(0.06),
                    StrictMath.log(20),
                    StrictMath.log(middle - ThrowModel.HOLDS)
                },
                new double[] {1.2, 0.4, 4, 0.35, 0.4, 0.3, width},
                false);
    }

    /**
     * Of any player with one face of a bag set. Friction falls by 0.028 for each step of the scale that sellers print, from
     * 0.47 at 1 to 0.22 at 10 (common practice, no source).
     *
     * @param speed on the 1-10 scale, or null
     * @param face which it is, or null where that is not known
     * @throws IllegalArgumentException if the speed is out of range
     */
    public static ThrowPrior of(@Nullable Integer speed, @Nullable Face face) {
        if (speed == null) {
            double middle = face == null ? UNKNOWN : face == Face.FAST ? UNKNOWN_FAST : UNKNOWN_SLOW;
            return ofFriction(middle, UNKNOWN_WIDTH);
        }
        if (!(speed >= 1 && speed <= 10)) {
            throw new IllegalArgumentException("a face's speed is 1 to 10, not " + speed);
        }
        return ofFriction(FRICTION_AT_ZERO - FRICTION_PER_SPEED * speed, KNOWN_WIDTH);
    }

    /** The same bag, thrown by the player of another fit: its steepness, aim and spreads are nearly those of that bag. */
    public ThrowPrior like(ThrowFit other) {
        double[] mean = means.clone();
        double[] deviation = deviations.clone();
        for (int k = 0; k < FRICTION; k++) {
            double[] moments = other.moments(k);
            mean[k] = moments[0];
            deviation[k] = Math.sqrt(moments[1] * moments[1] + BETWEEN_BAGS[k] * BETWEEN_BAGS[k]);
        }
        return new ThrowPrior(mean, deviation, true);
    }

    /**
     * The model at a point.
     *
     * @param z standard normal numbers, one for each variable; not modified
     */
    ThrowModel at(double[] z) {
        double friction =
                Math.min(4, ThrowModel.HOLDS + Math.max(ThrowModel.LEAST_ABOVE, Elementary.exp(value(z, FRICTION))));
        double slide = steepnessKnown
                ? Math.max(ThrowModel.SHORTEST, ThrowModel.slide(Math.max(0, value(z, SLIDE)), friction))
                : Elementary.exp(value(z, SLIDE));
        return new ThrowModel(
                value(z, X),
                Elementary.exp(value(z, SPREAD_X)),
                value(z, REACH),
                Elementary.exp(value(z, SPREAD_Y)),
                Elementary.exp(value(z, SPREAD_SPEED)),
                slide,
                friction);
    }

    /** A player drawn from this belief; the same for the same seed. */
    public ThrowModel player(long seed) {
        double[] z = new double[SIZE];
        for (int k = 0; k < SIZE; k++) {
            z[k] = Normal.at(seed, k);
        }
        return at(z);
    }

    private double value(double[] z, int k) {
        return means[k] + deviations[k] * Math.max(-FARTHEST, Math.min(FARTHEST, z[k]));
    }

    /** No belief is asked beyond this many deviations, where a slide or a spread would be out of all proportion. */
    private static final double FARTHEST = 8;

    /** A variable of the belief, as {@link #like} wants it: steepness in the slide's place. */
    static double variable(ThrowModel model, int k) {
        return switch (k) {
            case X -> model.x();
            case SPREAD_X -> StrictMath.log(model.spreadX());
            case REACH -> model.reach();
            case SPREAD_Y -> StrictMath.log(model.spreadY());
            case SPREAD_SPEED -> StrictMath.log(model.spreadSpeed());
            case SLIDE -> model.steepness();
            default -> StrictMath.log(model.friction() - ThrowModel.HOLDS);
        };
    }
}
