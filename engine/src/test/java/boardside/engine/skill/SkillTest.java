package boardside.engine.skill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.odds.BagChances;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Finish;
import boardside.engine.rules.Tally;
import boardside.engine.skill.ComparisonAnswer.Comparison;
import boardside.engine.skill.ComparisonAnswer.Group;
import boardside.engine.skill.ComparisonAnswer.NothingToCompare;
import boardside.engine.skill.FormAnswer.Form;
import boardside.engine.skill.FormAnswer.NoRecords;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

class SkillTest {
    private static Form form(List<RunCount> counts) {
        return (Form) Skill.of(counts, Practice.TODAY).form(30);
    }

    @Test
    void withoutRecordsTheAnswerSaysSo() {
        Skill skill = Skill.of(List.of(), Practice.TODAY);
        assertThat(skill.form(30)).isInstanceOf(NoRecords.class);
        assertThat(skill.form(30).sentence())
                .isEqualTo("No counted throws up to 30 June 2026 yet; throw a few rounds and ask again.");
        assertThat(skill.compare(List.of(Trait.BAG))).isInstanceOf(NothingToCompare.class);
        assertThat(skill.total(10)).isEmpty();
        assertThat(skill.history(1)).isEmpty();
    }

    @Test
    void whatComesAfterTheDayIsNotCounted() {
        List<RunCount> counts = List.of(
                Practice.run(-1, "red", new Finish(4, 0, 0), 10), Practice.run(0, "red", new Finish(1, 2, 1), 10));
        assertThat(form(counts).throwsCounted()).isEqualTo(40);
        assertThat(Skill.of(counts, Practice.TODAY.minusDays(1)).form(30)).isInstanceOf(NoRecords.class);
    }

    @Test
    void nothingButMissesIsSane() {
        Form form = form(List.of(Practice.run(0, "red", new Finish(0, 0, 4), 10)));
        assertThat(form.inHole().low()).isBetween(0.0, 0.005);
        assertThat(form.inHole().high()).isBetween(0.04, 0.15);
        assertThat(form.pointsPerRound().estimate()).isBetween(0.0, 0.5);
        assertThat(form.fourBaggers().high()).isBetween(0.0, 0.01);
    }

    @Test
    void nothingButHitsIsSane() {
        Form form = form(List.of(Practice.run(0, "red", new Finish(4, 0, 0), 10)));
        assertThat(form.inHole().high()).isBetween(0.98, 1.0);
        assertThat(form.pointsPerRound().low()).isBetween(10.0, 11.9);
        assertThat(form.pointsPerRound().high()).isLessThanOrEqualTo(12);
    }

    @Test
    void oldRecordsAnswerWhereThereAreNoRecentOnes() {
        Form old = form(List.of(Practice.run(90, "red", new Finish(1, 2, 1), 10)));
        assertThat(old.recent()).isFalse();
        assertThat(old.sentence()).contains("None of them is from the last 90 days.");
        Form both = form(List.of(
                Practice.run(90, "red", new Finish(1, 2, 1), 10), Practice.run(89, "red", new Finish(1, 2, 1), 10)));
        assertThat(both.recent()).isTrue();
        assertThat(both.throwsCounted()).isEqualTo(40);
    }

    @Test
    void formSpeaksOfRegulationBoardsWhereThereAreAny() {
        RunCount narrow = Practice.run(1, "red", BoardKind.NARROW, new Tally(0, 10, 30), Practice.none());
        assertThat(form(List.of(narrow)).throwsCounted()).isEqualTo(40);
        Form both = form(List.of(narrow, Practice.run(2, "red", new Finish(2, 1, 1), 5)));
        assertThat(both.throwsCounted()).isEqualTo(60);
        assertThat(both.pointsPerRound().estimate())
                .isGreaterThan(form(List.of(narrow)).pointsPerRound().estimate() + 1);
    }

    @Test
    void answersDoNotDependOnTheOrderOfRecords() {
        List<RunCount> counts = season();
        Form form = form(counts);
        Collections.reverse(counts);
        Form again = form(counts);
        assertThat(again.inHole()).isEqualTo(form.inHole());
        assertThat(again.sentence()).isEqualTo(form.sentence());
        assertThat(again.trend()).isEqualTo(form.trend());
    }

