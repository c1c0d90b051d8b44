package boardside.engine.league;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;

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
        Belief belief = belief(posted);
        return chances(belief.mean(), Math.sqrt(belief.variance() + within * within), most);
    }

    /**
     * Chances of each next total for equally likely means of the player: what several totals to come have in common, which
     * {@link #next} has not. The means are the quantiles of what is believed of it at (i - 1/2) / n.
     *
     * @param posted totals so far, in any order; may be empty
     * @param most the highest total there can be, 0 or more
     * @param n how many means, 1 or more
     * @return for each mean, from the least on, chances of 0 to {@code most}; they add up to 1
     */
    public List<List<Double>> given(Collection<Integer> posted, int most, int n) {
        Belief belief = belief(posted);
        NormalDistribution means = NormalDistribution.of(belief.mean(), Math.sqrt(belief.variance()));
        List<List<Double>> all = new ArrayList<>();
        for (int i = 1; i <= n; i++) {
            all.add(chances(means.inverseCumulativeProbability((i - 0.5) / n), within, most));
        }
        return all;
    }

    /** What is believed of a player's mean: normal. */
    private record Belief(double mean, double variance) {}

    private Belief belief(Collection<Integer> posted) {
        double sum = posted.stream().mapToDouble(Integer::doubleValue).sum();
        double variance = 1 / (1 / (between * between) + posted.size() / (within * within));
        return new Belief((middle / (between * between) + sum / (within * within)) * variance, variance);
    }

    /** The normal density at each total, made to add up to 1. */
    private static List<Double> chances(double mean, double spread, int most) {
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
