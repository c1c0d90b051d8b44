package boardside.engine.skill;

import java.util.List;

/**
 * What a total of several rounds of four will probably be: the predictive distribution, in which luck, good and bad
 * days, and what is not known of the player all have their part.
 *
 * @param rounds rounds of four, 1 or more
 * @param chances chance of each total from 0 to 12 times the rounds; they add up to 1
 */
public record TotalForecast(int rounds, List<Double> chances) {
    /** List copied. */
    public TotalForecast {
        chances = List.copyOf(chances);
    }

    /** Mean total, 0 to 12 times the rounds. */
    public double mean() {
        double mean = 0;
        for (int t = 0; t < chances.size(); t++) {
            mean += t * chances.get(t);
        }
        return mean;
    }

    /** Standard deviation of the total, in points. */
    public double standardDeviation() {
        double mean = mean();
        double variance = 0;
        for (int t = 0; t < chances.size(); t++) {
            variance += (t - mean) * (t - mean) * chances.get(t);
        }
        return Math.sqrt(variance);
    }

    /** The smallest total t with P(T <= t) >= q, q in 0..1. */
    public int quantile(double q) {
        double sum = 0;
        for (int t = 0; t < chances.size(); t++) {
            sum += chances.get(t);
            if (sum >= q) {
                return t;
            }
        }
        return chances.size() - 1;
    }

    /** The chance of that many points or more. */
    public double atLeast(int points) {
        double sum = 0;
        for (int t = Math.max(0, points); t < chances.size(); t++) {
            sum += chances.get(t);
        }
        return Math.min(1, sum);
    }

    /** The chance of that many points or fewer. */
    public double atMost(int points) {
        return Math.max(0, 1 - atLeast(points + 1));
    }
}
