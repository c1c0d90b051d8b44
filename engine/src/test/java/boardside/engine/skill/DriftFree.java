package boardside.engine.skill;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * The model without drift that other programs can fit too: fixed effects of approach, board and a natural spline of time
 * with ten degrees of freedom; random effects of day, bag, and bag with approach. With made-up cells for it. For a
 * comparison of speed in {@code boardside.bench.skill}.
 */
public final class DriftFree {
    /** Degrees of freedom of the spline. */
    public static final int SPLINE = 10;

    private static final int BAGS = 12;
    private static final int FIXED = 3 + SPLINE;

    /** Per cell, ascending in days: day, bag, approach, board. */
    public final int[][] factors;
    /** Per day: the spline's values, orthonormal over days. */
    public final double[][] spline;
    /** Per cell: bags thrown, kept, in. */
    public final int[][] counts;

    /**
     * Estimates of one of the two models.
     *
     * @param approach effect of the aggressive approach
     * @param narrow effect of the narrow board
     * @param day standard deviation of days
     * @param bag of bags
     * @param crossed of bags with approaches
     * @param logLikelihood with all constants
     */
    public record Estimates(
            double approach, double narrow, double day, double bag, double crossed, double logLikelihood) {}

    /** Cells drawn at random: so many, over so many days, of so many bags each. */
    public DriftFree(int cells, int days, int bagsEach) {
        SplittableRandom random = new SplittableRandom(5);
        spline = spline(days);
        factors = new int[cells][];
        counts = new int[cells][];
        double[][] bag = new double[2][BAGS];
        double[][] crossed = new double[2][2 * BAGS];
        for (int k = 0; k < 2; k++) {
            Arrays.setAll(bag[k], b -> 0.2 * random.nextGaussian());
            Arrays.setAll(crossed[k], b -> 0.1 * random.nextGaussian());
        }
        int left = cells;
        int cell = 0;
        for (int day = 0; day < days; day++) {
            double time = day / (days - 1.0);
            double mood0 = 0.2 * random.nextGaussian();
            double mood1 = 0.2 * random.nextGaussian();
            int today = left / (days - day) + (random.nextInt(days - day) < left % (days - day) ? 1 : 0);
            left -= today;
            for (int i = 0; i < today; i++) {
                int b = random.nextInt(BAGS);
                int approach = random.nextInt(2);
                int board = random.nextInt(5) == 0 ? 1 : 0;
                double wave = 0.4 * time + 0.2 * Math.sin(9 * time);
                double eta0 = 0.8 + wave + mood0 + bag[0][b] + crossed[0][2 * b + approach] - 0.3 * approach;
                double eta1 = -0.4 + wave + mood1 + bag[1][b] + crossed[1][2 * b + approach] + 0.3 * approach;
                int kept = binomial(random, bagsEach, eta0 - 0.6 * board);
                factors[cell] = new int[] {day, b, approach, board};
                counts[cell++] = new int[] {bagsEach, kept, binomial(random, kept, eta1)};
            }
        }
    }

    private static int binomial(SplittableRandom random, int n, double logit) {
        double p = 1 / (1 + Math.exp(-logit));
        int hits = 0;
        for (int i = 0; i < n; i++) {
            hits += random.nextDouble() < p ? 1 : 0;
        }
        return hits;
    }

    /**
     * Natural cubic splines with equally spaced knots (Hastie, Tibshirani and Friedman 2009, The Elements of Statistical
     * Learning, 5.2.1), made orthonormal to each other and to the constant: another basis of what R's {@code ns(day, 10)}
     * spans.
     */
    private static double[][] spline(int days) {
        int knots = SPLINE + 1;
        double[][] column = new double[SPLINE][days];
        for (int d = 0; d < days; d++) {
            double x = d / (days - 1.0);
            column[0][d] = x;
            for (int j = 0; j < SPLINE - 1; j++) {
                column[j + 1][d] = piece(x, j, knots) - piece(x, knots - 2, knots);
            }
        }
        for (int j = 0; j < SPLINE; j++) {
            for (int repeat = 0; repeat < 2; repeat++) {
                double mean = Arrays.stream(column[j]).sum() / days;
                for (int d = 0; d < days; d++) {
                    column[j][d] -= mean;
                }
                for (int i = 0; i < j; i++) {
                    double dot = 0;
                    for (int d = 0; d < days; d++) {
                        dot += column[i][d] * column[j][d] / days;
                    }
                    for (int d = 0; d < days; d++) {
                        column[j][d] -= dot * column[i][d];
                    }
                }
            }
            double length = Math.sqrt(Arrays.stream(column[j]).map(v -> v * v).sum() / days);
            for (int d = 0; d < days; d++) {
                column[j][d] /= length;
            }
        }
        double[][] rows = new double[days][SPLINE];
        for (int d = 0; d < days; d++) {
            for (int j = 0; j < SPLINE; j++) {
                rows[d][j] = column[j][d];
            }
        }
        return rows;
    }

    private static double piece(double x, int knot, int knots) {
        double last = 1;
        double at = knot / (knots - 1.0);
        return (Math.pow(Math.max(0, x - at), 3) - Math.pow(Math.max(0, x - last), 3)) / (last - at);
    }

    /** Fits one of the two models: 0 for kept, 1 for in, given kept. */
    public Estimates fit(int model) {
        int n = factors.length;
        int random = 3 * BAGS;
        int patterns = 4 * BAGS;
        int[][] columns = new int[patterns][];
        double[][] values = new double[patterns][];
        for (int p = 0; p < patterns; p++) {
            int bag = p / 4;
            int approach = p / 2 % 2;
            columns[p] = new int[] {bag, BAGS + 2 * bag + approach, random, random + 1, random + 2};
            values[p] = new double[] {1, 1, 1, approach, p % 2};
        }
        int[] pattern = new int[n];
        double[] trials = new double[n];
        double[] hits = new double[n];
        int[] runCells = new int[n + 1];
        int[] dayRuns = new int[spline.length + 1];
        for (int c = 0; c < n; c++) {
            int[] f = factors[c];
            pattern[c] = 4 * f[1] + 2 * f[2] + f[3];
            runCells[c + 1] = c + 1;
            dayRuns[f[0] + 1] = c + 1;
            trials[c] = counts[c][model];
            hits[c] = counts[c][model + 1];
        }
        int[] kind = new int[random + FIXED];
        for (int j = 0; j < kind.length; j++) {
            kind[j] = j < BAGS ? 0 : j < random ? 1 : -1;
        }
        int[] oneNode = {0, spline.length};
        Cells cells = new Cells(
                1, random + FIXED, columns, values, pattern, runCells, dayRuns, oneNode, new double[1], spline);
        Variances variances = new Variances(
                cells, false, true, false, kind, new double[kind.length], 1, 1, new Variances.Prior[0], new double[0]);
        double[] none = new double[n];
        MixedModel.Estimates fit = MixedModel.fit(
                cells, new BagCounts(trials, hits, none, none, none, none), variances, FIXED, 1e-5, 1e-8);
        double[] deviations = fit.deviations();
        return new Estimates(
                fit.fixed()[1], fit.fixed()[2], deviations[0], deviations[1], deviations[2], fit.logLikelihood());
    }
}
