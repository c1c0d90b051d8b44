package boardside.engine.odds;

import boardside.engine.rules.GameRules;
import java.util.Arrays;

/**
 * A race to an exact target, where a side that passes it falls back: solved directly, cycles and all.
 *
 * <p>Where the cycles are. A side's score rises, except that passing the target T takes it to the fall-back score F. A
 * score below F is therefore never seen twice; one from F on can come back, but only by way of F itself. So a cycle of my
 * score runs through row a = F and a cycle of theirs through column b = F, and the unknowns can be cut down to those:
 *
 * <ol>
 *   <li>Along a row, backwards in b, every value is a linear function of one unknown, the value at b = F; on reaching b =
 *       F that unknown is found, and the row is done.
 *   <li>Rows are walked backwards from T - 1 to F with the T unknown values x(b) of row F carried along as coefficients.
 *       Row F then gives x = A x + c, T equations, solved by elimination.
 *   <li>With x known all rows are walked once more, with numbers.
 * </ol>
 *
 * <p>All coefficients are chances: those of where the race goes next among the unknowns or the ways to end. They add up
 * to 1 in every state, so 1 - A(j, j) is had as a sum of the others, never as a difference, and the elimination keeps full
 * relative accuracy (Grassmann, Taksar and Heyman 1985, "Regenerative analysis and steady state distributions for Markov
 * chains", Operations Research 33, 1107-1116).
 *
 * <p>Never to end counts as a way to end: a set of scores that cannot be left shows as a sum of exactly 0.
 */
final class ExactRace {
    // Ways to end, and the expected rounds; these columns stand before those of the unknowns.
    private static final int WIN = 0;
    private static final int LOSE = 1;
    private static final int NEVER = 2;
    private static final int ROUNDS = 3;
    private static final int UNKNOWNS = 4;

    private final GameRules rules;
    private final int target;
    private final int fallBack;
    // By who throws first: 0 me, 1 they.
    private final ScoringRound[] rounds;

    /**
     * @param rules with an exact target
     * @param meFirst the next round that scores, when I throw first
     * @param theyFirst the same when they do
     * @throws IllegalArgumentException if the target is above {@link Race#MOST_EXACT}
     */
    ExactRace(GameRules rules, ScoringRound meFirst, ScoringRound theyFirst) {
        if (!(rules.target() <= Race.MOST_EXACT)) {
            throw new IllegalArgumentException(
                    "a race to an exact target is solved up to " + Race.MOST_EXACT + " points, not " + rules.target());
        }
        this.rules = rules;
        this.target = rules.target();
        this.fallBack = rules.fallBack();
        this.rounds = new ScoringRound[] {meFirst, theyFirst};
    }

    /** The tables by who throws first: me, they. */
    RaceTable[] solve() {
        // values[a][b][first] holds the coefficients of that state, in columns.
        double[][][][] values = new double[target][][][];
        double[][] unit = new double[target][UNKNOWNS + target];
        for (int b = 0; b < target; b++) {
            unit[b][UNKNOWNS + b] = 1;
        }
        for (int a = target - 1; a >= fallBack; a--) {
            values[a] = row(a, values, unit);
            if (a + NetDistribution.MOST < target) {
                // No round leads so far up.
                values[a + NetDistribution.MOST] = new double[0][][];
            }
        }
        double[][] known = close(values[fallBack]);
        for (int a = target - 1; a >= 0; a--) {
            values[a] = row(a, values, known);
        }
        return new RaceTable[] {table(values, 0), table(values, 1)};
    }

    /**
     * The values of a row, given the rows that follow it.
     *
     * @param fallen by b, what it is worth to have fallen back to (F, b) with the first throw mine: numbers, or an unknown
     */
    private double[][][] row(int a, double[][][][] values, double[][] fallen) {
        int columns = fallen[0].length;
        double[][][] row = new double[target][2][];
        // While b >= F the value at (a, F) with their first throw is not known: its coefficient stands in a last
        // column.
        double[] self = new double[columns + 1];
        self[columns] = 1;
        for (int b = target - 1; b >= 0; b--) {
            boolean open = b >= fallBack;
            for (int first = 0; first < 2; first++) {
                double[] value = new double[open ? columns + 1 : columns];
                if (rounds[first].never()) {
                    value[NEVER] = 1;
                } else {
                    value[ROUNDS] = rounds[first].rounds();
                    double[] mineFallen = fallen[b];
                    double[] theirsFallen = open ? self : row[fallBack][1];
                    addGains(value, a, b, rounds[first].gain(), values, mineFallen);
                    addLosses(value, a, b, rounds[first].loss(), row, theirsFallen);
                }
                row[b][first] = value;
            }
            if (b == fallBack) {
                settle(row, columns);
            }
        }
        return row;
    }

