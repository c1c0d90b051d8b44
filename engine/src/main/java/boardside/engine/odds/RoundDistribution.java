package boardside.engine.odds;

import boardside.engine.rules.Finish;
import java.util.Arrays;
import java.util.random.RandomGenerator;

/** What one side makes of a round of four, before cancellation: chances of 0 to 12 points. Immutable. */
public final class RoundDistribution {
    /** Most points of a round. */
    public static final int MOST = 12;

    private final double[] chances;

    private RoundDistribution(double[] chances) {
        this.chances = chances;
    }

    /**
     * From the chances themselves.
     *
     * @param chances of 0, 1, ..., 12 points; 0 or more, adding up to 1 within 1e-9. Not modified.
     * @throws IllegalArgumentException if they do not
     */
    public static RoundDistribution of(double[] chances) {
        if (chances.length != MOST + 1) {
            throw new IllegalArgumentException("a round has 13 chances, of 0 to 12 points, not " + chances.length);
        }
        return new RoundDistribution(Chances.checked(chances, "a round"));
    }

    /** From independent bags. */
    public static RoundDistribution of(BagChances bag) {
        return ofFinishes(bag.finishes());
    }

    /**
     * From the 15 finishes: their chances, or how often each came up.
     *
     * @param weights in the order of {@link Finish#values()}; 0 or more, at least one positive. Not modified.
     * @throws IllegalArgumentException if they are not
     */
    public static RoundDistribution ofFinishes(double[] weights) {
        if (weights.length != Finish.values().size()) {
            throw new IllegalArgumentException("four bags have 15 finishes, not " + weights.length);
        }
        double sum = 0;
        double[] chances = new double[MOST + 1];
        for (Finish finish : Finish.values()) {
            double weight = weights[finish.index()];
            if (!(weight >= 0 && weight < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("the weight of " + finish.in() + " in, " + finish.on() + " on, "
                        + finish.off() + " off is 0 or more, not " + weight);
            }
            chances[finish.points()] += weight;
            sum += weight;
        }
        if (!(sum > 0 && sum < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "at least one round is needed to know what a round gives; there is none");
        }
        for (int points = 0; points <= MOST; points++) {
            chances[points] /= sum;
        }
        return new RoundDistribution(chances);
    }

    /**
     * The same points every round.
     *
     * @throws IllegalArgumentException if they lie outside 0..12
     */
    public static RoundDistribution ghost(int points) {
        if (!(points >= 0 && points <= MOST)) {
            throw new IllegalArgumentException("a ghost scores 0 to 12 points a round, not " + points);
        }
        double[] chances = new double[MOST + 1];
        chances[points] = 1;
        return new RoundDistribution(chances);
    }

    /** The points of one round by chance. */
    public int draw(RandomGenerator random) {
        double left = random.nextDouble();
        int points = 0;
        // What rounding leaves of 1 goes to the best round that can come.
        for (int next = 0; next <= MOST; next++) {
            if (chances[next] > 0) {
                points = next;
                left -= chances[next];
                if (left < 0) {
                    return points;
                }
            }
        }
        return points;
    }

    /** Chance of so many points; 0 outside 0..12. */
    public double chance(int points) {
        return points >= 0 && points <= MOST ? chances[points] : 0;
    }

    /** Mean points of a round, 0..12. */
    public double mean() {
        double mean = 0;
        for (int points = 1; points <= MOST; points++) {
            mean += points * chances[points];
        }
        return mean;
    }

    /** Variance of the points of a round. */
    public double variance() {
        double mean = mean();
        double variance = 0;
        for (int points = 0; points <= MOST; points++) {
            variance += (points - mean) * (points - mean) * chances[points];
        }
        return variance;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof RoundDistribution that && Arrays.equals(chances, that.chances);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(chances);
    }

    @Override
    public String toString() {
        return "RoundDistribution" + Arrays.toString(chances);
    }
}
