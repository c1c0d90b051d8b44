package boardside.bench.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.physics.Scene;
import boardside.engine.physics.Simulator;
import boardside.engine.rules.Outcome;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The simulator beside dyn4j 6.0.0 and JBox2D 2.2.1.1 with the same friction, hole and edge. */
class PeersTest {
    private static final double STEP = 1.0 / 240;

    /** A slide's rest, against dyn4j at steps so short that its own error is below 0.01 in. */
    @ParameterizedTest
    @CsvSource({"0, 12, 0.0, 1.6", "-6, 20, 0.8, 1.2", "5, 30, -1.0, -0.4", "2, 5, 0.3, 1.9"})
    void slidesStopWhereDyn4jsDo(double x, double y, double across, double up) {
        Scene scene = Throws.scene(0);
        Simulator simulator = new Simulator(scene, Throws.BAG);
        simulator.slide(x, y, across, up);
        SteppedBoard peer = new Dyn4jBoard(scene, Throws.BAG, 1e-4);
        assertThat(peer.slide(x, y, across, up)).isEqualTo(simulator.outcome(0));
        assertThat(peer.x(0) / Simulator.INCH).isEqualTo(simulator.restX(0), within(0.01));
        assertThat(peer.y(0) / Simulator.INCH).isEqualTo(simulator.restY(0), within(0.01));
    }

    /** Head-on pushes: the bag at (0, 33.5) hit straight from below; dyn4j lets discs overlap by its tolerance of 5 mm. */
    @ParameterizedTest
    @ValueSource(doubles = {1.9, 2.1})
    void pushesEndWhereDyn4jsDo(double speed) {
        Scene scene = Throws.scene(1);
        Simulator simulator = new Simulator(scene, Throws.BAG);
        simulator.slide(0, 14, 0, speed);
        SteppedBoard peer = new Dyn4jBoard(scene, Throws.BAG, 1e-4);
        peer.slide(0, 14, 0, speed);
        for (int i = 0; i < 2; i++) {
            assertThat(peer.outcome(i)).isEqualTo(simulator.outcome(i));
            if (peer.outcome(i) == Outcome.ON) {
                assertThat(peer.y(i) / Simulator.INCH).isEqualTo(simulator.restY(i), within(0.4));
            }
        }
    }

    /** What the benchmark measures: at their usual step the others rest farther from fine steps of the same model. */
    @Test
    void restsNearerToFineStepsThanTheOthers() {
        Throws throwsMade = new Throws(1);
        for (int bags : new int[] {0, 1, 3, 7}) {
            double[] errors = RestErrors.of(throwsMade, bags, 40, STEP);
            assertThat(errors[0])
                    .as("%s bags, mean error of the engine, inches", bags)
                    .isLessThan(0.1 * errors[1]);
            assertThat(errors[0])
                    .as("%s bags, mean error of the engine, inches", bags)
                    .isLessThan(0.1 * errors[2]);
        }
    }
}
