package boardside.engine.skill;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.numbers.gamma.LogGamma;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.FDistribution;

/**
 * What some points on the board are, as they lie: no belief about the player, and nothing about bags without a point.
 * Terms as in the statistics of target shooting (Grubbs 1964, "Statistical Measures of Accuracy for Riflemen and Missile
 * Engineers").
 *
 * @param number points, 3 or more
 * @param meanX centre across the board, inches
 * @param meanY centre along the board, inches
 * @param varianceX divisor {@code number - 1}
 * @param varianceY divisor {@code number - 1}
 * @param covariance divisor {@code number - 1}
 * @param meanRadius mean distance to the centre, inches
 * @param medianRadius median distance to the centre, inches
 * @param maxRadius largest distance to the centre, inches
 * @param extremeSpread largest distance between two points, inches
 * @param sigma standard deviation in either direction, were both alike: root of the sum of squared distances over
 *     {@code 2 (number - 1)}
 */
public record PointGroup(
        int number,
        double meanX,
        double meanY,
        double varianceX,
        double varianceY,
        double covariance,
        double meanRadius,
        double medianRadius,
        double maxRadius,
        double extremeSpread,
        double sigma) {

    /** A point on the board, inches: x to the thrower's right of the centre line, y up from the front edge. */
    public record Point(double x, double y) {
        /**
         * Checks that both are numbers.
         *
         * @throws IllegalArgumentException for NaN and infinities
         */
        public Point {
            if (!(Double.isFinite(x) && Double.isFinite(y))) {
                throw new IllegalArgumentException("a point is two numbers in inches, not " + x + ", " + y);
            }
        }

        double distance(double otherX, double otherY) {
            return Math.hypot(x - otherX, y - otherY);
        }
    }

    /**
     * Of points, in any order.
     *
     * @throws IllegalArgumentException for fewer than 3
     */
    public static PointGroup of(List<Point> points) {
        int n = points.size();
        if (!(n >= 3)) {
            throw new IllegalArgumentException("a group is 3 points or more, not " + n);
        }
        double x = points.stream().mapToDouble(Point::x).sum() / n;
        double y = points.stream().mapToDouble(Point::y).sum() / n;
        double xx = 0;
        double yy = 0;
        double xy = 0;
        double most = 0;
        double[] radii = new double[n];
        for (int i = 0; i < n; i++) {
            Point point = points.get(i);
            xx += (point.x() - x) * (point.x() - x);
            yy += (point.y() - y) * (point.y() - y);
            xy += (point.x() - x) * (point.y() - y);
            radii[i] = point.distance(x, y);
            for (Point other : points.subList(0, i)) {
                most = Math.max(most, point.distance(other.x(), other.y()));
            }
        }
        Arrays.sort(radii);
        return new PointGroup(
                n,
                x,
                y,
                xx / (n - 1),
                yy / (n - 1),
                xy / (n - 1),
                Arrays.stream(radii).sum() / n,
                (radii[(n - 1) / 2] + radii[n / 2]) / 2,
                radii[n - 1],
                most,
                Math.sqrt((xx + yy) / (2 * (n - 1))));
    }

    /** {@link #sigma()} without its bias in small groups: times sqrt(v/2) Gamma(v/2) / Gamma((v+1)/2), v = 2 (n - 1). */
    public double sigmaUnbiased() {
        double v = 2.0 * (number - 1);
        return sigma * Math.sqrt(v / 2) * Math.exp(LogGamma.value(v / 2) - LogGamma.value((v + 1) / 2));
    }

    /** An interval for {@link #sigma()}, equal tails, by the chi-square distribution of 2 (n - 1) degrees. */
    public Interval sigmaInterval(double level) {
        ChiSquaredDistribution chi = ChiSquaredDistribution.of(2.0 * (number - 1));
        double tail = (1 - level) / 2;
        double v = 2.0 * (number - 1);
        return new Interval(
                sigma,
                sigma * Math.sqrt(v / chi.inverseSurvivalProbability(tail)),
                sigma * Math.sqrt(v / chi.inverseCumulativeProbability(tail)));
    }

    /** Variance along the long axis of the ellipse, the larger eigenvalue of the covariance matrix, square inches. */
    public double longVariance() {
        return (varianceX + varianceY) / 2 + Math.hypot((varianceX - varianceY) / 2, covariance);
    }

    /** Variance across the long axis. */
    public double shortVariance() {
        return (varianceX + varianceY) / 2 - Math.hypot((varianceX - varianceY) / 2, covariance);
    }

    /** Direction of the long axis, degrees from the x axis towards y, 0 up to 180. */
    public double axisDegrees() {
        double degrees = Math.toDegrees(Math.atan2(longVariance() - varianceX, covariance));
        return degrees < 0 ? degrees + 180 : degrees % 180;
    }

    /** Hotelling's T squared of the centre against a point: n d' S^-1 d. */
    public double hotelling(Point against) {
        double dx = meanX - against.x();
        double dy = meanY - against.y();
        double determinant = varianceX * varianceY - covariance * covariance;
        return number * (varianceY * dx * dx - 2 * covariance * dx * dy + varianceX * dy * dy) / determinant;
    }

    /** The chance of a T squared as large or larger if bags were aimed at that point: F with 2 and n - 2 degrees. */
    public double hotellingP(Point against) {
        double f = hotelling(against) * (number - 2) / (2.0 * (number - 1));
        return FDistribution.of(2, number - 2.0).survivalProbability(f);
    }
}
