package boardside.engine.tactics.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.tactics.Rate;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Spot;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BreakEvenTest {
    private static final Call SLIDE = new Call(Shot.SLIDE, Spot.HOLE, null, -1);

    /** By hand: p S + (1 - p) F = V at p = (V - F) / (S - F). */
    @ParameterizedTest
    @CsvSource({
        "0.5, 0.8, 0.3, 0.4",
        "0.62, 0.7, 0.5, 0.6",
        "0.5, 0.9, 0.5, NaN",
        "0.5, 0.4, 0.3, NaN",
        "0.5, 0.3, 0.6, NaN"
    })
    void followsTheHandFormula(double alternative, double ifWorked, double ifNot, double needed) {
        BreakEven found = new BreakEven(SLIDE, alternative, ifWorked, ifNot, new Rate(0.2, 0.1, 0.3));
        Double answer = found.needed();
        if (Double.isNaN(needed)) {
            assertThat(answer).isNull();
        } else {
            assertThat(answer).isCloseTo(needed, within(1e-12));
        }
    }

    @ParameterizedTest
    @CsvSource({"0.5, 0.9, 0.6, ALWAYS", "0.5, 0.4, 0.3, NEVER", "0.5, 0.7, 0.3, AT", "0.5, 0.3, 0.6, NEVER"})
    void saysWhereNoRateDecides(double alternative, double ifWorked, double ifNot, BreakEven.Case expected) {
        assertThat(new BreakEven(SLIDE, alternative, ifWorked, ifNot, new Rate(0.2, 0.1, 0.3)).is())
                .isEqualTo(expected);
    }
}
