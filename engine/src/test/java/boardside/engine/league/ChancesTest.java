package boardside.engine.league;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.odds.BagChances;
import boardside.engine.odds.LeaguePoints;
import boardside.engine.odds.Match;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.odds.Total;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ContinuousSampler;
import org.apache.commons.rng.sampling.distribution.GaussianSampler;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Chances of a game under way, and what an opponent's next total will be. */
class ChancesTest {
    private static List<Double> chances(Total total) {
        return IntStream.rangeClosed(0, total.most()).mapToObj(total::chance).toList();
    }

    private static List<Double> atLeast(Total total) {
        return IntStream.rangeClosed(0, total.most()).mapToObj(total::atLeast).toList();
    }

    private static Reach certain(Total total) {
        return new Reach(atLeast(total), atLeast(total), atLeast(total));
    }

    static LongStream seeds() {
        return LongStream.range(7_300, 7_330);
    }

    /** Before the first round it is the league match of {@code odds}, of one game. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aGameNotYetBegunIsTheMatchOfOdds(long seed) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        double in = random.nextDouble();
        RoundDistribution mine = RoundDistribution.of(new BagChances(in, (1 - in) * random.nextDouble()));
        RoundDistribution theirs = RoundDistribution.of(new BagChances(0.4, 0.6 * random.nextDouble()));
        int rounds = 1 + random.nextInt(10);
        Match match = Match.of(mine, theirs, rounds, 1, LeaguePoints.STANDARD);
        Reach.Game game = certain(Total.of(mine, rounds)).against(0, chances(Total.of(theirs, rounds)));
        assertThat(game.win().likely()).isCloseTo(match.win(), within(1e-12));
        assertThat(game.tieOrWin().likely()).isCloseTo(match.win() + match.tie(), within(1e-12));
    }

    @Test
    void againstAPostedTotalItIsTheChanceOfWhatIsStillNeeded() {
        Total left = Total.of(RoundDistribution.of(new BagChances(0.5, 0.3)), 4);
        Reach.Game game = certain(left).against(60, TotalGuess.posted(88));
        assertThat(game.win().likely()).isEqualTo(left.atLeast(29));
        assertThat(game.tieOrWin().likely()).isEqualTo(left.atLeast(28));
        assertThat(certain(left).against(89, TotalGuess.posted(88)).win().low()).isEqualTo(1);
        assertThat(certain(left).against(30, TotalGuess.posted(88)).win().high())
                .isEqualTo(0);
        assertThat(Reach.DONE.against(88, TotalGuess.posted(88)).win().likely()).isZero();
        assertThat(Reach.DONE.against(88, TotalGuess.posted(88)).tieOrWin().likely())
                .isEqualTo(1);
    }

    @Test
    void aRangeHoldsItsChance() {
        assertThatThrownBy(() -> new Reach(List.of(1.0, 0.5), List.of(1.0, 0.6), List.of(1.0, 0.7)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("1 points or more");
        assertThatThrownBy(() -> new Reach(List.of(1.0), List.of(), List.of(1.0)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** Without totals it is the league at large; with very many, their mean and one player's own spread. */
    @Test
    void theOpponentIsTheLeagueFirstAndThemselvesInTheEnd() {
        TotalGuess guess = new TotalGuess(200, 12, 9);
        assertThat(mean(guess.next(List.of(), 400))).isCloseTo(200, within(1e-6));
        assertThat(deviation(guess.next(List.of(), 400))).isCloseTo(Math.hypot(12, 9), within(1e-6));
        List<Integer> many = new ArrayList<>();
        IntStream.range(0, 10_000).forEach(i -> many.add(90));
        assertThat(mean(guess.next(many, 400))).isCloseTo(90, within(0.01));
        assertThat(deviation(guess.next(many, 400))).isCloseTo(9, within(0.01));
        assertThat(guess.next(List.of(), 120).stream().mapToDouble(p -> p).sum())
                .isCloseTo(1, within(1e-12));
        assertThat(new TotalGuess(900, 1, 1).next(List.of(), 120).get(120)).isCloseTo(1, within(1e-6));
    }

    /** Totals drawn as the model says: nine in ten next totals fall below the 90 % point of what was said of them. */
    @Test
    void whatIsSaidOfTheNextTotalComesTrueAsOftenAsSaid() {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(7_400);
        ContinuousSampler means = GaussianSampler.of(ZigguratSampler.NormalizedGaussian.of(random), 72, 14);
        ContinuousSampler errors = GaussianSampler.of(ZigguratSampler.NormalizedGaussian.of(random), 0, 9);
        TotalGuess guess = new TotalGuess(72, 14, 9);
        int leagues = 4_000;
        int below = 0;
        for (int i = 0; i < leagues; i++) {
            double mean = means.sample();
            List<Integer> posted = new ArrayList<>();
            for (int game = i % 4; game > 0; game--) {
                posted.add((int) Math.round(mean + errors.sample()));
            }
            List<Double> next = guess.next(posted, 240);
            double total = Math.rint(mean + errors.sample());
            double under = 0;
            for (int points = 0; points < total; points++) {
                under += next.get(points);
            }
            double here = next.get((int) Math.min(240, Math.max(0, total)));
            below += under + here / 2 < 0.9 ? 1 : 0;
        }
        // Three standard errors of a share of 0.9 among 4,000.
        assertThat(below / (double) leagues).isCloseTo(0.9, within(0.0143));
    }

    private static double mean(List<Double> chances) {
        return IntStream.range(0, chances.size())
                .mapToDouble(i -> i * chances.get(i))
                .sum();
    }

    private static double deviation(List<Double> chances) {
        double mean = mean(chances);
        return Math.sqrt(IntStream.range(0, chances.size())
                .mapToDouble(i -> (i - mean) * (i - mean) * chances.get(i))
                .sum());
    }
}
