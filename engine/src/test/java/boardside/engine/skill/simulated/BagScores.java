package boardside.engine.skill.simulated;

import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * What was said of many players' bags, held against the truth.
 *
 * @param seen one entry a player
 */
public record BagScores(List<Seen.Bags> seen) {
    /** List copied. */
    public BagScores {
        seen = List.copyOf(seen);
    }

    /** Share of ranges of the difference of two bags that held the truth. */
    public double difference() {
        return mean(bags -> bags.difference() ? 1 : 0);
    }

    /** Share of comparisons of bags called a signal. */
    public double signals() {
        return mean(bags -> bags.signal() ? 1 : 0);
    }

    /** Mean error of the adjusted difference of two bags, in points per round. */
    public double adjustedBias() {
        return mean(Seen.Bags::adjusted);
    }

    /** Mean error of the difference of plain averages. */
    public double rawBias() {
        return mean(Seen.Bags::raw);
    }

    /** Root of the mean squared error of the adjusted difference. */
    public double adjustedError() {
        return Math.sqrt(mean(bags -> bags.adjusted() * bags.adjusted()));
    }

    /** Root of the mean squared error of the difference of plain averages. */
    public double rawError() {
        return Math.sqrt(mean(bags -> bags.raw() * bags.raw()));
    }

    private double mean(ToDoubleFunction<Seen.Bags> value) {
        return seen.stream()
                .mapToDouble(value)
                .filter(Double::isFinite)
                .average()
                .orElse(Double.NaN);
    }
}
