package boardside.engine.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.physics.Tap.Place;
import boardside.engine.physics.ThrowFit.Parameter;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Face;
import boardside.engine.rules.Outcome;
import boardside.engine.rules.Tally;
import java.util.ArrayList;
import java.util.List;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;

/** What is found in records of known throws. The full form of the recovery is boardside.bench.physics.ThrowRecovery. */
class ThrowFitTest {
    private static final Board REGULATION = Board.of(BoardKind.REGULATION);
    private static final Board NARROW = Board.of(BoardKind.NARROW);
    private static final ThrowPrior ANY = ThrowPrior.of(5, null);
    private static final ThrowModel TYPICAL = new ThrowModel(0.8, 3, 39, 6, 0.06, 20, 0.36);

    private static ThrowRecords counted(ThrowCount... counts) {
        return new ThrowRecords(List.of(counts), List.of());
    }

    private static TappedDay tapped(ThrowModel player, long seed, int bags) {
        return new MadeUpThrows(player, seed).taps(null, 1, bags);
    }

    @Test
    void withoutRecordsItBelievesThePrior() {
        ThrowFit fit = ThrowFit.of(ANY, ThrowRecords.NONE);
        // 5 % and 95 % points of the normal and lognormal distributions that the prior is made of.
        assertThat(fit.range(Parameter.X).low()).isEqualTo(-1.645 * 1.2, within(0.15));
        assertThat(fit.range(Parameter.SPREAD_X).high()).isEqualTo(3 * Math.exp(1.645 * 0.4), within(0.3));
        assertThat(fit.range(Parameter.SLIDE).low()).isEqualTo(20 * Math.exp(-1.645 * 0.3), within(0.6));
        assertThat(fit.told(Parameter.SPREAD_X)).isZero();
    }

    @Test
    void theSameRecordsGiveTheSameDigits() {
        ThrowRecords records = counted(ThrowCount.of(REGULATION, new Tally(300, 420, 80)));
        assertThat(ThrowFit.of(ANY, records).range(Parameter.SPREAD_X))
                .isEqualTo(ThrowFit.of(ANY, records).range(Parameter.SPREAD_X));
    }

    /** Tibshirani, Price and Taylor (2011) find a darts player's spread from scores; here with the counts it made. */
    @Test
    void countsAloneAreMadeAgainByWhatIsFound() {
        ThrowCount count = new MadeUpThrows(TYPICAL, 5).count(REGULATION, 4000, false);
        ThrowFit fit = ThrowFit.of(ANY, counted(count));
        ThrowKernel kernel = new ThrowKernel(REGULATION);
        assertThat(fit.of(model -> kernel.chances(model).in())
                        .contains(count.bags().in() / 4000.0))
                .isTrue();
        assertThat(fit.of(model -> kernel.chances(model).off())
                        .contains(count.bags().off() / 4000.0))
                .isTrue();
        assertThat(kernel.chances(fit.mode()).in()).isEqualTo(count.bags().in() / 4000.0, within(0.02));
    }

    @Test
    void eachKindOfRecordTellsMore() {
        MadeUpThrows throwing = new MadeUpThrows(TYPICAL, 9);
        ThrowCount counts = throwing.count(REGULATION, 400, false);
        ThrowCount narrow = throwing.count(NARROW, 200, false);
        MadeUpThrows again = new MadeUpThrows(TYPICAL, 9);
        ThrowCount countsWithMisses = again.count(REGULATION, 400, true);
        ThrowCount narrowWithMisses = again.count(NARROW, 200, true);
        assertThat(countsWithMisses.bags()).isEqualTo(counts.bags());
        List<ThrowRecords> levels = List.of(
                counted(counts),
                counted(counts, narrow),
                counted(countsWithMisses, narrowWithMisses),
                new ThrowRecords(List.of(countsWithMisses, narrowWithMisses), List.of(tapped(TYPICAL, 10, 60))));
        double[] before = {10, 10};
        for (ThrowRecords records : levels) {
            ThrowFit fit = ThrowFit.of(ANY, records);
            double[] widths = {
                fit.range(Parameter.SPREAD_X).width(),
                fit.range(Parameter.SPREAD_ALONG).width()
            };
            assertThat(widths[0]).isLessThan(before[0]);
            assertThat(widths[1]).isLessThan(before[1]);
            before = widths;
        }
        ThrowFit alone = ThrowFit.of(ANY, levels.get(0));
        assertThat(alone.told(Parameter.FRICTION))
                .as("counts say next to nothing of friction")
                .isLessThan(0.15);
        assertThat(alone.range(Parameter.X).low()).as("nor to which side").isNegative();
        assertThat(alone.range(Parameter.X).high()).isPositive();
    }

    @Test
    void tapsFindThePlayer() {
        ThrowFit fit = ThrowFit.of(ANY, new ThrowRecords(List.of(), List.of(tapped(TYPICAL, 3, 300))));
        assertThat(fit.range(Parameter.X).estimate()).isEqualTo(0.8, within(0.5));
        assertThat(fit.range(Parameter.SPREAD_X).estimate()).isEqualTo(3, within(0.35));
        assertThat(fit.range(Parameter.SPREAD_Y).estimate()).isEqualTo(6, within(0.9));
        assertThat(fit.range(Parameter.SPREAD_SPEED).estimate()).isEqualTo(0.06, within(0.015));
    }

