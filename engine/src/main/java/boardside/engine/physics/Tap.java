package boardside.engine.physics;

import boardside.engine.rules.Outcome;
import org.jspecify.annotations.Nullable;

/**
 * One bag thrown at an empty board, as tapped on a drawing of it.
 *
 * @param outcome how it ended
 * @param landing where it landed on the board, or null where that was not tapped
 * @param rest where it stopped, or null; only for a bag on the board
 */
public record Tap(
        Outcome outcome, @Nullable Place landing, @Nullable Place rest) {
    /** Standard deviation of a tap around the true place, in either direction, inches (chosen: an eighth of a bag). */
    public static final double ERROR = 0.75;

    /**
     * A place on the board, inches.
     *
     * @param x to the right of the centre line, finite
     * @param y up from the front edge, finite
     */
    public record Place(double x, double y) {
        /**
         * Checks both.
         *
         * @throws IllegalArgumentException if one is not a finite number
         */
        public Place {
            if (!(Math.abs(x) + Math.abs(y) < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("a place is two finite numbers, not " + x + ", " + y);
            }
        }
    }

    /**
     * Checks the rest.
     *
     * @throws IllegalArgumentException if a bag that is not on the board rests there
     */
    public Tap {
        if (rest != null && outcome != Outcome.ON) {
            throw new IllegalArgumentException(
                    "only a bag on the board rests there, not one that is " + outcome.word());
        }
    }

    /** How far it slid up the board, inches; null unless both places were tapped. */
    @Nullable
    Double slid() {
        return landing == null || rest == null ? null : (Double) (rest.y() - landing.y());
    }
}
