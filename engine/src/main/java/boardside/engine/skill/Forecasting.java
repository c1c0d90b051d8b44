package boardside.engine.skill;

import boardside.engine.odds.BagChances;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.odds.Total;
import boardside.engine.rules.Finish;
import boardside.engine.skill.ForecastsAnswer.Bin;
import boardside.engine.skill.ForecastsAnswer.Forecasts;
import boardside.engine.skill.ForecastsAnswer.NothingForecast;
import boardside.engine.skill.ForecastsAnswer.Scored;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Forecasts of past totals, each from the days before its own, at the variances learned from all records. The belief about
 * the level and the border's effects goes forward day by day: it widens by the drift, and a day's counts are taken in by
 * Laplace's approximation of that day alone (Rasmussen and Williams 2006, Gaussian Processes for Machine Learning,
 * algorithm 3.1), runs and the day itself having effects of their own.
 */
final class Forecasting {
    /** Fewer totals than this are not scored. */
    static final int FEWEST = 20;

    /** The latest totals are scored, at most so many. */
    private static final int MOST = 500;

    private static final int ROUNDS = 10;
    private static final int BINS = 10;
    /** Five-point Gauss-Hermite quadrature of the standard normal. */
    private static final double[] NODES = {
        -2.8569700138728056, -1.355626179974266, 0, 1.355626179974266, 2.8569700138728056
    };

    private static final double[] WEIGHTS = {
        0.011257411327720689, 0.22207592200561266, 0.5333333333333333, 0.22207592200561266, 0.011257411327720689
    };

    private final Log log;
    private final DaySpread spread;
    private final double[] drift;
    private final int n;
    /** Belief about the border's effects and, last, the two levels. */
    private final double[] mean;

    private final double[] covariance;
    private final List<Forecast> forecasts = new ArrayList<>();

    private record Forecast(RunCount run, int total, double[] chances) {}

    private Forecasting(Fit fit) {
        log = fit.log;
        spread = new DaySpread(log.variances, fit.theta);
        drift = new double[] {Math.exp(2 * fit.theta[0]), Math.exp(2 * fit.theta[1])};
        Precisions prior = log.variances.precisions(fit.theta);
        n = log.cells.border() + 2;
        mean = new double[n];
        covariance = new double[n * n];
        for (int i = 0; i < n - 2; i++) {
            covariance[i * n + i] = 1 / prior.border()[i];
        }
        double[] first = java.util.Objects.requireNonNull(prior.first());
        for (int k = 0; k < 2; k++) {
            mean[n - 2 + k] = Log.MEAN[k];
            covariance[(n - 2 + k) * n + n - 2 + k] = 1 / first[k];
        }
    }

    static ForecastsAnswer answer(Fit fit) {
        Cells cells = fit.log.cells;
        List<Integer> runs = new ArrayList<>();
        for (int r = 0; r < cells.runs(); r++) {
            if (isTotal(fit.log.counts.subList(cells.runCells[r], cells.runCells[r + 1]))) {
                runs.add(r);
            }
        }
        if (runs.size() < FEWEST) {
            return new NothingForecast(Sentences.nothingForecast(FEWEST));
        }
        int from = runs.get(Math.max(0, runs.size() - MOST));
        Forecasting forecasting = new Forecasting(fit);
        for (int d = 0; d < cells.days(); d++) {
            forecasting.day(d, from);
        }
        return forecasting.scored();
    }

    /** Ten full rounds of four, all of them counted. */
    private static boolean isTotal(List<RunCount> run) {
        int rounds = 0;
        int bags = 0;
        for (RunCount count : run) {
            rounds += count.fullRounds();
            bags += count.thrown();
        }
        return rounds == ROUNDS && bags == ROUNDS * Finish.BAGS;
    }

