package boardside.engine.odds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.rules.Finish;
import boardside.engine.rules.Game;
import boardside.engine.rules.Game.Result;
import boardside.engine.rules.GameRules;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import org.apache.commons.rng.UniformRandomProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PrecisionTest {
    private static final int REPEATS = 2000;
    private static final int GAMES = 8;

    /** Bag by bag: a settled climber's mean rung, and as many bags thrown as a total, against the exact errors. */
    @ParameterizedTest
    @CsvSource({"0.5,0.3", "0.3,0.4"})
    void agreesWithASimulationBagByBag(double in, double on) {
        UniformRandomProvider random = Generators.random(91);
        BagChances me = new BagChances(in, on);
        Precision exact = Precision.of(GameRules.STANDARD, me, GAMES);
        double kept = on / (1 - in);
        int rounds = (int) Math.round(GAMES * exact.roundsPerGame());
        double ladder = 0;
        double totals = 0;
        long thrown = 0;
        int rung = (int) Math.round(exact.level());
        for (int repeat = 0; repeat < REPEATS; repeat++) {
            double sum = 0;
            // Games between two estimates settle the climber again.
            for (int game = -GAMES; game < GAMES; game++) {
                sum += game >= 0 ? rung : 0;
                Game race = Game.start(GameRules.STANDARD, true);
                while (!race.over()) {
                    race = race.play(round(me, random), rung);
                }
                thrown += game >= 0 ? race.rounds() : 0;
                rung = race.result() == Result.WON ? Math.min(rung + 1, 12) : Math.max(rung - 1, 0);
            }
            ladder += Math.pow(sum / GAMES - exact.level(), 2);
            int total = 0;
            for (int i = 0; i < rounds; i++) {
                total += round(me, random);
            }
            double readIn = ((double) total / rounds / 4 - kept) / (3 - kept);
            BagChances read = new BagChances(readIn, kept * (1 - readIn));
            totals += Math.pow(
                    Level.of(GameRules.STANDARD, RoundDistribution.of(read)).value() - exact.level(), 2);
        }
        // A root of a mean of that many squares has a relative standard error of about 1 / sqrt(2 n): 1.6 %.
        assertThat(Math.sqrt(ladder / REPEATS)).isCloseTo(exact.ladderError(), within(0.06 * exact.ladderError()));
        assertThat(Math.sqrt(totals / REPEATS)).isCloseTo(exact.totalsError(), within(0.06 * exact.totalsError()));
        assertThat((double) thrown / REPEATS / GAMES).isCloseTo(exact.roundsPerGame(), within(0.2));
    }

    private static int round(BagChances me, UniformRandomProvider random) {
        int points = 0;
        for (int bag = 0; bag < Finish.BAGS; bag++) {
            double draw = random.nextDouble();
            points += draw < me.in() ? 3 : draw < me.in() + me.on() ? 1 : 0;
        }
        return points;
    }

    /** A result says no more than the rounds it came from: its information is below that of their points. */
    @ParameterizedTest
    @CsvSource({"0.15,0.4", "0.5,0.3", "0.7,0.2"})
    void aResultIsWorthLessThanItsRounds(double in, double on) {
        Precision precision = Precision.of(GameRules.STANDARD, new BagChances(in, on), 10);
        assertThat(precision.gameWorth()).isGreaterThan(1).isLessThan(precision.gameRounds());
        assertThat(precision.totalsError()).isLessThan(precision.ladderError());
        assertThat(precision.roundsForLadderError()).isLessThan(10 * precision.roundsPerGame());
    }

    @Test
    void thePageShowsTheFiguresOfToday() throws IOException {
        String page = Files.readString(PrecisionFigures.PAGE, StandardCharsets.UTF_8);
        assertThat(PrecisionFigures.rows())
                .as("run PrecisionFigures.main and paste")
                .allSatisfy(row -> assertThat(page).contains(row));
    }

    @Test
    void refusesWhoCannotBeCompared() {
        assertThatThrownBy(() -> Precision.of(GameRules.STANDARD, new BagChances(0, 0), 10))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("the comparison is for players of 0.5 to 11.5 points a round, not 0.0");
        assertThatThrownBy(() -> Precision.of(GameRules.STANDARD, new BagChances(0.5, 0.3), 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("the comparison takes 1 to 100 games, not 0");
    }
}
