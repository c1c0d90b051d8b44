package boardside.engine.skill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The chain over time with a Gaussian likelihood is the local level model: the flow of the Nile. */
class ChainTest {
    private static final double NOISE = 15099;
    private static final double STEP = 1469.1;

    /** One observation a node. */
    private record Flows(double[] flows) implements Likelihood {
        @Override
        public double value(double[] eta) {
            double sum = 0;
            for (int c = 0; c < flows.length; c++) {
                sum -= Math.pow(flows[c] - eta[2 * c], 2) / NOISE / 2;
            }
            return sum;
        }

        @Override
        public void slopes(double[] eta, double[] slope, double[] weight) {
            Arrays.fill(weight, 0);
            for (int c = 0; c < flows.length; c++) {
                slope[2 * c] = (flows[c] - eta[2 * c]) / NOISE;
                weight[3 * c] = 1 / NOISE;
            }
        }

        @Override
        public void change(double[] eta, double[] covariance, double[] change) {
            Arrays.fill(change, 0);
        }

        @Override
        public boolean canonical() {
            return true;
        }

        @Override
        public void observed(double[] eta, double[] weight) {
            slopes(eta, new double[eta.length], weight);
        }
    }

    /** Smoothed levels, their variances and the diffuse likelihood; with gaps, where a step covers several years. */
    @ParameterizedTest
    @ValueSource(strings = {"12-nile.csv", "12-nile-gaps.csv"})
    void smoothsTheNile(String file) {
        List<String[]> rows =
                Reference.rows(file).filter(row -> !row[1].isEmpty()).toList();
        int n = rows.size();
        double[] times =
                rows.stream().mapToDouble(row -> Double.parseDouble(row[0])).toArray();
        double[] flows =
                rows.stream().mapToDouble(row -> Double.parseDouble(row[1])).toArray();
        int[] upTo = new int[n + 1];
        Arrays.setAll(upTo, i -> i);
        Cells cells = new Cells(
                1, 0, new int[][] {{}}, new double[][] {{}}, new int[n], upTo, upTo.clone(), upTo.clone(), times);
        double[] step = new double[2 * (n - 1)];
        double[] stay = new double[2 * (n - 1)];
        double constant = -Math.log(2 * Math.PI) * (n - 1) / 2;
        for (int t = 0; t < n - 1; t++) {
            step[2 * t] = 1 / STEP / (times[t + 1] - times[t]);
            step[2 * t + 1] = 1;
            stay[2 * t] = 1;
            stay[2 * t + 1] = 1;
        }
        double diffuse = 1e-12;
        Precisions q = new Precisions(null, null, new double[] {diffuse, 1}, step, stay, new double[0]);
        Laplace laplace = new Laplace(cells, new Flows(flows), q, new double[2], 0);
        double marginal = laplace.fit(q, 1e-16);
        Covariances v = laplace.arrow.covariances(0);
        for (int t = 0; t < n; t++) {
            assertThat(laplace.effects[laplace.arrow.nodeAt + 2 * t])
                    .isCloseTo(Double.parseDouble(rows.get(t)[8]), within(1e-5));
            assertThat(v.node[3 * t]).isCloseTo(Double.parseDouble(rows.get(t)[9]), within(1e-3));
        }
        String quantity =
                file.contains("gaps") ? "gaps_diffuse_loglik_at_15099_1469.1" : "diffuse_loglik_at_15099_1469.1";
        double expected = Reference.rows("12-nile-fit.csv")
                .filter(row -> row[0].equals(quantity))
                .mapToDouble(row -> Double.parseDouble(row[1]))
                .findFirst()
                .orElseThrow();
        // A diffuse start leaves out the first observation's prior.
        double likelihood = marginal - n * Math.log(NOISE) / 2 - Math.log(diffuse) / 2 + constant;
        assertThat(likelihood).isCloseTo(expected, within(1e-4));
    }
}
