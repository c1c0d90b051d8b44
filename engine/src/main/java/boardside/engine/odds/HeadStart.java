package boardside.engine.odds;

import boardside.engine.rules.GameRules;
import boardside.engine.rules.Side;
import java.util.List;

/**
 * Points given to the weaker side beforehand, to bring a race, or a game of totals, nearest to even.
 *
 * @param points whole points; in a race 0..20 and below the target; of equally even ones the smallest
 * @param to who gets them: {@link Side#ME} or {@link Side#VERSUS}; ME if there are none to give
 * @param winProbability chance of the first side to win with them, a race without end or a tie counted half
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

    /**
     * The head start in a game in which both sides throw a total and the higher one wins; totals are independent.
     *
     * @param mine chances of my total being 0, 1, ...
     * @param theirs the same of the other side
     */
    public static HeadStart inTotals(List<Double> mine, List<Double> theirs) {
        double even = winOrHalf(mine, theirs, 0);
        Side weaker = even > 0.5 ? Side.VERSUS : Side.ME;
        int sign = weaker == Side.ME ? 1 : -1;
        HeadStart best = new HeadStart(0, Side.ME, even);
        int most = Math.max(mine.size(), theirs.size());
        for (int points = 1; points < most; points++) {
            double win = winOrHalf(mine, theirs, sign * points);
            if (Math.abs(win - 0.5) < Math.abs(best.winProbability - 0.5) - ROUNDING) {
                best = new HeadStart(points, weaker, win);
            }
        }
        return best;
    }

    /** The chance that my total with some points more is the higher one, plus half of that of equal ones. */
    private static double winOrHalf(List<Double> mine, List<Double> theirs, int more) {
        double win = 0;
        double below = 0;
        int upTo = 0;
        for (int my = 0; my < mine.size(); my++) {
            int total = my + more;
            while (upTo < total && upTo < theirs.size()) {
                below += theirs.get(upTo);
                upTo++;
            }
            double equal = total >= 0 && total < theirs.size() ? theirs.get(total) : 0;
            win += mine.get(my) * (below + equal / 2);
        }
        return win;
    }
}
