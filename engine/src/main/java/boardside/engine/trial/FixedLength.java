package boardside.engine.trial;

import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Sample sizes of a comparison looked at once. For two proportions this is n = (z_a sqrt(2 p q) + z_b sqrt(p1 q1 + p2
 * q2))^2 / (p1 - p2)^2 with p the mean of both (Fleiss 1981, Statistical Methods for Rates and Proportions, chapter 3;
 * Casagrande, Pike and Smith 1978, Biometrics 34, 483-486).
 */
public final class FixedLength {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    private FixedLength() {}

    /**
     * Observations of each of two candidates until a difference is found with a chance.
     *
     * @param difference of the means, not 0
     * @param varianceAlike of a difference of two observations if there is no difference, above 0
     * @param varianceApart of a difference of two observations if there is that difference, above 0
     * @param critical standard errors at which a difference counts as found
     * @param power the chance, 0..1 exclusive
     */
    public static double each(
            double difference, double varianceAlike, double varianceApart, double critical, double power) {
        double reach = critical * Math.sqrt(varianceAlike) + quantile(power) * Math.sqrt(varianceApart);
        return reach * reach / (difference * difference);
    }

    /** The chance with so many observations of each; arguments as {@link #each}. */
    public static double power(
            double difference, double varianceAlike, double varianceApart, double critical, double each) {
        return NORMAL.cumulativeProbability(
                (Math.abs(difference) * Math.sqrt(each) - critical * Math.sqrt(varianceAlike))
                        / Math.sqrt(varianceApart));
    }

    /** The standard normal quantile of a chance, 0..1 exclusive. */
    public static double quantile(double chance) {
        return NORMAL.inverseCumulativeProbability(chance);
    }
}
