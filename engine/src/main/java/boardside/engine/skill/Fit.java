package boardside.engine.skill;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A log's posterior: a mixture of Laplace approximations at several values of the hyperparameters (Rue, Martino and
 * Chopin 2009, J. Royal Statistical Society B 71, 319-392). The values are designed points about the posterior mean that
 * have its covariance: the rows of a Hadamard matrix of order 12 and their negatives, turned and scaled by
 * the covariance's Cholesky factor, so that every hyperparameter is one standard deviation off in every point and no two
 * go together. A log of many cells knows its variances well and is given the mode alone.
 */
final class Fit {
    /** More cells than this, and the variances count as known. */
    private static final int MOST_CELLS = 6000;

    /** Expected gain in log posterior that the search for the hyperparameters may leave. */
    private static final double GAIN = 2e-3;

    private static final double MODE = 1e-7;

    /** The same where only differences over long steps are wanted. */
    private static final double NEAR = 1e-5;

    /** The same after one more run: a step or two. */
    private static final double MOVED = 1e-3;

    /** Growth, or shrinkage, of the records beyond which variances are learned anew. */
    private static final double GROWN = 1.25;

    final Log log;
    final double[] theta;
    /** Of theta, n x n. */
    final double[] covariance;
    /** Equally likely states. */
    final List<Point> points;
    /** Bags the hyperparameters were learned from. */
    final double learnedFrom;

    private final Laplace centre;

    /** The posterior at one value of the hyperparameters. */
    record Point(double[] theta, Laplace laplace) {}

    private Fit(Log log, double[] theta, double[] covariance, Laplace centre, double learnedFrom) {
        this.log = log;
        this.theta = theta;
        this.covariance = covariance;
        this.centre = centre;
        this.learnedFrom = learnedFrom;
        this.points = points();
    }

