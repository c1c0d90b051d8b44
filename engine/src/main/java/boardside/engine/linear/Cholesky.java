package boardside.engine.linear;

import java.util.Optional;

/**
 * The factor L of a symmetric positive definite matrix A = L L', lower triangular, and what follows from it; for matrices
 * of some tens of rows. By inner products, row by row (Golub and Van Loan, Matrix Computations, the chapter on
 * positive definite systems). Of A only the lower triangle is read.
 */
public final class Cholesky {
    /** A pivot below this share of its element of the diagonal is rounding, not a pivot. */
    private static final double LEAST = 1e-14;

    private final double[][] lower;

    private Cholesky(double[][] lower) {
        this.lower = lower;
    }

    /**
     * Factorises a matrix of n rows.
     *
     * @param a n rows, row i of at least i + 1 numbers; not modified
     * @return empty unless a is positive definite, by more than rounding
     */
    public static Optional<Cholesky> find(double[][] a) {
        double[][] lower = new double[a.length][a.length];
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = a[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= lower[i][k] * lower[j][k];
                }
                if (i > j) {
                    lower[i][j] = sum / lower[j][j];
                } else if (sum > LEAST * Math.abs(a[i][i])) {
                    lower[i][i] = Math.sqrt(sum);
                } else {
                    return Optional.empty();
                }
            }
        }
        return Optional.of(new Cholesky(lower));
    }

    /**
     * The same for a matrix known to be positive definite.
     *
     * @throws IllegalArgumentException if it is not
     */
    public static Cholesky of(double[][] a) {
        return find(a).orElseThrow(() -> new IllegalArgumentException("a matrix is not positive definite"));
    }

    /** A copy of a square matrix with a number added to each element of the diagonal. */
    public static double[][] plusDiagonal(double[][] a, double more) {
        double[][] sum = new double[a.length][];
        for (int i = 0; i < a.length; i++) {
            sum[i] = a[i].clone();
            sum[i][i] += more;
        }
        return sum;
    }

    /**
     * A symmetric matrix made positive definite, if it is not, by adding to its diagonal: first a number, then its double.
     *
     * @param a a square matrix; not modified
     * @param ridge the number, above 0
     * @throws IllegalArgumentException if there is no such matrix, since a number is infinite or none
     */
    public static double[][] positive(double[][] a, double ridge) {
        double[][] positive = a;
        for (double more = ridge; find(positive).isEmpty(); more *= 2) {
            if (Double.isInfinite(more)) {
                throw new IllegalArgumentException("a matrix holds what is not a finite number");
            }
            positive = plusDiagonal(a, more);
        }
        return positive;
    }

    /** L, of n rows and columns, 0 above the diagonal; the caller's to keep. */
    public double[][] lower() {
        double[][] copy = lower.clone();
        for (int i = 0; i < copy.length; i++) {
            copy[i] = copy[i].clone();
        }
        return copy;
    }

    /** The x with A x = b, of n numbers each; b is not modified. */
    public double[] solve(double[] b) {
        double[] x = b.clone();
        for (int i = 0; i < x.length; i++) {
            for (int k = 0; k < i; k++) {
                x[i] -= lower[i][k] * x[k];
            }
            x[i] /= lower[i][i];
        }
        for (int i = x.length - 1; i >= 0; i--) {
            for (int k = i + 1; k < x.length; k++) {
                x[i] -= lower[k][i] * x[k];
            }
            x[i] /= lower[i][i];
        }
        return x;
    }

    /** The inverse of A. */
    public double[][] inverse() {
        double[][] inverse = new double[lower.length][];
        for (int i = 0; i < inverse.length; i++) {
            double[] unit = new double[lower.length];
            unit[i] = 1;
            inverse[i] = solve(unit);
        }
        return inverse;
    }

    /** Logarithm of A's determinant. */
    public double logDeterminant() {
        double sum = 0;
        for (int i = 0; i < lower.length; i++) {
            sum += 2 * Math.log(lower[i][i]);
        }
        return sum;
    }
}
