package boardside.app.season;

import java.util.List;
import java.util.Map;

/** All that is kept of a match as it was thrown, for backups. */
public record KeptMatch(
        String season,
        String match,
        List<MatchRound> rounds,
        List<MatchEdit> edits,
        List<MatchRun> runs,
        Map<MatchSide, String> streams) {
    /** Copied. */
    public KeptMatch {
        rounds = List.copyOf(rounds);
        edits = List.copyOf(edits);
        runs = List.copyOf(runs);
        streams = Map.copyOf(streams);
    }
}
