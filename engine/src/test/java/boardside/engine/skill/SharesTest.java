package boardside.engine.skill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.rules.Tally;
import boardside.engine.skill.Shares.Measure;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SharesTest {
    /**
     * 5 % and 95 % quantiles for in, on, off bags: shares from scipy.stats.beta(x + 1/2, n - x + 1).ppf, the marginals of
     * a Dirichlet distribution; points per round by 200,000 equally likely values of the share in, exact in the other,
     * and scipy.optimize.brentq (SciPy 1.17.1). The sum over 48 nodes is good to 3e-4
     * of a share where a belief leans against 0 or 1, and far better elsewhere.
     */
    @ParameterizedTest
    @CsvSource({
        "12,18,10, 0.191035,0.422395, 0.321707,0.572868, 0.150403,0.369302, 4.261210,6.594441",
        "0,0,40, 0.000048,0.046039, 0.000048,0.046039, 0.928701,0.998734, 0.008803,0.613514",
        "40,0,0, 0.928701,0.998734, 0.000048,0.046039, 0.000048,0.046039, 11.279390,11.987592",
        "3,1,0, 0.298110,0.914273, 0.040671,0.603932, 0.000413,0.331756, 5.579334,11.240153",
        "500,900,600, 0.234288,0.266121, 0.431654,0.468228, 0.283294,0.316983, 4.636192,4.966296",
        "0,0,0, 0.002500,0.902500, 0.002500,0.902500, 0.002500,0.902500, 0.672665,11.045231",
        "1,7,0, 0.021115,0.377834, 0.551019,0.956459, 0.000225,0.196926, 3.804693,6.892944",
    })
    void intervalsAgreeWithScipy(
            int in,
            int on,
            int off,
            double i5,
            double i95,
            double o5,
            double o95,
            double f5,
            double f95,
            double p5,
            double p95) {
        Shares shares = Shares.of(Counts.of(new Tally(in, on, off)));
        check(shares.interval(Measure.IN), i5, i95, 1e-6);
        check(shares.interval(Measure.ON), o5, o95, 3e-4);
        check(shares.interval(Measure.OFF), f5, f95, 3e-4);
        check(shares.interval(Measure.POINTS), p5, p95, 1e-3);
        check(Skill.pointsPerRound(new Tally(in, on, off)), p5, p95, 1e-3);
        double n = in + on + off + 1.5;
        assertThat(shares.mean(Measure.POINTS)).isCloseTo(4 * (3 * (in + 0.5) + on + 0.5) / n, within(1e-12));
    }

    private static void check(Interval interval, double low, double high, double tolerance) {
        assertThat(interval.low()).isCloseTo(low, within(tolerance));
        assertThat(interval.high()).isCloseTo(high, within(tolerance));
    }

    /** Rounds of which only the bags in were counted sharpen the share in and leave on against off alone. */
    @ParameterizedTest
    @CsvSource({"30,100", "0,50", "50,50"})
    void bagsCountedOnlyInInformOnlyTheShareIn(int more, int thrown) {
        Counts known = Counts.of(new Tally(12, 18, 10));
        Shares before = Shares.of(known);
        Shares after = Shares.of(known.plus(new Counts(thrown, more, 0, 0, 0, 0, 0)));
        assertThat(after.kept()).isEqualTo(before.kept());
        assertThat(after.in().variance()).isLessThan(before.in().variance());
        assertThat(after.in()).isEqualTo(new Beta(12.5 + more, 29 + thrown - more));
    }

    /** Var of a Dirichlet's linear form: (sum w^2 m - (sum w m)^2) / (a0 + 1). */
    @ParameterizedTest
    @CsvSource({"12,18,10", "0,0,0", "400,1,3"})
    void varianceOfPointsIsDirichlets(int in, int on, int off) {
        double a0 = in + on + off + 1.5;
        double p = (in + 0.5) / a0;
        double q = (on + 0.5) / a0;
        double variance = 16 * (9 * p + q - (3 * p + q) * (3 * p + q)) / (a0 + 1);
        assertThat(Shares.of(Counts.of(new Tally(in, on, off))).pointsVariance())
                .isCloseTo(variance, within(1e-12 * (1 + variance)));
    }
}
