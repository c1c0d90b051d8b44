package boardside.engine.skill;

import boardside.engine.skill.Variances.Prior;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;

/**
 * The skill model with other laws of drift in the place of its random walk, to be told apart by what they say of days
 * they have not seen. For {@code boardside.bench.skill.DriftBench}.
 */
public final class DriftKinds {
    /** How the level may move. */
    public enum Kind {
        /** Not at all. */
        NONE,
        /** A random walk, as in {@link Log}. */
        WALK,
        /** A walk that loses a fiftieth a day of what it is away from the player's own mean: half in five weeks. */
        DAMPED,
        /** The same, a two-hundredth a day: half in 20 weeks. */
        SLOWLY_DAMPED,
        /**
         * A smooth curve: a line, and cosines whose variances fall as a cubic smoothing spline's do, by the fourth power
         * of their frequency (Wahba 1990, Spline Models for Observational Data, SIAM, chapter 2).
         */
        SMOOTH
    }

    private static final int COSINES = 12;
    /** Standard deviation of the line's whole rise, and of a level. */
    private static final double LINE = 0.5;

    private static final double LEVEL = 2.5;
    /** A prior that holds drift at next to nothing. */
    private static final Prior STILL = new Prior(1.5, 1e5);

    private static final double[] NODES = {
        -2.8569700138728056, -1.355626179974266, 0, 1.355626179974266, 2.8569700138728056
    };
    private static final double[] WEIGHTS = {
        0.011257411327720689, 0.22207592200561266, 0.5333333333333333, 0.22207592200561266, 0.011257411327720689
    };

    private DriftKinds() {}

    /**
     * Learns from the days before one, and is asked about the days from there on.
     *
     * @param counts at least one before that day and one from there on
     * @return log of the chance that was given to the counts from there on, summed over ways in runs
     */
    public static double score(List<RunCount> counts, LocalDate from, Kind kind) {
        Log log = new Log(counts);
        Cells cells = cells(log, kind);
        BagCounts seen = bags(log, from, true);
        BagCounts unseen = bags(log, from, false);
        MixedModel.Estimates fit = MixedModel.fit(cells, seen, variances(log, cells, kind), 0, 1e-3, 1e-7);
        return score(log, from, unseen, fit.laplace());
    }

    private static Cells cells(Log log, Kind kind) {
        Cells cells = log.cells;
        long first = log.day(0).toEpochDay();
        double span = Math.max(1, log.day(cells.days() - 1).toEpochDay() - first);
        double[][] daily = new double[cells.days()][];
        for (int d = 0; d < daily.length; d++) {
            double time = (log.day(d).toEpochDay() - first) / span;
            daily[d] = switch (kind) {
                case NONE, WALK -> new double[0];
                case DAMPED, SLOWLY_DAMPED -> new double[] {1};
                case SMOOTH -> {
                    double[] curve = new double[1 + COSINES];
                    curve[0] = time - 0.5;
                    for (int j = 1; j <= COSINES; j++) {
                        double frequency = j * Math.PI;
                        curve[j] = Math.sqrt(2) * Math.cos(frequency * time) / (frequency * frequency);
                    }
                    yield curve;
                }
            };
        }
        return new Cells(
                2,
                cells.covariates + daily[0].length,
                cells.columns,
                cells.values,
                cells.pattern,
                cells.runCells,
                cells.dayRuns,
                cells.nodeDays,
                cells.times,
                daily);
    }

