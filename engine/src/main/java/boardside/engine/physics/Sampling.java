package boardside.engine.physics;

import boardside.engine.linear.Cholesky;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * A belief over standardised variables as weighted points: importance sampling from a mixture of multivariate t
 * distributions that is fitted to what it finds (Cappe, Douc, Guillin, Marin and Robert 2008, "Adaptive importance sampling
 * in general mixture classes", Statistics and Computing 18, 447-459), begun at the mode, always with a part of the prior in
 * it, so that no weight runs away. Points are a Halton sequence: the same records give the same digits.
 */
final class Sampling {
    private static final int SIZE = ThrowPrior.SIZE;
    private static final int POINTS = 2500;
    private static final int MOST_ROUNDS = 6;

    /** Which variables' numbers a round mirrors, a bit each, and by how many points its parts begin later. */
    private static final int[] MIRRORS = {0, 0b1010101, 0b0110011, 0b1111111, 0b0001111, 0b1100110};

    private static final int TURN = 1100;
    private static final double ENOUGH = 0.4;
    private static final int DEGREES = 6;

    /** Points worth the name that a round's covariance is taken from. */
    private static final double ADAPTING = 150;

    private static final int[] BASES = {2, 3, 5, 7, 11, 13, 17, 19, 23};

    /** Standard t numbers of each dimension, then one normal number that nothing else uses. */
    private static final double[][] NUMBERS = numbers();

    private final ToDoubleFunction<double[]> logDensity;
    private final boolean mirrored;
    private double[] mode;
    private final double[] otherMode;
    private final double[][] otherStart;
    private double[][] points = {};
    private double[] weights = {};

    /**
     * Samples a belief.
     *
     * @param logDensity its log, but for a constant, at standardised variables
     * @param mirrored whether it is the same on both sides of 0 of the first variable
     */
    Sampling(ToDoubleFunction<double[]> logDensity, boolean mirrored) {
        this.logDensity = logDensity;
        this.mirrored = mirrored;
        // Counts that a player aiming short makes are nearly those of one aiming long: there may be a mode for each.
        double[][] modes = new double[2][];
        double[][][] starts = new double[2][][];
        double[] heights = new double[2];
        for (int i = 0; i < 2; i++) {
            mode = new double[SIZE];
            mode[ThrowPrior.X] = 0.3;
            mode[ThrowPrior.REACH] = i == 0 ? -1 : 1;
            starts[i] = Cholesky.of(Cholesky.of(climb()).inverse()).lower();
            modes[i] = mode;
            heights[i] = logDensity.applyAsDouble(mode);
        }
        int higher = heights[0] > heights[1] ? 0 : 1;
        mode = modes[higher];
        otherMode = modes[1 - higher];
        double[][] start = starts[higher];
        otherStart = starts[1 - higher];
        double[] mean = mode.clone();
        double[][] root = start;
        double[][][] rounds = new double[MOST_ROUNDS][][];
        double[][] logs = new double[MOST_ROUNDS][];
        double known = 0;
        int round = 0;
        while (round < MOST_ROUNDS && known < ENOUGH * POINTS) {
            if (round > 0) {
                root = Cholesky.of(covariance(mean)).lower();
            }
            logs[round] = draw(mean, root, start, round);
            rounds[round] = points;
            known += effective();
            round++;
        }
        pool(Arrays.copyOf(rounds, round), Arrays.copyOf(logs, round));
    }

    /**
     * All rounds together, each counted by how many points it was worth: none is thrown away, and weights are capped against
     * all of them.
     */
    private void pool(double[][][] rounds, double[][] logs) {
        double[][] all = new double[rounds.length * POINTS][];
        double[] shares = new double[all.length];
        for (int round = 0; round < rounds.length; round++) {
            double[] own = shares(logs[round]);
            double worth = effective(own);
            for (int i = 0; i < POINTS; i++) {
                all[round * POINTS + i] = rounds[round][i];
                shares[round * POINTS + i] = worth * own[i];
            }
        }
        points = all;
        weights = shares;
        normalise(weights);
        cap(weights);
    }

    private static double[][] numbers() {
        ChiSquaredDistribution chi = ChiSquaredDistribution.of(DEGREES);
        double[][] numbers = new double[POINTS][SIZE + 1];
        for (int i = 0; i < POINTS; i++) {
            double scale = Math.sqrt(DEGREES / chi.inverseCumulativeProbability(halton(i + 1, BASES[SIZE])));
            for (int k = 0; k < SIZE; k++) {
                numbers[i][k] = scale * Normal.quantile(halton(i + 1, BASES[k]));
            }
            numbers[i][SIZE] = Normal.quantile(halton(i + 1, BASES[SIZE + 1]));
        }
        return numbers;
    }

    private static double halton(int index, int base) {
        double value = 0;
        double part = 1;
        for (int i = index; i > 0; i /= base) {
            part /= base;
            value += part * (i % base);
        }
        return value;
    }

    /** The mode, standardised. */
    double[] mode() {
        return mode.clone();
    }

    /** The points, standardised. */
    double[][] points() {
        return points;
    }

    /** Their weights, summing to 1. */
    double[] weights() {
        return weights;
    }

    /** A standard normal number that goes with a point and is independent of all of it. */
    static double aside(int point) {
        return NUMBERS[point % POINTS][SIZE];
    }

    /** As many points of equal weight would know as much (Kish 1965). */
    double effective() {
        return effective(weights);
    }

    private static double effective(double[] weights) {
        double squares = 0;
        for (double weight : weights) {
            squares += weight * weight;
        }
        return 1 / squares;
    }

    // The mode: Newton's method on numeric derivatives, damped as Marquardt (1963) does.

    private double[][] climb() {
        double here = logDensity.applyAsDouble(mode);
        double[][] information = information(here);
        double damping = 0;
        for (int step = 0; step < 60; step++) {
            double[] gradient = gradient();
            Optional<Cholesky> damped = Cholesky.find(Cholesky.plusDiagonal(information, damping));
            if (damped.isEmpty()) {
                damping = Math.max(1, 4 * damping);
                continue;
            }
            double[] move = damped.get().solve(gradient);
            double longest = Arrays.stream(move).map(Math::abs).max().orElse(0);
            double length = longest > 2 ? 2 / longest : 1;
            double[] next = mode.clone();
            for (int k = 0; k < SIZE; k++) {
                next[k] += length * move[k];
            }
            double there = logDensity.applyAsDouble(next);
            if (there > here) {
                double gain = there - here;
                System.arraycopy(next, 0, mode, 0, SIZE);
                here = there;
                damping = damping > 1 ? damping / 4 : 0;
                if (gain < 1e-6) {
                    break;
                }
                information = information(here);
            } else {
                if (longest < 1e-4) {
                    break;
                }
                damping = Math.max(1, 4 * damping);
                if (damping > 1e9) {
                    break;
                }
            }
        }
        return Cholesky.positive(information(here), 0.5);
    }

    private static final double STEP = 1e-3;

    private double shifted(int i, double a, int j, double b) {
        double[] at = mode.clone();
        at[i] += a;
        at[j] += b;
        return logDensity.applyAsDouble(at);
    }

    private double[] gradient() {
        double[] gradient = new double[SIZE];
        for (int k = 0; k < SIZE; k++) {
            gradient[k] = (shifted(k, STEP, k, 0) - shifted(k, -STEP, k, 0)) / (2 * STEP);
        }
        return gradient;
    }

    private double[][] information(double here) {
        double[] ahead = new double[SIZE];
        double[] behind = new double[SIZE];
        double[][] information = new double[SIZE][SIZE];
        for (int i = 0; i < SIZE; i++) {
            ahead[i] = shifted(i, STEP, i, 0);
            behind[i] = shifted(i, -STEP, i, 0);
            information[i][i] = -(ahead[i] - 2 * here + behind[i]) / (STEP * STEP);
            for (int j = 0; j < i; j++) {
                double both = shifted(i, STEP, j, STEP)
                        - ahead[i]
                        - ahead[j]
                        + 2 * here
                        - behind[i]
                        - behind[j]
                        + shifted(i, -STEP, j, -STEP);
                information[i][j] = -both / (2 * STEP * STEP);
                information[j][i] = information[i][j];
            }
        }
        return information;
    }

    // The points.

    /** Shares of the mixture: around what was found, around either mode, and the prior. */
    private static final double[] SHARES = {0.5, 0.15, 0.15, 0.2};

    private double[] draw(double[] mean, double[][] root, double[][] start, int round) {
        double[][] centres = {mean, mode, otherMode, new double[SIZE]};
        double[][][] roots = {root, start, otherStart, Cholesky.plusDiagonal(new double[SIZE][SIZE], 1)};
        points = new double[POINTS][SIZE];
        double[] logs = new double[POINTS];
        int first = (int) Math.round(SHARES[0] * POINTS);
        int second = first + (int) Math.round(SHARES[1] * POINTS);
        int third = second + (int) Math.round(SHARES[2] * POINTS);
        for (int i = 0; i < POINTS; i++) {
            // The Halton points of a part are spread over all of them; each round mirrors other variables and begins
            // with
            // another part, so that it has points of its own.
            int turn = (i + round * TURN) % POINTS;
            int part = turn < first ? 0 : turn < second ? 1 : turn < third ? 2 : 3;
            for (int k = 0; k < SIZE; k++) {
                double value = centres[part][k];
                for (int l = 0; l <= k; l++) {
                    value += roots[part][k][l] * ((MIRRORS[round] >> l & 1) == 0 ? NUMBERS[i][l] : -NUMBERS[i][l]);
                }
                points[i][k] = value;
            }
            if (mirrored && aside(i) < 0) {
                points[i][0] = -points[i][0];
            }
            logs[i] = logDensity.applyAsDouble(points[i]) - logMixture(points[i], centres, roots);
        }
        weights = shares(logs);
        cap(weights);
        return logs;
    }

    private double logMixture(double[] at, double[][] centres, double[][][] roots) {
        double sum = 0;
        for (int part = 0; part < SHARES.length; part++) {
            sum += SHARES[part] * density(at, centres[part], roots[part], 1);
            if (mirrored) {
                sum += SHARES[part] * density(at, centres[part], roots[part], -1);
            }
        }
        return StrictMath.log(Math.max(sum, 1e-300));
    }

    /** The t density, but for a constant factor common to all. */
    private static double density(double[] at, double[] centre, double[][] root, double sign) {
        double squares = 0;
        double determinant = 1;
        double[] u = new double[SIZE];
        for (int k = 0; k < SIZE; k++) {
            double value = (k == 0 ? sign * at[0] : at[k]) - centre[k];
            for (int l = 0; l < k; l++) {
                value -= root[k][l] * u[l];
            }
            u[k] = value / root[k][k];
            squares += u[k] * u[k];
            determinant *= root[k][k];
        }
        return StrictMath.pow(1 + squares / DEGREES, -(DEGREES + SIZE) / 2.0) / determinant;
    }

    /** Weights as the logs say, summing to 1. */
    private static double[] shares(double[] logs) {
        double most = Arrays.stream(logs).max().orElse(0);
        double[] shares = new double[logs.length];
        for (int i = 0; i < logs.length; i++) {
            shares[i] = StrictMath.exp(logs[i] - most);
        }
        normalise(shares);
        return shares;
    }

    /**
     * Lets no weight be above 1 / sqrt(n) of the sum (Ionides 2008, "Truncated importance sampling", Journal of Computational
     * and Graphical Statistics 17, 295-311): a single lucky point does not stand for a whole region.
     */
    private static void cap(double[] weights) {
        double cap = 1 / Math.sqrt(weights.length);
        for (int i = 0; i < weights.length; i++) {
            weights[i] = Math.min(weights[i], cap);
        }
        normalise(weights);
    }

    private static void normalise(double[] weights) {
        double sum = 0;
        for (double weight : weights) {
            sum += weight;
        }
        for (int i = 0; i < weights.length; i++) {
            weights[i] /= sum;
        }
    }

    /**
     * Covariance of the points, those of a mirrored belief on the mode's side; their mean is written to the argument. Where
     * few points have nearly all the weight, weights are taken to a power below 1 that spreads it over enough of them, so
     * that the next round reaches farther.
     */
    private double[][] covariance(double[] mean) {
        double[] even = tempered();
        boolean fold = mirrored && Math.abs(mode[0]) > 0.05;
        Arrays.fill(mean, 0);
        for (int i = 0; i < points.length; i++) {
            for (int k = 0; k < SIZE; k++) {
                mean[k] += even[i] * folded(i, k, fold);
            }
        }
        double[][] covariance = new double[SIZE][SIZE];
        for (int i = 0; i < points.length; i++) {
            for (int k = 0; k < SIZE; k++) {
                for (int l = 0; l <= k; l++) {
                    covariance[k][l] += even[i] * (folded(i, k, fold) - mean[k]) * (folded(i, l, fold) - mean[l]);
                    covariance[l][k] = covariance[k][l];
                }
            }
        }
        return Cholesky.plusDiagonal(covariance, 1e-12);
    }

    private double[] tempered() {
        double[] even = weights;
        double power = 1;
        while (effective(even) < ADAPTING && power > 0.01) {
            power *= 0.7;
            even = new double[weights.length];
            double sum = 0;
            for (int i = 0; i < even.length; i++) {
                even[i] = weights[i] > 0 ? StrictMath.pow(weights[i], power) : 0;
                sum += even[i];
            }
            for (int i = 0; i < even.length; i++) {
                even[i] /= sum;
            }
        }
        return even;
    }

    private double folded(int i, int k, boolean fold) {
        double value = points[i][k];
        return fold && k == 0 && value * mode[0] < 0 ? -value : value;
    }
}
