package boardside.engine.league.season;

import boardside.engine.league.Schedule.Meetings;
import boardside.engine.league.TieBreak;
import boardside.engine.odds.LeaguePoints;
import java.util.EnumSet;
import java.util.List;

/**
 * How a season is thrown and counted.
 *
 * @param games games of a match, 1..{@value #MOST_GAMES}
 * @param rounds rounds of four a game, 1..{@value #MOST_ROUNDS}
 * @param points what a game is worth
 * @param tieBreaks what tells equal league points apart, in the order asked, each at most once; then the lot does
 * @param meetings how often every pair of a division meets
 * @param qualifiers players of each division who go to the play-off, 0 for none
 * @param handicap whether matches may have a head start
 */
public record SeasonRules(
        int games,
        int rounds,
        LeaguePoints points,
        List<TieBreak> tieBreaks,
        Meetings meetings,
        int qualifiers,
        boolean handicap) {
    /** Most games of a match. */
    public static final int MOST_GAMES = 9;

    /** Most rounds of a game. */
    public static final int MOST_ROUNDS = 100;

    /** Most players of a division who may go to the play-off. */
    public static final int MOST_QUALIFIERS = 64;

    private static final int POINTS_A_ROUND = 12;

    /** Three games of ten rounds, once each, the usual points and tie-breaks, and four to the play-off. */
    public static final SeasonRules USUAL =
            new SeasonRules(3, 10, LeaguePoints.STANDARD, TieBreak.USUAL, Meetings.SINGLE, 4, false);

    /**
     * Checked; list copied.
     *
     * @throws IllegalArgumentException saying what is out of range
     */
    public SeasonRules {
        if (!(games >= 1 && games <= MOST_GAMES)) {
            throw new IllegalArgumentException("a match has 1 to " + MOST_GAMES + " games, not " + games);
        }
        if (!(rounds >= 1 && rounds <= MOST_ROUNDS)) {
            throw new IllegalArgumentException("a game has 1 to " + MOST_ROUNDS + " rounds, not " + rounds);
        }
        if (!(qualifiers >= 0 && qualifiers <= MOST_QUALIFIERS)) {
            throw new IllegalArgumentException(
                    "0 to " + MOST_QUALIFIERS + " players of a division go to the play-off, not " + qualifiers);
        }
        tieBreaks = List.copyOf(tieBreaks);
        if (!tieBreaks.isEmpty() && EnumSet.copyOf(tieBreaks).size() < tieBreaks.size()) {
            throw new IllegalArgumentException("a tie-break is asked once, not several times, in " + tieBreaks);
        }
    }

    /** The highest total of a game. */
    public int mostPoints() {
        return POINTS_A_ROUND * rounds;
    }

    /** Whether a total can be thrown in a game: all but one point less than the most. */
    public boolean possible(int total) {
        return total >= 0 && total <= mostPoints() && total != mostPoints() - 1;
    }
}