    private static Variances variances(Log log, Cells cells, Kind kind) {
        double[] usual = log.variances.precisions(log.variances.start()).border();
        int[] kinds = new int[cells.covariates];
        double[] fixed = new double[cells.covariates];
        Arrays.fill(kinds, -1);
        int random = 0;
        for (int j = 0; j < log.cells.covariates; j++) {
            String name = log.names.get(j);
            kinds[j] = name.startsWith("bag ") ? 0 : name.contains(" with bag ") ? 1 : -1;
            fixed[j] = usual[2 * j];
            random = Math.max(random, kinds[j] + 1);
        }
        for (int i = 0; i < cells.daily; i++) {
            int j = log.cells.covariates + i;
            double deviation = kind == Kind.SMOOTH ? LINE : LEVEL;
            fixed[j] = 1 / (deviation * deviation);
            kinds[j] = kind == Kind.SMOOTH && i > 0 ? random : -1;
        }
        boolean still = kind == Kind.NONE || kind == Kind.SMOOTH;
        Prior[] priors = {still ? STILL : Log.DRIFT, Log.DAYS, Log.RUNS, Log.BAGS, Log.CROSSED};
        priors = Arrays.copyOf(priors, 3 + random + 1);
        // A curve of this size bends by about as much as a random walk drifts in a year.
        priors[3 + random] = new Prior(1.5, 0.5);
        double stay = kind == Kind.DAMPED ? 0.98 : kind == Kind.SLOWLY_DAMPED ? 0.995 : 1;
        double first = stay == 1 ? 1 / (LEVEL * LEVEL) : 1 / (LINE * LINE);
        return new Variances(cells, true, true, true, kinds, fixed, first, stay, priors, new double[] {0.4, 0.6});
    }

    /** Counts before a day or from there on; the others 0. */
    private static BagCounts bags(Log log, LocalDate from, boolean before) {
        int n = log.counts.size();
        double[][] count = new double[5][n];
        for (int c = 0; c < n; c++) {
            RunCount run = log.counts.get(c);
            if (run.day().isBefore(from) == before) {
                count[0][c] = run.known().thrown();
                count[1][c] = run.known().in() + run.known().on();
                count[2][c] = run.known().in();
                count[3][c] = run.thrownOnlyIn();
                count[4][c] = run.inOnlyIn();
            }
        }
        return new BagCounts(count[0], count[1], count[1], count[2], count[3], count[4]);
    }

    private static double score(Log log, LocalDate from, BagCounts unseen, Laplace laplace) {
        Arrow arrow = laplace.arrow;
        Cells cells = arrow.cells;
        double[] x = laplace.effects;
        double[] pattern = new double[2 * cells.patterns()];
        arrow.predict(x, pattern);
        Covariances covariances = arrow.covariances(cells.border());
        double sum = 0;
        double[] eta = new double[2];
        for (int t = 0; t < cells.nodes(); t++) {
            for (int d = cells.nodeDays[t]; d < cells.nodeDays[t + 1]; d++) {
                for (int r = cells.dayRuns[d]; r < cells.dayRuns[d + 1]; r++) {
                    for (int c = cells.runCells[r]; c < cells.runCells[r + 1]; c++) {
                        if (log.counts.get(c).day().isBefore(from)) {
                            continue;
                        }
                        for (int k = 0; k < 2; k++) {
                            eta[k] = x[2 * r + k]
                                    + x[arrow.dayAt + 2 * d + k]
                                    + x[arrow.nodeAt + 2 * t + k]
                                    + pattern[2 * cells.pattern[c] + k]
                                    + arrow.daily(x, d, k);
                        }
                        sum += chance(unseen.part(c, c + 1), eta, Block.root(covariances.cell, 3 * c));
                    }
                }
            }
        }
        return sum;
    }

    /** Log of the chance of one cell's counts, its predictors being normal. */
    private static double chance(BagCounts counts, double[] mean, double[] root) {
        double[] terms = new double[NODES.length * NODES.length];
        for (int i = 0; i < NODES.length; i++) {
            for (int j = 0; j < NODES.length; j++) {
                double[] eta = {mean[0] + root[0] * NODES[i], mean[1] + root[1] * NODES[i] + root[2] * NODES[j]};
                terms[NODES.length * i + j] = counts.value(eta) + Math.log(WEIGHTS[i] * WEIGHTS[j]);
            }
        }
        double most = Arrays.stream(terms).max().orElseThrow();
        return counts.constant()
                + most
                + Math.log(
                        Arrays.stream(terms).map(term -> Math.exp(term - most)).sum());
    }
}
