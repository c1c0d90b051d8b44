package boardside.engine.league;

import boardside.engine.odds.LeaguePoints;

/**
 * One game of a match: what both sides threw, before any cancellation.
 *
 * @param first total of the side named first, 0 or more
 * @param second total of the other side, 0 or more
 */
public record GameTotals(int first, int second) {
    /**
     * Checks the totals.
     *
     * @throws IllegalArgumentException if one is negative
     */
    public GameTotals {
        if (!(first >= 0 && second >= 0)) {
            throw new IllegalArgumentException("a total is 0 points or more, not " + first + " and " + second);
        }
    }

    /** The same game seen from the other side. */
    public GameTotals turned() {
        return new GameTotals(second, first);
    }

    /** League points of the first side. */
    public int points(LeaguePoints worth) {
        return first > second ? worth.win() : first == second ? worth.tie() : worth.loss();
    }
}
