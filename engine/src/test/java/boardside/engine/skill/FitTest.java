package boardside.engine.skill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.rules.Finish;
import boardside.engine.skill.ForecastsAnswer.Forecasts;
import boardside.engine.skill.ForecastsAnswer.NothingForecast;
import boardside.engine.skill.FormAnswer.Form;
import boardside.engine.skill.simulated.Drift;
import boardside.engine.skill.simulated.Regime;
import boardside.engine.skill.simulated.SimulatedPlayer;
import boardside.engine.skill.simulated.Spread;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

class FitTest {
    private static List<RunCount> log(int rounds, long seed) {
        return new SimulatedPlayer(
                        Regime.usual(rounds, Drift.SMOOTH, Spread.UNIFORM, 0.2),
                        RandomSource.XO_RO_SHI_RO_128_PP.create(seed))
                .log();
    }

    /** The designed points have the mean and the covariance that were learned. */
    @Test
    void pointsHaveTheCovarianceOfWhatIsNotKnown() {
        Fit fit = Fit.of(new Log(log(100, 1)), null);
        int n = fit.theta.length;
        assertThat(fit.points).hasSize(24);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                double mean = 0;
                double product = 0;
                for (Fit.Point point : fit.points) {
                    double a = point.theta()[i] - fit.theta[i];
                    double b = point.theta()[j] - fit.theta[j];
                    mean += a / 24;
                    product += a * b / 24;
                }
                assertThat(mean).isCloseTo(0, within(1e-9));
                assertThat(product).isCloseTo(fit.covariance[i * n + j], within(1e-9));
            }
        }
    }

    /** Two predictors that share nothing are two models of one predictor each. */
    @Test
    void twoIndependentPredictorsAreTwoModels() {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(3);
        Cells both = MadeUpCells.cells(random, 2, 6, 7, 0);
        Cells one = new Cells(
                1,
                both.covariates,
                both.columns,
                both.values,
                both.pattern,
                both.runCells,
                both.dayRuns,
                both.nodeDays,
                both.times);
        int n = both.cells();
        double[][] counts = new double[4][n];
        for (int c = 0; c < n; c++) {
            counts[0][c] = 10 + random.nextInt(30);
            counts[1][c] = random.nextInt((int) counts[0][c] + 1);
            counts[2][c] = counts[1][c];
            counts[3][c] = random.nextInt((int) counts[2][c] + 1);
        }
        double[] none = new double[n];
        Variances two = MadeUpCells.variances(both, 1);
        Variances single = MadeUpCells.variances(one, 1);
        double[] theta = two.start();
        theta[4] = 0;
        theta[7] = 0;
        double together = new Laplace(
                        both,
                        new BagCounts(counts[0], counts[1], counts[2], counts[3], none, none),
                        two.precisions(theta),
                        new double[] {0.3, -0.4},
                        both.border())
                .fit(two.precisions(theta), 1e-14);
        double apart = 0;
        for (int k = 0; k < 2; k++) {
            Precisions q = single.precisions(single.start());
            apart += new Laplace(
                            one,
                            new BagCounts(counts[2 * k], counts[2 * k + 1], none, none, none, none),
                            q,
                            new double[] {k == 0 ? 0.3 : -0.4, 0},
                            one.border())
                    .fit(q, 1e-14);
        }
        assertThat(together).isCloseTo(apart, within(1e-8));
    }

    @Test
    void oneMoreRunIsAsIfItHadBeenThere() {
        List<RunCount> all = log(300, 4);
        List<RunCount> before = all.subList(0, all.size() - 1);
        Skill grown = Skill.of(before, SimulatedPlayer.TODAY).with(List.of(all.get(all.size() - 1)));
        Skill whole = Skill.of(all, SimulatedPlayer.TODAY, grown.learned().orElseThrow());
        Form one = (Form) grown.form(30);
        Form other = (Form) whole.form(30);
        assertThat(one.pointsPerRound().estimate())
                .isCloseTo(other.pointsPerRound().estimate(), within(1e-3));
        assertThat(one.pointsPerRound().high()).isCloseTo(other.pointsPerRound().high(), within(1e-2));
    }

    @Test
    void whatWasLearnedIsHandedBackAsItWas() {
        List<RunCount> all = log(100, 5);
        Learned learned = Skill.of(all, SimulatedPlayer.TODAY).learned().orElseThrow();
        assertThat(Skill.of(all, SimulatedPlayer.TODAY, learned).learned()).contains(learned);
        assertThatThrownBy(() -> new Learned(1, List.of(1.0), List.of()))
                .hasMessageContaining("12 values and 144 covariances, not 1 and 0");
    }

    /** Forecasts from the days before, on a player who is not drawn from the model. */
    @Test
    void pastForecastsHoldWhatCame() {
        Forecasts forecasts =
                (Forecasts) Skill.of(log(1000, 6), SimulatedPlayer.TODAY).forecasts();
        assertThat(forecasts.scored()).hasSizeGreaterThan(30);
        assertThat(forecasts.within()).isBetween(0.75, 1.0);
        assertThat(forecasts.bins().stream()
                        .mapToLong(ForecastsAnswer.Bin::statements)
                        .sum())
                .isEqualTo(forecasts.scored().size());
        // A forecast that knows the player beats one that takes all totals to be alike and unknown.
        assertThat(forecasts.score()).isLessThan(8);
        assertThat(forecasts.sentence()).contains("each forecast from the records before it", "When it said");
    }

    @Test
    void fewTotalsAreNotScored() {
        assertThat(Skill.of(List.of(Practice.run(0, "red", new Finish(1, 2, 1), 10)), Practice.TODAY)
                        .forecasts())
                .isInstanceOf(NothingForecast.class);
    }

    /** New players, blanks, boards and counts at the edge of what can be answered: finite, within bounds, and wide. */
    @Test
    void sparseRecordsGetSaneAnswers() {
        List<List<RunCount>> sparse = new ArrayList<>();
        sparse.add(List.of(Practice.run(0, "red", new Finish(0, 0, 4), 10)));
        sparse.add(List.of(Practice.run(0, "red", new Finish(4, 0, 0), 10)));
        sparse.add(List.of(Practice.run(0, "", new Finish(1, 2, 1), 1)));
        sparse.add(log(10, 126).stream().limit(1).toList());
        sparse.add(List.of(
                Practice.run(400, "red", new Finish(1, 2, 1), 10), Practice.run(300, "blue", new Finish(2, 1, 1), 10)));
        for (List<RunCount> counts : sparse) {
            Skill skill = Skill.of(counts, Practice.TODAY);
            Form form = (Form) skill.form(30);
            assertThat(form.pointsPerRound().low()).isGreaterThanOrEqualTo(0);
            assertThat(form.pointsPerRound().high()).isLessThanOrEqualTo(12);
            assertThat(form.pointsPerRound().high() - form.pointsPerRound().low())
                    .isGreaterThan(0.05);
            assertThat(skill.band(List.of(Practice.TODAY))).isNotNull();
            assertThat(skill.swing()).isInstanceOf(SwingAnswer.TooFewRuns.class);
            assertThat(skill.stakes()).isInstanceOf(StakesAnswer.NothingAtStake.class);
            assertThat(skill.narrow()).isInstanceOf(NarrowAnswer.OneBoard.class);
        }
    }
}
