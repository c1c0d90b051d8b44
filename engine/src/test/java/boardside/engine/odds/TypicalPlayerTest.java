package boardside.engine.odds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.rules.Game;
import boardside.engine.rules.GameRules;
import java.util.SplittableRandom;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TypicalPlayerTest {
    /** The definition of level, through the class that finds levels. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void hasTheLevelAskedFor(int level) {
        RoundDistribution player = RoundDistribution.of(TypicalPlayer.ofLevel(level));
        assertThat(Level.of(GameRules.STANDARD, player).value()).isCloseTo(level, within(1e-9));
    }

    @Test
    void aBetterPlayerHasMoreOfEverythingThatCounts() {
        for (int level = 1; level <= 12; level++) {
            BagChances better = TypicalPlayer.ofLevel(level);
            BagChances worse = TypicalPlayer.ofLevel(level - 1);
            assertThat(better.in()).isGreaterThan(worse.in());
            assertThat(better.off()).isLessThan(worse.off());
        }
    }

    /** Races thrown bag by bag: half are won, within what a binomial allows (two sides of 1e-4). */
    @ParameterizedTest
    @ValueSource(ints = {3, 6, 9})
    void winsHalfItsRacesAgainstThatGhost(int level) {
        SplittableRandom random = new SplittableRandom(level);
        RoundDistribution player = RoundDistribution.of(TypicalPlayer.ofLevel(level));
        int races = 4000;
        int won = 0;
        for (int race = 0; race < races; race++) {
            Game game = Game.start(GameRules.STANDARD, true);
            while (!game.over()) {
                game = game.play(player.draw(random), level);
            }
            won += game.result() == Game.Result.WON ? 1 : 0;
        }
        BinomialDistribution even = BinomialDistribution.of(races, 0.5);
        assertThat(won).isBetween(even.inverseCumulativeProbability(5e-5), even.inverseSurvivalProbability(5e-5));
    }

    /** Pearson's chi-squared test of 50,000 draws against the chances. */
    @Test
    void drawsComeAsOftenAsTheirChances() {
        RoundDistribution player = RoundDistribution.of(new BagChances(0.4, 0.35));
        SplittableRandom random = new SplittableRandom(20_260_601);
        int draws = 50_000;
        int[] counts = new int[13];
        for (int i = 0; i < draws; i++) {
            counts[player.draw(random)]++;
        }
        double chiSquared = 0;
        int kinds = 0;
        for (int points = 0; points <= 12; points++) {
            double expected = draws * player.chance(points);
            if (expected == 0) {
                assertThat(counts[points]).isZero();
                continue;
            }
            kinds++;
            chiSquared += (counts[points] - expected) * (counts[points] - expected) / expected;
        }
        assertThat(ChiSquaredDistribution.of(kinds - 1.0).survivalProbability(chiSquared))
                .isBetween(0.001, 0.999);
        assertThat(counts[11]).isZero();
    }

    @Test
    void thereIsNoSuchLevel() {
        assertThatThrownBy(() -> TypicalPlayer.ofLevel(13))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("a level is 0 to 12, not 13");
    }

    @Test
    void pointsComeBackAsTheyWereAsked() {
        for (double points = 0; points <= 12; points += 0.5) {
            assertThat(TypicalPlayer.ofPoints(points).pointsPerRound()).isCloseTo(points, within(1e-9));
        }
        assertThatThrownBy(() -> TypicalPlayer.ofPoints(12.5)).hasMessage("a round makes 0 to 12 points, not 12.5");
    }
}
