package boardside.app.record;

import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.practice.Session;
import java.util.List;

/**
 * A run with all that was thrown in it.
 *
 * @param rounds in order, sides in theirs; without those taken back
 */
public record RunDetail(Run run, Session session, List<Round> rounds) {
    /** Lists copied. */
    public RunDetail {
        rounds = List.copyOf(rounds);
    }
}
