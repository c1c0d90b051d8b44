package boardside.engine.odds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.rules.GameRules;
import org.junit.jupiter.api.Test;

class WorthTest {
    /** Closed form: four in has chance p^4. */
    @Test
    void worthOfAFourBagger() {
        Worth worth = Worth.of(
                new BagChances(0.5, 0.3),
                bag -> Total.of(RoundDistribution.of(bag), 1).atLeast(12));
        double gain = Math.pow(0.51, 4) - Math.pow(0.5, 4);
        assertThat(worth.winProbability()).isCloseTo(0.0625, within(1e-15));
        assertThat(worth.offToIn().orElseThrow()).isCloseTo(gain, within(1e-15));
        assertThat(worth.onToIn().orElseThrow()).isCloseTo(gain, within(1e-15));
        assertThat(worth.offToOn().orElseThrow()).isCloseTo(0, within(1e-15));
    }

    @Test
    void worthInARaceIsTheDifferenceOfTwoRaces() {
        RoundDistribution ghost = RoundDistribution.ghost(7);
        Worth worth = Worth.of(new BagChances(0.45, 0.35), bag -> win(bag, ghost));
        assertThat(worth.offToOn().orElseThrow())
                .isCloseTo(win(new BagChances(0.45, 0.36), ghost) - worth.winProbability(), within(1e-13));
        assertThat(worth.offToIn().orElseThrow())
                .isGreaterThan(worth.onToIn().orElseThrow())
                .isGreaterThan(worth.offToOn().orElseThrow());
    }

    private static double win(BagChances bag, RoundDistribution versus) {
        return Race.solve(GameRules.STANDARD, RoundDistribution.of(bag), versus).winOrHalf(0, 0, true);
    }

    @Test
    void nothingMovesWhereFewerThanOneInAHundredCan() {
        Worth allIn = Worth.of(new BagChances(1, 0), BagChances::in);
        assertThat(allIn.offToOn()).isEmpty();
        assertThat(allIn.onToIn()).isEmpty();
        assertThat(allIn.offToIn()).isEmpty();
        // Exactly one in a hundred can, though 1 - 0.5 - 0.49 is not 0.01 in binary.
        Worth exactly = Worth.of(new BagChances(0.5, 0.49), BagChances::off);
        assertThat(exactly.offToOn().orElseThrow()).isCloseTo(-0.01, within(1e-15));
        assertThat(Worth.of(new BagChances(0.991, 0), BagChances::in).offToIn()).isEmpty();
    }
}
