package boardside.engine.odds;

import boardside.engine.rules.GameRules;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/**
 * Races up and down the ghost ladder: win one and the next ghost scores one more, lose one and it scores one less; at
 * the ends one stays. A birth-death chain (Feller, vol. 1, XV), and a one-up one-down staircase, which settles where the
 * chance is one half (Levitt 1971, "Transformed up-down methods in psychoacoustics", J. Acoust. Soc. Am. 49, 467-477).
 *
 * @param lowest the ghost score of the lowest rung, 0..12
 * @param winByRung chance to win a race at each rung, from the lowest up; a race without end is counted half
 */
public record Climb(int lowest, List<Double> winByRung) {
    /** Most games that {@link #gamesToPin} looks at. */
    public static final int MOST_GAMES = 500;

    private static final double RESCALE = 1e100;

    /**
     * Checks the rungs.
     *
     * @throws IllegalArgumentException if there is none, a chance is no chance, or a ghost would lie outside 0..12
     */
    public Climb {
        winByRung = List.copyOf(winByRung);
        int highest = lowest + winByRung.size() - 1;
        if (!(lowest >= 0 && highest <= RoundDistribution.MOST && lowest <= highest)) {
            throw new IllegalArgumentException(
                    "the rungs are ghost scores 0 to 12, the lowest first, not " + lowest + " to " + highest);
        }
        for (double win : winByRung) {
            if (!(win >= 0 && win <= 1)) {
                throw new IllegalArgumentException("a chance to win is 0 to 1, not " + win);
            }
        }
    }

    /**
     * The climb of a player.
     *
     * @param rules how each race is won
     * @param me the player
     * @param lowest ghost score of the lowest rung, 0..highest
     * @param highest ghost score of the highest rung, lowest..12
     * @throws IllegalArgumentException if the rungs are not like that
     */
    public static Climb of(GameRules rules, RoundDistribution me, int lowest, int highest) {
        if (!(lowest >= 0 && lowest <= highest && highest <= RoundDistribution.MOST)) {
            throw new IllegalArgumentException(
                    "the rungs are ghost scores 0 to 12, the lowest first, not " + lowest + " to " + highest);
        }
        List<Double> wins = new ArrayList<>();
        for (int ghost = lowest; ghost <= highest; ghost++) {
            // Sums of chances may pass 1 by rounding.
            wins.add(Math.min(
                    1, Race.solve(rules, me, RoundDistribution.ghost(ghost)).winOrHalf(0, 0, true)));
        }
        return new Climb(lowest, wins);
    }

    /**
     * The rung after a race: one up when won, one down when lost, the same at the ends.
     *
     * @param rung ghost score of the race, 0..12
     * @param won whether it was won
     */
    public static int next(int rung, boolean won) {
        return won ? Math.min(rung + 1, RoundDistribution.MOST) : Math.max(rung - 1, 0);
    }

    /**
     * A rung to begin at: the highest up to which every race is won with such a chance; the lowest where none is.
     *
     * @param chance the chance asked for, 0..1
     */
    public int start(double chance) {
        int likely = 0;
        while (likely < winByRung.size() && winByRung.get(likely) >= chance) {
            likely++;
        }
        return lowest + Math.max(0, likely - 1);
    }

    /** Ghost score of the highest rung. */
    public int highest() {
        return lowest + winByRung.size() - 1;
    }

    /**
     * Share of races at each rung in the long run of a climber who starts at the lowest; from the lowest rung up, adding
     * up to 1. A new array.
     *
     * <p>Balance between neighbours: share(i) win(i) = share(i + 1) lose(i + 1). Rungs that are never reached, or never
     * come back to, have 0.
     */
    public double[] stationary() {
        int top = 0;
        while (top < winByRung.size() - 1 && win(top) > 0) {
            top++;
        }
        int bottom = top;
        while (bottom > 0 && lose(bottom) > 0) {
            bottom--;
        }
        double[] shares = new double[winByRung.size()];
        shares[bottom] = 1;
        double sum = 1;
        for (int rung = bottom; rung < top; rung++) {
            shares[rung + 1] = shares[rung] * win(rung) / lose(rung + 1);
            sum += shares[rung + 1];
            if (sum > RESCALE) {
                scale(shares, sum);
                sum = 1;
            }
        }
        scale(shares, sum);
        return shares;
    }

    private static void scale(double[] values, double divisor) {
        for (int i = 0; i < values.length; i++) {
            values[i] /= divisor;
        }
    }

    /** Mean ghost score in the long run. */
    public double mean() {
        double[] shares = stationary();
        double mean = 0;
        for (int rung = 0; rung < shares.length; rung++) {
            mean += (lowest + rung) * shares[rung];
        }
        return mean;
    }

    /** The ghost score met most often in the long run; of equal ones the lowest. */
    public int mode() {
        double[] shares = stationary();
        int mode = 0;
        for (int rung = 1; rung < shares.length; rung++) {
            if (shares[rung] > shares[mode]) {
                mode = rung;
            }
        }
        return lowest + mode;
    }