    /** Short form: 24 players, whose coverage of 90 % lies in 75-100 % with a chance of over 0.98 a parameter. */
    @Test
    void rangesHoldSimulatedPlayers() {
        int players = 24;
        int held = 0;
        int asked = 0;
        for (int p = 0; p < players; p++) {
            ThrowModel player = ANY.player(500 + p);
            MadeUpThrows throwing = new MadeUpThrows(player, 31 * p);
            List<TappedDay> days = new ArrayList<>();
            days.add(throwing.taps(null, throwing.day(null), 20));
            days.add(throwing.test(null, throwing.day(null), 6));
            ThrowFit fit =
                    ThrowFit.of(ANY, new ThrowRecords(List.of(throwing.count(REGULATION, 200, p % 2 == 0)), days));
            for (Parameter parameter : Parameter.values()) {
                held += fit.range(parameter).contains(parameter.of(player)) ? 1 : 0;
                asked++;
            }
        }
        assertThat(held / (double) asked).as("seed 500").isBetween(0.8, 0.98);
    }

    @Test
    void aSlideTestMeasuresTheDay() {
        List<TappedDay> days = new ArrayList<>();
        MadeUpThrows throwing = new MadeUpThrows(TYPICAL, 21);
        for (int i = 0; i < 6; i++) {
            days.add(throwing.test(null, 1, 8));
        }
        TappedDay slow = throwing.test(null, 1.15, 10);
        days.add(slow);
        ThrowFit fit = ThrowFit.of(ANY, new ThrowRecords(List.of(), days));
        ThrowFit.Day day = fit.day(slow);
        assertThat(day.slide().contains(TYPICAL.onBoards(1.15).slide())).isTrue();
        assertThat(day.factor().contains(1.15)).isTrue();
        assertThat(day.probabilitySlower()).isGreaterThan(0.9);
        assertThat(day.friction().width())
                .as("steepness and friction stay confounded")
                .isGreaterThan(0.05);
        Assertions.assertThatThrownBy(() -> fit.day(tapped(TYPICAL, 1, 3)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** Common practice, no source: slower bags need harder throws, and slower boards too. */
    @Test
    void slowerBagsNeedHarderThrows() {
        ThrowFit usual =
                ThrowFit.of(ThrowPrior.of(5, Face.SLOW), new ThrowRecords(List.of(), List.of(tapped(TYPICAL, 4, 80))));
        SpeedSheet sheet = new SpeedSheet(usual);
        double before = -1;
        for (int speed = 10; speed >= 1; speed -= 3) {
            SpeedSheet.Sheet bag =
                    sheet.of(ThrowFit.of(ThrowPrior.of(speed, null).like(usual), ThrowRecords.NONE));
            assertThat(bag.usual().harder().estimate()).isGreaterThan(before);
            assertThat(bag.slower().harder().estimate())
                    .isGreaterThan(bag.usual().harder().estimate());
            assertThat(bag.faster().slide().estimate())
                    .isGreaterThan(bag.usual().slide().estimate());
            before = bag.usual().harder().estimate();
        }
        assertThat(sheet.of(usual).usual().harder().high()).isEqualTo(0, within(1e-12));
        assertThat(sheet.elevation()).isBetween(25.0, 60.0);
    }

    @Test
    void thoseWhoSpreadFarAimShortOfThoseWhoDoNot() {
        ThrowKernel kernel = new ThrowKernel(REGULATION);
        ThrowModel steady = new ThrowModel(0, 2, 39, 3, 0.03, 20, 0.36);
        ThrowModel wild = new ThrowModel(0, 6, 39, 12, 0.1, 20, 0.36);
        assertThat(ThrowAdvice.best(kernel, wild)).isLessThan(ThrowAdvice.best(kernel, steady) - 2);
        ThrowAdvice advice = ThrowAdvice.of(ThrowFit.of(ANY, ThrowRecords.NONE), NARROW);
        assertThat(advice.bestPoints().estimate()).isGreaterThan(advice.points().estimate());
        assertThat(advice.halfAcross().estimate()).isGreaterThan(advice.in().estimate());
        assertThat(advice.narrowKept().estimate()).isLessThan(advice.kept().estimate());
    }

    @Test
    void conditionsMoveWhatIsExpectedOfADay() {
        TappedDay slow = new TappedDay(Conditions.SLOW, true, List.of(new Tap(Outcome.IN, new Place(0, 20), null)));
        ThrowFit fit = ThrowFit.of(ANY, new ThrowRecords(List.of(), List.of(slow)));
        assertThat(fit.day(slow).probabilitySlower()).isGreaterThan(0.9);
    }

    @Test
    void refusesWhatCannotBe() {
        Assertions.assertThatThrownBy(() -> new ThrowModel(0, 3, 39, 6, 0.06, 20, 0.1))
                .hasMessageContaining("friction above");
        Assertions.assertThatThrownBy(() -> new ThrowCount(REGULATION, new Tally(1, 1, 1), 1, 1, 0, 0, 0, 0))
                .hasMessageContaining("2 bags, but only 1");
        Assertions.assertThatThrownBy(() -> new Tap(Outcome.IN, null, new Place(0, 3)))
                .hasMessageContaining("only a bag on the board rests there");
        Assertions.assertThatThrownBy(() -> ThrowPrior.of(11, null)).hasMessageContaining("1 to 10");
    }
}
