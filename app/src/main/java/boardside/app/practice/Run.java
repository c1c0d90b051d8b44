package boardside.app.practice;

import boardside.engine.rules.Drill;
import org.jspecify.annotations.Nullable;

/**
 * One go at a drill, without its rounds.
 *
 * @param id any non-blank text, unique for the player
 * @param session the session it belongs to
 * @param drill what it is a go at
 * @param startedAt ISO-8601 with offset, as given
 * @param warmUp kept but not counted
 * @param opponent a name, or empty
 * @param target points to reach, or null
 * @param game 1, 2, ... in a match, or null
 * @param trial id of the trial it belongs to, or empty
 * @param note free text, or empty
 * @param setup how it was set up; a new run of the drill starts from the last one's
 * @param finishedAt when it was closed, or null while open
 * @param deleted whether it was deleted (and can be brought back)
 * @param sum what the player threw in it
 * @param score a game's final score as it was told, or null
 */
public record Run(
        String id,
        String session,
        Drill drill,
        String startedAt,
        boolean warmUp,
        String opponent,
        @Nullable Integer target,
        @Nullable Integer game,
        String trial,
        String note,
        Setup setup,
        @Nullable String finishedAt,
        boolean deleted,
        Sum sum,
        @Nullable Score score) {
    /**
     * Sums over the player's own sides.
     *
     * @param rounds rounds with at least one bag thrown
     * @param thrown bags thrown
     * @param in bags in
     * @param points 3 in + on, or null where only the bags in (or only the bags thrown) were counted
     */
    public record Sum(
            int rounds, int thrown, int in, @Nullable Integer points) {
        /** Nothing thrown yet. */
        public static final Sum NONE = new Sum(0, 0, 0, 0);
    }

    /**
     * A game's final score.
     *
     * @param mine points of the player's side, 0..999
     * @param theirs points of the other side, 0..999
     */
    public record Score(int mine, int theirs) {
        /**
         * Checked.
         *
         * @throws IllegalArgumentException if no game ends so
         */
        public Score {
            if (!(mine >= 0 && mine <= 999 && theirs >= 0 && theirs <= 999)) {
                throw new IllegalArgumentException(
                        "a final score is 0 to 999 points a side, not " + mine + "-" + theirs);
            }
            if (mine == theirs) {
                throw new IllegalArgumentException(
                        "one side has won a game, so " + mine + "-" + theirs + " is no final score");
            }
        }

        /** Whether the player's side has won. */
        public boolean won() {
            return mine > theirs;
        }
    }

    /** Whether rounds may still be added at the boards. */
    public boolean open() {
        return finishedAt == null && !deleted;
    }
}
