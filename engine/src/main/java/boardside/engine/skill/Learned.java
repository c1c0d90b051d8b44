package boardside.engine.skill;

import java.util.List;

/**
 * What was learned of how much a player varies, to be kept and handed back: a later fit starts from it, or takes it as
 * it is while the records have hardly grown.
 *
 * @param bags bags it was learned from
 * @param values {@value #SIZE} numbers on the scale of logarithms: drift, days, runs, bags, bags with approaches
 * @param covariance how well these are known, row by row
 */
public record Learned(double bags, List<Double> values, List<Double> covariance) {
    static final int SIZE = 12;

    /**
     * Lists copied.
     *
     * @throws IllegalArgumentException if there are not 12 and 144 finite numbers
     */
    public Learned {
        values = List.copyOf(values);
        covariance = List.copyOf(covariance);
        if (!(values.size() == SIZE && covariance.size() == SIZE * SIZE)) {
            throw new IllegalArgumentException("what was learned is " + SIZE + " values and " + SIZE * SIZE
                    + " covariances, not " + values.size() + " and " + covariance.size());
        }
        if (!(Double.isFinite(bags)
                && values.stream().allMatch(Double::isFinite)
                && covariance.stream().allMatch(Double::isFinite))) {
            throw new IllegalArgumentException("what was learned is finite numbers, not " + bags + ", " + values);
        }
    }
}
