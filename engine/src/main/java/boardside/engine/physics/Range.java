package boardside.engine.physics;

import java.util.Arrays;

/**
 * A number that is not known exactly: a 90 % credible interval, 5 % of the belief below it and 5 % above.
 *
 * @param estimate the single number to name, within the range
 * @param low 5 % quantile, inclusive
 * @param high 95 % quantile, inclusive
 */
public record Range(double estimate, double low, double high) {
    /** Belief below the lower end, and above the upper one. */
    static final double TAIL = 0.05;

    /**
     * Checks the order.
     *
     * @throws IllegalArgumentException unless low <= estimate <= high; NaN fails
     */
    public Range {
        if (!(low <= estimate && estimate <= high)) {
            throw new IllegalArgumentException(
                    "an estimate lies in its range, but " + estimate + " is not within " + low + " to " + high);
        }
    }

    /** How far apart the ends are. */
    public double width() {
        return high - low;
    }

    /** Whether a value lies in the range, ends included. */
    public boolean contains(double value) {
        return low <= value && value <= high;
    }

    /**
     * The mean and the 5 % and 95 % quantiles of weighted values; a mean that a long tail has carried out of the range is
     * moved to its end.
     *
     * @param values at least one
     * @param weights of the values, 0 or more, summing to 1
     */
    public static Range of(double[] values, double[] weights) {
        Integer[] order = new Integer[values.length];
        double mean = 0;
        for (int i = 0; i < values.length; i++) {
            order[i] = i;
            mean += weights[i] * values[i];
        }
        Arrays.sort(order, (a, b) -> Double.compare(values[a], values[b]));
        double low = quantile(values, weights, order, TAIL);
        double high = quantile(values, weights, order, 1 - TAIL);
        return new Range(Math.min(Math.max(mean, low), high), low, high);
    }

    /** Where the cumulated weight, half of each value's own before it, passes a share; between values on a straight line. */
    private static double quantile(double[] values, double[] weights, Integer[] order, double share) {
        double sum = 0;
        double lastAt = 0;
        double last = values[order[0]];
        for (int i : order) {
            double at = sum + weights[i] / 2;
            if (at >= share) {
                return at > lastAt ? last + (values[i] - last) * (share - lastAt) / (at - lastAt) : values[i];
            }
            sum += weights[i];
            if (weights[i] > 0) {
                lastAt = at;
                last = values[i];
            }
        }
        return last;
    }
}
