package boardside.engine.odds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.LongStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class TotalTest {
    static LongStream seeds() {
        return Generators.seeds(10);
    }

    /** Without bags on the board a total is three times a binomial; a reference library's, 40 bags. */
    @ParameterizedTest
    @CsvSource({"0.1", "0.5", "0.83"})
    void withoutBagsOnItIsThreeTimesABinomial(double in) {
        Total total = Total.of(RoundDistribution.of(new BagChances(in, 0)), 10);
        BinomialDistribution binomial = BinomialDistribution.of(40, in);
        for (int bags = 0; bags <= 40; bags++) {
            assertThat(total.chance(3 * bags)).isCloseTo(binomial.probability(bags), within(1e-14));
            assertThat(total.atLeast(3 * bags)).isCloseTo(binomial.survivalProbability(bags - 1), within(1e-13));
        }
        assertThat(total.quantile(0.05)).isEqualTo(3 * binomial.inverseCumulativeProbability(0.05));
        assertThat(total.quantile(0.75)).isEqualTo(3 * binomial.inverseCumulativeProbability(0.75));
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void meanAndDeviationAreThoseOfTheChances(long seed) {
        UniformRandomProvider random = Generators.random(seed);
        BagChances bag = Generators.bag(random);
        int rounds = 1 + random.nextInt(30);
        Total total = Total.of(RoundDistribution.of(bag), rounds);
        double sum = 0;
        double mean = 0;
        double square = 0;
        for (int points = 0; points <= 12 * rounds; points++) {
            sum += total.chance(points);
            mean += points * total.chance(points);
            square += (points - total.mean()) * (points - total.mean()) * total.chance(points);
        }
        assertThat(sum).isCloseTo(1, within(1e-12));
        assertThat(total.mean()).isCloseTo(mean, within(1e-11));
        assertThat(total.standardDeviation()).isCloseTo(Math.sqrt(square), within(1e-11));
        for (double q : new double[] {0.05, 0.25, 0.5, 0.75, 0.95}) {
            int t = total.quantile(q);
            assertThat(1 - total.atLeast(t + 1)).isGreaterThanOrEqualTo(q - 1e-12);
            assertThat(1 - total.atLeast(t)).isLessThan(q);
        }
    }

    /** Common practice, no source: ten rounds make at most 120; 119 cannot be thrown, since 11 cannot. */
    @Test
    void tenRoundsEndAt120() {
        Total total = Total.of(RoundDistribution.of(new BagChances(0.6, 0.3)), 10);
        assertThat(total.most()).isEqualTo(120);
        assertThat(total.chance(119)).isZero();
        assertThat(total.chance(121)).isZero();
        assertThat(total.atLeast(120)).isCloseTo(Math.pow(0.6, 40), within(1e-22));
        assertThat(total.atLeast(-3)).isCloseTo(1, within(1e-13));
    }

    @Test
    void certainBagsHaveOneTotal() {
        Total total = Total.of(RoundDistribution.of(new BagChances(1, 0)), 10);
        assertThat(total.quantile(0.05)).isEqualTo(120);
        assertThat(total.quantile(1)).isEqualTo(120);
        assertThat(total.standardDeviation()).isZero();
        assertThat(Total.of(RoundDistribution.of(new BagChances(0, 1)), 10).quantile(1))
                .isEqualTo(40);
    }

    /** Rounds of a fair 0 or 12 are symmetric, so that half the totals lie below the middle. */
    @Test
    void aQuantileTakesASumThatJustReachesIt() {
        double[] fair = new double[13];
        fair[0] = 0.5;
        fair[12] = 0.5;
        for (int rounds = 1; rounds <= 51; rounds += 2) {
            // An odd number of rounds: P(T <= 6 (rounds - 1)) is exactly one half.
            assertThat(Total.of(RoundDistribution.of(fair), rounds).quantile(0.5))
                    .isEqualTo(6 * (rounds - 1));
        }
    }

    @Test
    void refusesWhatIsNoTotal() {
        RoundDistribution round = RoundDistribution.ghost(7);
        assertThatThrownBy(() -> Total.of(round, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("a total takes 1 to 1000 rounds, not 0");
        assertThatThrownBy(() -> Total.of(round, 3).quantile(Double.NaN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("a quantile is asked for a share above 0 and at most 1, not NaN");
    }
}
