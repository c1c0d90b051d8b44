package boardside.engine.skill;

import java.util.Arrays;

/**
 * The hyperparameters: logarithms of the effects' standard deviations, and Fisher's z of the correlation between the two
 * predictors' run effects and day effects. In one vector, in the order drift (per square root of a day), days, runs,
 * kinds of random covariates; each with one entry per predictor, and days and runs with z after them where there are two
 * predictors.
 *
 * <p>Their priors are weak: a standard deviation s has the density proportional to {@code s^(shape - 1) exp(-rate s)},
 * z is normal. On the scale of log s such a prior has a mode, and so keeps the fit off the boundary where data say nothing
 * (Chung, Rabe-Hesketh, Dorie, Gelman and Liu 2013, Psychometrika 78, 685-709).
 */
final class Variances {
    /** Priors of the standard deviations of one kind of effect. */
    record Prior(double shape, double rate) {
        /** The prior's mode on the scale of log s. */
        double mode() {
            return shape / rate;
        }
    }

    /** Priors by kind of effect; null where the kind is absent. */
    private final Prior[] priors;

    private final double zMean;
    private final double zDeviation;
    private final Cells cells;
    private final int k;
    private final boolean hasChain;
    private final boolean hasDays;
    private final boolean hasRuns;
    private final int kinds;
    /** Per covariate: which kind it is of, or -1 for a fixed effect. */
    private final int[] kind;
    /** Per covariate: prior precision of a fixed effect. */
    private final double[] fixed;
    /** Prior precision of the level at the first node. */
    private final double first;
    /** Persistence of the level per day; 1 is a random walk. */
    private final double stay;

    /** First entries of days, runs and kinds. */
    private final int days;

    private final int runs;
    private final int covariates;
    private final int size;

    /**
     * What varies.
     *
     * @param kind per covariate, its kind (0, 1, ...) or -1 for a fixed effect
     * @param fixed per covariate, the prior precision of a fixed effect (0: flat)
     * @param first prior precision of the first level
     * @param stay persistence of the level per day, 1 for a random walk
     * @param priors of drift, days, runs and each kind; empty for maximum likelihood
     * @param z mean and standard deviation of the prior of Fisher's z
     */
    Variances(
            Cells cells,
            boolean hasChain,
            boolean hasDays,
            boolean hasRuns,
            int[] kind,
            double[] fixed,
            double first,
            double stay,
            Prior[] priors,
            double[] z) {
        this.cells = cells;
        this.hasChain = hasChain;
        this.hasDays = hasDays;
        this.hasRuns = hasRuns;
        this.kind = kind;
        this.fixed = fixed;
        this.first = first;
        this.stay = stay;
        this.priors = priors;
        k = cells.predictors;
        zMean = z.length == 0 ? 0 : z[0];
        zDeviation = z.length == 0 ? Double.POSITIVE_INFINITY : z[1];
        kinds = Arrays.stream(kind).max().orElse(-1) + 1;
        days = hasChain ? k : 0;
        runs = days + (hasDays ? block() : 0);
        covariates = runs + (hasRuns ? block() : 0);
        size = covariates + kinds * k;
    }

    private int block() {
        return k == 2 ? 3 : 1;
    }

    int size() {
        return size;
    }

    /** First entry of the kinds of covariates. */
    int kindsAt() {
        return covariates;
    }

    int daysAt() {
        return days;
    }

    int runsAt() {
        return runs;
    }

    private boolean isZ(int i) {
        return k == 2 && (hasDays && i == days + 2 || hasRuns && i == runs + 2);
    }

    private int group(int i) {
        if (i < days) {
            return 0;
        }
        return i < runs ? 1 : i < covariates ? 2 : 3 + (i - covariates) / k;
    }

    /** Where to start without anything learned: the priors' modes, or a quarter each. */
    double[] start() {
        double[] theta = new double[size];
        for (int i = 0; i < size; i++) {
            theta[i] = isZ(i) ? zMean : Math.log(priors.length == 0 ? 0.25 : priors[group(i)].mode());
        }
        return theta;
    }

    /** Log density of the priors, without constants. */
    double prior(double[] theta) {
        double sum = 0;
        for (int i = 0; i < size; i++) {
            if (isZ(i)) {
                double z = (theta[i] - zMean) / zDeviation;
                sum -= z * z / 2;
            } else if (priors.length > 0) {
                Prior prior = priors[group(i)];
                sum += prior.shape * theta[i] - prior.rate * Math.exp(theta[i]);
            }
        }
        return sum;
    }

    Precisions precisions(double[] theta) {
        double[] step = new double[hasChain ? 2 * (cells.nodes() - 1) : 0];
        double[] stays = new double[step.length];
        double[] start = null;
        if (hasChain) {
            start = new double[] {first, k == 2 ? first : 1};
            for (int t = 0; t < cells.nodes() - 1; t++) {
                double gap = cells.times[t + 1] - cells.times[t];
                for (int l = 0; l < 2; l++) {
                    stays[2 * t + l] = stay == 1 ? 1 : Math.pow(stay, gap);
                    step[2 * t + l] = l < k ? Math.exp(-2 * theta[l]) / days(gap) : 1;
                }
            }
        }
        double[] border = new double[cells.border()];
        for (int j = 0; j < cells.covariates; j++) {
            for (int l = 0; l < k; l++) {
                border[k * j + l] = kind[j] < 0 ? fixed[j] : Math.exp(-2 * theta[covariates + k * kind[j] + l]);
            }
        }
        return new Precisions(
                hasRuns ? block(theta, runs) : null, hasDays ? block(theta, days) : null, start, step, stays, border);
    }

