package boardside.engine.league;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;

/**
 * What a player's next total will probably be, going by the totals they posted.
 *
 * <p>A player's totals lie about the player's own mean with a spread that is known; the means of a league's players lie
 * about a middle. That is the normal model with known variances (Gelman and others, Bayesian Data Analysis, third edition,
 * section 2.5): with n totals of mean y, middle m, spread s of totals and t of means, the player's mean is believed to be
 * (m / t^2 + n y / s^2) v with variance v = 1 / (1 / t^2 + n / s^2), and the next total has that mean and variance v + s^2.
 * It is cut to the totals there are: the chance of each is in proportion to the normal density there.
 *
 * @param middle where the means of players lie, in points
 * @param between standard deviation of players' means about it, above 0, in points
 * @param within standard deviation of one player's totals about their mean, above 0, in points
 */
public record TotalGuess(double middle, double between, double within) {
    /**
     * How far players of one league differ, as a share of a round's points: one and a half of the twelve (common practice,
     * no source).
     */
    public static final double BETWEEN_A_ROUND = 1.5;

    /**
     * Checks the numbers.
     *
     * @throws IllegalArgumentException if the middle is not finite or a spread not above 0
     */
    public TotalGuess {
        if (!(Math.abs(middle) < 1e6 && between > 0 && between < 1e6 && within > 0 && within < 1e6)) {
            throw new IllegalArgumentException(
                    "a middle is a number and a spread above 0, not " + middle + ", " + between + " and " + within);
        }
    }

    /**
     * Chances of the next total.
     *
     * @param posted totals so far, in any order; may be empty
     * @param most the highest total there can be, 0 or more
     * @return chances of 0 to {@code most}; they add up to 1
     */
    public List<Double> next(Collection<Integer> posted, int most) {
        double sum = posted.stream().mapToDouble(Integer::doubleValue).sum();
        double variance = 1 / (1 / (between * between) + posted.size() / (within * within));
        double mean = (middle / (between * between) + sum / (within * within)) * variance;
        double spread = Math.sqrt(variance + within * within);
        // Relative to the likeliest total, so that something remains however far off the mean may lie.
        double nearest = Math.min(Math.max(mean, 0), most);
        double top = (nearest - mean) / spread;
        List<Double> weights = new ArrayList<>();
        double all = 0;
        for (int total = 0; total <= most; total++) {
            double z = (total - mean) / spread;
            double weight = Math.exp((top * top - z * z) / 2);
            weights.add(weight);
            all += weight;
        }
        double scale = 1 / all;
        weights.replaceAll(weight -> weight * scale);
        return weights;
    }

    /** The chances of a total that has been posted: it is what it is. */
    public static List<Double> posted(int total) {
        List<Double> chances = new ArrayList<>(Collections.nCopies(total, 0.0));
        chances.add(1.0);
        return chances;
    }
}
