package boardside.engine.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.engine.ReferenceTable;
import boardside.engine.ReferenceTable.Row;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Against the properties in Williams 1949; sources in README-trials.md. */
class WilliamsSquareTest {
    static List<Row> counts() {
        return ReferenceTable.read("13-williams-counts.csv");
    }

    @ParameterizedTest
    @MethodSource("counts")
    void everyTreatmentStandsEverywhereAndFollowsEveryOtherEquallyOften(Row row) {
        int n = row.whole("treatments");
        int[][] sequences = WilliamsSquare.sequences(n);
        assertThat(sequences).hasDimensions(row.whole("sequences"), n);
        holds(row, Arrays.stream(sequences).map(WilliamsSquareTest::list).toList());
    }

    @ParameterizedTest
    @MethodSource("counts")
    void theSequencesAreThoseOfTheTable(Row row) {
        int n = row.whole("treatments");
        Set<List<Integer>> table = new HashSet<>();
        for (Row line : ReferenceTable.read("13-williams.csv")) {
            if (line.whole("treatments") == n) {
                table.add(Arrays.stream(line.text("order").split(" "))
                        .map(word -> Integer.parseInt(word) - 1)
                        .toList());
            }
        }
        assertThat(Arrays.stream(WilliamsSquare.sequences(n)).map(WilliamsSquareTest::list))
                .containsExactlyInAnyOrderElementsOf(table);
    }

    /** However rows and names are drawn, the blocks of each whole square have the same properties. */
    @ParameterizedTest
    @MethodSource("counts")
    void theBlocksOfATrialAreWholeSquares(Row row) {
        int n = row.whole("treatments");
        int rows = row.whole("sequences");
        List<Integer> inPlay = IntStream.range(0, n).boxed().toList();
        for (long seed = 0; seed < 20; seed++) {
            BlockOrder order = BlockOrder.of(new TrialDesign(n, 100, 0.5, seed));
            for (int square = 0; square < 3; square++) {
                int from = square * rows;
                holds(
                        row,
                        IntStream.range(from, from + rows)
                                .mapToObj(block -> order.of(block, inPlay))
                                .toList());
            }
        }
    }

    private static void holds(Row row, List<List<Integer>> sequences) {
        int n = row.whole("treatments");
        int[][] position = new int[n][n];
        int[][] next = new int[n][n];
        for (List<Integer> sequence : sequences) {
            assertThat(sequence)
                    .containsExactlyInAnyOrderElementsOf(
                            IntStream.range(0, n).boxed().toList());
            for (int i = 0; i < n; i++) {
                position[sequence.get(i)][i]++;
                if (i > 0) {
                    next[sequence.get(i - 1)][sequence.get(i)]++;
                }
            }
        }
        for (int a = 0; a < n; a++) {
            for (int b = 0; b < n; b++) {
                assertThat(position[a][b]).isEqualTo(row.whole("times_each_treatment_in_each_position"));
                assertThat(next[a][b]).isEqualTo(a == b ? 0 : row.whole("times_each_ordered_pair_in_a_row"));
            }
        }
    }

    private static List<Integer> list(int[] numbers) {
        List<Integer> list = new ArrayList<>();
        for (int number : numbers) {
            list.add(number);
        }
        return list;
    }

    /** There are 144 squares of four with their order; a hundred drawn evenly hold about 72 different ones. */
    @Test
    void ordersDifferFromSeedToSeedAndSquareToSquare() {
        List<Integer> inPlay = List.of(0, 1, 2, 3);
        Set<List<List<Integer>>> squares = new HashSet<>();
        for (long seed = 0; seed < 25; seed++) {
            BlockOrder order = BlockOrder.of(new TrialDesign(4, 50, 0.5, seed));
            for (int square = 0; square < 4; square++) {
                int from = 4 * square;
                squares.add(IntStream.range(from, from + 4)
                        .mapToObj(block -> order.of(block, inPlay))
                        .toList());
            }
        }
        assertThat(squares).hasSizeGreaterThan(60);
    }

    /** In either order half the time: 4 standard errors. */
    @Test
    void pairsAreThrownInRandomOrder() {
        int first = 0;
        int trials = 2000;
        for (long seed = 0; seed < trials; seed++) {
            first += BlockOrder.of(new TrialDesign(2, 50, 0.5, seed))
                                    .of(0, List.of(0, 1))
                                    .get(0)
                            == 0
                    ? 1
                    : 0;
        }
        assertThat(first / (double) trials).isBetween(0.5 - 4 * 0.0112, 0.5 + 4 * 0.0112);
    }

    @Test
    void fewerThanTwoTreatmentsHaveNoOrder() {
        assertThatThrownBy(() -> WilliamsSquare.sequences(1)).hasMessageContaining("2 treatments");
    }
}
