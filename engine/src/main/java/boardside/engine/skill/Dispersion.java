package boardside.engine.skill;

import boardside.engine.linear.Cholesky;
import boardside.engine.skill.Marks.Flight;
import boardside.engine.skill.Marks.Place;
import boardside.engine.skill.PointGroup.Point;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Where a player's bags go and how far they scatter, from taps and misses, with 90 % ranges.
 *
 * <p>Across and along the board a bag's place is normal, one independent of the other. A bag with a point adds its density;
 * every other bag the chance of what is known of it ({@link Marks.Place}): a bag that went in would have stopped somewhere
 * from the hole's lower edge on, one that missed to the left lies beyond the left edge. So bags without a point bias
 * nothing. Weak priors: the centre within some 15 inches of the hole across and 24 along, spreads of about 5 inches, a
 * factor of 2.7 either way (common practice, no source). The posterior is summed over a fixed set of points of a
 * multivariate t distribution around its mode, each weighted by how much likelier it is (importance sampling; Geweke 1989,
 * Econometrica 57, 1317-1339), so the same marks give the same digits.
 *
 * @param bags bags it rests on
 * @param points of these, with a point
 * @param x centre across, inches to the thrower's right of the hole
 * @param y centre along, inches up the board from the hole's centre
 * @param spreadX standard deviation across, inches
 * @param spreadY standard deviation along, inches
 * @param probabilityRight the chance that the centre lies right of the hole
 * @param probabilityLong the chance that it lies beyond the hole's centre
 * @param half radius of the circle around the centre that holds half of the bags, inches
 * @param hole chance of an airmail in the hole; empty for slides, whose chance the counts tell better
 */
