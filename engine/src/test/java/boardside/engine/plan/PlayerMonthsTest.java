package boardside.engine.plan;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.engine.plan.simulated.PlayerMonths;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The short form of what {@code boardside.bench.plan.Months} plays at length; docs/plan.md has its figures. */
class PlayerMonthsTest {
    @Test
    void thePlanBeatsEveryFixedRoutineInWinChance() {
        Map<String, PlayerMonths.Figures> figures = PlayerMonths.play(60, 20_261_125);
        assertThat(figures).hasSize(6);
        figures.forEach((name, of) -> {
            if (!name.equals("plan")) {
                assertThat(of.behind()).as(name).isGreaterThan(2 * of.behindError());
            }
        });
    }
}
