package boardside.engine.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

class ElementaryTest {
    private static final long SEED = 1;

    /** Against the platform's fdlibm, whose error is below 1 ulp. */
    @Test
    void exponentialAndLogarithmAreThoseOfFdlibm() {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(SEED);
        for (int n = 0; n < 200_000; n++) {
            double x = n % 2 == 0 ? -60 * random.nextDouble() : -random.nextDouble();
            double exp = StrictMath.exp(x);
            assertThat(Elementary.exp(x)).as("exp(%s)", x).isEqualTo(exp, within(1e-15 * exp));
            double y = n % 2 == 0 ? exp : 100 * random.nextDouble() + 1e-9;
            double log = StrictMath.log(y);
            assertThat(Elementary.log(y)).as("log(%s)", y).isEqualTo(log, within(4e-16 * Math.max(1, Math.abs(log))));
        }
        assertThat(Elementary.exp(0)).isEqualTo(1);
        assertThat(Elementary.exp(5)).isEqualTo(StrictMath.exp(5), within(1e-13));
        assertThat(Elementary.exp(Double.NEGATIVE_INFINITY)).isZero();
        assertThat(Elementary.exp(-1e4)).isZero();
    }

    /** Against commons-statistics 1.3, {@code NormalDistribution.inverseCumulativeProbability}. */
    @Test
    void normalQuantilesAreTheLibrarys() {
        NormalDistribution normal = NormalDistribution.of(0, 1);
        for (double p :
                new double[] {1e-300, 1e-15, 1e-8, 1e-3, 0.02, 0.07, 0.075, 0.2, 0.5, 0.6, 0.93, 0.999, 1 - 1e-9}) {
            double expected = normal.inverseCumulativeProbability(p);
            assertThat(Normal.quantile(p))
                    .as("p = %s", p)
                    .isEqualTo(expected, within(1e-13 * Math.max(1, Math.abs(expected))));
        }
    }

    @Test
    void numbersByPositionAreStandardNormal() {
        int n = 400_000;
        double[] sums = new double[5];
        for (int k = 0; k < n; k++) {
            double z = Normal.at(SEED, k);
            sums[0] += z;
            sums[1] += z * z;
            sums[2] += z * z * z;
            sums[3] += z * z * z * z;
            sums[4] += z * Normal.at(SEED, k + 1);
        }
        // Five standard errors of each mean: of z 1, z^2 sqrt 2, z^3 sqrt 15, z^4 sqrt 96, of a product 1.
        double[] mean = {0, 1, 0, 3, 0};
        double[] deviation = {1, Math.sqrt(2), Math.sqrt(15), Math.sqrt(96), 1};
        for (int m = 0; m < 5; m++) {
            assertThat(sums[m] / n).as("moment %s", m).isEqualTo(mean[m], within(5 * deviation[m] / Math.sqrt(n)));
        }
    }
}