    /** Fits with hyperparameters learned from the log; from a start, or kept where little has changed since. */
    static Fit of(Log log, @Nullable Learned learned) {
        int n = log.variances.size();
        double bags = log.thrown();
        double[] theta = log.variances.start();
        if (learned != null) {
            for (int i = 0; i < n; i++) {
                theta[i] = learned.values().get(i);
            }
        }
        Laplace laplace =
                new Laplace(log.cells, log.bags, log.variances.precisions(theta), Log.MEAN, log.cells.border());
        if (learned != null && bags <= GROWN * learned.bags() && bags * GROWN >= learned.bags()) {
            laplace.fit(log.variances.precisions(theta), MODE);
            double[] covariance = new double[n * n];
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    covariance[i * n + j] = learned.covariance().get(i * Learned.SIZE + j);
                }
            }
            return new Fit(log, theta, covariance, laplace, learned.bags());
        }
        return learn(log, theta, laplace, bags);
    }

    private static Fit learn(Log log, double[] start, Laplace laplace, double bags) {
        Variances variances = log.variances;
        Posterior posterior = new Posterior(variances, laplace);
        int n = start.length;
        posterior.value(start);
        double[] curvature = variances.curvature(start, laplace.slopes(), laplace.precisions());
        double[] inverse = new double[n * n];
        for (int i = 0; i < n; i++) {
            inverse[i * n + i] = 1 / curvature[i];
        }
        double[] theta = Bfgs.maximum(posterior, start, inverse, GAIN, 60);
        posterior.value(theta);
        double[] covariance = log.cells.cells() > MOST_CELLS ? inverse : posterior.toMean(theta);
        posterior.value(theta);
        return new Fit(log, theta, covariance, laplace, bags);
    }

    /** The log marginal posterior of the hyperparameters. */
    private record Posterior(Variances variances, Laplace laplace, double[] at) implements Bfgs.Function {
        Posterior(Variances variances, Laplace laplace) {
            this(variances, laplace, new double[variances.size()]);
        }

        @Override
        public double value(double[] theta) {
            return value(theta, MODE);
        }

        private double value(double[] theta, double tolerance) {
            System.arraycopy(theta, 0, at, 0, at.length);
            try {
                return laplace.fit(variances.precisions(theta), tolerance) + variances.prior(theta);
            } catch (ArithmeticException e) {
                // Too far out for the arithmetic: the search turns back.
                return Double.NEGATIVE_INFINITY;
            }
        }

        @Override
        public double[] gradient() {
            return variances.gradient(at, laplace.slopes(), laplace.precisions());
        }

        /**
         * Moves from the mode to the mean, and returns the covariance. Second and third derivatives are differences of
         * the gradient; where records say little of a deviation, belief in its logarithm has a long tail to small ones,
         * and the mode would make too much of it. With S the covariance at the mode and t_i the sum over j of
         * S_jj d3/(di dj dj), the mean is off by S t / 2 (Tierney, Kass and Kadane 1989, JASA 84, 710-716, second order;
         * third derivatives by three different hyperparameters left out).
         */
        double[] toMean(double[] theta) {
            int n = theta.length;
            double[] second = new double[n * n];
            double[] third = new double[n * n];
            value(theta);
            double[] middle = gradient();
            for (int j = 0; j < n; j++) {
                double[] moved = theta.clone();
                moved[j] = theta[j] + STEP;
                value(moved, NEAR);
                double[] up = gradient();
                moved[j] = theta[j] - STEP;
                value(moved, NEAR);
                double[] down = gradient();
                for (int i = 0; i < n; i++) {
                    second[i * n + j] = (down[i] - up[i]) / (2 * STEP);
                    third[i * n + j] = (up[i] + down[i] - 2 * middle[i]) / (STEP * STEP);
                }
            }
            double[] covariance = inverse(second, n);
            for (int i = 0; i < n; i++) {
                double shift = 0;
                for (int j = 0; j < n; j++) {
                    double t = 0;
                    for (int m = 0; m < n; m++) {
                        t += covariance[m * n + m] * third[j * n + m];
                    }
                    shift += covariance[i * n + j] * t / 2;
                }
                double most = MOST_SHIFT * Math.sqrt(covariance[i * n + i]);
                theta[i] += Math.max(-most, Math.min(most, shift));
            }
            return widened(covariance, third, n);
        }

        /** A skewed belief varies more than its mode shows: by half of the squared skewness, if it is log-gamma. */
        private static double[] widened(double[] covariance, double[] third, int n) {
            double[] scale = new double[n];
            for (int i = 0; i < n; i++) {
                double variance = covariance[i * n + i];
                double square = third[i * n + i] * third[i * n + i] * variance * variance * variance;
                scale[i] = Math.sqrt(1 + Math.min(1, square) / 2);
            }
            double[] wide = new double[n * n];
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    wide[i * n + j] = scale[i] * scale[j] * covariance[i * n + j];
                }
            }
            return wide;
        }

        private static double[] inverse(double[] second, int n) {
            for (double ridge = LEAST; ; ridge *= 2) {
                double[] factor = new double[n * n];
                for (int i = 0; i < n; i++) {
                    for (int j = 0; j < n; j++) {
                        factor[i * n + j] = (second[i * n + j] + second[j * n + i]) / 2;
                    }
                    factor[i * n + i] += ridge;
                }
                if (Dense.isPositive(factor.clone(), n)) {
                    Dense.cholesky(factor, n);
                    return Dense.inverse(factor, n, n);
                }
            }
        }

        private static final double STEP = 0.25;
        /** Added to the second derivative, so that no standard deviation exceeds 2. */
        private static final double LEAST = 0.25;
        /** Standard deviations that the mean may be away from the mode. */
        private static final double MOST_SHIFT = 0.7;
    }

    /** The same hyperparameters with more records: the modes move on from where they were. */
    Fit with(Log more) {
        if (more.variances.size() != theta.length) {
            return of(more, learned());
        }
        Precisions q = more.variances.precisions(theta);
        Laplace laplace = new Laplace(more.cells, more.bags, q, Log.MEAN, more.cells.border());
        transfer(more, laplace);
        laplace.fit(q, MOVED);
        return new Fit(more, theta, covariance, laplace, learnedFrom);
    }

    /** Starts another log's effects where this one's are. */
    private void transfer(Log more, Laplace laplace) {
        double[] from = centre.effects;
        double[] to = laplace.effects;
        Arrow old = centre.arrow;
        Arrow young = laplace.arrow;
        Map<String, Integer> columns = new HashMap<>();
        for (int j = 0; j < log.names.size(); j++) {
            columns.put(log.names.get(j), j);
        }
        for (int j = 0; j < more.names.size(); j++) {
            Integer was = columns.get(more.names.get(j));
            for (int l = 0; was != null && l < 2; l++) {
                to[young.borderAt + 2 * j + l] = from[old.borderAt + 2 * was + l];
            }
        }
        int oldNode = 0;
        for (int t = 0; t < more.cells.nodes(); t++) {
            while (oldNode + 1 < log.cells.nodes() && log.cells.times[oldNode + 1] <= more.cells.times[t]) {
                oldNode++;
            }
            System.arraycopy(from, old.nodeAt + 2 * oldNode, to, young.nodeAt + 2 * t, 2);
        }
        int oldDay = 0;
        int oldRun = 0;
        for (int d = 0; d < more.cells.days(); d++) {
            while (oldDay < log.cells.days() && log.day(oldDay).isBefore(more.day(d))) {
                oldDay++;
            }
            if (oldDay < log.cells.days() && log.day(oldDay).equals(more.day(d))) {
                System.arraycopy(from, old.dayAt + 2 * oldDay, to, young.dayAt + 2 * d, 2);
            }
        }
        for (int r = 0; r < more.cells.runs(); r++) {
            while (oldRun < log.cells.runs() && log.compareRuns(oldRun, more, r) < 0) {
                oldRun++;
            }
            if (oldRun < log.cells.runs() && log.compareRuns(oldRun, more, r) == 0) {
                System.arraycopy(from, 2 * oldRun, to, 2 * r, 2);
            }
        }
    }

    private List<Point> points() {
        Point middle = new Point(theta, centre);
        if (log.cells.cells() > MOST_CELLS) {
            return List.of(middle);
        }
        int n = theta.length;
        double[] factor = covariance.clone();
        Dense.cholesky(factor, n);
        List<Point> points = new ArrayList<>();
        for (int row = 0; row < HADAMARD; row++) {
            for (int sign = -1; sign <= 1; sign += 2) {
                double[] at = theta.clone();
                for (int i = 0; i < n; i++) {
                    for (int j = 0; j <= i; j++) {
                        at[i] += sign * factor[i * n + j] * hadamard(row, j);
                    }
                }
                Precisions q = log.variances.precisions(at);
                Laplace laplace = new Laplace(log.cells, log.bags, q, Log.MEAN, log.cells.border());
                System.arraycopy(centre.effects, 0, laplace.effects, 0, centre.effects.length);
                laplace.fit(q, 1e-4);
                points.add(new Point(at, laplace));
            }
        }
        return points;
    }

    private static final int HADAMARD = 12;

    /** First row of Plackett and Burman's design for 12 runs (1946, Biometrika 33, 305-325). */
    private static final String DESIGN = "++-+++---+-";

    /** Entry of a Hadamard matrix of order 12: the first column 1, the other rows and columns cyclic. */
    private static int hadamard(int row, int column) {
        if (column == 0) {
            return 1;
        }
        if (row == HADAMARD - 1) {
            return -1;
        }
        return DESIGN.charAt((column - 1 + row) % (HADAMARD - 1)) == '+' ? 1 : -1;
    }

    Laplace centre() {
        return centre;
    }

    Learned learned() {
        double[] values = Arrays.copyOf(theta, Learned.SIZE);
        double[] wide = new double[Learned.SIZE * Learned.SIZE];
        int n = theta.length;
        for (int i = 0; i < Learned.SIZE; i++) {
            if (i < n) {
                System.arraycopy(covariance, i * n, wide, i * Learned.SIZE, n);
            } else {
                values[i] = Math.log((i < 10 ? Log.BAGS : Log.CROSSED).mode());
                wide[i * Learned.SIZE + i] = 1;
            }
        }
        return new Learned(
                learnedFrom,
                Arrays.stream(values).boxed().toList(),
                Arrays.stream(wide).boxed().toList());
    }
}
