package boardside.app.record;

import boardside.app.practice.Run;

/**
 * What a player may edit of a run afterwards.
 *
 * @param note free text, or empty
 * @param opponent a name, or empty
 * @param warmUp kept but not counted
 */
public record RunEdit(String note, String opponent, boolean warmUp) {
    /** As a run stands. */
    public static RunEdit of(Run run) {
        return new RunEdit(run.note(), run.opponent(), run.warmUp());
    }
}
