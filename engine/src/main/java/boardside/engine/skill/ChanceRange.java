package boardside.engine.skill;

import boardside.engine.odds.BagChances;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * One bag's chances as far as records tell, for questions whose answer follows the points a round: winning a race,
 * level, reaching a total. At equal points such an answer hardly depends on how they came about, so its range is read at
 * the chances that most likely make the ends of the range of points.
 *
 * @param likely the chances to name
 * @param low those that make the lower end of the 90 % range of points per round
 * @param high those that make its upper end
 */
public record ChanceRange(BagChances likely, BagChances low, BagChances high) {
    /** Steps on either side of the likeliest chances. */
    private static final int STEPS = 4;

    /**
     * The range of an answer.
     *
     * @param answer rises, or falls, with points per round
     */
    public Interval of(ToDoubleFunction<BagChances> answer) {
        double atLow = answer.applyAsDouble(low);
        double atHigh = answer.applyAsDouble(high);
        return Interval.of(answer.applyAsDouble(likely), Math.min(atLow, atHigh), Math.max(atLow, atHigh));
    }

    /**
     * The likeliest chances first, then those on straight lines from them to either end, the ends included. For answers
     * that may turn within the range, such as the chance of a tie: the least and the greatest of them are its range.
     */
    public List<BagChances> steps() {
        List<BagChances> steps = new ArrayList<>(List.of(likely));
        for (BagChances end : List.of(low, high)) {
            for (int step = 1; step < STEPS; step++) {
                double share = (double) step / STEPS;
                steps.add(new BagChances(
                        likely.in() + share * (end.in() - likely.in()),
                        likely.on() + share * (end.on() - likely.on())));
            }
            steps.add(end);
        }
        return steps;
    }
}
