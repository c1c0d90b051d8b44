package boardside.engine.skill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/**
 * The chance that one of two shares is larger. Under a flat prior on the logit, a hits and b misses leave the belief
 * Beta(a, b), for which the chance has a closed form (E. Miller, "Formulas for Bayesian A/B Testing", 2015; check values in
 * 07-beta-comparison.csv). Laplace's approximation comes within 0.01 of it from ten of each on.
 */
class TwoSharesTest {
    @Test
    void agreeWithTheClosedForm() {
        List<double[]> cases = Reference.rows("07-beta-comparison.csv")
                .map(row ->
                        new double[] {number(row[1]), number(row[2]), number(row[3]), number(row[4]), number(row[5])})
                .filter(row -> Math.min(Math.min(row[0], row[1]), Math.min(row[2], row[3])) >= 10)
                .toList();
        assertThat(cases).hasSizeGreaterThan(3);
        for (double[] each : cases) {
            Cells cells = new Cells(
                    1,
                    2,
                    new int[][] {{0}, {1}},
                    new double[][] {{1}, {1}},
                    new int[] {0, 1},
                    new int[] {0, 2},
                    new int[] {0, 1},
                    new int[] {0, 1},
                    new double[] {0});
            double[] none = new double[2];
            BagCounts counts = new BagCounts(
                    new double[] {each[0] + each[1], each[2] + each[3]},
                    new double[] {each[0], each[2]},
                    none,
                    none,
                    none,
                    none);
            Precisions flat = new Precisions(null, null, null, new double[0], new double[0], new double[2]);
            Laplace laplace = new Laplace(cells, counts, flat, new double[2], 2);
            laplace.fit(flat, 1e-14);
            double[] v = laplace.arrow.covariances(2).border;
            double chance = NormalDistribution.of(0, 1)
                    .cumulativeProbability(
                            (laplace.effects[1] - laplace.effects[0]) / Math.sqrt(v[0] + v[3] - 2 * v[1]));
            assertThat(chance).isCloseTo(each[4], within(0.01));
        }
    }

    private static double number(String text) {
        return Double.parseDouble(text);
    }
}
