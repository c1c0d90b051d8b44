package boardside.engine.tactics;

/**
 * How often something works: a 90 % credible interval, 5 % of the belief below it and 5 % above.
 *
 * @param estimate mean of the belief, 0..1
 * @param low 5 % quantile
 * @param high 95 % quantile
 */
public record Rate(double estimate, double low, double high) {
    /** Checked: {@code 0 <= low <= estimate <= high <= 1}; NaN fails. */
    public Rate {
        if (!(0 <= low && low <= estimate && estimate <= high && high <= 1)) {
            throw new IllegalArgumentException(
                    "a rate lies in its range, but " + estimate + " is not within " + low + " to " + high);
        }
    }
}
