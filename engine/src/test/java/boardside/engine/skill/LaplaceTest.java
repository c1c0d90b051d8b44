package boardside.engine.skill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.ejml.simple.SimpleMatrix;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The solver against dense matrices (EJML) and its derivatives against finite differences, on made-up structures. */
class LaplaceTest {
    @ParameterizedTest
    @CsvSource({"1, 1, 1, 0", "2, 1, 1, 2", "3, 2, 1, 0", "4, 2, 1, 3", "5, 2, 0.98, 0", "6, 2, 0.9, 1"})
    void agreesWithDenseMatrices(long seed, int predictors, double stay, int daily) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        Cells cells = MadeUpCells.cells(random, predictors, 6, 7, daily);
        Variances variances = MadeUpCells.variances(cells, stay);
        Precisions q = variances.precisions(MadeUpCells.theta(random, variances));
        BagCounts counts = MadeUpCells.counts(random, predictors, cells.cells(), true);
        Laplace laplace = new Laplace(cells, counts, q, new double[] {0.5, -0.2}, cells.border());
        double marginal = laplace.fit(q, 1e-14);
        Arrow arrow = laplace.arrow;
        int n = arrow.size();
        // One row per predictor of a cell: which effects it sums.
        SimpleMatrix design = new SimpleMatrix(2 * cells.cells(), n);
        for (int t = 0; t < cells.nodes(); t++) {
            for (int d = cells.nodeDays[t]; d < cells.nodeDays[t + 1]; d++) {
                for (int r = cells.dayRuns[d]; r < cells.dayRuns[d + 1]; r++) {
                    for (int c = cells.runCells[r]; c < cells.runCells[r + 1]; c++) {
                        for (int l = 0; l < predictors; l++) {
                            design.set(2 * c + l, 2 * r + l, 1);
                            design.set(2 * c + l, arrow.dayAt + 2 * d + l, 1);
                            design.set(2 * c + l, arrow.nodeAt + 2 * t + l, 1);
                            int[] columns = cells.columns[cells.pattern[c]];
                            for (int i = 0; i < columns.length; i++) {
                                design.set(
                                        2 * c + l,
                                        arrow.borderAt + predictors * columns[i] + l,
                                        cells.values[cells.pattern[c]][i]);
                            }
                            for (int i = 0; i < daily; i++) {
                                design.set(
                                        2 * c + l,
                                        arrow.borderAt + cells.dailyAt() + predictors * i + l,
                                        cells.dayValues[d][i]);
                            }
                        }
                    }
                }
            }
        }
        SimpleMatrix weights = new SimpleMatrix(2 * cells.cells(), 2 * cells.cells());
        double[] eta = new double[2 * cells.cells()];
        double[] slope = new double[eta.length];
        double[] w = new double[3 * cells.cells()];
        SimpleMatrix effects = new SimpleMatrix(n, 1, true, laplace.effects);
        SimpleMatrix predicted = design.mult(effects);
        for (int i = 0; i < eta.length; i++) {
            eta[i] = predicted.get(i) + (i % 2 == 0 ? 0.5 : -0.2);
        }
        counts.slopes(eta, slope, w);
        for (int c = 0; c < cells.cells(); c++) {
            weights.set(2 * c, 2 * c, w[3 * c]);
            weights.set(2 * c, 2 * c + 1, w[3 * c + 1]);
            weights.set(2 * c + 1, 2 * c, w[3 * c + 1]);
            weights.set(2 * c + 1, 2 * c + 1, w[3 * c + 2]);
        }
        SimpleMatrix prior = prior(q, arrow);
        SimpleMatrix h = prior.plus(design.transpose().mult(weights).mult(design));
        // The mode: the gradient is 0.
        SimpleMatrix gradient = design.transpose()
                .mult(new SimpleMatrix(slope.length, 1, true, slope))
                .minus(prior.mult(effects));
        assertThat(gradient.elementMaxAbs()).isLessThan(1e-5);
        assertThat(arrow.logDeterminant(cells.border())).isCloseTo(Math.log(h.determinant()), within(1e-9));
        double value = counts.value(eta)
                - effects.transpose().mult(prior).mult(effects).get(0) / 2
                + Math.log(prior.determinant()) / 2
                - Math.log(h.determinant()) / 2;
        assertThat(marginal).isCloseTo(value, within(1e-9));
        double[] rhs = new double[n];
        for (int i = 0; i < n; i++) {
            rhs[i] = random.nextDouble() - 0.5;
        }
        if (predictors == 1) {
            for (int i = 1; i < arrow.borderAt; i += 2) {
                rhs[i] = 0;
            }
        }
        SimpleMatrix solved = h.solve(new SimpleMatrix(n, 1, true, rhs));
        arrow.solve(rhs, cells.border());
        for (int i = 0; i < n; i++) {
            assertThat(rhs[i]).isCloseTo(solved.get(i), within(1e-9));
        }
        SimpleMatrix inverse = h.invert();
        Covariances v = arrow.covariances(cells.border());
        SimpleMatrix predictor = design.mult(inverse).mult(design.transpose());
        for (int c = 0; c < cells.cells(); c++) {
            assertThat(v.cell[3 * c]).isCloseTo(predictor.get(2 * c, 2 * c), within(1e-9));
            if (predictors == 1) {
                continue;
            }
            assertThat(v.cell[3 * c + 1]).isCloseTo(predictor.get(2 * c, 2 * c + 1), within(1e-9));
            assertThat(v.cell[3 * c + 2]).isCloseTo(predictor.get(2 * c + 1, 2 * c + 1), within(1e-9));
        }
        check(v.runs, inverse, 0, arrow.dayAt, predictors);
        check(v.days, inverse, arrow.dayAt, arrow.nodeAt, predictors);
        for (int t = 0; t < cells.nodes(); t++) {
            int at = arrow.nodeAt + 2 * t;
            assertThat(v.node[3 * t]).isCloseTo(inverse.get(at, at), within(1e-9));
            for (int i = 0; i < arrow.border; i++) {
                assertThat(v.nodeBorder[2 * arrow.border * t + i])
                        .isCloseTo(inverse.get(at, arrow.borderAt + i), within(1e-9));
            }
            if (t < cells.nodes() - 1) {
                double a = q.stay()[2 * t];
                assertThat(v.step[2 * t])
                        .isCloseTo(
                                inverse.get(at + 2, at + 2)
                                        - 2 * a * inverse.get(at, at + 2)
                                        + a * a * inverse.get(at, at),
                                within(1e-9));
            }
        }
    }

    private static void check(double[] sums, SimpleMatrix inverse, int from, int to, int predictors) {
        double s00 = 0;
        double s01 = 0;
        double s11 = 0;
        for (int i = from; i < to; i += 2) {
            s00 += inverse.get(i, i);
            s01 += inverse.get(i, i + 1);
            s11 += inverse.get(i + 1, i + 1);
        }
        assertThat(sums[0]).isCloseTo(s00, within(1e-9));
        if (predictors == 2) {
            assertThat(sums[1]).isCloseTo(s01, within(1e-9));
            assertThat(sums[2]).isCloseTo(s11, within(1e-9));
        }
    }

    private static SimpleMatrix prior(Precisions q, Arrow arrow) {
        SimpleMatrix prior = new SimpleMatrix(arrow.size(), arrow.size());
        blocks(prior, java.util.Objects.requireNonNull(q.run()), 0, arrow.dayAt);
        blocks(prior, java.util.Objects.requireNonNull(q.day()), arrow.dayAt, arrow.nodeAt);
        for (int l = 0; l < 2; l++) {
            prior.set(arrow.nodeAt + l, arrow.nodeAt + l, java.util.Objects.requireNonNull(q.first())[l]);
        }
        for (int i = 0; i < q.step().length; i++) {
            int at = arrow.nodeAt + i;
            double p = q.step()[i];
            double a = q.stay()[i];
            prior.set(at, at, prior.get(at, at) + a * a * p);
            prior.set(at + 2, at + 2, prior.get(at + 2, at + 2) + p);
            prior.set(at, at + 2, -a * p);
            prior.set(at + 2, at, -a * p);
        }
        for (int i = 0; i < arrow.border; i++) {
            prior.set(arrow.borderAt + i, arrow.borderAt + i, q.border()[i]);
        }
        return prior;
    }

    private static void blocks(SimpleMatrix prior, double[] p, int from, int to) {
        for (int i = from; i < to; i += 2) {
            prior.set(i, i, p[0]);
            prior.set(i, i + 1, p[1]);
            prior.set(i + 1, i, p[1]);
            prior.set(i + 1, i + 1, p[2]);
        }
    }

    /** Central differences of the log marginal posterior by each hyperparameter. */
    @ParameterizedTest
    @CsvSource({"11, 1, false, 1, 0", "12, 2, false, 1, 2", "13, 2, true, 1, 0", "14, 2, true, 0.97, 2"})
    void theGradientAgreesWithFiniteDifferences(long seed, int predictors, boolean only, double stay, int daily) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        Cells cells = MadeUpCells.cells(random, predictors, 5, 7, daily);
        Variances variances = MadeUpCells.variances(cells, stay);
        double[] theta = MadeUpCells.theta(random, variances);
        Laplace laplace = new Laplace(
                cells,
                MadeUpCells.counts(random, predictors, cells.cells(), only),
                variances.precisions(theta),
                new double[] {0.5, -0.2},
                cells.border());
        laplace.fit(variances.precisions(theta), 1e-16);
        double[] gradient = variances.gradient(theta, laplace.slopes(), laplace.precisions());
        for (int i = 0; i < theta.length; i++) {
            double h = 1e-4;
            double[] up = theta.clone();
            double[] down = theta.clone();
            up[i] += h;
            down[i] -= h;
            double slope = (laplace.fit(variances.precisions(up), 1e-16)
                            + variances.prior(up)
                            - laplace.fit(variances.precisions(down), 1e-16)
                            - variances.prior(down))
                    / (2 * h);
            assertThat(gradient[i])
                    .as("theta " + i + " of " + Arrays.toString(theta))
                    .isCloseTo(slope, within(1e-5));
        }
    }
}