    @Test
    void aTrendOverNothingIsUnknown() {
        Form form = form(List.of(Practice.run(0, "red", new Finish(1, 2, 1), 10)));
        assertThat(form.trend().probabilityBetter()).isBetween(0.4, 0.6);
        assertThat(form.trend().verdict()).isEqualTo(Verdict.OPEN);
        assertThat(form.sentence()).endsWith("There is nothing from 30 days ago or earlier to compare with yet.");
    }

    @Test
    void aTrendComparesTodayWithThen() {
        List<RunCount> counts = new ArrayList<>();
        for (int day = 0; day < 120; day += 2) {
            counts.add(Practice.run(day, "red", day < 30 ? new Finish(2, 1, 1) : new Finish(1, 2, 1), 10));
        }
        Form form = form(counts);
        // 2-1-1 makes 7, 1-2-1 makes 5.
        assertThat(((Form) Skill.of(counts, Practice.TODAY).form(60))
                        .trend()
                        .change()
                        .estimate())
                .isBetween(1.2, 2.2);
        assertThat(((Form) Skill.of(counts, Practice.TODAY).form(60)).trend().verdict())
                .isEqualTo(Verdict.SIGNAL);
        assertThat(form.sentence()).contains("more than 30 days ago");
        assertThatThrownBy(() -> Skill.of(counts, Practice.TODAY).form(0)).hasMessageContaining("1 day or more, not 0");
    }

    @Test
    void comparesBagsMostPointsFirst() {
        List<RunCount> counts = season();
        counts.add(Practice.run(3, "", new Finish(1, 1, 2), 2));
        Comparison comparison = (Comparison) Skill.of(counts, Practice.TODAY).compare(List.of(Trait.BAG));
        assertThat(comparison.groups().stream().map(Group::key)).containsExactly(List.of("blue"), List.of("red"));
        assertThat(comparison.leftOut()).isEqualTo(8);
        Group blue = comparison.groups().get(0);
        Group red = comparison.groups().get(1);
        assertThat(blue.probabilityBest() + red.probabilityBest()).isCloseTo(1, within(1e-9));
        assertThat(blue.expectedLoss()).isLessThan(red.expectedLoss());
        // E[max] - E[blue] against E[max] - E[red]: they differ by the difference of the means.
        assertThat(red.expectedLoss() - blue.expectedLoss())
                .isCloseTo(comparison.lead().estimate(), within(1e-9));
        assertThat(comparison.sentence())
                .startsWith("Blue looks")
                .contains("Days and dates are allowed for.")
                .endsWith("8 bags are left out: no bag set was recorded.");
    }

    @Test
    void comparesByTwoThingsTogether() {
        Comparison comparison =
                (Comparison) Skill.of(season(), Practice.TODAY).compare(List.of(Trait.APPROACH, Trait.BAG));
        assertThat(comparison.groups().get(0).key()).containsExactly("conservative", "blue");
        assertThatThrownBy(() -> Skill.of(season(), Practice.TODAY).compare(List.of(Trait.BAG, Trait.BAG)))
                .hasMessageContaining("each only once");
    }

    @Test
    void aLoneGroupIsBestAndSettled() {
        Comparison comparison = (Comparison) Skill.of(season(), Practice.TODAY).compare(List.of(Trait.FACE));
        assertThat(comparison.groups()).hasSize(1);
        Group only = comparison.groups().get(0);
        assertThat(only.probabilityBest()).isEqualTo(1);
        assertThat(only.expectedLoss()).isZero();
        assertThat(only.roundsToSettle()).isZero();
        assertThat(comparison.sentence()).startsWith("Only slow so far").contains("Nothing to compare it with yet.");
    }

    @Test
    void withoutAWordToTellThemApartNothingIsCompared() {
        ComparisonAnswer answer = Skill.of(season(), Practice.TODAY).compare(List.of(Trait.CONDITIONS));
        assertThat(answer).isInstanceOf(NothingToCompare.class);
        assertThat(answer.sentence()).contains("none of your").contains("conditions");
    }

