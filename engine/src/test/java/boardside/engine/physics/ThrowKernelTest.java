package boardside.engine.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.rules.Tally;
import java.util.stream.Stream;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The chances of a throw against throws through the simulator, and against what must hold of them. */
class ThrowKernelTest {
    private static final Board REGULATION = Board.of(24, 3.5);
    private static final Board NARROW = Board.of(12, 3.5);

    static Stream<ThrowModel> models() {
        return Stream.of(
                new ThrowModel(0, 3, 39, 6, 0.06, 20, 0.35),
                new ThrowModel(1.5, 2, 41, 4, 0.03, 28, 0.25),
                new ThrowModel(-3, 6, 36, 9, 0.12, 12, 0.5),
                // Fast over the hole: those off its middle skip it.
                new ThrowModel(0.5, 1.2, 52, 5, 0.05, 34, 0.3),
                // Nearly in the air: lands in the hole, or behind it.
                new ThrowModel(0, 2, 41, 3, 0.1, 4, 0.6));
    }

    @ParameterizedTest
    @MethodSource("models")
    void agreesWithThrowsThroughTheSimulator(ThrowModel model) {
        long seed = 20_261_125;
        int throwsEach = 400_000;
        for (Board board : new Board[] {REGULATION, NARROW, Board.of(15, 2.5)}) {
            ThrowChances chances = new ThrowKernel(board).chances(model);
            Tally tally = Batch.landings(
                            new Simulator(Scene.empty(board), model.bag()),
                            model.landing(),
                            model.landingSpread(),
                            seed,
                            0,
                            throwsEach)
                    .thrown();
            agrees(chances.in(), tally.in(), throwsEach, "in, seed " + seed + " on " + board);
            agrees(chances.on(), tally.on(), throwsEach, "on, seed " + seed + " on " + board);
            assertThat(chances.in() + chances.on() + chances.off()).isEqualTo(1, within(1e-12));
        }
    }

    private static void agrees(double chance, int count, int of, String what) {
        double error = Math.sqrt(chance * (1 - chance) / of);
        assertThat((double) count / of).as(what).isEqualTo(chance, within(4 * error + 1e-5));
    }

    /** Without spread to speak of, the chances are those of one throw. */
    @Test
    void isTheSimulatorsOwnAnswerWithoutSpread() {
        ThrowModel in = new ThrowModel(0.7, 0.5, 39, 0.01, 1e-4, 20, 0.35);
        assertThat(new ThrowKernel(REGULATION).chances(in).in()).isEqualTo(1, within(1e-3));
        assertThat(new Simulator(Scene.empty(REGULATION), in.bag())
                        .slide(in.landing())
                        .thrown())
                .isInstanceOf(End.In.class);
    }

    @Test
    void knowsWhichWayABagWentOff() {
        ThrowChances chances = new ThrowKernel(NARROW).chances(new ThrowModel(4, 3, 39, 6, 0.06, 20, 0.35));
        NormalDistribution across = NormalDistribution.of(4, 3);
        assertThat(chances.left()).isEqualTo(across.cumulativeProbability(-6), within(1e-8));
        assertThat(chances.right()).isEqualTo(across.survivalProbability(6), within(1e-8));
        assertThat(chances.shortOf())
                .isEqualTo(
                        across.probability(-6, 6) * NormalDistribution.of(19, 6).cumulativeProbability(0),
                        within(1e-8));
    }

    @ParameterizedTest
    @MethodSource("models")
    void aLandingPlaceLeavesTheRestToTheSpeed(ThrowModel model) {
        Simulator simulator = new Simulator(Scene.empty(REGULATION), model.bag());
        ThrowKernel kernel = new ThrowKernel(REGULATION);
        int each = 40_000;
        for (double[] at : new double[][] {{0, 20}, {1.5, 18}, {2.5, 25}, {6, 30}, {0, 37}, {1, 44}}) {
            Tally tally = Batch.landings(
                            simulator,
                            new Landing(at[0], at[1], model.speed(), 0),
                            new LandingSpread(0, 0, model.spreadSpeed() * model.speed(), 0),
                            7,
                            0,
                            each)
                    .thrown();
            double[] chances = kernel.fromLanding(model, at[0], at[1]);
            agrees(chances[0], tally.in(), each, "in from " + at[0] + ", " + at[1]);
            agrees(chances[1], tally.on(), each, "on from " + at[0] + ", " + at[1]);
        }
    }

    /** Common practice, no source: the narrow board costs most to those who spread sideways. Nothing here puts it in. */
    @Test
    void theNarrowBoardCostsMostToThoseWhoSpreadSideways() {
        double before = 0;
        for (double spread : new double[] {1.5, 2.5, 3.5, 5, 7}) {
            ThrowModel model = new ThrowModel(0, spread, 39, 6, 0.06, 20, 0.35);
            double cost = new ThrowKernel(REGULATION).chances(model).points()
                    - new ThrowKernel(NARROW).chances(model).points();
            assertThat(cost).isGreaterThan(before);
            before = cost;
        }
        // Those who spread along the board lose no more than before.
        ThrowModel along = new ThrowModel(0, 1.5, 39, 10, 0.06, 20, 0.35);
        assertThat(new ThrowKernel(REGULATION).chances(along).points()
                        - new ThrowKernel(NARROW).chances(along).points())
                .isLessThan(0.01);
    }

    /** Common practice, no source: a typical player puts about a third in and misses the board with about a tenth. */
    @Test
    void aPlayerAsBelievedBeforehandIsATypicalOne() {
        ThrowFit any = ThrowFit.of(ThrowPrior.of(null, null), ThrowRecords.NONE);
        ThrowKernel kernel = new ThrowKernel(REGULATION);
        assertThat(any.of(model -> kernel.chances(model).in()).estimate()).isBetween(0.25, 0.45);
        assertThat(any.of(model -> kernel.chances(model).off()).estimate()).isBetween(0.04, 0.2);
    }

    @Test
    void theQuickNormalDistributionIsTheExactOne() {
        NormalDistribution normal = NormalDistribution.of(0, 1);
        for (double z = -8.5; z < 8.5; z += 0.00391) {
            assertThat(Phi.at(z)).isEqualTo(normal.cumulativeProbability(z), within(4e-10));
        }
    }
}
