package boardside.engine.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.rules.Tally;
import boardside.engine.skill.Interval;
import boardside.engine.skill.Trait;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class TrialTest {
    private static final TrialDesign TWO = new TrialDesign(2, 25, 0.5, 1);
    private static final TrialDesign THREE = new TrialDesign(3, 25, 0.5, 1);

    private static Unit unit(int candidate, int in, int on) {
        return new Unit(candidate, new Tally(in, on, 8 - in - on));
    }

    private static TrialState state(TrialDesign design, List<List<Unit>> runs) {
        List<String> names = List.of("Blue", "Red", "Green", "White").subList(0, design.candidates());
        return Trial.of(design, names, Set.of(Trait.BAG)).state(runs);
    }

    /** Two candidates: the residuals of the additive model are those of the paired t statistic. */
    @Test
    void twoCandidatesAreComparedAsPairs() {
        int[][] points = {{12, 9}, {15, 13}, {9, 10}, {17, 11}};
        List<List<Unit>> blocks = new ArrayList<>();
        double sum = 0;
        for (int[] pair : points) {
            blocks.add(List.of(unit(0, pair[0] / 3, pair[0] % 3), unit(1, pair[1] / 3, pair[1] % 3)));
            sum += pair[0] - pair[1];
        }
        double mean = sum / 4;
        double squares = 0;
        Tally bags = Tally.NONE;
        for (int[] pair : points) {
            squares += (pair[0] - pair[1] - mean) * (pair[0] - pair[1] - mean);
        }
        for (List<Unit> block : blocks) {
            bags = bags.plus(block.get(0).bags()).plus(block.get(1).bags());
        }
        double in = (bags.in() + 0.5) / (bags.thrown() + 1.5);
        double on = (bags.on() + 0.5) / (bags.thrown() + 1.5);
        double luck = 8 * (9 * in + on - (3 * in + on) * (3 * in + on));
        // Half the sum of squares of the differences, on 3 degrees of freedom, beside luck that counts for 20.
        double variance = (20 * luck + squares / 2) / 23;
        Look look = Look.at(List.of(0, 1), blocks);
        assertThat(look.points()[0] - look.points()[1]).isCloseTo(mean / 2, within(1e-12));
        assertThat(look.error()).isCloseTo(Math.sqrt(2 * variance / 4) / 2, within(1e-12));
    }

    /** What is common to a block (a good day, a bad run, another tiredness) leaves no trace in differences and errors. */
    @Test
    void effectsOfBlocksDropOut() {
        List<List<Unit>> plain = new ArrayList<>();
        List<List<Unit>> shifted = new ArrayList<>();
        for (int b = 0; b < 6; b++) {
            int move = b % 3;
            plain.add(List.of(unit(0, 3, b % 2), unit(1, 2, 1), unit(2, 3, 1)));
            shifted.add(List.of(unit(0, 3, b % 2 + move), unit(1, 2, 1 + move), unit(2, 3, 1 + move)));
        }
        Look one = Look.at(List.of(0, 1, 2), plain);
        Look other = Look.at(List.of(0, 1, 2), shifted);
        assertThat(other.points()[0] - other.points()[1]).isCloseTo(one.points()[0] - one.points()[1], within(1e-12));
        // The residuals are the same; only the luck of the bags, of which more are on, has changed.
        assertThat(residual(other, shifted)).isCloseTo(residual(one, plain), within(1e-9));
    }

    private static double residual(Look look, List<List<Unit>> blocks) {
        Tally bags = blocks.stream().flatMap(List::stream).map(Unit::bags).reduce(Tally.NONE, Tally::plus);
        double in = (bags.in() + 0.5) / (bags.thrown() + 1.5);
        double on = (bags.on() + 0.5) / (bags.thrown() + 1.5);
        double freedom = (blocks.size() - 1) * 2;
        return 4 * look.deviation() * look.deviation() * (20 + freedom) - 20 * 8 * Look.variance(in, on);
    }

    @Test
    void nothingIsSaidBeforeTheFirstBlock() {
        TrialState state = state(TWO, List.of());
        assertThat(state.ending()).isEqualTo(new Ending.UnderWay());
        assertThat(state.blocks()).isZero();
        assertThat(state.standings()).allSatisfy(standing -> {
            assertThat(standing.pointsPerRound()).isNull();
            assertThat(standing.behind()).isNull();
        });
        assertThat(state.sentence()).contains("2 rounds with each of Blue and Red");
    }

    @Test
    void aBlockThatARunLeavesUnfinishedIsThrownAnew() {
        List<List<Unit>> runs = List.of(
                List.of(unit(0, 3, 2), unit(1, 3, 1), unit(2, 2, 2), unit(1, 8, 0)),
                List.of(unit(2, 3, 1), unit(0, 3, 1), unit(1, 2, 3), unit(0, 4, 1)));
        TrialState state = state(THREE, runs);
        assertThat(state.blocks()).isEqualTo(2);
        assertThat(state.unused()).isEqualTo(1);
        assertThat(state.rest()).containsExactly(0);
        assertThat(state.standings())
                .allSatisfy(standing -> assertThat(standing.rounds()).isEqualTo(4));
        // The eight in of the unit that does not count show nowhere.
        assertThat(state.sentence()).contains("After 2 of at most 25 blocks");
    }

    @Test
    void whoIsClearlyBehindDropsOutAndTheRestGoOn() {
        List<Unit> run = new ArrayList<>();
        int blocks = 0;
        while (state(THREE, List.of(run)).inPlay().size() == 3) {
            run.addAll(List.of(unit(0, 4, 2), unit(1, 4, blocks % 2 + 1), unit(2, 1, 1)));
            blocks++;
        }
        TrialState dropped = state(THREE, List.of(run));
        assertThat(dropped.inPlay()).containsExactly(0, 1);
        assertThat(dropped.standings().get(2).candidate()).isEqualTo(2);
        assertThat(dropped.standings().get(2).droppedAfter()).isEqualTo(blocks);
        assertThat(dropped.sentence()).contains("Green is out since block " + blocks);
        // Blocks now hold two; the third is passed over should it be thrown all the same.
        run.addAll(List.of(unit(1, 4, 1), unit(0, 4, 1), unit(2, 8, 0)));
        TrialState next = state(THREE, List.of(run));
        assertThat(next.blocks()).isEqualTo(blocks + 1);
        assertThat(next.standings().get(2).rounds()).isEqualTo(2 * blocks);
        assertThat(next.unused()).isEqualTo(1);
    }

    @Test
    void aCandidateThatNeverComesAgainHadDroppedOut() {
        // A correction made later takes back what the third dropped out for; the blocks without it count all the same.
        List<Unit> run = new ArrayList<>(List.of(unit(0, 3, 1), unit(1, 3, 2), unit(2, 3, 1)));
        for (int i = 0; i < 3; i++) {
            run.addAll(List.of(unit(1, 3, 1), unit(0, 3, 2)));
        }
        run.add(unit(0, 3, 3));
        TrialState state = state(THREE, List.of(run));
        assertThat(state.inPlay()).containsExactly(0, 1);
        assertThat(state.blocks()).isEqualTo(4);
        assertThat(state.rest()).containsExactly(0);
    }

    @Test
    void aClearLeadWinsAndIsSaidWithItsRange() {
        List<Unit> run = new ArrayList<>();
        for (int i = 0; i < 25; i++) {
            run.addAll(List.of(unit(0, 5, i % 2), unit(1, 2, 2)));
        }
        TrialState state = state(TWO, List.of(run));
        assertThat(state.ending()).isEqualTo(new Ending.Winner(0));
        assertThat(state.over()).isTrue();
        assertThat(state.blocks()).isLessThan(25);
        assertThat(state.sentence()).startsWith("Throw Blue.").contains("the bag, not luck", "Red");
        Interval lead = state.lead();
        assertThat(state.sentence()).contains(String.format("%.1f points a round more", lead.estimate()));
        assertThat(lead.low()).isPositive();
        // What was thrown after the end changes nothing.
        assertThat(state.unused()).isEqualTo(2 * (25 - state.blocks()));
    }

    @Test
    void levelCandidatesAreAsGoodAsEqualWithinAWideMargin() {
        List<Unit> run = new ArrayList<>();
        for (int i = 0; i < 25; i++) {
            run.addAll(List.of(unit(0, 3, 1 + i % 2), unit(1, 3, 1 + (i + 1) % 2)));
        }
        TrialState wide = state(new TrialDesign(2, 25, 2, 1), List.of(run));
        assertThat(wide.ending()).isEqualTo(new Ending.AsGoodAsEqual(List.of(0, 1)));
        assertThat(wide.sentence())
                .contains("Blue and Red are as good as equal")
                .contains("within the 2 you would call equal")
                .contains("no need to buy");
        TrialState narrow = state(new TrialDesign(2, 25, 0.1, 1), List.of(run));
        assertThat(narrow.ending()).isEqualTo(new Ending.NotSettled());
        assertThat(narrow.sentence()).contains("Not settled after 50 rounds with each");
    }

    /** A normal belief with a variance of 0.49 and a measurement with 0.16 meet at the weights of their precisions. */
    @Test
    void differencesAreBelievedBetweenNothingAndWhatWasMeasured() {
        Interval believed = Trial.believed(1, 0.4);
        double weight = 0.49 / 0.65;
        assertThat(believed.estimate()).isCloseTo(weight, within(1e-12));
        assertThat(believed.high() - believed.low())
                .isCloseTo(2 * 1.6448536269514722 * Math.sqrt(weight * 0.16), within(1e-12));
    }

    /** Far from what is usual, what was measured is pulled by 1.5 standard errors and no more. */
    @Test
    void aLargeDifferenceIsNotTalkedAway() {
        assertThat(Trial.believed(6, 1).estimate()).isCloseTo(4.5, within(1e-12));
        assertThat(Trial.believed(-6, 1).estimate()).isCloseTo(-4.5, within(1e-12));
        assertThat(Trial.believed(0, 1).estimate()).isZero();
    }

    @Test
    void whatCannotBeIsRefused() {
        assertThatThrownBy(() -> new TrialDesign(9, 25, 0.5, 1)).hasMessageContaining("2 to 8 candidates");
        assertThatThrownBy(() -> new TrialDesign(2, 30, 0.5, 1)).hasMessageContaining("25, 50, 100 or 200");
        assertThatThrownBy(() -> new TrialDesign(2, 25, Double.NaN, 1)).hasMessageContaining("points a round");
        assertThatThrownBy(() -> new Unit(0, new Tally(4, 0, 0))).hasMessageContaining("two rounds of four");
        assertThatThrownBy(() -> state(TWO, List.of(List.of(unit(2, 1, 1))))).hasMessageContaining("none is 2");
        assertThatThrownBy(() -> Trial.of(TWO, List.of("Blue"), Set.of())).hasMessageContaining("a name for each");
    }

    @Test
    void oneMoreCandidateNeedsAWiderBoundary() {
        for (int longest : TrialDesign.LENGTHS) {
            assertThat(IntStream.rangeClosed(2, 8).mapToObj(n -> Boundaries.constant(n, longest)))
                    .isSorted();
            // Looking once would take 1.960 (and 1.645 on one side); looking again and again takes more.
            assertThat(Boundaries.constant(2, longest)).isBetween(1.96, 2.6);
            assertThat(Boundaries.equalConstant(longest)).isBetween(1.645, Boundaries.constant(2, longest));
        }
    }
}
