package boardside.engine.odds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.rules.GameRules;
import boardside.engine.rules.Side;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class HeadStartTest {
    static LongStream seeds() {
        return Generators.seeds(20);
    }

    /** No other number of points for the weaker side comes nearer to even; seen from the other side it is the same. */
    @ParameterizedTest
    @MethodSource("seeds")
    void nothingComesNearer(long seed) {
        UniformRandomProvider random = Generators.random(seed);
        RoundDistribution mine = RoundDistribution.of(Generators.bag(random));
        RoundDistribution theirs = RoundDistribution.of(Generators.bag(random));
        Race race = Race.solve(GameRules.STANDARD, mine, theirs);
        HeadStart start = HeadStart.of(race);
        boolean toMe = start.to() == Side.ME;
        for (int points = 0; points <= 20; points++) {
            double win = race.winOrHalf(toMe ? points : 0, toMe ? 0 : points, true);
            assertThat(Math.abs(start.winProbability() - 0.5)).isLessThanOrEqualTo(Math.abs(win - 0.5) + 1e-11);
        }
        HeadStart mirrored = HeadStart.of(Race.solve(GameRules.STANDARD, theirs, mine));
        assertThat(mirrored.points()).isEqualTo(start.points());
        assertThat(mirrored.winProbability()).isCloseTo(1 - start.winProbability(), within(1e-12));
        if (start.points() > 0) {
            assertThat(mirrored.to()).isNotEqualTo(start.to());
        }
    }

    @Test
    void equalSidesGetNone() {
        RoundDistribution side = RoundDistribution.of(new BagChances(0.4, 0.3));
        HeadStart start = HeadStart.of(Race.solve(GameRules.STANDARD, side, side));
        assertThat(start.points()).isZero();
        assertThat(start.to()).isEqualTo(Side.ME);
        assertThat(start.winProbability()).isCloseTo(0.5, within(1e-13));
    }

    /** The problem of points (Feller VI.8): single steps, 2 to 1 for me; a binomial tail for each head start. */
    @Test
    void agreesWithTheProblemOfPoints() {
        double[] steps = new double[25];
        steps[13] = 2.0 / 3;
        steps[11] = 1.0 / 3;
        HeadStart start = HeadStart.of(Race.solve(GameRules.STANDARD, NetDistribution.of(steps)));
        int best = 0;
        double nearest = 1;
        for (int points = 0; points <= 20; points++) {
            double win = BinomialDistribution.of(41 - points, 2.0 / 3).survivalProbability(20);
            if (Math.abs(win - 0.5) < nearest) {
                nearest = Math.abs(win - 0.5);
                best = points;
            }
        }
        assertThat(start.points()).isEqualTo(best).isBetween(9, 11);
        assertThat(start.to()).isEqualTo(Side.VERSUS);
    }

    @Test
    void aSkunkLeadIsNeverGivenAway() {
        Race race =
                Race.solve(GameRules.STANDARD.withSkunk(5), RoundDistribution.ghost(12), RoundDistribution.ghost(0));
        HeadStart start = HeadStart.of(race);
        assertThat(start.points()).isZero();
        assertThat(start.winProbability()).isEqualTo(1);
    }

    private static List<Double> heads(int coins) {
        BinomialDistribution tossed = BinomialDistribution.of(coins, 0.5);
        return IntStream.rangeClosed(0, coins).mapToObj(tossed::probability).toList();
    }

    /**
     * Totals of fair coins: heads of mine and tails of theirs together are heads of all (Vandermonde's identity), so the chance with
     * s points is that of more than m - s heads among n + m, ties half.
     *
     * @param points of two that are equally near to even, the smaller
     */
    @ParameterizedTest
    @CsvSource({
        "10,30,10,ME",
        "30,10,10,VERSUS",
        "10,31,10,ME",
        "31,10,10,VERSUS",
        "12,12,0,ME",
        "12,13,0,ME",
        "0,6,3,ME"
    })
    void agreesWithTossedCoins(int mine, int theirs, int points, Side to) {
        HeadStart start = HeadStart.inTotals(heads(mine), heads(theirs));
        assertThat(start.points()).isEqualTo(points);
        assertThat(start.to()).isEqualTo(to);
        BinomialDistribution all = BinomialDistribution.of(mine + theirs, 0.5);
        int level = theirs - (to == Side.ME ? points : -points);
        assertThat(start.winProbability())
                .isCloseTo(all.survivalProbability(level) + all.probability(level) / 2, within(1e-12));
    }

    /** Where every total of one side lies beyond every one of the other, only the points between them count. */
    @Test
    void aCertainTotalIsLevelledExactly() {
        List<Double> always7 = List.of(0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 1.0);
        assertThat(HeadStart.inTotals(List.of(0.0, 0.0, 1.0), always7)).isEqualTo(new HeadStart(5, Side.ME, 0.5));
        assertThat(HeadStart.inTotals(always7, List.of(1.0))).isEqualTo(new HeadStart(7, Side.VERSUS, 0.5));
    }
}
