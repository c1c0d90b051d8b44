package boardside.engine.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.plan.GoalAnswer.Standing;
import boardside.engine.plan.GoalAnswer.Verdict;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Tally;
import boardside.engine.skill.FormAnswer.Form;
import boardside.engine.skill.Interval;
import boardside.engine.skill.Outlook;
import boardside.engine.skill.RunCount;
import boardside.engine.skill.Skill;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;

class GoalsTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 5, 31);

    private static final Skill SKILL = Skill.of(runs(), TODAY);

    /** Sixty days of ten rounds, 45 of 100 in and 38 on, with luck of a fixed seed. */
    private static List<RunCount> runs() {
        Random random = new Random(5);
        List<RunCount> runs = new ArrayList<>();
        for (int day = 60; day > 0; day--) {
            int in = 0;
            int on = 0;
            List<Integer> finishes = new ArrayList<>(Collections.nCopies(15, 0));
            for (int bag = 0; bag < 40; bag++) {
                double fate = random.nextDouble();
                in += fate < 0.45 ? 1 : 0;
                on += fate >= 0.45 && fate < 0.83 ? 1 : 0;
            }
            runs.add(new RunCount(
                    TODAY.minusDays(day),
                    "r" + day,
                    Drill.TOTAL,
                    "Blue",
                    null,
                    null,
                    BoardKind.REGULATION,
                    Setting.PRACTICE,
                    null,
                    10,
                    new Tally(in, on, 40 - in - on),
                    0,
                    0,
                    finishes));
        }
        return runs;
    }

    private static Standing standing(Goal.Kind kind, double value, LocalDate by) {
        return (Standing) Goals.of(SKILL, new Goal(kind, value, by), TODAY);
    }

    /** Today's outlook is today's form; later ones have the same middle, and variances that grow with the days. */
    @Test
    void theOutlookBeginsWithFormAndWidensWithTheRootOfTheDays() {
        Interval form = ((Form) SKILL.form(30)).pointsPerRound();
        Outlook now = SKILL.outlook(TODAY).orElseThrow();
        assertThat(now.pointsPerRound()).isEqualTo(form);
        double before = square(width(form));
        double[] grown = new double[3];
        for (int i = 0; i < 3; i++) {
            Interval then =
                    SKILL.outlook(TODAY.plusDays(100L * (i + 1))).orElseThrow().pointsPerRound();
            assertThat(then.estimate()).isCloseTo(form.estimate(), within(0.1));
            grown[i] = square(width(then)) - before;
        }
        assertThat(grown[0]).isPositive();
        assertThat(grown[1] / grown[0]).isBetween(1.6, 2.4);
        assertThat(grown[2] / grown[0]).isBetween(2.3, 3.7);
    }

    private static double square(double x) {
        return x * x;
    }

    private static double width(Interval interval) {
        return interval.high() - interval.low();
    }

    /** The skill model draws a band over time by another way: the delta method; it may be asked of days to come as well. */
    @Test
    void theOutlookAgreesWithTheBand() {
        LocalDate then = TODAY.plusDays(120);
        Interval band = Objects.requireNonNull(SKILL.band(List.of(then)).get(then));
        Interval outlook = SKILL.outlook(then).orElseThrow().pointsPerRound();
        assertThat(outlook.low()).isCloseTo(band.low(), within(0.35));
        assertThat(outlook.high()).isCloseTo(band.high(), within(0.35));
    }

    @Test
    void verdictsFollowTheNumbers() {
        LocalDate by = TODAY.plusMonths(4);
        assertThat(standing(Goal.Kind.IN, 20, by).verdict()).isEqualTo(Verdict.REACHED);
        double now = standing(Goal.Kind.IN, 20, by).now().estimate();
        assertThat(standing(Goal.Kind.IN, now + 0.5, by).verdict()).isEqualTo(Verdict.WITHIN_REACH);
        Standing far = standing(Goal.Kind.IN, 95, TODAY.plusDays(10));
        assertThat(far.verdict()).isEqualTo(Verdict.OUT_OF_REACH);
        assertThat(far.needed()).isGreaterThan(far.pace().high());
        assertThat(far.now().contains(45)).isTrue();
        assertThat(standing(Goal.Kind.TOTAL, 110, by).verdict()).isEqualTo(Verdict.OUT_OF_REACH);
        assertThat(standing(Goal.Kind.TOTAL, 40, by).verdict()).isEqualTo(Verdict.REACHED);
        assertThat(standing(Goal.Kind.SEASON, 1, by).verdict()).isEqualTo(Verdict.REACHED);
    }

    /** The level of a goal that is just today's level is reached with an even chance, give or take what is not known. */
    @Test
    void aGoalAtTodaysLevelIsAnEvenThing() {
        double level = ((Form) SKILL.form(30)).level().estimate();
        assertThat(standing(Goal.Kind.LEVEL, level, TODAY.plusMonths(3)).chanceNow())
                .isBetween(0.4, 0.6);
    }

    @Test
    void withoutRecordsNothingIsSaid() {
        assertThat(Goals.of(Skill.of(List.of(), TODAY), new Goal(Goal.Kind.IN, 70, TODAY.plusDays(9)), TODAY))
                .isInstanceOf(GoalAnswer.NoRecords.class);
    }

    @Test
    void goalsAreChecked() {
        assertThatThrownBy(() -> new Goal(Goal.Kind.IN, 120, TODAY))
                .hasMessage("bags in of a hundred are 1 to 100, not 120");
        assertThat(Goal.faults(Goal.Kind.LEVEL, 13, TODAY, TODAY))
                .containsExactly("a level is 1 to 12, not 13", "a goal is for a day to come, not 2026-05-31");
    }
}
