package boardside.engine.league;

import java.util.List;

/**
 * How likely a player is to throw so many points or more in the rounds that are left, as far as is known.
 *
 * @param likely the chance to name, by points from 0 to the most that can be thrown; the first is 1
 * @param low the least it may well be, of the same length
 * @param high the most it may well be, of the same length
 */
public record Reach(List<Double> likely, List<Double> low, List<Double> high) {
    /** Nothing left to throw: 0 points for sure. */
    public static final Reach DONE = new Reach(List.of(1.0), List.of(1.0), List.of(1.0));

    /**
     * Lists copied.
     *
     * @throws IllegalArgumentException if they differ in length, are empty, or a chance is not within its range
     */
    public Reach {
        likely = List.copyOf(likely);
        low = List.copyOf(low);
        high = List.copyOf(high);
        if (likely.isEmpty() || likely.size() != low.size() || likely.size() != high.size()) {
            throw new IllegalArgumentException(
                    "a chance, its least and its most go with each number of points; there are " + likely.size() + ", "
                            + low.size() + " and " + high.size());
        }
        for (int points = 0; points < likely.size(); points++) {
            if (!(0 <= low.get(points)
                    && low.get(points) <= likely.get(points)
                    && likely.get(points) <= high.get(points)
                    && high.get(points) <= 1 + 1e-9)) {
                throw new IllegalArgumentException(
                        "the chance of " + points + " points or more is within its range, not " + likely.get(points)
                                + " in " + low.get(points) + " to " + high.get(points));
            }
        }
    }

    /** A chance with the least and the most it may well be. */
    public record Chance(double likely, double low, double high) {}

    /** The chance of that many points or more. */
    public Chance atLeast(int points) {
        if (points <= 0) {
            return new Chance(1, 1, 1);
        }
        return points >= likely.size()
                ? new Chance(0, 0, 0)
                : new Chance(likely.get(points), low.get(points), high.get(points));
    }

    /**
     * A game under way.
     *
     * @param mine points thrown so far
     * @param theirs chances of each total of the other side, from 0 on; a posted total is 1 at one place
     */
    public Game against(int mine, List<Double> theirs) {
        double[] win = new double[3];
        double[] tieOrWin = new double[3];
        for (int total = 0; total < theirs.size(); total++) {
            double chance = theirs.get(total);
            if (chance > 0) {
                add(win, chance, atLeast(total + 1 - mine));
                add(tieOrWin, chance, atLeast(total - mine));
            }
        }
        return new Game(new Chance(win[0], win[1], win[2]), new Chance(tieOrWin[0], tieOrWin[1], tieOrWin[2]));
    }

    private static void add(double[] sums, double weight, Chance chance) {
        sums[0] += weight * chance.likely();
        sums[1] += weight * chance.low();
        sums[2] += weight * chance.high();
    }

    /**
     * The chances of a game.
     *
     * @param win of a higher total than theirs
     * @param tieOrWin of a total no lower than theirs
     */
    public record Game(Chance win, Chance tieOrWin) {}
}