    /** Expected games of a climber who starts at the lowest rung, up to and with the first loss; may be infinite. */
    public double gamesToFirstLoss() {
        int last = winByRung.size() - 1;
        double expected = 1 / lose(last);
        for (int rung = last - 1; rung >= 0; rung--) {
            // Nothing follows a loss: a rung that is always lost ends there, whatever lies above.
            expected = 1 + (win(rung) > 0 ? win(rung) * expected : 0);
        }
        return expected;
    }

    /**
     * Games, after the first loss of a climber who started at the lowest rung, until the mean rung of these games lies
     * within a distance of the level with such a chance; the run-up to the first loss is left out, as Levitt advises. The
     * smallest number for which that holds and for the next one too; empty if not within {@link #MOST_GAMES}.
     *
     * @param level the level, 0..12
     * @param within the distance in points
     * @param chance the chance asked for, above 0 and below 1
     */
    public OptionalInt gamesToPin(double level, double within, double chance) {
        if (!(level >= 0 && level <= RoundDistribution.MOST && within > 0 && chance > 0 && chance < 1)) {
            throw new IllegalArgumentException("a level is 0 to 12, a distance above 0, a chance between 0 and 1, not "
                    + level + ", " + within + " and " + chance);
        }
        int rungs = winByRung.size();
        // chances[rung][sum]: at that rung, with that sum of rungs so far.
        double[][] chances = new double[rungs][];
        double[] start = afterFirstLoss();
        for (int rung = 0; rung < rungs; rung++) {
            chances[rung] = new double[] {start[rung]};
        }
        boolean before = false;
        for (int games = 1; games <= MOST_GAMES; games++) {
            chances = play(chances);
            boolean pinned = near(chances, games, level - lowest, within) >= chance;
            if (pinned && before) {
                return OptionalInt.of(games - 1);
            }
            before = pinned;
        }
        return OptionalInt.empty();
    }

    private double[][] play(double[][] chances) {
        int rungs = chances.length;
        double[][] next = new double[rungs][chances[0].length + rungs - 1];
        for (int rung = 0; rung < rungs; rung++) {
            double[] up = next[Math.min(rung + 1, rungs - 1)];
            double[] down = next[Math.max(rung - 1, 0)];
            for (int sum = 0; sum < chances[rung].length; sum++) {
                up[sum + rung] += win(rung) * chances[rung][sum];
                down[sum + rung] += lose(rung) * chances[rung][sum];
            }
        }
        return next;
    }

    private static double near(double[][] chances, int games, double level, double within) {
        double sum = 0;
        for (double[] row : chances) {
            for (int s = 0; s < row.length; s++) {
                if (Math.abs((double) s / games - level) <= within) {
                    sum += row[s];
                }
            }
        }
        return sum;
    }

    /** Where the first game after the first loss is played, by rung; all 0 if there is never a loss. */
    private double[] afterFirstLoss() {
        double[] start = new double[winByRung.size()];
        int last = start.length - 1;
        double unbeaten = 1;
        for (int rung = 0; rung < last; rung++) {
            start[Math.max(rung - 1, 0)] += unbeaten * lose(rung);
            unbeaten *= win(rung);
        }
        if (lose(last) > 0) {
            start[Math.max(last - 1, 0)] += unbeaten;
        }
        return start;
    }

    /**
     * The mean rung of so many games of a climber who has long settled, as an estimate of a level.
     *
     * @param level the level, 0..12
     * @param games 1 or more
     * @return the root of the mean squared difference between the two, in points
     */
    public double error(double level, int games) {
        if (!(games >= 1)) {
            throw new IllegalArgumentException("at least one game is needed, not " + games);
        }
        int rungs = winByRung.size();
        // By rung: the chance to be there, and the mean of the sum so far, and of its square, where we are there.
        double[] at = stationary();
        double[] sum = new double[rungs];
        double[] square = new double[rungs];
        for (int game = 0; game < games; game++) {
            double[] nextAt = new double[rungs];
            double[] nextSum = new double[rungs];
            double[] nextSquare = new double[rungs];
            for (int rung = 0; rung < rungs; rung++) {
                double off = lowest + rung - level;
                double newSum = sum[rung] + off * at[rung];
                double newSquare = square[rung] + 2 * off * sum[rung] + off * off * at[rung];
                for (boolean won : new boolean[] {true, false}) {
                    double chance = won ? win(rung) : lose(rung);
                    int to = won ? Math.min(rung + 1, rungs - 1) : Math.max(rung - 1, 0);
                    nextAt[to] += chance * at[rung];
                    nextSum[to] += chance * newSum;
                    nextSquare[to] += chance * newSquare;
                }
            }
            at = nextAt;
            sum = nextSum;
            square = nextSquare;
        }
        double total = 0;
        for (double value : square) {
            total += value;
        }
        return Math.sqrt(total) / games;
    }

    private double win(int rung) {
        return winByRung.get(rung);
    }

    private double lose(int rung) {
        return 1 - winByRung.get(rung);
    }
}
