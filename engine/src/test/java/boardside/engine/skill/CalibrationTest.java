package boardside.engine.skill;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.engine.skill.simulated.BagScores;
import boardside.engine.skill.simulated.Drift;
import boardside.engine.skill.simulated.Regime;
import boardside.engine.skill.simulated.Scores;
import boardside.engine.skill.simulated.Scores.Reliability;
import boardside.engine.skill.simulated.Seen;
import boardside.engine.skill.simulated.Spread;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.LongStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The short form of {@code boardside.bench.skill.Calibration}: what the model says of players that are not drawn from it,
 * held against the truth. With 120 players a measured 90 % has a standard error of 2.7 points.
 */
class CalibrationTest {
    private static final int PLAYERS = 120;

    private static final List<Regime> REGIMES = List.of(
            Regime.usual(10, Drift.SMOOTH, Spread.UNIFORM, 0.15),
            Regime.usual(60, Drift.STEPPED, Spread.TWO_POINT, 0.2),
            Regime.usual(300, Drift.SMOOTH, Spread.HEAVY, 0.2));

    private static final List<Scores> SCORES = new ArrayList<>();

    @BeforeAll
    static void ask() {
        SCORES.clear();
        for (int i = 0; i < REGIMES.size(); i++) {
            Regime regime = REGIMES.get(i);
            SCORES.add(new Scores(LongStream.range(1000L * i, 1000L * i + PLAYERS)
                    .mapToObj(seed -> Seen.of(regime, seed))
                    .toList()));
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2})
    void rangesHoldTheTruth(int i) {
        Scores scores = SCORES.get(i);
        assertThat(scores.points()).as("points, " + REGIMES.get(i)).isBetween(0.82, 0.98);
        assertThat(scores.total()).as("ten-round total, " + REGIMES.get(i)).isBetween(0.82, 0.98);
        assertThat(scores.change()).as("change, " + REGIMES.get(i)).isBetween(0.82, 0.99);
        // In ten rounds few have thrown a second bag.
        if (scores.bags().seen().size() > PLAYERS / 2) {
            assertThat(scores.bags().difference())
                    .as("difference of two bags, " + REGIMES.get(i))
                    .isBetween(0.82, 0.98);
        }
    }

    /** A slope of 1 is right; it is off by little more than three standard errors at the most. */
    @ParameterizedTest
    @CsvSource({"BEST, 0.65, 1.4", "TOTAL, 0.8, 1.25"})
    void statedChancesComeTrue(Seen.Of of, double least, double most) {
        List<Seen> all =
                SCORES.stream().flatMap(scores -> scores.seen().stream()).toList();
        Reliability found = new Scores(all).reliability(of);
        assertThat(found.slope()).as(found.toString()).isBetween(least, most);
        assertThat(found.offset()).as(found.toString()).isBetween(-0.3, 0.3);
    }

    /** Wanted are 5 % at the most; the bound lets pass four standard errors more. */
    @ParameterizedTest
    @ValueSource(ints = {2, 4, 8})
    void alikeBagsAreSeldomCalledDifferent(int bags) {
        Regime regime = Regime.usual(200, Drift.SMOOTH, Spread.UNIFORM, 0.2).withBags(bags, 0);
        assertThat(asked(regime, 5000, 80).signals()).isLessThan(0.15);
    }

    /** A player gets better by a point over the log; plain averages lay a third of it to the bag thrown late. */
    @Test
    void aRiseIsNotTakenForABetterBag() {
        Regime regime = Regime.usual(600, Drift.RISE, Spread.UNIFORM, 0.15).halves();
        BagScores scores = asked(regime, 9000, 60);
        assertThat(scores.rawBias()).isGreaterThan(0.2);
        assertThat(Math.abs(scores.adjustedBias())).isLessThan(0.5 * scores.rawBias());
        assertThat(scores.adjustedError()).isLessThan(scores.rawError());
    }

    private static BagScores asked(Regime regime, long seed, int players) {
        return new BagScores(LongStream.range(seed, seed + players)
                .mapToObj(each -> Objects.requireNonNull(Seen.Bags.of(regime, each)))
                .toList());
    }
}