    @Test
    void alikeBagsWouldTakeManyRounds() {
        List<RunCount> counts = List.of(
                Practice.run(1, "red", new Finish(1, 2, 1), 50), Practice.run(1, "blue", new Finish(1, 2, 1), 50));
        Comparison comparison = (Comparison) Skill.of(counts, Practice.TODAY).compare(List.of(Trait.BAG));
        assertThat(comparison.verdict()).isEqualTo(Verdict.OPEN);
        assertThat(comparison.groups().get(0).roundsToSettle()).isGreaterThan(1000);
        assertThat(comparison.sentence()).contains(". More than a thousand more rounds with each");
    }

    @Test
    void historyAndBandFollowTheCalendar() {
        Skill skill = Skill.of(season(), Practice.TODAY);
        List<DayForm> days = skill.history(1);
        assertThat(days).hasSize(20).isSortedAccordingTo((a, b) -> a.from().compareTo(b.from()));
        assertThat(days).allSatisfy(day -> assertThat(day.from()).isEqualTo(day.to()));
        List<DayForm> weeks = skill.history(7);
        assertThat(weeks.stream().mapToLong(DayForm::throwsCounted).sum())
                .isEqualTo(days.stream().mapToLong(DayForm::throwsCounted).sum());
        assertThat(skill.band(List.of(Practice.TODAY, Practice.TODAY.minusDays(400))))
                .containsOnlyKeys(Practice.TODAY);
    }

    /** Against 200,000 simulated totals of a known player: with 10,000 rounds behind it, only luck is left. */
    @Test
    void aKnownPlayersTotalIsTheBinomialsOwn() {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(4);
        List<RunCount> counts = new ArrayList<>();
        for (int day = 0; day < 80; day++) {
            counts.add(Practice.run(day, "red", new Finish(1, 2, 1), 125));
        }
        TotalForecast forecast = Skill.of(counts, Practice.TODAY).total(10).orElseThrow();
        assertThat(forecast.chances().stream().mapToDouble(chance -> chance).sum())
                .isCloseTo(1, within(1e-9));
        assertThat(forecast.mean()).isCloseTo(50, within(0.1));
        // Forty bags of variance 9/4 + 1/2 - (3/4 + 1/2)^2 = 19/16.
        assertThat(forecast.standardDeviation()).isCloseTo(Math.sqrt(47.5), within(0.1));
        int low = 0;
        for (int i = 0; i < 20_000; i++) {
            int points =
                    Practice.thrown(random, 0, "red", 0.25, 0.5, 10).known().points();
            low += points <= forecast.quantile(0.1) ? 1 : 0;
        }
        assertThat(low / 20_000.0).isCloseTo(forecast.atMost(forecast.quantile(0.1)), within(0.012));
        assertThat(forecast.atLeast(0)).isCloseTo(1, within(1e-9));
        assertThat(forecast.atMost(120)).isEqualTo(1);
    }

    @Test
    void stepsLeadFromTheLikeliestChancesToEitherEnd() {
        BagChances likely = new BagChances(0.5, 0.3);
        BagChances low = new BagChances(0.4, 0.32);
        BagChances high = new BagChances(0.6, 0.28);
        List<BagChances> steps = new ChanceRange(likely, low, high).steps();
        assertThat(steps).hasSize(9).startsWith(likely).endsWith(high).contains(low);
        assertThat(steps.stream().map(BagChances::pointsPerRound))
                .allSatisfy(points -> assertThat(points).isBetween(low.pointsPerRound(), high.pointsPerRound()))
                .doesNotHaveDuplicates();
        assertThat(steps.get(2).in()).isCloseTo(0.45, within(1e-15));
        assertThat(steps.get(2).on()).isCloseTo(0.31, within(1e-15));
    }

    /** Forty days, blue a little better than red. */
    private static List<RunCount> season() {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(7);
        List<RunCount> counts = new ArrayList<>();
        for (int day = 0; day < 40; day += 2) {
            counts.add(Practice.thrown(random, day, "red", 0.35, 0.4, 10));
            counts.add(Practice.thrown(random, day, "blue", 0.39, 0.4, 10));
        }
        return counts;
    }
}
