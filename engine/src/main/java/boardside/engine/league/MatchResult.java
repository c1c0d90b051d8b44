package boardside.engine.league;

import java.util.List;

/**
 * A match as far as it has been played.
 *
 * @param first name of the side named first
 * @param second name of the other side
 * @param games games both sides have thrown, in any order; none before the match
 */
public record MatchResult(String first, String second, List<GameTotals> games) {
    /**
     * Checks the names; list copied.
     *
     * @throws IllegalArgumentException if somebody would play themselves, or a name is blank
     */
    public MatchResult {
        if (first.isBlank() || second.isBlank() || first.equals(second)) {
            throw new IllegalArgumentException(
                    "a match is between two players, not \"" + first + "\" and \"" + second + "\"");
        }
        games = List.copyOf(games);
    }
}
