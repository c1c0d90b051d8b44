package boardside.engine.skill;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.engine.skill.Shares.Measure;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Do 90 % ranges hold the truth nine times in ten when days are good and bad? Each regime throws 1,000 players whose
 * shares kept and in vary from day to day on the logit scale (not the form of the prior, nor of the model), both rising
 * and falling together. Standard error of a measured 90 %: 0.95 points.
 */
class CoverageTest {
    private static final int PLAYERS = 1000;

    /** The spread of days is the standard deviation of the logits; 0.25 moves points per round by about 0.75. */
    @ParameterizedTest
    @CsvSource({
        "2026, 1, 10, 0.0",
        "2027, 3, 10, 0.15",
        "2028, 8, 15, 0.15",
        "2029, 30, 10, 0.0",
        "2030, 30, 25, 0.15",
        "2031, 30, 15, 0.25",
        "2032, 60, 25, 0.25"
    })
    void rangesHoldTheTruth(long seed, int days, int rounds, double spread) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        var normal = ZigguratSampler.NormalizedGaussian.of(random);
        int points = 0;
        int in = 0;
        int total = 0;
        for (int player = 0; player < PLAYERS; player++) {
            double logitKept = 0.9 + 0.5 * normal.sample();
            double logitIn = -0.3 + 0.5 * normal.sample();
            List<RunCount> runs = new ArrayList<>();
            for (int day = 0; day < days; day++) {
                runs.add(day(random, day, logitKept, logitIn, spread * normal.sample(), rounds));
            }
            double truth = 0;
            double truthIn = 0;
            int grid = 201;
            for (int i = 0; i < grid; i++) {
                // Averaged over good and bad days, at equally likely days.
                double z = org.apache.commons.statistics.distribution.NormalDistribution.of(0, 1)
                        .inverseCumulativeProbability((i + 0.5) / grid);
                double kept = logistic(logitKept + spread * z);
                double inGivenKept = logistic(logitIn + spread * z);
                truth += 4 * kept * (3 * inGivenKept + 1 - inGivenKept) / grid;
                truthIn += kept * inGivenKept / grid;
            }
            Belief belief = new Belief(DayToDay.byDay(runs));
            points += belief.interval(Measure.POINTS).contains(truth) ? 1 : 0;
            in += belief.interval(Measure.IN).contains(truthIn) ? 1 : 0;
            if (player % 4 == 0) {
                TotalForecast forecast = belief.total(10);
                RunCount next = day(random, 0, logitKept, logitIn, spread * normal.sample(), 10);
                // A discrete range holds at least 90 %; a coin, so to speak, decides at its ends.
                double below = forecast.atMost(next.known().points() - 1);
                double chance = forecast.chances().get(next.known().points());
                double place = below + random.nextDouble() * chance;
                total += place > 0.05 && place < 0.95 ? 4 : 0;
            }
        }
        System.out.printf(
                "coverage: %d days of %d rounds, spread %.2f: points %.3f, in %.3f, ten rounds %.3f (seed %d)%n",
                days, rounds, spread, points / 1000.0, in / 1000.0, total / 1000.0, seed);
        assertThat(points).as("points, seed " + seed).isBetween(860, 975);
        assertThat(in).as("in, seed " + seed).isBetween(860, 975);
        assertThat(total).as("ten-round total, seed " + seed).isBetween(850, 970);
    }

    private static RunCount day(
            UniformRandomProvider random, int daysAgo, double logitKept, double logitIn, double shift, int rounds) {
        double kept = logistic(logitKept + shift);
        double in = kept * logistic(logitIn + shift);
        return Practice.thrown(random, daysAgo, "b", in, kept - in, rounds);
    }

    private static double logistic(double x) {
        return 1 / (1 + Math.exp(-x));
    }
}
