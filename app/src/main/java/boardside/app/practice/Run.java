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
        Sum sum) {
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

    /** Whether rounds may still be added at the boards. */
    public boolean open() {
        return finishedAt == null && !deleted;
    }
}
