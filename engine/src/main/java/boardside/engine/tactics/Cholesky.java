package boardside.engine.tactics;

/** The factor L of a symmetric positive definite matrix L L'. */
final class Cholesky {
    private final double[][] lower;

    private Cholesky(double[][] lower) {
        this.lower = lower;
    }

    /** Factorises a matrix, which becomes the factor. Modified. */
    static Cholesky of(double[][] matrix) {
        for (int i = 0; i < matrix.length; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = matrix[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= matrix[i][k] * matrix[j][k];
                }
                matrix[i][j] = i == j ? Math.sqrt(sum) : sum / matrix[j][j];
            }
        }
        return new Cholesky(matrix);
    }

    /** The x with (L L') x = b; b is not modified. */
    double[] solve(double[] b) {
        int size = lower.length;
        double[] x = b.clone();
        for (int i = 0; i < size; i++) {
            for (int k = 0; k < i; k++) {
                x[i] -= lower[i][k] * x[k];
            }
            x[i] /= lower[i][i];
        }
        for (int i = size - 1; i >= 0; i--) {
            for (int k = i + 1; k < size; k++) {
                x[i] -= lower[k][i] * x[k];
            }
            x[i] /= lower[i][i];
        }
        return x;
    }

    /** Logarithm of the matrix's determinant. */
    double logDeterminant() {
        double sum = 0;
        for (int i = 0; i < lower.length; i++) {
            sum += 2 * Math.log(lower[i][i]);
        }
        return sum;
    }
}
