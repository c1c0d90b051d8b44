package boardside.engine.physics;

import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Bags of one set and face tapped on one day, on boards of one friction.
 *
 * @param board they were thrown at
 * @param conditions how the player says the boards played, or null
 * @param slideTest whether it is a slide test, thrown to see how the boards play: each bag has a landing place, and bags
 *     that missed the board are left out
 * @param taps the bags; one with neither place is known to have missed the board
 */
public record TappedDay(Board board, @Nullable Conditions conditions, boolean slideTest, List<Tap> taps) {
    /** How much friction differs from day to day on what a player calls the same conditions: deviation of the log (chosen). */
    public static final double DAY_TO_DAY = 0.08;

    /** By how much slow boards are slower than normal ones, and those than fast ones: log of the friction. */
    public static final double STEP = 0.14;

    /**
     * Takes a copy of the list.
     *
     * @throws IllegalArgumentException if a bag of a slide test has no landing place
     */
    public TappedDay {
        taps = List.copyOf(taps);
        for (Tap tap : taps) {
            if (slideTest && tap.landing() == null) {
                throw new IllegalArgumentException("a slide test needs to know where each bag landed");
            }
        }
    }

    /** The same on a regulation board. */
    public TappedDay(@Nullable Conditions conditions, boolean slideTest, List<Tap> taps) {
        this(Board.of(BoardKind.REGULATION), conditions, slideTest, taps);
    }

    /** The log of friction against the player's usual that conditions let expect (chosen; common practice, no source). */
    public static double expected(@Nullable Conditions conditions) {
        return conditions == Conditions.SLOW ? STEP : conditions == Conditions.FAST ? -STEP : 0;
    }

    /** Slides with both ends tapped. */
    public int slides() {
        return (int) taps.stream().filter(tap -> tap.slid() != null).count();
    }
}
