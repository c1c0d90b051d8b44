package boardside.engine.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.ReferenceTable;
import boardside.engine.ReferenceTable.Row;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The two-proportion case against published sizes and powers; sources in README-trials.md. */
class FixedLengthTest {
    static List<Row> sizes() {
        return ReferenceTable.read("07-sample-size.csv");
    }

    static List<Row> powers() {
        return ReferenceTable.read("07-power.csv");
    }

    @ParameterizedTest
    @MethodSource("sizes")
    void sizesAreThePublishedOnes(Row row) {
        double each = FixedLength.each(
                row.number("p1") - row.number("p2"), alike(row), apart(row), critical(row), row.number("power"));
        assertThat(each).isCloseTo(row.number("n_per_group"), within(5e-7));
        assertThat((int) Math.ceil(each)).isEqualTo(row.whole("n_per_group_rounded_up"));
    }

    @ParameterizedTest
    @MethodSource("powers")
    void powersAreThePublishedOnes(Row row) {
        double power = FixedLength.power(
                row.number("p1") - row.number("p2"), alike(row), apart(row), critical(row), row.number("n_per_group"));
        assertThat(power).isCloseTo(row.number("power"), within(5e-9));
    }

    @ParameterizedTest
    @MethodSource("sizes")
    void sizeAndPowerAreEachOthersInverse(Row row) {
        double difference = row.number("p1") - row.number("p2");
        double each = row.number("n_per_group");
        double power = FixedLength.power(difference, alike(row), apart(row), critical(row), each);
        assertThat(power).isCloseTo(row.number("power"), within(1e-8));
    }

    private static double critical(Row row) {
        return FixedLength.quantile(1 - row.number("alpha_two_sided") / 2);
    }

    private static double alike(Row row) {
        double p = (row.number("p1") + row.number("p2")) / 2;
        return 2 * p * (1 - p);
    }

    private static double apart(Row row) {
        double p1 = row.number("p1");
        double p2 = row.number("p2");
        return p1 * (1 - p1) + p2 * (1 - p2);
    }
}
