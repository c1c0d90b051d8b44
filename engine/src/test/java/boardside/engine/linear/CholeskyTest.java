package boardside.engine.linear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.ejml.simple.SimpleMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Against EJML. */
class CholeskyTest {
    private static final double[][] SADDLE = {{1, 2}, {2, 1}};

    /** B B' + I of a random square B. */
    private static SimpleMatrix positive(int rows) {
        SimpleMatrix b = SimpleMatrix.random_DDRM(rows, rows, -1, 1, new Random(rows));
        return b.mult(b.transpose()).plus(SimpleMatrix.identity(rows));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 9, 40})
    void agreesWithALibrary(int rows) {
        SimpleMatrix peer = positive(rows);
        double[][] a = peer.toArray2();
        Cholesky cholesky = Cholesky.of(a);
        SimpleMatrix lower = new SimpleMatrix(cholesky.lower());
        assertThat(lower.mult(lower.transpose()).isIdentical(peer, 1e-12)).isTrue();
        for (int i = 0; i < rows; i++) {
            for (int j = i + 1; j < rows; j++) {
                assertThat(lower.get(i, j)).isZero();
            }
        }
        assertThat(new SimpleMatrix(cholesky.inverse()).isIdentical(peer.invert(), 1e-12))
                .isTrue();
        SimpleMatrix b = SimpleMatrix.random_DDRM(rows, 1, -1, 1, new Random(7));
        double[] right = b.getDDRM().getData().clone();
        double[] x = cholesky.solve(right);
        assertThat(right).containsExactly(b.getDDRM().getData());
        assertThat(x).containsExactly(peer.solve(b).getDDRM().getData(), within(1e-12));
        assertThat(cholesky.logDeterminant()).isCloseTo(Math.log(peer.determinant()), within(1e-10));
        assertThat(a).isDeepEqualTo(peer.toArray2());
    }

    @Test
    void onlyTheLowerTriangleIsRead() {
        double[][] a = positive(3).toArray2();
        double[][] ragged = {{a[0][0]}, {a[1][0], a[1][1], Double.NaN}, a[2]};
        assertThat(Cholesky.of(ragged).lower()).isDeepEqualTo(Cholesky.of(a).lower());
    }

    @Test
    void whatIsNotPositiveDefiniteHasNoFactor() {
        double[][][] none = {
            SADDLE,
            {{0}},
            {{-1}},
            {{Double.NaN}},
            // Of rank one, but for rounding.
            {{0.01, 0.1 * 0.3}, {0.1 * 0.3, 0.09 * (1 + 1e-15)}},
        };
        for (double[][] a : none) {
            assertThat(Cholesky.find(a)).isEmpty();
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> Cholesky.of(a))
                    .withMessageContaining("not positive definite");
        }
        assertThat(Cholesky.find(new double[][] {{1e-200}}))
                .as("small is not singular")
                .isPresent();
    }

    @Test
    void theDiagonalIsRaisedAsFarAsNeeded() {
        assertThat(Cholesky.positive(SADDLE, 0.3))
                .as("0.3 and 0.6 are not enough, the lower eigenvalue is -1")
                .isDeepEqualTo(new double[][] {{2.2, 2}, {2, 2.2}});
        double[][] fine = positive(2).toArray2();
        assertThat(Cholesky.positive(fine, 1)).isDeepEqualTo(fine);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Cholesky.positive(new double[][] {{Double.NaN}}, 1))
                .withMessageContaining("finite");
    }
}
