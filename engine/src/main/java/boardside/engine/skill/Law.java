package boardside.engine.skill;

import java.util.function.DoubleUnaryOperator;

/**
 * Belief in one number, by its distribution function.
 *
 * @param cdf chance that the number is at most the argument
 * @param mean its mean
 * @param deviation its standard deviation, above 0
 * @param most its largest value; the smallest is 0
 */
record Law(DoubleUnaryOperator cdf, double mean, double deviation, double most) {
    /** The value with this chance below it, to 1e-9 of the standard deviation or 100 steps. */
    double quantile(double chance) {
        double low = Math.max(0, mean - 4 * deviation);
        double high = Math.min(most, mean + 4 * deviation);
        if (cdf.applyAsDouble(low) >= chance) {
            low = 0;
        }
        if (cdf.applyAsDouble(high) <= chance) {
            high = most;
        }
        double atLow = cdf.applyAsDouble(low) - chance;
        double atHigh = cdf.applyAsDouble(high) - chance;
        // Regula falsi; the end that stays twice is given half its weight (Dowell and Jarratt 1971, BIT 11, 168-174).
        for (int step = 0; step < 100 && high - low > 1e-9 * deviation; step++) {
            double x = atHigh > atLow ? high - atHigh * (high - low) / (atHigh - atLow) : (low + high) / 2;
            if (!(x > low && x < high)) {
                x = (low + high) / 2;
            }
            double at = cdf.applyAsDouble(x) - chance;
            if (Math.abs(at) < 1e-11) {
                return x;
            }
            if (at < 0) {
                low = x;
                atLow = at;
                atHigh /= 2;
            } else {
                high = x;
                atHigh = at;
                atLow /= 2;
            }
        }
        return (low + high) / 2;
    }
}