    private void addGains(double[] value, int a, int b, double[] gain, double[][][][] values, double[] mineFallen) {
        for (int points = 1; points < gain.length; points++) {
            if (gain[points] > 0) {
                int score = rules.after(a, points);
                if (rules.won(score, b)) {
                    value[WIN] += gain[points];
                } else if (rules.won(b, score)) {
                    value[LOSE] += gain[points];
                } else if (score < a + points) {
                    add(value, gain[points], mineFallen);
                } else {
                    add(value, gain[points], values[score][b][0]);
                }
            }
        }
    }

    private void addLosses(double[] value, int a, int b, double[] loss, double[][][] row, double[] theirsFallen) {
        for (int points = 1; points < loss.length; points++) {
            if (loss[points] > 0) {
                int score = rules.after(b, points);
                if (rules.won(score, a)) {
                    value[LOSE] += loss[points];
                } else if (rules.won(a, score)) {
                    value[WIN] += loss[points];
                } else if (score < b + points) {
                    add(value, loss[points], theirsFallen);
                } else {
                    add(value, loss[points], row[score][1]);
                }
            }
        }
    }

    /** Finds the value at (a, F) with their first throw from the equation that it now stands in, and puts it in. */
    private void settle(double[][][] row, int columns) {
        double[] loop = row[fallBack][1];
        double leave = chances(loop, columns);
        double[] found = new double[columns];
        for (int c = 0; c < columns; c++) {
            found[c] = leave > 0 ? loop[c] / leave : 0;
        }
        if (!(leave > 0)) {
            found[NEVER] = 1;
        }
        for (int b = fallBack; b < target; b++) {
            for (int first = 0; first < 2; first++) {
                double[] value = new double[columns];
                System.arraycopy(row[b][first], 0, value, 0, columns);
                add(value, row[b][first][columns], found);
                row[b][first] = value;
            }
        }
    }

    /** The chances among the first columns: all but the expected rounds. */
    private static double chances(double[] value, int columns) {
        double sum = value[WIN] + value[LOSE] + value[NEVER];
        for (int c = UNKNOWNS; c < columns; c++) {
            sum += value[c];
        }
        return sum;
    }

    /** Solves x = A x + c for the values of row F with my first throw, read off that row; by b. */
    private double[][] close(double[][][] rowF) {
        double[][] x = new double[target][];
        double[] leave = new double[target];
        for (int b = 0; b < target; b++) {
            x[b] = rowF[b][0].clone();
        }
        for (int j = target - 1; j >= 0; j--) {
            leave[j] = chances(x[j], UNKNOWNS + j);
            if (!(leave[j] > 0)) {
                Arrays.fill(x[j], 0);
                x[j][NEVER] = 1;
                leave[j] = 1;
            }
            for (int i = 0; i < j; i++) {
                double factor = x[i][UNKNOWNS + j] / leave[j];
                if (factor > 0) {
                    for (int c = 0; c < UNKNOWNS + j; c++) {
                        x[i][c] += factor * x[j][c];
                    }
                }
            }
        }
        double[][] known = new double[target][UNKNOWNS];
        for (int j = 0; j < target; j++) {
            for (int c = 0; c < UNKNOWNS; c++) {
                known[j][c] = x[j][c] / leave[j];
            }
            for (int i = 0; i < j; i++) {
                add(known[j], x[j][UNKNOWNS + i] / leave[j], known[i]);
            }
        }
        return known;
    }

    /** Adds a multiple of the first columns. */
    private static void add(double[] value, double factor, double[] other) {
        for (int c = 0; c < other.length; c++) {
            value[c] += factor * other[c];
        }
    }

    private RaceTable table(double[][][][] values, int first) {
        double[] win = new double[target * target];
        double[] expected = new double[target * target];
        double[] never = new double[target * target];
        boolean endless = false;
        for (int a = 0; a < target; a++) {
            for (int b = 0; b < target; b++) {
                double[] value = values[a][b][first];
                int at = a * target + b;
                win[at] = value[WIN] + value[NEVER] / 2;
                expected[at] = value[ROUNDS];
                never[at] = value[NEVER];
                endless |= value[NEVER] > 0;
            }
        }
        return new RaceTable(target, win, expected, endless ? never : null);
    }
}
