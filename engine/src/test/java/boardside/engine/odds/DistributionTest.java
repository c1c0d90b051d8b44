package boardside.engine.odds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.rules.Finish;
import java.util.Arrays;
import java.util.stream.LongStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class DistributionTest {
    static LongStream seeds() {
        return Generators.seeds(20);
    }

    /** The margins of a multinomial are binomial: bags in, against a reference library. */
    @ParameterizedTest
    @MethodSource("seeds")
    void bagsInAreBinomial(long seed) {
        BagChances bag = Generators.bag(Generators.random(seed));
        double[] finishes = bag.finishes();
        for (int in = 0; in <= 4; in++) {
            int count = in;
            double chance = Finish.values().stream()
                    .filter(finish -> finish.in() == count)
                    .mapToDouble(finish -> finishes[finish.index()])
                    .sum();
            assertThat(chance).isCloseTo(BinomialDistribution.of(4, bag.in()).probability(in), within(1e-14));
        }
    }

    /** Textbook multinomial, by hand: 4! / (2! 1! 1!) 0.5^2 0.3 0.2 = 0.18; mean n sum(x p), variance n var(x). */
    @Test
    void finishesAreMultinomial() {
        BagChances bag = new BagChances(0.5, 0.3);
        assertThat(bag.finishes()[new Finish(2, 1, 1).index()]).isCloseTo(0.18, within(1e-15));
        RoundDistribution round = RoundDistribution.of(bag);
        assertThat(bag.pointsPerRound()).isCloseTo(7.2, within(1e-14));
        assertThat(round.mean()).isCloseTo(7.2, within(1e-14));
        assertThat(round.variance()).isCloseTo(4 * (9 * 0.5 + 0.3 - 1.8 * 1.8), within(1e-13));
        // 6 is 2 in + 2 off, or 1 in + 3 on: 6 (0.25)(0.04) + 4 (0.5)(0.027).
        assertThat(round.chance(6)).isCloseTo(0.06 + 0.054, within(1e-15));
        assertThat(round.chance(11)).isZero();
        assertThat(round.chance(13)).isZero();
    }

    @Test
    void countsOfFinishesGiveTheirShares() {
        double[] counts = new double[15];
        counts[new Finish(4, 0, 0).index()] = 1;
        counts[new Finish(2, 0, 2).index()] = 2;
        counts[new Finish(1, 3, 0).index()] = 1;
        RoundDistribution round = RoundDistribution.ofFinishes(counts);
        assertThat(round.chance(12)).isEqualTo(0.25);
        assertThat(round.chance(6)).isEqualTo(0.75);
        assertThat(round.mean()).isEqualTo(7.5);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void aNetIsTheDifferenceOfTheTwo(long seed) {
        UniformRandomProvider random = Generators.random(seed);
        RoundDistribution mine = RoundDistribution.of(Generators.bag(random));
        RoundDistribution theirs = RoundDistribution.of(Generators.bag(random));
        NetDistribution net = NetDistribution.between(mine, theirs);
        assertThat(net.mean()).isCloseTo(mine.mean() - theirs.mean(), within(1e-13));
        assertThat(net.chance(0))
                .isCloseTo(
                        LongStream.rangeClosed(0, 12)
                                .mapToDouble(points -> mine.chance((int) points) * theirs.chance((int) points))
                                .sum(),
                        within(1e-15));
        assertThat(net.mirrored().chance(3)).isEqualTo(net.chance(-3));
        assertThat(net.mirrored().mirrored()).isEqualTo(net).hasSameHashCodeAs(net);
    }

    @Test
    void chancesThatAddUpButForRoundingLeaveNothingOff() {
        assertThat(new BagChances(0.7, 0.3).off()).isZero();
        assertThat(new BagChances(0.1, 0.2).off()).isCloseTo(0.7, within(1e-15));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "-0.1|0.3|the chance of in is 0 to 1, not -0.1",
                "0.3|NaN|the chance of on is 0 to 1, not NaN",
                "45|0.3|the chance of in is 0 to 1, not 45.0; write 45.0 % as 0.45",
                "0.6|0.5|the chances of in and on add up to 1.1; a bag ends only once, so they are at most 1 together"
            })
    void refusesImpossibleBags(double in, double on, String message) {
        refused(() -> new BagChances(in, on), message);
    }

    @Test
    void refusesWhatIsNoDistribution() {
        refused(() -> RoundDistribution.ghost(13), "a ghost scores 0 to 12 points a round, not 13");
        refused(
                () -> RoundDistribution.ofFinishes(new double[15]),
                "at least one round is needed to know what a round gives; there is none");
        refused(() -> RoundDistribution.ofFinishes(new double[14]), "four bags have 15 finishes, not 14");
        double[] negative = new double[15];
        negative[14] = -1;
        refused(() -> RoundDistribution.ofFinishes(negative), "the weight of 4 in, 0 on, 0 off is 0 or more, not -1.0");
        refused(() -> RoundDistribution.of(new double[12]), "a round has 13 chances, of 0 to 12 points, not 12");
        double[] half = new double[13];
        half[3] = 0.5;
        refused(() -> RoundDistribution.of(half), "the chances of a round add up to 1, not 0.5");
        double[] nan = new double[25];
        Arrays.fill(nan, Double.NaN);
        refused(
                () -> NetDistribution.of(nan),
                "the chances of a round after cancellation are 0 or more, not NaN at position 0");
        refused(
                () -> NetDistribution.of(new double[13]),
                "a round after cancellation has 25 chances, of -12 to 12 points, not 13");
    }

    private static void refused(Runnable act, String message) {
        assertThatThrownBy(act::run)
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(message);
    }
}
