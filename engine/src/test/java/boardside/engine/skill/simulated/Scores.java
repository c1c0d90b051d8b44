package boardside.engine.skill.simulated;

import boardside.engine.skill.simulated.Seen.Of;
import boardside.engine.skill.simulated.Seen.Stated;
import java.util.List;
import java.util.Objects;
import java.util.function.Predicate;

/**
 * What was said of many players, held against the truth.
 *
 * @param seen one entry a player
 */
public record Scores(List<Seen> seen) {
    /** List copied. */
    public Scores {
        seen = List.copyOf(seen);
    }

    /**
     * A line through logits: how far what happens follows what is said. A slope of 1 and no offset is right; a slope
     * below 1 says too much, one above 1 too little.
     *
     * @param slope change of the log odds of what happens per log odds stated
     * @param error its standard error
     * @param offset log odds of what happens where a half is stated
     * @param number chances it rests on
     */
    public record Reliability(double slope, double error, double offset, int number) {}

    /** Share of ranges of points per round that held the truth. */
    public double points() {
        return share(Seen::points);
    }

    /** Share of ranges of the change over 30 days that held the truth. */
    public double change() {
        return share(Seen::change);
    }

    /** Share of ranges of the change over 90 days that held the truth. */
    public double quarter() {
        return share(Seen::quarter);
    }

    /** Share of next totals in the middle 90 % of their forecast. */
    public double total() {
        return share(Seen::total);
    }

    private double share(Predicate<Seen> held) {
        return seen.stream().filter(held).count() / (double) seen.size();
    }

    /** What was said of bags. */
    public BagScores bags() {
        return new BagScores(
                seen.stream().map(Seen::bags).filter(Objects::nonNull).toList());
    }

    /** How far stated chances of one kind can be relied on: logistic regression by Newton's method. */
    public Reliability reliability(Of of) {
        List<Stated> all = seen.stream()
                .flatMap(each -> each.stated().stream())
                .filter(each -> each.of() == of)
                .toList();
        double offset = 0;
        double slope = 1;
        double error = Double.NaN;
        for (int step = 0; step < 30; step++) {
            double g0 = 0;
            double g1 = 0;
            double h00 = 0;
            double h01 = 0;
            double h11 = 0;
            for (Stated each : all) {
                double chance = Math.min(Math.max(each.chance(), 0.001), 0.999);
                double x = Math.log(chance / (1 - chance));
                double p = 1 / (1 + Math.exp(-offset - slope * x));
                double gap = (each.happened() ? 1 : 0) - p;
                g0 += gap;
                g1 += gap * x;
                h00 += p * (1 - p);
                h01 += p * (1 - p) * x;
                h11 += p * (1 - p) * x * x;
            }
            double determinant = h00 * h11 - h01 * h01;
            // Far from the best line a full step overshoots.
            offset += Math.min(Math.max((h11 * g0 - h01 * g1) / determinant, -1), 1);
            slope += Math.min(Math.max((h00 * g1 - h01 * g0) / determinant, -1), 1);
            error = Math.sqrt(h00 / determinant);
        }
        return new Reliability(slope, error, offset, all.size());
    }
}
