package boardside.app.demo;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.practice.DayCount;
import boardside.app.practice.Player;
import boardside.app.record.Records;
import boardside.app.record.Skills;
import boardside.engine.plan.GoalAnswer.Standing;
import boardside.engine.plan.GoalAnswer.Verdict;
import boardside.engine.plan.Goals;
import boardside.engine.rules.Drill;
import boardside.engine.skill.FormAnswer.Form;
import boardside.engine.skill.Trait;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DemoTest {
    private static final LocalDate LAST = LocalDate.of(2026, 5, 31);

    @TempDir
    Path folder;

    @Test
    void theSameDayGivesTheSameLog() {
        assertThat(Demo.log(LAST)).isEqualTo(Demo.log(LAST)).isNotEqualTo(Demo.log(LAST.minusDays(1)));
    }

    @Test
    void fillsAStoreWithEveryKindOfPractice() {
        try (Records records = Records.open(folder.resolve("demo.db").toString())) {
            Player player = Demo.fill(records, LAST);
            List<DayCount> counts = records.analyses().since(player.id(), -1).counts();
            assertThat(counts).allSatisfy(count -> assertThat(count.day()).isBetween("2024-11-29", LAST.toString()));
            assertThat(counts.stream().map(DayCount::day).distinct().count()).isBetween(280L, 400L);
            assertThat(drills())
                    .containsAll(EnumSet.of(
                            Drill.TOTAL,
                            Drill.RACE,
                            Drill.CLIMB,
                            Drill.VOLUME,
                            Drill.GAME,
                            Drill.DUEL,
                            Drill.FIXTURE,
                            Drill.CASUAL));
            assertThat(counts.stream().mapToInt(DayCount::thrown).sum()).isBetween(30_000, 70_000);
            assertThat(counts.stream().anyMatch(count -> count.known() < count.thrown()))
                    .as("rounds of which only the bags in were counted")
                    .isTrue();
            for (Trait trait : Trait.values()) {
                assertThat(Skills.of(records, player.id(), LAST)
                                .compare(List.of(trait))
                                .sentence())
                        .as(trait.word())
                        .matches(".*(not luck|not settled|or luck).*");
            }
            assertThat(records.openRun(player.id())).isEmpty();
            // Better than at the start, and the slump two thirds of the way shows.
            double start = points(records, player, LAST.minusDays(430));
            double before = points(records, player, LAST.minusDays(220));
            double slump = points(records, player, LAST.minusDays(160));
            double now = points(records, player, LAST);
            assertThat(slump).isLessThan(before);
            assertThat(now).isGreaterThan(slump + 0.5).isGreaterThan(start);
            goals(records, player);
        }
    }

    /** A visitor sees what is said of a goal within reach, and of one that is not. */
    private static void goals(Records records, Player player) {
        LocalDate today = LAST.plusDays(1);
        Demo.share(records, player, today);
        List<Verdict> verdicts = records.plans().goals(player.id()).stream()
                .map(set -> Goals.of(Skills.of(records, player.id(), today), set.goal(), today))
                .map(answer -> ((Standing) answer).verdict())
                .toList();
        assertThat(verdicts).containsExactly(Verdict.WITHIN_REACH, Verdict.OUT_OF_REACH);
    }

    private static double points(Records records, Player player, LocalDate day) {
        return ((Form) Skills.of(records, player.id(), day).form(30))
                .pointsPerRound()
                .estimate();
    }

    private static Set<Drill> drills() {
        return Arrays.stream(Demo.log(LAST).split("\n"))
                .skip(1)
                .map(row -> Drill.valueOf(row.split(",")[3].toUpperCase(java.util.Locale.ROOT)))
                .collect(Collectors.toSet());
    }

    /** Rows hold up to eight bags; nearly all hold four. */
    @ParameterizedTest
    @ValueSource(ints = {10_000, 100_000, 1_000_000})
    void aBigLogHasAboutAsManyThrowsAsWanted(int wanted) {
        long rows = Demo.bigLog(LAST, wanted).lines().count() - 1;
        assertThat(rows * 4).isBetween(wanted * 3L / 4, wanted * 5L / 4);
    }
}
