package boardside.engine.tactics.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.odds.BagChances;
import boardside.engine.physics.Board;
import boardside.engine.physics.ThrowChances;
import boardside.engine.physics.ThrowFit;
import boardside.engine.physics.ThrowKernel;
import boardside.engine.physics.ThrowModel;
import boardside.engine.physics.ThrowPrior;
import boardside.engine.physics.ThrowRecords;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Game;
import boardside.engine.rules.GameRules;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ThrowerTest {
    private static final ThrowKernel KERNEL = new ThrowKernel(Board.of(BoardKind.REGULATION));

    /** A new player, of whom next to nothing is known, against one who throws like them on average. */
    @Test
    void whoIsHardlyKnownIsNotToldToLoseToTheirOwnAverage() {
        ThrowFit nothing = ThrowFit.of(ThrowPrior.of(5, null), ThrowRecords.NONE);
        Thrower me = Thrower.believed(nothing.mean(), nothing.draws(), Approach.CONSERVATIVE, List.of());
        ThrowChances usual = KERNEL.chances(me.usual());
        assertThat(usual.in())
                .isCloseTo(average(me, ThrowChances::in), within(1e-6))
                .isLessThan(KERNEL.chances(nothing.mean()).in());
        assertThat(usual.on()).isCloseTo(average(me, ThrowChances::on), within(1e-6));

        double even = atNil(me, me.usual());
        assertThat(even).isBetween(0.42, 0.52);
        assertThat(atNil(new Thrower(nothing.mean(), nothing.draws(), me.approach(), List.of()), nothing.mean()))
                .as("the middle of the belief is better than the average over it")
                .isLessThan(even - 0.05);
    }

    /** Every draw that is kept has the chances told, whatever they are, so that two alike are even by every one of them. */
    @ParameterizedTest
    @CsvSource({"0.45, 0.42", "0.2, 0.5", "0.7, 0.25", "0.05, 0.3"})
    void whoseChancesAreToldHasThemInEveryDraw(double in, double on) {
        ThrowFit nothing = ThrowFit.of(ThrowPrior.of(5, null), ThrowRecords.NONE);
        BagChances told = new BagChances(in, on);
        Thrower me = Thrower.told(told, nothing.mean(), nothing.draws(), Approach.CONSERVATIVE, List.of());
        assertThat(me.draws()).hasSizeBetween(56, Matchup.DRAWS);
        assertThat(me.draws()).allSatisfy(draw -> {
            assertThat(KERNEL.chances(draw).in()).isCloseTo(in, within(1e-3));
            assertThat(KERNEL.chances(draw).on()).isCloseTo(on, within(1e-3));
        });
        assertThat(atNil(me, me.usual())).isBetween(0.48, 0.54);
    }

    /** No one puts half of their bags in and never leaves one on the board: the models come as near as they can, and none is left out for it. */
    @Test
    void whatNobodyThrowsIsComeNearTo() {
        ThrowFit nothing = ThrowFit.of(ThrowPrior.of(5, null), ThrowRecords.NONE);
        BagChances told = new BagChances(0.5, 0);
        Thrower me = Thrower.told(told, nothing.mean(), nothing.draws(), Approach.CONSERVATIVE, List.of());
        assertThat(me.draws()).hasSize(Matchup.DRAWS);
        assertThat(KERNEL.chances(me.usual()).in()).isBetween(0.4, 0.6);
    }

    @Test
    void whoIsKnownStaysAsTheyAre() {
        ThrowModel model = new ThrowModel(0, 3, 39, 6, 0.06, 20, 0.36);
        ThrowModel usual = Thrower.believed(model, List.of(model), Approach.AGGRESSIVE, List.of())
                .usual();
        assertThat(KERNEL.chances(usual).in()).isCloseTo(KERNEL.chances(model).in(), within(1e-6));
        assertThat(usual.spreadX()).isCloseTo(model.spreadX(), within(1e-3));
    }

    private static double average(Thrower thrower, ToDoubleFunction<ThrowChances> chance) {
        return thrower.draws().stream()
                .mapToDouble(draw -> chance.applyAsDouble(KERNEL.chances(draw)))
                .average()
                .orElseThrow();
    }

    /** The chance to win from nil all that is told: the mean over the draws, throwing first. */
    private static double atNil(Thrower me, ThrowModel versus) {
        Matchup matchup = new Matchup(me, Thrower.known(versus, Approach.CONSERVATIVE), GameRules.STANDARD);
        return Stream.of(matchup.values(Game.start(GameRules.STANDARD, true)))
                .mapToDouble(draw -> draw[Lie.MOST])
                .average()
                .orElseThrow();
    }
}
