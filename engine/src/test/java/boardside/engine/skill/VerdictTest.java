package boardside.engine.skill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.engine.skill.ComparisonAnswer.Group;
import boardside.engine.skill.FormAnswer.Trend;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Verdicts at their borders, and that no sentence says more than its verdict. */
class VerdictTest {
    @ParameterizedTest
    @CsvSource({
        "0.975, SIGNAL",
        "0.97499, LEANING",
        "0.85, LEANING",
        "0.84999, OPEN",
        "0.5, OPEN",
        "0.15001, OPEN",
        "0.15, LEANING",
        "0.02501, LEANING",
        "0.025, SIGNAL",
        "1, SIGNAL",
        "0, SIGNAL"
    })
    void bordersBelongToTheSurerSide(double chance, Verdict verdict) {
        assertThat(Verdict.of(chance)).isEqualTo(verdict);
    }

    @Test
    void aChanceIsANumber() {
        assertThatThrownBy(() -> Verdict.of(Double.NaN)).hasMessageContaining("0 to 1, not NaN");
    }

    @ParameterizedTest
    @EnumSource(Verdict.class)
    void sentencesClaimNoMoreThanTheirVerdict(Verdict verdict) {
        Interval up = new Interval(0.6, 0.1, 1.1);
        Interval down = new Interval(-0.6, -1.1, -0.1);
        for (Interval change : List.of(up, down)) {
            check(verdict, Sentences.trend(new Trend(30, change, 0.9, verdict), true));
            check(verdict, Sentences.stake("league", change, verdict));
            check(verdict, Sentences.narrow(change, verdict));
        }
        List<Group> groups = List.of(group("red"), group("blue"));
        check(verdict, Sentences.comparison(List.of(Trait.BAG), groups, up, verdict, 0));
        assertThat(Sentences.trend(new Trend(30, down, 0.1, verdict), true)).contains("0.6 less");
        assertThat(Sentences.stake("league", down, verdict)).contains("0.6 less");
    }

    private static void check(Verdict verdict, String sentence) {
        switch (verdict) {
            case SIGNAL ->
                assertThat(sentence).contains("very likely", "not luck").doesNotContain("too early");
            case LEANING -> assertThat(sentence).contains("not settled").doesNotContain("very likely");
            case OPEN -> assertThat(sentence).contains("too early to say").doesNotContain("likely");
        }
    }

    /** Records are no experiment: even a sure difference is not laid to the narrow board. */
    @ParameterizedTest
    @EnumSource(Verdict.class)
    void trainingIsNeverProved(Verdict verdict) {
        Interval rise = new Interval(0.6, 0.1, 1.1);
        assertThat(Sentences.training(60, rise, rise, verdict, true))
                .containsAnyOf("the records cannot say", "other things changed as well", "cannot answer");
    }

    @ParameterizedTest
    @CsvSource({
        "50, 0.6, 0.5, usually throw",
        "70, 0.93, 0.08, good one",
        "30, 0.08, 0.93, quiet one",
        "80, 0.99, 0.02, unusual: you would throw that or more about 2 times in 100",
        "90, 0.999, 0.004, about 4 times in 1,000",
        "99, 0.9999, 0.0002, fewer than 1 time in 1"
    })
    void aTotalIsCalledUnusualOnlyWhereItIs(int total, double atMost, double atLeast, String words) {
        assertThat(Sentences.unusual(total, 10, atMost, atLeast)).contains(words);
    }

    /** Names and words of the records may be written small; a sentence begins with a capital all the same. */
    @ParameterizedTest
    @CsvSource({
        "0, A few more rounds with each",
        "1, A few more rounds with each",
        "2, About 2 more rounds with each",
        "1000, About 1000 more rounds with each",
        "1001, More than a thousand more rounds with each"
    })
    void whatWouldTellIsSaidInWords(long rounds, String words) {
        Interval lead = new Interval(0.2, -0.3, 0.7);
        String sentence = Sentences.comparison(
                List.of(Trait.FACE), List.of(group("slow", rounds), group("fast", rounds)), lead, Verdict.OPEN, 0);
        assertThat(sentence).startsWith("Slow looks 0.2 points").contains(". " + words + " would probably tell.");
    }

    private static Group group(String bag) {
        return group(bag, 2000);
    }

    private static Group group(String key, long roundsToSettle) {
        Interval share = new Interval(0.3, 0.2, 0.4);
        return new Group(List.of(key), 100, share, share, share, new Interval(5, 4, 6), 0.5, 0.1, roundsToSettle);
    }
}
