package boardside.bench.physics;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.engine.physics.Scene;
import boardside.engine.physics.Simulator;
import boardside.engine.rules.Outcome;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The simulator against fine steps of the same model, on random scenes; the seed is the parameter. */
class FineStepsTest {
    private static final double STEP = 2e-5;

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void restsWhereFineStepsDo(long seed) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        List<Double> apart = new ArrayList<>();
        int throwsMade = 60;
        int alike = 0;
        for (int n = 0; n < throwsMade; n++) {
            RandomScene at = RandomScene.of(random, n % (Scene.MOST_BAGS + 1));
            Simulator simulator = new Simulator(at.scene(), at.bag());
            simulator.slide(at.x(), at.y(), at.across(), at.up());
            FineSteps fine = new FineSteps(at.scene(), at.bag(), at.x(), at.y(), at.across(), at.up(), STEP);
            boolean equal = true;
            double worst = 0;
            for (int i = 0; i < simulator.count(); i++) {
                equal &= simulator.outcome(i) == fine.outcome[i];
                if (simulator.outcome(i) == Outcome.ON && fine.outcome[i] == Outcome.ON) {
                    worst = Math.max(worst, Math.hypot(simulator.restX(i) - fine.x[i], simulator.restY(i) - fine.y[i]));
                }
            }
            alike += equal ? 1 : 0;
            apart.add(worst);
        }
        apart.sort(null);
        // Blows one after another magnify the steps' error, and a bag at the rim may go either way.
        assertThat(alike).as("same outcomes").isGreaterThanOrEqualTo(throwsMade - 1);
        assertThat(apart.get(throwsMade / 2)).as("median, inches").isLessThan(2e-4);
        assertThat(apart.get(throwsMade * 9 / 10)).as("90 %%, inches").isLessThan(0.02);
    }
}