    private void day(int d, int scoredFrom) {
        Cells cells = log.cells;
        if (d > 0) {
            double gap = log.day(d).toEpochDay() - log.day(d - 1).toEpochDay();
            for (int k = 0; k < 2; k++) {
                covariance[(n - 2 + k) * n + n - 2 + k] += drift[k] * gap;
            }
        }
        int from = cells.runCells[cells.dayRuns[d]];
        int to = cells.runCells[cells.dayRuns[d + 1]];
        int size = 2 * (to - from);
        // Covariance of everything with the day's predictors, and of these with each other.
        double[] with = new double[n * size];
        double[] mu = new double[size];
        for (int c = from; c < to; c++) {
            int pattern = cells.pattern[c];
            for (int k = 0; k < 2; k++) {
                int column = 2 * (c - from) + k;
                mu[column] = mean[n - 2 + k];
                for (int i = 0; i < n; i++) {
                    with[i * size + column] = covariance[i * n + n - 2 + k];
                }
                for (int j : cells.columns[pattern]) {
                    mu[column] += mean[2 * j + k];
                    for (int i = 0; i < n; i++) {
                        with[i * size + column] += covariance[i * n + 2 * j + k];
                    }
                }
            }
        }
        double[] own = new double[size * size];
        for (int r = cells.dayRuns[d]; r < cells.dayRuns[d + 1]; r++) {
            for (int c = cells.runCells[r]; c < cells.runCells[r + 1]; c++) {
                for (int k = 0; k < 2; k++) {
                    int row = 2 * (c - from) + k;
                    for (int column = 0; column < size; column++) {
                        double sum = with[(n - 2 + k) * size + column];
                        for (int j : cells.columns[cells.pattern[c]]) {
                            sum += with[(2 * j + k) * size + column];
                        }
                        int e = from + column / 2;
                        sum += spread.day[k + column % 2];
                        if (e >= cells.runCells[r] && e < cells.runCells[r + 1]) {
                            sum += spread.run[k + column % 2];
                        }
                        own[row * size + column] = sum;
                    }
                }
            }
        }
        for (int r = Math.max(scoredFrom, cells.dayRuns[d]); r < cells.dayRuns[d + 1]; r++) {
            List<RunCount> run = log.counts.subList(cells.runCells[r], cells.runCells[r + 1]);
            if (isTotal(run)) {
                forecasts.add(forecast(run, cells.runCells[r] - from, mu, own, size));
            }
        }
        take(from, size, mu, own, with);
    }

    /** Where a run has several cells, their predictors are averaged by the bags thrown. */
    private Forecast forecast(List<RunCount> run, int at, double[] mu, double[] own, int size) {
        double m0 = 0;
        double m1 = 0;
        double[] v = new double[3];
        int total = 0;
        double all = ROUNDS * Finish.BAGS;
        for (int c = 0; c < run.size(); c++) {
            double share = run.get(c).thrown() / all;
            total += run.get(c).known().points();
            int row = 2 * (at + c);
            m0 += share * mu[row];
            m1 += share * mu[row + 1];
            for (int e = 0; e < run.size(); e++) {
                double both = share * run.get(e).thrown() / all;
                int column = 2 * (at + e);
                v[0] += both * own[row * size + column];
                v[1] += both * own[row * size + column + 1];
                v[2] += both * own[(row + 1) * size + column + 1];
            }
        }
        double[] root = Block.root(v, 0);
        double[] chances = new double[3 * Finish.BAGS * ROUNDS + 1];
        for (int i = 0; i < NODES.length; i++) {
            for (int j = 0; j < NODES.length; j++) {
                double kept = BagCounts.logistic(m0 + root[0] * NODES[i]);
                double in = kept * BagCounts.logistic(m1 + root[1] * NODES[i] + root[2] * NODES[j]);
                Total sum = Total.of(RoundDistribution.of(new BagChances(in, kept - in)), ROUNDS);
                for (int t = 0; t < chances.length; t++) {
                    chances[t] += WEIGHTS[i] * WEIGHTS[j] * sum.chance(t);
                }
            }
        }
        return new Forecast(run.get(0), total, chances);
    }

    /** Takes a day's counts into the belief. */
    private void take(int from, int size, double[] mu, double[] own, double[] with) {
        int cells = size / 2;
        BagCounts counts = log.bags.part(from, from + cells);
        double[] eta = mu.clone();
        double[] slope = new double[size];
        double[] weight = new double[3 * cells];
        double[] a = new double[size];
        double[] root = new double[size * size];
        double[] b = new double[size];
        for (int step = 0; step < 25; step++) {
            counts.slopes(eta, slope, weight);
            // B = I + W^1/2 P W^1/2, with W^1/2 = L' from W = L L'.
            Arrays.fill(root, 0);
            for (int c = 0; c < cells; c++) {
                double[] l = Block.root(weight, 3 * c);
                root[2 * c * size + 2 * c] = l[0];
                root[2 * c * size + 2 * c + 1] = l[1];
                root[(2 * c + 1) * size + 2 * c + 1] = l[2];
            }
            double[] rp = times(root, own, size);
            double[] big = timesTransposed(rp, root, size);
            for (int i = 0; i < size; i++) {
                big[i * size + i] += 1;
            }
            Dense.cholesky(big, size);
            for (int c = 0; c < cells; c++) {
                double x0 = eta[2 * c] - mu[2 * c];
                double x1 = eta[2 * c + 1] - mu[2 * c + 1];
                b[2 * c] = weight[3 * c] * x0 + weight[3 * c + 1] * x1 + slope[2 * c];
                b[2 * c + 1] = weight[3 * c + 1] * x0 + weight[3 * c + 2] * x1 + slope[2 * c + 1];
            }
            double[] y = new double[size];
            for (int i = 0; i < size; i++) {
                for (int j = 0; j < size; j++) {
                    y[i] += rp[i * size + j] * b[j];
                }
            }
            Dense.solve(big, size, size, y, 0);
            double moved = 0;
            for (int i = 0; i < size; i++) {
                a[i] = b[i];
                for (int j = 0; j < size; j++) {
                    a[i] -= root[j * size + i] * y[j];
                }
            }
            for (int i = 0; i < size; i++) {
                double next = mu[i];
                for (int j = 0; j < size; j++) {
                    next += own[i * size + j] * a[j];
                }
                // Far from the mode a whole step may overshoot.
                double change = Math.max(-3, Math.min(3, next - eta[i]));
                moved = Math.max(moved, Math.abs(change));
                eta[i] += change;
            }
            if (moved < 1e-6 || step == 24) {
                move(with, root, big, a, size);
                return;
            }
        }
    }

