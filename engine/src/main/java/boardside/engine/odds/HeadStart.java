package boardside.engine.odds;

import boardside.engine.rules.GameRules;
import boardside.engine.rules.Side;

/**
 * Points given to the weaker side before a race, to bring it nearest to even.
 *
 * @param points whole points, 0..20 and below the target; of equally even ones the smallest
 * @param to who gets them: {@link Side#ME} or {@link Side#VERSUS}; ME if there are none to give
 * @param winProbability chance of the first side to win with them, a race without end counted half
 */
public record HeadStart(int points, Side to, double winProbability) {
    private static final int MOST = 20;
    /** Differences that rounding can make count as equal. */
    private static final double ROUNDING = 1e-12;

    /** The head start for two sides, from a race between them in which I throw first. */
    public static HeadStart of(Race race) {
        GameRules rules = race.rules();
        double even = race.winOrHalf(0, 0, true);
        Side weaker = even > 0.5 ? Side.VERSUS : Side.ME;
        HeadStart best = new HeadStart(0, Side.ME, even);
        for (int points = 1; points <= Math.min(MOST, rules.target() - 1); points++) {
            int mine = weaker == Side.ME ? points : 0;
            int theirs = points - mine;
            if (rules.won(mine, theirs) || rules.won(theirs, mine)) {
                break;
            }
            double win = race.winOrHalf(mine, theirs, true);
            if (Math.abs(win - 0.5) < Math.abs(best.winProbability - 0.5) - ROUNDING) {
                best = new HeadStart(points, weaker, win);
            }
        }
        return best;
    }
}
