package boardside.engine.skill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.ReferenceTable;
import boardside.engine.ReferenceTable.Row;
import boardside.engine.skill.Marks.Flight;
import boardside.engine.skill.Marks.Place;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Sources of the tables: reference/README-dispersion.md. */
class BivariateNormalTest {
    private static final double ALL = Double.POSITIVE_INFINITY;

    static List<Row> hits() {
        return ReferenceTable.read("04-hit-probability.csv");
    }

    /** One-dimensional integral at 30 digits; DiDonato and Jarnagin 1961. */
    @ParameterizedTest
    @MethodSource("hits")
    void chanceOfACircle(Row row) {
        BivariateNormal law = new BivariateNormal(
                row.number("offset_x"), row.number("sigma_x"), row.number("offset_y"), row.number("sigma_y"));
        assertThat(law.inCircle(0, 0, row.number("radius"))).isCloseTo(row.number("probability"), within(1e-9));
    }

    /** However narrow one side is, the circle's chance goes over into the line's: 2 Phi(r / s) - 1. */
    @Test
    void aLawWithoutWidthIsALine() {
        double line = BivariateNormal.between(-1.5, 1.5);
        assertThat(new BivariateNormal(0, 1e-6, 0, 2).inCircle(0, 0, 3)).isCloseTo(line, within(1e-9));
        assertThat(new BivariateNormal(0, 2, 0, 1e-6).inCircle(0, 0, 3)).isCloseTo(line, within(1e-9));
        assertThat(new BivariateNormal(100, 1, 0, 1).inCircle(0, 0, 3)).isZero();
        assertThatThrownBy(() -> new BivariateNormal(0, Double.NaN, 0, 1)).hasMessageContaining("above 0");
    }

    static List<Row> boards() {
        return ReferenceTable.read("04-board-and-hole.csv");
    }

    /** Aims from the hole's centre; front edge at -39, back edge at 9. Printed to eight digits. */
    @ParameterizedTest
    @MethodSource("boards")
    void boardAndHole(Row row) {
        BivariateNormal law = new BivariateNormal(
                row.number("aim_x"), row.number("sigma_x"), Marks.HOLE_Y + row.number("aim_y"), row.number("sigma_y"));
        Marks marks = new Marks(Flight.AIRMAIL, 24, List.of(), Map.of());
        assertThat(law.inRectangle(-12, 12, 0, 48)).isCloseTo(row.number("p_inside_board_edges"), within(1e-8));
        double in = marks.chance(Place.IN, law);
        double on = marks.chance(Place.ON, law);
        assertThat(in).isCloseTo(row.number("p_inside_hole_edge"), within(1e-8));
        assertThat(on).isCloseTo(row.number("p_board_not_hole"), within(1e-8));
        assertThat(marks.chance(Place.OFF, law)).isCloseTo(row.number("p_miss"), within(1e-8));
        assertThat(3 * in + on).isCloseTo(row.number("expected_points"), within(1e-8));
    }

    /** A sliding bag that is not in or on is off, and off is left, right, short or long. */
    @ParameterizedTest
    @MethodSource("boards")
    void placesOfASlideAddUp(Row row) {
        BivariateNormal law = new BivariateNormal(
                row.number("aim_x"), row.number("sigma_x"), Marks.HOLE_Y + row.number("aim_y"), row.number("sigma_y"));
        Marks marks = new Marks(Flight.SLIDE, 24, List.of(), Map.of());
        double off = marks.chance(Place.OFF, law);
        assertThat(marks.chance(Place.IN, law) + marks.chance(Place.ON, law) + off)
                .isCloseTo(1, within(1e-12));
        double corners = law.inRectangle(-ALL, -12, -ALL, 0) + law.inRectangle(12, ALL, -ALL, 0);
        assertThat(marks.chance(Place.LEFT, law)
                        + marks.chance(Place.RIGHT, law)
                        + marks.chance(Place.SHORT, law)
                        + marks.chance(Place.LONG, law)
                        - corners)
                .isCloseTo(off, within(1e-12));
    }

    static List<Row> ellipses() {
        return ReferenceTable.read("04-radius-elliptical.csv");
    }

    /** Also tabulated by Harter 1960, JASA 55, 723-731. */
    @ParameterizedTest
    @MethodSource("ellipses")
    void radiusOfAnEllipse(Row row) {
        double small = Math.max(row.number("sigma_small_over_sigma_large"), 1e-5);
        BivariateNormal law = new BivariateNormal(0, 1, 0, small);
        assertThat(law.radius(0.5)).isCloseTo(row.number("r50_over_sigma_large"), within(1e-7));
        assertThat(law.radius(0.75)).isCloseTo(row.number("r75"), within(1e-7));
        assertThat(law.radius(0.9)).isCloseTo(row.number("r90"), within(1e-7));
        assertThat(law.radius(0.95)).isCloseTo(row.number("r95"), within(1e-7));
    }

    /** Factors on sigma of a circular law, Grubbs 1964. */
    @Test
    void constantsOfACircularLaw() {
        BivariateNormal law = new BivariateNormal(0, 1, 0, 1);
        Map<String, Double> shares = Map.of("cep_50", 0.5, "r_90", 0.9, "r_95", 0.95, "r_99", 0.99);
        Map<String, Double> radii =
                Map.of("share_within_1_sigma", 1.0, "share_within_2_sigma", 2.0, "share_within_3_sigma", 3.0);
        int checked = 0;
        for (Row row : ReferenceTable.read("04-circular-normal-constants.csv")) {
            String quantity = row.text("quantity");
            if (shares.containsKey(quantity)) {
                assertThat(law.radius(shares.get(quantity))).isCloseTo(row.number("value_times_sigma"), within(1e-8));
                checked++;
            } else if (radii.containsKey(quantity)) {
                assertThat(law.inCircle(0, 0, radii.get(quantity)))
                        .isCloseTo(row.number("value_times_sigma"), within(1e-8));
                checked++;
            }
        }
        assertThat(checked).isEqualTo(7);
    }
}
