package boardside.engine.skill;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.engine.skill.simulated.Drift;
import boardside.engine.skill.simulated.Regime;
import boardside.engine.skill.simulated.Scores;
import boardside.engine.skill.simulated.Seen;
import boardside.engine.skill.simulated.Spread;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The short form of {@code boardside.bench.skill.Calibration}: do 90 % ranges hold the truth of players that are not drawn
 * from the model? With 120 players a measured 90 % has a standard error of 2.7 points.
 */
class CoverageTest {
    private static final int PLAYERS = 120;

    @ParameterizedTest
    @CsvSource({"1, 10, SMOOTH, UNIFORM, 0.15", "2, 60, STEPPED, TWO_POINT, 0.2", "3, 300, SMOOTH, HEAVY, 0.2"})
    void rangesHoldTheTruth(long seed, int rounds, Drift drift, Spread effects, double daySpread) {
        Regime regime = Regime.usual(rounds, drift, effects, daySpread);
        Scores scores = new Scores(LongStream.range(0, PLAYERS)
                .mapToObj(player -> Seen.of(regime, 1000 * seed + player))
                .toList());
        String what = regime + ", seed " + seed;
        assertThat(scores.points()).as("points, " + what).isBetween(0.82, 0.98);
        assertThat(scores.total()).as("ten-round total, " + what).isBetween(0.82, 0.98);
        assertThat(scores.change()).as("change over 30 days, " + what).isGreaterThan(0.82);
    }
}
