package boardside.engine.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Finish;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Tally;
import boardside.engine.skill.RunCount;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class OutlookTest {
    private static final TrialDesign TWO = new TrialDesign(2, 50, 0.5, 1);

    private static RunCount run(Finish... rounds) {
        Integer[] finishes = new Integer[15];
        Arrays.fill(finishes, 0);
        Tally bags = Tally.NONE;
        for (Finish finish : rounds) {
            finishes[finish.index()]++;
            bags = bags.plus(new Tally(finish.in(), finish.on(), finish.off()));
        }
        return new RunCount(
                LocalDate.of(2026, 6, 1),
                "r",
                Drill.TOTAL,
                "Blue",
                null,
                null,
                BoardKind.REGULATION,
                Setting.PRACTICE,
                null,
                rounds.length,
                bags,
                0,
                0,
                List.of(finishes));
    }

    /** Sums of squares by hand: 3, 5 and 7 points about 5 are 8 on two degrees of freedom. */
    @Test
    void swingsAreTheSquaresWithinRuns() {
        double usual = 4 * (9 * 0.30 + 0.38 - (0.9 + 0.38) * (0.9 + 0.38));
        assertThat(Swings.usual().deviation()).isCloseTo(Math.sqrt(usual), within(1e-12));
        RunCount one = run(new Finish(1, 0, 3), new Finish(1, 2, 1), new Finish(2, 1, 1));
        RunCount lone = run(new Finish(4, 0, 0));
        Swings swings = Swings.of(List.of(one, lone));
        assertThat(swings.rounds()).isEqualTo(3);
        assertThat(swings.deviation()).isCloseTo(Math.sqrt((20 * usual + 8) / 22), within(1e-12));
    }

    /** Whole days that differ do not count: each of these runs is level in itself. */
    @Test
    void goodAndBadDaysAreNoSwings() {
        List<RunCount> days = new ArrayList<>();
        for (int i = 0; i < 400; i++) {
            Finish finish = i % 2 == 0 ? new Finish(4, 0, 0) : new Finish(1, 0, 3);
            days.add(run(finish, finish, finish));
        }
        assertThat(Swings.of(days).deviation()).isLessThan(0.5);
    }

    @Test
    void smallDifferencesTakeThousandsAndAreSaidTo() {
        Outlook outlook = Outlook.of(TWO, Swings.usual(), 0.7);
        assertThat(outlook.reaches()).extracting(Outlook.Reach::difference).containsExactly(0.2, 0.5, 1.0);
        Outlook.Reach small = outlook.reaches().get(0);
        assertThat(small.within()).isFalse();
        assertThat(small.roundsEach()).isGreaterThan(2000);
        assertThat(small.rounds()).isEqualTo(2 * small.roundsEach());
        assertThat(small.minutes()).isCloseTo(0.7 * small.rounds(), within(1e-9));
        assertThat(outlook.sentence()).contains("thousands", "0.2", "This trial ends after 100");
    }

    /**
     * Where a trial's one difference decides, what is foretold for the last block is the power of a trial looked at once,
     * with the boundary's constant for its critical value.
     */
    @Test
    void aTrialForetoldToItsEndIsOneLookedAtOnce() {
        Swings swings = new Swings(2.4, 100);
        double critical = Boundaries.constant(2, 50);
        double difference = Math.sqrt(2 * 2.4 * 2.4 / 2 / 50) * (critical + FixedLength.quantile(0.8));
        double power = FixedLength.power(difference, 5.76, 5.76, critical, 50);
        assertThat(power).isCloseTo(0.8, within(1e-9));
    }

    /** A longer trial is likelier to settle; more candidates take more. */
    @Test
    void lengthAndCandidatesCount() {
        double before = 0;
        for (int longest : TrialDesign.LENGTHS) {
            double chance = Outlook.of(new TrialDesign(3, longest, 0.5, 1), Swings.usual(), 1)
                    .reaches()
                    .get(1)
                    .chance();
            assertThat(chance).isGreaterThan(before);
            before = chance;
        }
        long rounds = 0;
        for (int candidates = 2; candidates <= 8; candidates++) {
            long now = Outlook.of(new TrialDesign(candidates, 50, 0.5, 1), Swings.usual(), 1)
                    .reaches()
                    .get(2)
                    .rounds();
            assertThat(now).isGreaterThan(rounds);
            rounds = now;
        }
    }

    @Test
    void aPaceIsAboveNothing() {
        assertThatThrownBy(() -> Outlook.of(TWO, Swings.usual(), 0)).hasMessageContaining("more than 0 minutes");
    }
}
