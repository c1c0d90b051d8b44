package boardside.engine.tactics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.engine.rules.Side;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Depths and lanes are those of the project's own definition: six bags of six inches before the hole, lanes in thirds. */
class PositionTest {
    @ParameterizedTest
    @CsvSource({
        "0, 35.99, 24, 1-middle",
        "0, 30, 24, 1-middle",
        "0, 29.99, 24, 2-middle",
        "-4, 3, 24, 6-middle",
        "-4.01, 3, 24, 6-left",
        "4.01, 0, 24, 6-right",
        "12, 36, 24, beside-right",
        "0, 42, 24, back-middle",
        "-12, 48, 24, back-left",
        "2, 12, 12, 4-middle",
        "2.01, 11.99, 12, 5-right",
        "-6, 20, 12, 3-left"
    })
    void everyPointHasItsDepthAndLane(double x, double y, double width, String target) {
        Spot spot = new Spot(x, y);
        assertThat(Target.at(spot, width).text()).isEqualTo(target);
        assertThat(Target.parse(target).holds(spot, width)).isTrue();
        assertThat(Target.parse(target).mirrored().holds(spot.mirrored(), width))
                .isTrue();
    }

    @Test
    void centresLieInTheirTargets() {
        for (Depth depth : Depth.values()) {
            for (Lane lane : Lane.values()) {
                Target target = new Target(depth, lane);
                assertThat(Target.parse(target.text())).isEqualTo(target);
                for (double width : new double[] {24, 12}) {
                    Spot centre = target.centre(width);
                    // The middle of the board beside the hole is the hole.
                    assertThat(target.holds(centre, width))
                            .as(target.text())
                            .isEqualTo(depth != Depth.BESIDE || lane != Lane.MIDDLE);
                }
            }
        }
        assertThat(new Target(Depth.TWO, Lane.LEFT).centre(24)).isEqualTo(new Spot(-8, 27));
        assertThat(Depth.FOUR.goal()).isFalse();
        assertThat(Depth.BACK.goal()).isTrue();
    }

    @Test
    void aBagInTheHoleLiesNowhere() {
        assertThat(Target.parse("beside-middle").holds(new Spot(0, 39), 24)).isFalse();
        assertThat(new Spot(3, 39).inHole()).isFalse();
        assertThat(new Spot(2.99, 39).inHole()).isTrue();
    }

    @Test
    void refusesWhatCannotLieThere() {
        assertThatThrownBy(() -> new Spot(12.1, 5)).hasMessageContaining("-12..12");
        assertThatThrownBy(() -> new Spot(Double.NaN, 5)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Lying(0, 38, Side.ME)).hasMessageContaining("fallen in");
        assertThatThrownBy(() -> new Lying(0, 30, Side.A)).hasMessageContaining("me or versus");
        assertThatThrownBy(() -> Target.parse("2")).hasMessageContaining("2-left");
        assertThatThrownBy(() -> Target.parse("7-left")).hasMessageContaining("none of 1, 2");
        assertThatThrownBy(() -> new Position(List.of(new Lying(0, 20, Side.ME), new Lying(3, 24, Side.VERSUS))))
                .hasMessageContaining("over each other");
        List<Lying> five = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            five.add(new Lying(-8, 3 + 6 * i, Side.ME));
        }
        assertThatThrownBy(() -> new Position(five)).hasMessageContaining("at most four");
    }

    @ParameterizedTest
    @EnumSource(Situation.class)
    void everyCommonSituationIsItsMirrorsMirror(Situation situation) {
        Position position = situation.position();
        assertThat(position.mirrored().mirrored()).isEqualTo(position);
        assertThat(position.mirrored().family(24)).isEqualTo(position.family(24));
        for (Situation other : Situation.values()) {
            if (other != situation) {
                assertThat(other.position().code(24)).isNotEqualTo(position.code(24));
            }
        }
    }

    @Test
    void familiesSayWhichWaysAreBlocked() {
        assertThat(Situation.OPEN.position().family(24)).isEqualTo("open");
        assertThat(Situation.GATE.position().family(24)).isEqualTo("close");
        assertThat(Situation.WALL.position().family(24)).isEqualTo("close+aside");
        assertThat(Situation.TUCKED.position().code(24)).isEqualTo("me:1-middle versus:2-middle");
        assertThat(Situation.WALL.position().on(12)).isFalse();
        assertThat(Situation.GATE.position().on(12)).isTrue();
    }

    /** Bags put anywhere: a position is refused exactly where two lie over each other. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void overlapsAndNothingElseIsRefused(long seed) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        for (int round = 0; round < 500; round++) {
            List<Lying> bags = new ArrayList<>();
            boolean apart = true;
            for (int i = 0; i < 3; i++) {
                Spot spot = new Spot(24 * random.nextDouble() - 12, 48 * random.nextDouble());
                if (!spot.inHole()) {
                    for (Lying other : bags) {
                        apart &= Math.hypot(other.x() - spot.x(), other.y() - spot.y()) >= 6;
                    }
                    bags.add(new Lying(spot.x(), spot.y(), i % 2 == 0 ? Side.ME : Side.VERSUS));
                }
            }
            if (apart) {
                Position position = new Position(bags);
                assertThat(position.mirrored().mirrored().code(24))
                        .as("seed " + seed)
                        .isEqualTo(position.code(24));
            } else {
                assertThatThrownBy(() -> new Position(bags)).isInstanceOf(IllegalArgumentException.class);
            }
        }
    }

    @Test
    void cutsAreEachOthersMirror() {
        assertThat(Shot.CUT_LEFT.mirrored()).isEqualTo(Shot.CUT_RIGHT);
        assertThat(Shot.PUSH.mirrored()).isEqualTo(Shot.PUSH);
        assertThat(Shot.BACK_BLOCK.word()).isEqualTo("back-block");
    }
}
