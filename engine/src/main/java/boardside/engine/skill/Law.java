package boardside.engine.skill;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Belief in one number, by its distribution function.
 *
 * @param cdf chance that the number is at most the argument
 * @param mean its mean
 * @param deviation its standard deviation, above 0
 * @param most its largest value; the smallest is 0
 */
record Law(DoubleUnaryOperator cdf, double mean, double deviation, double most) {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    /** The value with this chance below it, to 1e-8 of chance. */
    double quantile(double chance) {
        double low = 0;
        double high = most;
        double atLow = -chance;
        double atHigh = 1 - chance;
        // First where a normal belief would have it, then half a deviation to the side where it lies, then regula
        // falsi;
        // the end that stays twice is given half its weight (Dowell and Jarratt 1971, BIT 11, 168-174).
        double x = mean + deviation * NORMAL.inverseCumulativeProbability(chance);
        for (int step = 0; step < 100; step++) {
            if (!(x > low && x < high)) {
                x = (low + high) / 2;
            }
            double at = cdf.applyAsDouble(x) - chance;
            if (Math.abs(at) < 1e-8 || high - low < 1e-12 * most) {
                return x;
            }
            if (at < 0) {
                low = x;
                atLow = at;
                atHigh /= step < 2 ? 1 : 2;
            } else {
                high = x;
                atHigh = at;
                atLow /= step < 2 ? 1 : 2;
            }
            x = step == 0 ? x - Math.signum(at) * deviation / 2 : high - atHigh * (high - low) / (atHigh - atLow);
        }
        return (low + high) / 2;
    }
}
