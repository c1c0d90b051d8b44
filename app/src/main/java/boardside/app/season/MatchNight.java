package boardside.app.season;

import boardside.engine.league.season.GameScore;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A match as it is thrown: rounds of both sides as they came in, whenever each threw, and what was changed later.
 *
 * @param version how often what is shown of it has changed
 * @param totals of its games as told, as many as a match has
 * @param rounds by game, number and side
 * @param edits the first made first
 * @param streams where the sides show themselves throwing, https addresses
 */
public record MatchNight(
        long version,
        MatchHead head,
        List<GameScore> totals,
        List<MatchRound> rounds,
        List<MatchEdit> edits,
        Map<MatchSide, String> streams) {
    /** Copied. */
    public MatchNight {
        totals = List.copyOf(totals);
        rounds = List.copyOf(rounds);
        edits = List.copyOf(edits);
        streams = Map.copyOf(streams);
    }

    /** Rounds of one side of a game, by number. */
    public List<MatchRound> rounds(int game, MatchSide side) {
        return rounds.stream()
                .filter(round -> round.game() == game && round.side() == side)
                .toList();
    }

    /** A round, if it has been thrown. */
    public Optional<MatchRound> round(int game, MatchSide side, int number) {
        return rounds(game, side).stream()
                .filter(round -> round.number() == number)
                .findFirst();
    }

    /** Points of a side in the rounds of a game so far. */
    public int points(int game, MatchSide side) {
        return rounds(game, side).stream().mapToInt(MatchRound::points).sum();
    }

    /** The total a side is told to have in a game, or null. */
    public @Nullable Integer total(int game, MatchSide side) {
        GameScore score = totals.get(game - 1);
        return side == MatchSide.FIRST ? score.first() : score.second();
    }

    /** Whether a round was changed later. */
    public boolean edited(int game, MatchSide side, int number) {
        return edits.stream().anyMatch(edit -> edit.game() == game && edit.side() == side && edit.round() == number);
    }
}
