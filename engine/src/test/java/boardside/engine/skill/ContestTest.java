package boardside.engine.skill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ContestTest {
    private static Law law(double a, double b) {
        Beta beta = new Beta(a, b);
        return new Law(beta::cdf, beta.mean(), Math.sqrt(beta.variance()), 1);
    }

    /** Closed form of Miller 2015, "Formulas for Bayesian A/B Testing", and integration at 30 digits. */
    static Stream<String[]> comparisons() {
        return Reference.rows("07-beta-comparison.csv");
    }

    @ParameterizedTest
    @MethodSource("comparisons")
    void chanceThatOneShareIsLarger(
            String id, String a1, String b1, String a2, String b2, String integral, String closed, String fraction) {
        Contest contest = new Contest(List.of(
                law(Double.parseDouble(a1), Double.parseDouble(b1)),
                law(Double.parseDouble(a2), Double.parseDouble(b2))));
        double expected = Double.parseDouble(integral);
        assertThat(contest.best(1)).as("case " + id).isCloseTo(expected, within(2e-4));
        assertThat(contest.best(0) + contest.best(1)).isCloseTo(1, within(1e-12));
    }

    /** Of k equal beliefs each is best with chance 1/k; the largest of k uniform numbers has the mean k/(k+1). */
    @Test
    void equalBeliefsShareTheChance() {
        for (int k : new int[] {1, 2, 4, 8}) {
            List<Law> laws = Stream.generate(() -> law(1, 1)).limit(k).toList();
            Contest contest = new Contest(laws);
            for (int i = 0; i < k; i++) {
                assertThat(contest.best(i)).isCloseTo(1.0 / k, within(2e-4));
                assertThat(contest.loss(i)).isCloseTo(k / (k + 1.0) - 0.5, within(1e-4));
            }
        }
    }

    /** The difference of two uniform numbers is triangular: its 5 % quantile is sqrt(0.1) - 1. */
    @Test
    void differenceOfUniformNumbersIsTriangular() {
        Interval difference = new Contest(List.of(law(1, 1), law(1, 1))).difference();
        assertThat(difference.estimate()).isCloseTo(0, within(1e-12));
        assertThat(difference.low()).isCloseTo(Math.sqrt(0.1) - 1, within(1e-3));
        assertThat(difference.high()).isCloseTo(1 - Math.sqrt(0.1), within(1e-3));
    }
}
