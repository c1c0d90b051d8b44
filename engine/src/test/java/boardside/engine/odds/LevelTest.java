package boardside.engine.odds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.rules.GameRules;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class LevelTest {
    static LongStream seeds() {
        return Generators.seeds(30);
    }

    /**
     * By hand: four on beat ghost 3 surely and are even with ghost 4 (no end, counted half); four in are even with ghost
     * 12; four off are even with ghost 0, which is not more than half.
     */
    @ParameterizedTest
    @CsvSource({"0,1,4", "1,0,12", "0,0,0"})
    void certainBags(double in, double on, double level) {
        assertThat(Level.of(GameRules.STANDARD, RoundDistribution.of(new BagChances(in, on)))
                        .value())
                .isEqualTo(level);
    }

    /** The level lies on the line between the ghosts beaten more, and no more, than half the time. */
    @ParameterizedTest
    @MethodSource("seeds")
    void liesWhereTheLineCrossesOneHalf(long seed) {
        BagChances bag = Generators.bag(Generators.random(seed));
        Level level = Level.of(GameRules.STANDARD, RoundDistribution.of(bag));
        assertThat(level.winByGhost()).hasSize(13);
        int crossings = 0;
        for (int ghost = 0; ghost < 12; ghost++) {
            double below = level.winByGhost().get(ghost);
            double above = level.winByGhost().get(ghost + 1);
            assertThat(above).as("a better ghost is beaten less").isLessThanOrEqualTo(below + 1e-12);
            if (below > 0.5 && above <= 0.5) {
                double share = level.value() - ghost;
                assertThat(share).isBetween(0.0, 1.0);
                assertThat(below + share * (above - below)).isCloseTo(0.5, within(1e-12));
                crossings++;
            }
        }
        assertThat(crossings).isOne();
    }

    /** Chances to win are those of races, one by one, under any rules. */
    @ParameterizedTest
    @CsvSource({"0.45,0.35", "0.2,0.5"})
    void winsAreThoseOfRaces(double in, double on) {
        RoundDistribution me = RoundDistribution.of(new BagChances(in, on));
        GameRules rules = GameRules.STANDARD.withExact(15);
        Level level = Level.of(rules, me);
        for (int ghost = 0; ghost <= 12; ghost++) {
            assertThat(level.winByGhost().get(ghost))
                    .isEqualTo(Race.solve(rules, me, RoundDistribution.ghost(ghost))
                            .fromStart()
                            .winOrHalf());
        }
    }
}