public record Dispersion(
        int bags,
        int points,
        Interval x,
        Interval y,
        Interval spreadX,
        Interval spreadY,
        double probabilityRight,
        double probabilityLong,
        double half,
        Optional<Interval> hole) {
    /** Fewer points than this say nothing of a spread. */
    public static final int LEAST_POINTS = 5;

    private static final int DRAWS = 2000;
    private static final int DEGREES = 6;
    /** Standard t numbers, evenly spread: a Halton sequence through the inverse distribution functions. */
    private static final double[][] T = draws();

    /** Empty with fewer than {@value #LEAST_POINTS} points. */
    public static Optional<Dispersion> of(Marks marks) {
        if (marks.points().size() < LEAST_POINTS) {
            return Optional.empty();
        }
        return Optional.of(new Posterior(marks).summary());
    }

    /** How sure it is to which side of the hole the centre lies. */
    public Verdict across() {
        return verdict(probabilityRight);
    }

    /** How sure it is whether the centre lies short of the hole's centre or beyond. */
    public Verdict along() {
        return verdict(probabilityLong);
    }

    private static Verdict verdict(double chance) {
        double sign = Math.max(chance, 1 - chance);
        return sign >= 0.975 ? Verdict.SIGNAL : sign >= 0.85 ? Verdict.LEANING : Verdict.OPEN;
    }

    private static double[][] draws() {
        int[] bases = {2, 3, 5, 7, 11};
        NormalDistribution normal = NormalDistribution.of(0, 1);
        ChiSquaredDistribution chi = ChiSquaredDistribution.of(DEGREES);
        double[][] draws = new double[DRAWS][4];
        for (int i = 0; i < DRAWS; i++) {
            double scale = Math.sqrt(DEGREES / chi.inverseCumulativeProbability(halton(i + 1, bases[4])));
            for (int k = 0; k < 4; k++) {
                draws[i][k] = scale * normal.inverseCumulativeProbability(halton(i + 1, bases[k]));
            }
        }
        return draws;
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

    /** Belief in (mean x, log deviation x, mean y, log deviation y), x and y from the hole. */
    private static final class Posterior {
        private static final double[] PRIOR_MEAN = {0, Math.log(5), 0, Math.log(5)};
        private static final double[] PRIOR_DEVIATION = {15, 1, 24, 1};

        private final Marks marks;
        private final double[] sums = new double[4];
        private final double[] mode;
        /** Lower triangle L, L L' the covariance at the mode. */
        private final double[][] root;

        private final double[][] values = new double[DRAWS][];
        private final double[] weights = new double[DRAWS];

        Posterior(Marks marks) {
            this.marks = marks;
            for (Point point : marks.points()) {
                double y = point.y() - Marks.HOLE_Y;
                sums[0] += point.x();
                sums[1] += point.x() * point.x();
                sums[2] += y;
                sums[3] += y * y;
            }
            mode = start();
            root = Cholesky.of(Cholesky.of(climb()).inverse()).lower();
            weigh();
        }

        private double[] start() {
            int n = marks.points().size();
            double x = sums[0] / n;
            double y = sums[2] / n;
            return new double[] {
                x,
                Math.log(Math.sqrt(Math.max(sums[1] / n - x * x, 0)) + 0.5),
                y,
                Math.log(Math.sqrt(Math.max(sums[3] / n - y * y, 0)) + 0.5)
            };
        }

        private static BivariateNormal law(double[] at) {
            return new BivariateNormal(at[0], deviation(at[1]), Marks.HOLE_Y + at[2], deviation(at[3]));
        }

        /** Kept to what a double can hold, far beyond what any board can show. */
        private static double deviation(double log) {
            return Math.exp(Math.min(Math.max(log, -30), 30));
        }

        private double logDensity(double[] at) {
            double sum = 0;
            for (int k = 0; k < 4; k++) {
                double z = (at[k] - PRIOR_MEAN[k]) / PRIOR_DEVIATION[k];
                sum -= z * z / 2;
            }
            int n = marks.points().size();
            for (int k = 0; k < 4; k += 2) {
                double squares = sums[k + 1] - 2 * at[k] * sums[k] + n * at[k] * at[k];
                sum -= n * at[k + 1] + squares / 2 * Math.exp(-2 * at[k + 1]);
            }
            BivariateNormal law = law(at);
            for (Place place : Place.values()) {
                int count = marks.count(place);
                if (count > 0) {
                    sum += count * Math.log(Math.max(marks.chance(place, law), 1e-300));
                }
            }
            return sum;
        }

        /** Newton's method with numeric derivatives, halving steps that do not climb; returns the information. */
        private double[][] climb() {
            double[][] information = Cholesky.positive(information(), 1e-3);
            for (int step = 0; step < 60; step++) {
                double[] move = Cholesky.of(information).solve(gradient());
                double here = logDensity(mode);
                double length = 1;
                double[] next = moved(move, length);
                while (!(logDensity(next) > here) && length > 1e-6) {
                    length /= 2;
                    next = moved(move, length);
                }
                double gain = logDensity(next) - here;
                if (!(gain > 1e-10)) {
                    break;
                }
                System.arraycopy(next, 0, mode, 0, 4);
                information = Cholesky.positive(information(), 1e-3);
            }
            return information;
        }

        private double[] moved(double[] move, double length) {
            double[] next = mode.clone();
            for (int k = 0; k < 4; k++) {
                next[k] += length * move[k];
            }
            return next;
        }

        private double step(int k) {
            return k % 2 == 0 ? 1e-3 * Math.exp(mode[k + 1]) : 1e-3;
        }

        private double shifted(int i, double a, int j, double b) {
            double[] at = mode.clone();
            at[i] += a;
            at[j] += b;
            return logDensity(at);
        }

        private double[] gradient() {
            double[] gradient = new double[4];
            for (int k = 0; k < 4; k++) {
                double h = step(k);
                gradient[k] = (shifted(k, h, k, 0) - shifted(k, -h, k, 0)) / (2 * h);
            }
            return gradient;
        }

        private double[][] information() {
            double[][] information = new double[4][4];
            double here = logDensity(mode);
            for (int i = 0; i < 4; i++) {
                double h = step(i);
                information[i][i] = -(shifted(i, h, i, 0) - 2 * here + shifted(i, -h, i, 0)) / (h * h);
                for (int j = 0; j < i; j++) {
                    double g = step(j);
                    information[i][j] =
                            -(shifted(i, h, j, g) - shifted(i, h, j, -g) - shifted(i, -h, j, g) + shifted(i, -h, j, -g))
                                    / (4 * h * g);
                    information[j][i] = information[i][j];
                }
            }
            return information;
        }

        private void weigh() {
            double[] logs = new double[DRAWS];
            for (int i = 0; i < DRAWS; i++) {
                double[] at = mode.clone();
                double squares = 0;
                for (int k = 0; k < 4; k++) {
                    squares += T[i][k] * T[i][k];
                    for (int l = 0; l <= k; l++) {
                        at[k] += root[k][l] * T[i][l];
                    }
                }
                values[i] = at;
                logs[i] = logDensity(at) + (DEGREES + 4) / 2.0 * Math.log1p(squares / DEGREES);
            }
            double most = Arrays.stream(logs).max().orElseThrow();
            double sum = 0;
            for (int i = 0; i < DRAWS; i++) {
                weights[i] = Math.exp(logs[i] - most);
                sum += weights[i];
            }
            for (int i = 0; i < DRAWS; i++) {
                weights[i] /= sum;
            }
        }

        private Interval interval(ToDoubleFunction<double[]> of) {
            double[][] sorted = new double[DRAWS][];
            double mean = 0;
            for (int i = 0; i < DRAWS; i++) {
                double value = of.applyAsDouble(values[i]);
                sorted[i] = new double[] {value, weights[i]};
                mean += weights[i] * value;
            }
            Arrays.sort(sorted, (a, b) -> Double.compare(a[0], b[0]));
            return Interval.of(mean, quantile(sorted, Interval.TAIL), quantile(sorted, 1 - Interval.TAIL));
        }

        private static double quantile(double[][] sorted, double share) {
            double sum = 0;
            for (double[] each : sorted) {
                sum += each[1];
                if (sum >= share) {
                    return each[0];
                }
            }
            return sorted[sorted.length - 1][0];
        }

        private double chance(ToDoubleFunction<double[]> above) {
            double sum = 0;
            for (int i = 0; i < DRAWS; i++) {
                sum += above.applyAsDouble(values[i]) > 0 ? weights[i] : 0;
            }
            return Math.min(1, sum);
        }

        Dispersion summary() {
            Interval x = interval(at -> at[0]);
            Interval y = interval(at -> at[2]);
            Interval spreadX = interval(at -> Math.exp(at[1]));
            Interval spreadY = interval(at -> Math.exp(at[3]));
            double right = chance(at -> at[0]);
            double past = chance(at -> at[2]);
            Optional<Interval> hole = marks.flight() == Flight.AIRMAIL
                    ? Optional.of(interval(at -> marks.hole(law(at))))
                    : Optional.empty();
            return new Dispersion(
                    marks.bags(),
                    marks.points().size(),
                    x,
                    y,
                    spreadX,
                    spreadY,
                    right,
                    past,
                    new BivariateNormal(0, spreadX.estimate(), 0, spreadY.estimate()).radius(0.5),
                    hole);
        }
    }
}
