package boardside.engine.skill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class BetaTest {
    /** Jeffreys intervals of Newcombe's examples (1998, Statistics in Medicine 17, 857-872, table I), by R's qbeta. */
    static Stream<String[]> jeffreys() {
        return Reference.rows("06-binomial-intervals.csv")
                .filter(row -> row[3].equals("jeffreys"))
                .map(row -> new String[] {row[0], row[1], row[2], row[4], row[5]});
    }

    @ParameterizedTest
    @MethodSource("jeffreys")
    void quantilesAreJeffreysIntervals(String hits, String trials, String level, String lower, String upper) {
        double x = Double.parseDouble(hits);
        Beta beta = new Beta(x + 0.5, Double.parseDouble(trials) - x + 0.5);
        double tail = (1 - Double.parseDouble(level)) / 2;
        assertThat(beta.quantile(tail)).isCloseTo(Double.parseDouble(lower), within(1e-8));
        assertThat(beta.quantile(1 - tail)).isCloseTo(Double.parseDouble(upper), within(1e-8));
        if (level.equals("0.9")) {
            assertThat(beta.interval().low()).isCloseTo(Double.parseDouble(lower), within(1e-8));
            assertThat(beta.interval().high()).isCloseTo(Double.parseDouble(upper), within(1e-8));
        }
    }

    /** Newcombe's two-sided 95 % exact intervals, as printed, hold Jeffreys' inside them. */
    @Test
    void jeffreysLiesWithinTheExactIntervals() {
        assertThat(Reference.rows("06-binomial-intervals.csv")
                        .filter(row -> row[3].equals("clopper_pearson"))
                        .toList())
                .isNotEmpty()
                .allSatisfy(row -> {
                    double x = Double.parseDouble(row[0]);
                    Beta beta = new Beta(x + 0.5, Double.parseDouble(row[1]) - x + 0.5);
                    double tail = (1 - Double.parseDouble(row[2])) / 2;
                    assertThat(beta.quantile(tail)).isGreaterThanOrEqualTo(Double.parseDouble(row[4]));
                    assertThat(beta.quantile(1 - tail)).isLessThanOrEqualTo(Double.parseDouble(row[5]));
                });
    }

    @Test
    void nodesGiveMomentsOfTheDistribution() {
        for (double[] shape :
                new double[][] {{0.5, 0.5}, {0.5, 1}, {0.5, 400.5}, {400.5, 0.5}, {3.5, 1.5}, {2e4, 3e4}}) {
            Beta beta = new Beta(shape[0], shape[1]);
            double[][] nodes = beta.nodes();
            double mean = 0;
            double square = 0;
            for (int i = 0; i < nodes[0].length; i++) {
                mean += nodes[1][i] * nodes[0][i];
                square += nodes[1][i] * nodes[0][i] * nodes[0][i];
            }
            assertThat(mean).isCloseTo(beta.mean(), within(1e-9));
            assertThat(square).isCloseTo(beta.moment(2), within(1e-9));
        }
    }
}
