package boardside.engine.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What every blow must keep, whatever the scene. */
class ImpactsTest {
    private static final Contact DEAD = new Contact(0, 0, 1e-12, 0.65);

    /** Newton's laws: momentum stays, energy does not grow, no contact approaches any more. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void keepsMomentumAndMakesNoEnergy(long seed) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        for (int n = 0; n < 2000; n++) {
            int bags = 2 + random.nextInt(5);
            double[] vx = new double[bags];
            double[] vy = new double[bags];
            double[] perMass = new double[bags];
            for (int i = 0; i < bags; i++) {
                vx[i] = 4 * random.nextDouble() - 2;
                vy[i] = 4 * random.nextDouble() - 2;
                perMass[i] = 1 / (0.39 + 0.08 * random.nextDouble());
            }
            Impacts impacts = new Impacts(new Contact(0.2 * random.nextDouble(), random.nextDouble(), 1e-6, 0.65));
            double[][] normals = new double[bags][2];
            for (int j = 1; j < bags; j++) {
                // The first bag in the middle, the others around it, at least 60 degrees apart.
                double angle = Math.toRadians(j * 360.0 / 6 + 5 * random.nextDouble());
                normals[j] = new double[] {Math.cos(angle), Math.sin(angle)};
                impacts.add(0, j, normals[j][0], normals[j][1]);
            }
            double[] before = sums(vx, vy, perMass);
            impacts.solve(vx, vy, perMass);
            double[] after = sums(vx, vy, perMass);
            assertThat(after[0]).isEqualTo(before[0], within(1e-12));
            assertThat(after[1]).isEqualTo(before[1], within(1e-12));
            assertThat(after[2]).isLessThanOrEqualTo(before[2] + 1e-6);
            for (int j = 1; j < bags; j++) {
                double parting = (vx[j] - vx[0]) * normals[j][0] + (vy[j] - vy[0]) * normals[j][1];
                assertThat(parting).isGreaterThan(-1e-9);
            }
        }
    }

    private static double[] sums(double[] vx, double[] vy, double[] perMass) {
        double[] sums = new double[3];
        for (int i = 0; i < vx.length; i++) {
            sums[0] += vx[i] / perMass[i];
            sums[1] += vy[i] / perMass[i];
            sums[2] += (vx[i] * vx[i] + vy[i] * vy[i]) / perMass[i] / 2;
        }
        return sums;
    }

    /** A dead blow on a row of touching equal bags shares the momentum: v / 3 each (momentum and a common speed). */
    @Test
    void aRowMovesAsOne() {
        double[] vx = {0, 0, 0};
        double[] vy = {1.5, 0, 0};
        Impacts impacts = new Impacts(DEAD);
        impacts.add(0, 1, 0, 1);
        impacts.add(1, 2, 0, 1);
        impacts.solve(vx, vy, new double[] {2, 2, 2});
        for (double v : vy) {
            assertThat(v).isEqualTo(0.5, within(1e-9));
        }
    }

    /** A bag between two others, touching both at once, drives them apart alike: nothing depends on their order. */
    @Test
    void aBagBetweenTwoTreatsThemAlike() {
        double[] vx = {0, 0, 0};
        double[] vy = {2, 0, 0};
        double half = Math.sqrt(0.75);
        Impacts impacts = new Impacts(Contact.USUAL);
        impacts.add(0, 1, -0.5, half);
        impacts.add(0, 2, 0.5, half);
        impacts.solve(vx, vy, new double[] {2, 2, 2});
        assertThat(vx[0]).isEqualTo(0, within(1e-9));
        assertThat(vx[1]).isEqualTo(-vx[2], within(1e-9));
        assertThat(vy[1]).isEqualTo(vy[2], within(1e-9));
    }
}
