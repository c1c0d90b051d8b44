package boardside.app.record;

import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.practice.Try;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A run as it lies in the store.
 *
 * @param deletedAt when it was deleted, ISO-8601, or null
 * @param rounds in order, sides in theirs; those taken back are there without lines
 * @param tries in order; those taken back are there without what was played
 */
public record StoredRun(Run run, @Nullable String deletedAt, List<StoredRound> rounds, List<Try> tries) {
    /** Lists copied. */
    public StoredRun {
        rounds = List.copyOf(rounds);
        tries = List.copyOf(tries);
    }

    /** A round, with whether it was corrected after it was first stored. */
    public record StoredRound(Round round, boolean corrected) {}
}
