package boardside.engine.skill;

import boardside.engine.odds.BagChances;
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
}
