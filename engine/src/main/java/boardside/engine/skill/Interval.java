package boardside.engine.skill;

/**
 * A number that is not known exactly: a 90 % credible interval, 5 % of the belief below it and 5 % above.
 *
 * @param estimate the single number to name, within the range
 * @param low 5 % quantile, inclusive
 * @param high 95 % quantile, inclusive
 */
public record Interval(double estimate, double low, double high) {
    /** Belief below the lower end, and above the upper one. */
    static final double TAIL = 0.05;

    /**
     * Checks the order.
     *
     * @throws IllegalArgumentException unless low <= estimate <= high; NaN fails
     */
    public Interval {
        if (!(low <= estimate && estimate <= high)) {
            throw new IllegalArgumentException(
                    "an estimate lies in its range, but " + estimate + " is not within " + low + " to " + high);
        }
    }

    /** The mean of a belief, moved to the nearer end where a long tail has carried it out of the range. */
    static Interval of(double mean, double low, double high) {
        return new Interval(Math.min(Math.max(mean, low), high), low, high);
    }

    /** Whether a value lies in the range, ends included. */
    public boolean contains(double value) {
        return low <= value && value <= high;
    }
}