    /** The belief after the day: mean + cov a, covariance - cov W^1/2' B^-1 W^1/2 cov'. */
    private void move(double[] with, double[] root, double[] big, double[] a, int size) {
        double[] half = new double[n * size];
        double[] row = new double[size];
        for (int i = 0; i < n; i++) {
            double sum = 0;
            for (int j = 0; j < size; j++) {
                sum += with[i * size + j] * a[j];
            }
            mean[i] += sum;
            for (int j = 0; j < size; j++) {
                double x = 0;
                for (int l = 0; l < size; l++) {
                    x += root[j * size + l] * with[i * size + l];
                }
                // Forward through the factor: half = L^-1 W^1/2 cov'.
                for (int l = 0; l < j; l++) {
                    x -= big[j * size + l] * row[l];
                }
                row[j] = x / big[j * size + j];
            }
            System.arraycopy(row, 0, half, i * size, size);
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = 0;
                for (int l = 0; l < size; l++) {
                    sum += half[i * size + l] * half[j * size + l];
                }
                covariance[i * n + j] -= sum;
                covariance[j * n + i] = covariance[i * n + j];
            }
        }
    }

    private static double[] times(double[] a, double[] b, int n) {
        double[] product = new double[n * n];
        for (int i = 0; i < n; i++) {
            for (int l = 0; l < n; l++) {
                double x = a[i * n + l];
                for (int j = 0; x != 0 && j < n; j++) {
                    product[i * n + j] += x * b[l * n + j];
                }
            }
        }
        return product;
    }

    private static double[] timesTransposed(double[] a, double[] b, int n) {
        double[] product = new double[n * n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                for (int l = 0; l < n; l++) {
                    product[i * n + j] += a[i * n + l] * b[j * n + l];
                }
            }
        }
        return product;
    }

    private Forecasts scored() {
        int[] sorted = forecasts.stream().mapToInt(Forecast::total).sorted().toArray();
        List<Scored> scored = new ArrayList<>();
        double[] stated = new double[BINS];
        int[] happened = new int[BINS];
        int[] statements = new int[BINS];
        int inside = 0;
        double score = 0;
        for (int i = 0; i < forecasts.size(); i++) {
            Forecast each = forecasts.get(i);
            TotalForecast forecast = new TotalForecast(
                    ROUNDS, Arrays.stream(each.chances).boxed().toList());
            int low = forecast.quantile(Interval.TAIL);
            int high = forecast.quantile(1 - Interval.TAIL);
            inside += each.total >= low && each.total <= high ? 1 : 0;
            double below = 0;
            double sum = 0;
            double place = 0;
            double average = 0;
            for (int t = 0; t < each.chances.length; t++) {
                place += t < each.total ? each.chances[t] : t == each.total ? each.chances[t] / 2 : 0;
                average += t * each.chances[t];
                below += each.chances[t];
                double off = below - (t >= each.total ? 1 : 0);
                sum += off * off;
            }
            score += sum / forecasts.size();
            scored.add(new Scored(
                    each.run.day(), each.run.run(), each.total, average, low, high, Math.min(1, Math.max(0, place))));
            // One statement a total: "at least so many", the bound going round among the totals' own sixths.
            int bound = sorted[(1 + i % 5) * (sorted.length - 1) / 6];
            double chance = forecast.atLeast(bound);
            int bin = Math.min(BINS - 1, (int) (chance * BINS));
            stated[bin] += chance;
            happened[bin] += each.total >= bound ? 1 : 0;
            statements[bin]++;
        }
        List<Bin> bins = new ArrayList<>();
        for (int bin = 0; bin < BINS; bin++) {
            if (statements[bin] > 0) {
                bins.add(new Bin(
                        stated[bin] / statements[bin],
                        new Beta(0.5 + happened[bin], 0.5 + statements[bin] - happened[bin]).interval(),
                        statements[bin]));
            }
        }
        Bin most = bins.stream().max(Comparator.comparingLong(Bin::statements)).orElseThrow();
        return new Forecasts(
                scored,
                bins,
                inside / (double) forecasts.size(),
                score,
                Sentences.forecasts(forecasts.size(), inside, most.stated(), most.happened()));
    }
}
