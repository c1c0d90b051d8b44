package boardside.engine.skill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.ReferenceTable;
import boardside.engine.ReferenceTable.Row;
import boardside.engine.skill.PointGroup.Point;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** Sources of the tables: reference/README-dispersion.md. */
class PointGroupTest {
    private static PointGroup twelveBags() {
        return PointGroup.of(ReferenceTable.read("04-group-points.csv").stream()
                .map(row -> new Point(row.number("x_in"), row.number("y_in")))
                .toList());
    }

    /** The same digits from two programs. */
    @Test
    void statisticsOfTwelveBags() {
        PointGroup group = twelveBags();
        Point zero = new Point(0, 0);
        Map<String, Double> found = new HashMap<>();
        found.put("n", (double) group.number());
        found.put("mean_x", group.meanX());
        found.put("mean_y", group.meanY());
        found.put("var_x", group.varianceX());
        found.put("var_y", group.varianceY());
        found.put("cov_xy", group.covariance());
        found.put("corr_xy", group.covariance() / Math.sqrt(group.varianceX() * group.varianceY()));
        found.put("mean_radius", group.meanRadius());
        found.put("median_radius", group.medianRadius());
        found.put("max_radius", group.maxRadius());
        found.put("extreme_spread", group.extremeSpread());
        found.put("sigma_circular_pooled", group.sigma());
        found.put("sigma_circular_unbiased", group.sigmaUnbiased());
        found.put("sigma_ci95_low", group.sigmaInterval(0.95).low());
        found.put("sigma_ci95_high", group.sigmaInterval(0.95).high());
        found.put("eigen_large", group.longVariance());
        found.put("eigen_small", group.shortVariance());
        found.put("axis_angle_deg", group.axisDegrees());
        found.put("hotelling_T2_vs_0", group.hotelling(zero));
        found.put("hotelling_p", group.hotellingP(zero));
        for (Row row : ReferenceTable.read("04-group-results.csv")) {
            // Half the sum of both ranges says nothing that the extreme spread does not.
            if (!row.text("quantity").equals("figure_of_merit")) {
                assertThat(found.get(row.text("quantity")))
                        .as(row.text("quantity"))
                        .isCloseTo(row.number("value"), within(1e-8));
            }
        }
    }

    /** Against the lookup table of R package shotGroups 0.8.4 and the closed form of the mean radius. */
    @Test
    void groupsOfNormalPointsSpreadAsTabulated() {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(1964);
        ZigguratSampler.NormalizedGaussian normal = ZigguratSampler.NormalizedGaussian.of(random);
        int groups = 20_000;
        for (Row row : ReferenceTable.read("04-extreme-spread.csv")) {
            int bags = row.whole("bags");
            if (bags < 3 || bags > 12) {
                continue;
            }
            double spread = 0;
            double radius = 0;
            for (int i = 0; i < groups; i++) {
                List<Point> points = new ArrayList<>();
                for (int bag = 0; bag < bags; bag++) {
                    points.add(new Point(normal.sample(), normal.sample()));
                }
                PointGroup group = PointGroup.of(points);
                spread += group.extremeSpread() / groups;
                radius += group.meanRadius() / groups;
            }
            // Four standard errors, plus half a digit of the table.
            double error = 4 / Math.sqrt(groups);
            assertThat(spread)
                    .as(bags + " bags")
                    .isCloseTo(row.number("es_mean_table"), within(error * row.number("es_sd_table") + 5e-5));
            assertThat(radius)
                    .as(bags + " bags")
                    .isCloseTo(row.number("mean_radius_exact"), within(error * row.number("mean_radius_sd_simulated")));
        }
    }

    @Test
    void twoPointsAreNoGroup() {
        assertThatThrownBy(() -> PointGroup.of(List.of(new Point(0, 0), new Point(1, 1))))
                .hasMessage("a group is 3 points or more, not 2");
        assertThatThrownBy(() -> new Point(Double.NaN, 0)).hasMessageContaining("two numbers");
    }
}
