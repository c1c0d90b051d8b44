package boardside.app.practice;

import boardside.engine.plan.Energy;
import boardside.engine.rules.BoardKind;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A plan as it was made, with what became of its blocks.
 *
 * @param id any non-blank text, unique for the player
 * @param day yyyy-mm-dd, the day it was made for
 * @param minutes asked for
 * @param energy how fresh the player was
 * @param bagSets bag sets at hand
 * @param boards kinds of board at hand
 * @param company whether somebody threw along
 * @param limited whether bags ran out before minutes did
 * @param before the player's points a round when it was made, or null where nothing told them
 * @param closedAt when it was put away, or empty
 * @param blocks in their order
 */
public record SessionPlan(
        String id,
        String day,
        int minutes,
        Energy energy,
        int bagSets,
        Set<BoardKind> boards,
        boolean company,
        boolean limited,
        @Nullable Points before,
        String closedAt,
        List<Placed> blocks) {
    /** Copied; kinds of board in their own order, so that a backup is the same each time. */
    public SessionPlan {
        EnumSet<BoardKind> kinds = EnumSet.noneOf(BoardKind.class);
        kinds.addAll(boards);
        boards = Collections.unmodifiableSet(kinds);
        blocks = List.copyOf(blocks);
    }

    /** Points a round with their range. */
    public record Points(double estimate, double low, double high) {}

    /**
     * A block with what became of it.
     *
     * @param run the run it was thrown in, or empty
     * @param doneAt when it was done without a run, or empty
     */
    public record Placed(PlannedBlock block, String run, String doneAt) {
        /** Whether it was begun, or done. */
        public boolean taken() {
            return !run.isEmpty() || !doneAt.isEmpty();
        }
    }

    /** Whether it is still followed. */
    public boolean open() {
        return closedAt.isEmpty();
    }
}
