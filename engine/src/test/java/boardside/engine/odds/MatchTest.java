package boardside.engine.odds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.entry;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.LongStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class MatchTest {
    static LongStream seeds() {
        return Generators.seeds(10);
    }

    /** Every pair of totals, one by one. */
    @ParameterizedTest
    @MethodSource("seeds")
    void aGameIsTheHigherOfTwoTotals(long seed) {
        UniformRandomProvider random = Generators.random(seed);
        RoundDistribution mine = RoundDistribution.of(Generators.bag(random));
        RoundDistribution theirs = RoundDistribution.of(Generators.bag(random));
        int rounds = 1 + random.nextInt(12);
        Match match = Match.of(mine, theirs, rounds, 3, LeaguePoints.STANDARD);
        Total me = Total.of(mine, rounds);
        Total versus = Total.of(theirs, rounds);
        double[] sums = new double[3];
        for (int i = 0; i <= 12 * rounds; i++) {
            for (int j = 0; j <= 12 * rounds; j++) {
                sums[i > j ? 0 : i == j ? 1 : 2] += me.chance(i) * versus.chance(j);
            }
        }
        assertThat(match.win()).isCloseTo(sums[0], within(1e-12));
        assertThat(match.tie()).isCloseTo(sums[1], within(1e-12));
        assertThat(match.loss()).isCloseTo(sums[2], within(1e-12));
        double mean = match.byPoints().entrySet().stream()
                .mapToDouble(entry -> entry.getKey() * entry.getValue())
                .sum();
        assertThat(match.expectedPoints()).isCloseTo(mean, within(1e-12));
        double ahead = match.ahead()
                + Match.of(theirs, mine, rounds, 3, LeaguePoints.STANDARD).ahead();
        assertThat(ahead).isCloseTo(1, within(1e-12));
    }

    /** Without ties the games won are binomial, against a reference library. */
    @Test
    void gamesWonAreBinomial() {
        Match match = new Match(5, 0.3, 0, 0.7, LeaguePoints.STANDARD);
        BinomialDistribution binomial = BinomialDistribution.of(5, 0.3);
        for (int won = 0; won <= 5; won++) {
            assertThat(chance(match, 2 * won)).isCloseTo(binomial.probability(won), within(1e-15));
        }
        assertThat(match.ahead()).isCloseTo(binomial.survivalProbability(2), within(1e-15));
    }

    private static double chance(Match match, int points) {
        return match.byPoints().getOrDefault(points, Double.NaN);
    }

    /** Textbook multinomial by hand, three games of 1/2, 1/4, 1/4: 3 points is a win, a tie, a loss, or three ties. */
    @Test
    void pointsAreMultinomial() {
        Match match = new Match(3, 0.5, 0.25, 0.25, LeaguePoints.STANDARD);
        assertThat(match.byPoints().keySet()).containsExactly(0, 1, 2, 3, 4, 5, 6);
        assertThat(chance(match, 3)).isCloseTo(6.0 / 32 + 1.0 / 64, within(1e-15));
        assertThat(match.expectedPoints()).isCloseTo(3.75, within(1e-15));
        Match threeForAWin = new Match(3, 0.5, 0.25, 0.25, new LeaguePoints(3, 1, 0));
        assertThat(threeForAWin.byPoints().keySet()).containsExactly(0, 1, 2, 3, 4, 5, 6, 7, 9);
        assertThat(threeForAWin.ahead()).isCloseTo(match.ahead(), within(1e-15));
        assertThat(new Match(3, 0.5, 0.25, 0.25, new LeaguePoints(1, 1, 1)).ahead())
                .isCloseTo(0.5, within(1e-15));
    }

    /** The same by hand for two games where a tie and a loss are worth something, too. */
    @Test
    void everyResultIsWorthItsPoints() {
        Match match = new Match(2, 0.5, 0.25, 0.25, new LeaguePoints(4, 2, 1));
        assertThat(match.byPoints())
                .containsExactly(
                        entry(2, 1.0 / 16),
                        entry(3, 1.0 / 8),
                        entry(4, 1.0 / 16),
                        entry(5, 1.0 / 4),
                        entry(6, 1.0 / 4),
                        entry(8, 1.0 / 4));
        assertThat(match.expectedPoints()).isEqualTo(5.5);
        assertThat(match.ahead()).isEqualTo(0.5 + 5.0 / 32);
        assertThat(new Match(99, 0, 1, 0, LeaguePoints.STANDARD).expectedPoints())
                .isEqualTo(99);
    }

    @Test
    void refusesWhatIsNoMatch() {
        RoundDistribution side = RoundDistribution.ghost(7);
        assertThatThrownBy(() -> Match.of(side, side, 10, 0, LeaguePoints.STANDARD))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("a match has 1 to 99 games, not 0");
        assertThatThrownBy(() -> new LeaguePoints(1, 2, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("league points are 0 to 100, a win worth no less than a tie and a tie no less than a loss,"
                        + " not 1, 2 and 0");
        assertThatThrownBy(() -> new Match(3, 0.5, 0.5, 0.5, LeaguePoints.STANDARD))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(
                        "the chances of a win, a tie and a loss are 0 or more and add up to 1, not 0.5, 0.5 and 0.5");
    }
}
