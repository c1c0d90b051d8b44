package boardside.engine.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.engine.ReferenceTable;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FinishTest {
    /** Points of the ways a bag can end: ACL rules, scoring (01-rules-numbers.csv). */
    @Test
    void scoresBagsAsPublished() {
        Map<String, Integer> published = ReferenceTable.read("01-rules-numbers.csv").stream()
                .filter(row -> row.text("item").startsWith("points_")
                        || row.text("item").startsWith("bags_per_side")
                        || row.text("item").startsWith("max_raw"))
                .collect(Collectors.toMap(row -> row.text("item"), row -> row.whole("value")));
        assertThat(Outcome.IN.points()).isEqualTo(published.get("points_in_hole"));
        assertThat(Outcome.ON.points()).isEqualTo(published.get("points_on_board"));
        assertThat(Outcome.OFF.points()).isEqualTo(published.get("points_off_board"));
        assertThat(Finish.BAGS).isEqualTo(published.get("bags_per_side_per_round"));
        assertThat(new Finish(4, 0, 0).points()).isEqualTo(published.get("max_raw_points_per_side_per_round"));
    }

    /** Four bags in three places: C(6, 2) = 15 ways (stars and bars). */
    @Test
    void thereAreFifteenFinishesInTheOrderOfTheirIndex() {
        assertThat(Finish.values()).hasSize(15).doesNotHaveDuplicates();
        assertThat(Finish.values())
                .extracting(Finish::index)
                .isEqualTo(IntStream.range(0, 15).boxed().toList());
    }

    /** Common practice, no source: exactly 3, 4 and 6 arise in two ways, 11 cannot be thrown. */
    @Test
    void totalsArisePracticallyAsPlayersSay() {
        assertThat(IntStream.rangeClosed(0, 12)
                        .filter(points -> Finish.ofTotal(points).size() == 2)
                        .boxed())
                .containsExactly(3, 4, 6);
        assertThat(IntStream.rangeClosed(0, 12)
                        .filter(points -> Finish.ofTotal(points).isEmpty())
                        .boxed())
                .containsExactly(11);
        assertThat(Finish.ofTotal(6)).containsExactly(new Finish(1, 3, 0), new Finish(2, 0, 2));
        assertThat(Finish.ofTotal(13)).isEmpty();
        assertThat(Finish.ofTotal(-1)).isEmpty();
    }

    /** Common practice, no source: 3 in and 1 off is 9. */
    @ParameterizedTest
    @CsvSource({"3,0,1,9", "4,0,0,12", "0,4,0,4", "2,2,0,8", "1,3,0,6", "2,0,2,6", "0,0,4,0", "3,1,0,10"})
    void addsUpAFinish(int in, int on, int off, int points) {
        assertThat(new Finish(in, on, off).points()).isEqualTo(points);
        assertThat(new Tally(in, on, off).points()).isEqualTo(points);
    }

    @Test
    void onlyFourInIsAFourBagger() {
        assertThat(Finish.values().stream().filter(Finish::fourBagger)).containsExactly(new Finish(4, 0, 0));
    }

    /** Common practice, no source: ten rounds of four make at most 120. */
    @Test
    void tenRoundsMakeAtMost120() {
        List<Tally> perfect =
                IntStream.range(0, 10).mapToObj(i -> new Tally(4, 0, 0)).toList();
        Tally sum = perfect.stream().reduce(Tally.NONE, Tally::plus);
        assertThat(sum.points()).isEqualTo(120);
        assertThat(sum.thrown()).isEqualTo(40);
        assertThat(sum.pointsPerRound()).isEqualTo(12);
    }

    @Test
    void pointsPerRoundIsPerFourBags() {
        assertThat(new Tally(3, 1, 2).pointsPerRound()).isEqualTo(4.0 * 10 / 6);
        assertThat(Tally.NONE.pointsPerRound()).isNaN();
    }

    @Test
    void refusesWhatFourBagsCannotDo() {
        assertThatThrownBy(() -> new Finish(3, 2, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(
                        "a finish of four bags cannot be 3 in, 2 on, 0 off; the three are 0 or more and add up to 4");
        assertThatThrownBy(() -> new Finish(-1, 5, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(
                        "a finish of four bags cannot be -1 in, 5 on, 0 off; the three are 0 or more and add up to 4");
        assertThatThrownBy(() -> new Tally(1, -2, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("counts of bags are 0 or more, not 1 in, -2 on, 0 off");
    }

    @Test
    void talliesAddUpOutcomeByOutcome() {
        assertThat(new Tally(1, 2, 3).plus(new Tally(10, 20, 40))).isEqualTo(new Tally(11, 22, 43));
    }
}
