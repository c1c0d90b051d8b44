package boardside.engine.trial;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A short form of {@code boardside.bench.trial.OperatingCharacteristics}, which takes thousands of trials a cell; the bounds
 * allow for what so few can show (three standard errors).
 */
class OperatingCharacteristicsTest {
    private static final int TRIALS = 300;

    private interface Judge {
        boolean wrong(SimulatedTrial.Result result);
    }

    private static double share(TrialDesign design, double[] differences, Judge judge) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(8);
        int found = 0;
        for (int trial = 0; trial < TRIALS; trial++) {
            TrialDesign own =
                    new TrialDesign(design.candidates(), design.longest(), design.margin(), random.nextLong());
            found += judge.wrong(SimulatedTrial.run(own, differences, random)) ? 1 : 0;
        }
        return found / (double) TRIALS;
    }

    private static double error(double share) {
        return Math.sqrt(share * (1 - share) / TRIALS);
    }

    @ParameterizedTest
    @CsvSource({"2, 25", "3, 50", "5, 25"})
    void equalCandidatesSeldomHaveAWinner(int candidates, int longest) {
        TrialDesign design = new TrialDesign(candidates, longest, 0.5, 1);
        double won = share(design, new double[candidates], result -> result.ending() instanceof Ending.Winner);
        assertThat(won).isLessThanOrEqualTo(0.05 + 3 * error(0.05));
    }

    /** Two at the top and others far behind: those drop out, and the two still have no winner. */
    @Test
    void neitherDoTwoThatAreTiedForTheBest() {
        TrialDesign design = new TrialDesign(4, 25, 0.5, 1);
        double won = share(design, new double[] {0, 0, -2, -2}, result -> result.ending() instanceof Ending.Winner);
        assertThat(won).isLessThanOrEqualTo(0.05 + 3 * error(0.05));
    }

    @Test
    void differencesOfTheWholeMarginSeldomCountAsEqual() {
        TrialDesign design = new TrialDesign(2, 100, 1, 1);
        double equal = share(design, new double[] {0, 1}, result -> result.ending() instanceof Ending.AsGoodAsEqual);
        assertThat(equal).isLessThanOrEqualTo(0.05 + 3 * error(0.05));
    }

    @Test
    void aClearDifferenceIsFoundAndTheRightWayRound() {
        TrialDesign design = new TrialDesign(2, 50, 0.5, 1);
        double[] differences = {0, 1.5};
        assertThat(share(design, differences, result -> result.won(1))).isGreaterThan(0.9);
        assertThat(share(design, differences, result -> result.won(0))).isLessThan(0.02);
    }

    @Test
    void whatWasForetoldComesTrue() {
        TrialDesign design = new TrialDesign(2, 50, 0.5, 1);
        double foretold = Outlook.of(design, Swings.usual(), 1).reaches().get(2).chance();
        double found = share(design, new double[] {0, 1}, result -> result.won(1));
        // Players differ in how much luck there is in their rounds; the usual one stands for them to within a tenth.
        assertThat(found).isBetween(foretold - 0.1 - 3 * error(found), foretold + 0.1 + 3 * error(found));
    }

    @Test
    void theSameSeedThrowsTheSameTrial() {
        TrialDesign design = new TrialDesign(3, 25, 0.5, 7);
        double[] differences = {0, 0.5, 1};
        SimulatedTrial.Result[] both = new SimulatedTrial.Result[2];
        Arrays.setAll(both, i -> SimulatedTrial.run(design, differences, RandomSource.XO_RO_SHI_RO_128_PP.create(3)));
        assertThat(both[0]).isEqualTo(both[1]);
    }
}
