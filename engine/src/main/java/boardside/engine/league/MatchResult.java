package boardside.engine.league;

import boardside.engine.odds.LeaguePoints;
import boardside.engine.rules.Word;
import java.util.List;

/**
 * A match as far as it has been played.
 *
 * @param first name of the side named first
 * @param second name of the other side
 * @param games games both sides have thrown, in any order; none before the match
 * @param awards games that were not thrown and went by forfeit
 */
public record MatchResult(String first, String second, List<GameTotals> games, List<Award> awards) {
    /**
     * Checks the names; lists copied.
     *
     * @throws IllegalArgumentException if somebody would play themselves, or a name is blank
     */
    public MatchResult {
        if (first.isBlank() || second.isBlank() || first.equals(second)) {
            throw new IllegalArgumentException(
                    "a match is between two players, not \"" + first + "\" and \"" + second + "\"");
        }
        games = List.copyOf(games);
        awards = List.copyOf(awards);
    }

    /** A match without forfeits. */
    public MatchResult(String first, String second, List<GameTotals> games) {
        this(first, second, games, List.of());
    }

    /** Who is given a game that was not thrown: the league points of a win. Whoever forfeits gets none at all. */
    public enum Award implements Word {
        FIRST,
        SECOND,
        /** Both forfeit. */
        NEITHER;

        /** Seen from the other side. */
        public Award turned() {
            return switch (this) {
                case FIRST -> SECOND;
                case SECOND -> FIRST;
                case NEITHER -> NEITHER;
            };
        }
    }

    /** The same match seen from the other side. */
    public MatchResult turned() {
        return new MatchResult(
                second,
                first,
                games.stream().map(GameTotals::turned).toList(),
                awards.stream().map(Award::turned).toList());
    }

    /** League points of the side named first. */
    public int points(LeaguePoints worth) {
        int points = 0;
        for (GameTotals game : games) {
            points += game.points(worth);
        }
        for (Award award : awards) {
            points += award == Award.FIRST ? worth.win() : 0;
        }
        return points;
    }

    /** Above 0 where the side named first took more league points, 0 for equally many, below 0 for fewer. */
    public int sign(LeaguePoints worth) {
        return Integer.compare(points(worth), turned().points(worth));
    }
}
