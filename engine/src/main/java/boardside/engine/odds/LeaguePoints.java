package boardside.engine.odds;

/**
 * What a game of a league match is worth.
 *
 * @param win league points for a win, 0..100
 * @param tie for a tie; at most as many as for a win
 * @param loss for a loss; at most as many as for a tie
 */
public record LeaguePoints(int win, int tie, int loss) {
    /** 2 for a win, 1 for a tie, none for a loss. */
    public static final LeaguePoints STANDARD = new LeaguePoints(2, 1, 0);

    /**
     * Checks the points.
     *
     * @throws IllegalArgumentException if they are out of range or out of order
     */
    public LeaguePoints {
        if (!(win <= 100 && win >= tie && tie >= loss && loss >= 0)) {
            throw new IllegalArgumentException("league points are 0 to 100, a win worth no less than a tie and a tie no"
                    + " less than a loss, not " + win + ", " + tie + " and " + loss);
        }
    }
}
