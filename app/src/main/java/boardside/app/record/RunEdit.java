package boardside.app.record;

import boardside.app.practice.Run;
import org.jspecify.annotations.Nullable;

/**
 * What a player may edit of a run afterwards.
 *
 * @param note free text, or empty
 * @param opponent a name, or empty
 * @param warmUp kept but not counted
 * @param score a game's final score as it was told, or null
 */
public record RunEdit(String note, String opponent, boolean warmUp, Run.@Nullable Score score) {
    /** As a run stands. */
    public static RunEdit of(Run run) {
        return new RunEdit(run.note(), run.opponent(), run.warmUp(), run.score());
    }

    /** The same with another final score. */
    public RunEdit with(Run.@Nullable Score other) {
        return new RunEdit(note, opponent, warmUp, other);
    }
}
