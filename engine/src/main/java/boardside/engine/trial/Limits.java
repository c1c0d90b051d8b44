package boardside.engine.trial;

import java.util.List;
import java.util.stream.IntStream;

/**
 * The constants of the procedure, for whoever has to follow it without this package, such as a page without network.
 *
 * @param winner boundary at the last block by candidates in play, from 2 up
 * @param equal the same for counting as equal
 * @param luckWeight degrees of freedom that the luck of single bags counts for beside the residuals
 * @param usualDifference standard deviation of the belief in a difference before anything is thrown, points per round
 * @param mostPull how far that belief may pull what was measured, standard errors
 */
public record Limits(List<Double> winner, double equal, double luckWeight, double usualDifference, double mostPull) {
    /** List copied. */
    public Limits {
        winner = List.copyOf(winner);
    }

    /** The constants of a trial. */
    public static Limits of(TrialDesign design) {
        return new Limits(
                IntStream.rangeClosed(2, design.candidates())
                        .mapToObj(inPlay -> Boundaries.constant(inPlay, design.longest()))
                        .toList(),
                Boundaries.equalConstant(design.longest()),
                Look.LUCK_WEIGHT,
                Trial.USUAL_DIFFERENCE,
                Trial.MOST_PULL);
    }
}
