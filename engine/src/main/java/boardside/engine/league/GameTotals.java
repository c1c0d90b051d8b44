package boardside.engine.league;

import boardside.engine.odds.LeaguePoints;

/**
 * One game of a match: what both sides threw, before any cancellation.
 *
 * @param first total of the side named first as thrown, 0 or more
 * @param second total of the other side as thrown, 0 or more
 * @param headStart points the side named first is given beside what it threw; negative, those the other side is given. They
 *     decide who wins the game and are nobody's points thrown
 */
public record GameTotals(int first, int second, int headStart) {
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

    /** A game without a head start. */
    public GameTotals(int first, int second) {
        this(first, second, 0);
    }

    /** The same game seen from the other side. */
    public GameTotals turned() {
        return new GameTotals(second, first, -headStart);
    }

    /** Above 0 where the side named first won, 0 for a tie, below 0 where it lost. */
    public int sign() {
        return Integer.compare(first + headStart, second);
    }

    /** League points of the first side. */
    public int points(LeaguePoints worth) {
        int sign = sign();
        return sign > 0 ? worth.win() : sign == 0 ? worth.tie() : worth.loss();
    }
}
