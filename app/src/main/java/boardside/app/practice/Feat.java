package boardside.app.practice;

import org.jspecify.annotations.Nullable;

/**
 * What a run did that its sums do not show; derived from its rounds.
 *
 * @param streak most full rounds of four in a row that all went in, 0 or more
 * @param twenty most points of five full rounds in a row, 20 bags, or null where there were none
 * @param won whether the game was won, or null where there was none or it is not over
 * @param ghost the ghost's points, where they were the same in every round, else null
 */
public record Feat(
        int streak,
        @Nullable Integer twenty,
        @Nullable Boolean won,
        @Nullable Integer ghost) {
    /** A run without rounds. */
    public static final Feat NONE = new Feat(0, null, null, null);
}