    /** Days of drift that a gap stands for: fewer where the level does not stay. */
    private double days(double gap) {
        return stay == 1 ? gap : (1 - Math.pow(stay, 2 * gap)) / (1 - stay * stay);
    }

    /** Precision of a pair of effects. */
    private double[] block(double[] theta, int at) {
        double s0 = Math.exp(theta[at]);
        if (k == 1) {
            return new double[] {1 / (s0 * s0), 0, 1};
        }
        double s1 = Math.exp(theta[at + 1]);
        double r = Math.tanh(theta[at + 2]);
        double rest = 1 - r * r;
        return new double[] {1 / (s0 * s0 * rest), -r / (s0 * s1 * rest), 1 / (s1 * s1 * rest)};
    }

    /** Derivative of the log marginal likelihood and the priors by theta. */
    double[] gradient(double[] theta, Laplace.Slopes slopes, Precisions q) {
        double[] gradient = new double[size];
        if (hasChain) {
            for (int i = 0; i < slopes.step().length; i++) {
                if (i % 2 < k) {
                    // log precision falls by 2 for each unit of log s.
                    gradient[i % 2] += q.step()[i] * slopes.step()[i] - 1;
                }
            }
        }
        if (hasDays) {
            block(theta, days, slopes.day(), cells.days(), gradient);
        }
        if (hasRuns) {
            block(theta, runs, slopes.run(), cells.runs(), gradient);
        }
        for (int j = 0; j < cells.covariates; j++) {
            for (int l = 0; l < k && kind[j] >= 0; l++) {
                int i = k * j + l;
                gradient[covariates + k * kind[j] + l] += q.border()[i] * slopes.border()[i] - 1;
            }
        }
        for (int i = 0; i < size; i++) {
            if (isZ(i)) {
                gradient[i] -= (theta[i] - zMean) / (zDeviation * zDeviation);
            } else if (priors.length > 0) {
                Prior prior = priors[group(i)];
                gradient[i] += prior.shape - prior.rate * Math.exp(theta[i]);
            }
        }
        return gradient;
    }

    private void block(double[] theta, int at, double[] t, int count, double[] gradient) {
        double s0 = Math.exp(theta[at]);
        if (k == 1) {
            gradient[at] += t[0] / (s0 * s0) - count;
            return;
        }
        double s1 = Math.exp(theta[at + 1]);
        double r = Math.tanh(theta[at + 2]);
        double rest = 1 - r * r;
        double a = t[0] / (s0 * s0);
        double b = t[1] / (s0 * s1);
        double c = t[2] / (s1 * s1);
        gradient[at] += (a - r * b) / rest - count;
        gradient[at + 1] += (c - r * b) / rest - count;
        // By r: precision's trace (a - 2 r b + c) / rest, log determinant - log rest; dr/dz = rest.
        gradient[at + 2] += (b * (1 + r * r) - r * (a + c)) / rest + count * r;
    }

    /**
     * A first guess of the negative second derivative by theta, diagonal: each group says {@code 2 (1 - v)^2} of its log
     * s, v being its posterior variance over its prior's.
     */
    double[] curvature(double[] theta, Laplace.Slopes slopes, Precisions q) {
        double[] curvature = new double[size];
        Covariances v = slopes.covariances();
        for (int i = 0; i < v.step.length; i++) {
            if (i % 2 < k) {
                curvature[i % 2] += information(v.step[i] * q.step()[i]);
            }
        }
        if (hasDays) {
            curvature(theta, days, v.days, cells.days(), curvature);
        }
        if (hasRuns) {
            curvature(theta, runs, v.runs, cells.runs(), curvature);
        }
        for (int j = 0; j < cells.covariates; j++) {
            for (int l = 0; l < k && kind[j] >= 0; l++) {
                int i = k * j + l;
                curvature[covariates + k * kind[j] + l] +=
                        information(v.border[i * cells.border() + i] * q.border()[i]);
            }
        }
        for (int i = 0; i < size; i++) {
            if (isZ(i)) {
                curvature[i] += 1 / (zDeviation * zDeviation);
            } else if (priors.length > 0) {
                curvature[i] += priors[group(i)].rate * Math.exp(theta[i]);
            }
            curvature[i] = Math.max(curvature[i], 0.5);
        }
        return curvature;
    }

    private static double information(double share) {
        double left = Math.max(0, 1 - share);
        return 2 * left * left;
    }

    private void curvature(double[] theta, int at, double[] v, int count, double[] curvature) {
        for (int l = 0; l < k; l++) {
            double variance = Math.exp(2 * theta[at + l]);
            curvature[at + l] += count * information(v[2 * l] / count / variance);
        }
        if (k == 2) {
            curvature[at + 2] += Math.sqrt(curvature[at] * curvature[at + 1]) / 2;
        }
    }
}
