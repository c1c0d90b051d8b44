package boardside.engine.physics;

import org.jspecify.annotations.Nullable;

/** Small symmetric matrices, row by row. */
final class Matrices {
    private Matrices() {}

    static double[][] identity(int n) {
        double[][] identity = new double[n][n];
        for (int i = 0; i < n; i++) {
            identity[i][i] = 1;
        }
        return identity;
    }

    /** A copy with a number added to each element of the diagonal. */
    static double[][] plusDiagonal(double[][] a, double more) {
        double[][] sum = new double[a.length][];
        for (int i = 0; i < a.length; i++) {
            sum[i] = a[i].clone();
            sum[i][i] += more;
        }
        return sum;
    }

    /** Cholesky's lower triangle L, L L' = a; null unless a is positive definite. */
    static double @Nullable [][] rootOrNull(double[][] a) {
        int n = a.length;
        double[][] root = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = a[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= root[i][k] * root[j][k];
                }
                if (i == j) {
                    if (!(sum > 1e-14)) {
                        return null;
                    }
                    root[i][i] = Math.sqrt(sum);
                } else {
                    root[i][j] = sum / root[j][j];
                }
            }
        }
        return root;
    }

    /**
     * Cholesky's lower triangle.
     *
     * @throws IllegalArgumentException unless positive definite
     */
    static double[][] root(double[][] a) {
        double[][] root = rootOrNull(a);
        if (root == null) {
            throw new IllegalArgumentException("not positive definite");
        }
        return root;
    }

    /** x with L L' x = b. */
    static double[] solve(double[][] root, double[] b) {
        int n = b.length;
        double[] x = b.clone();
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < i; k++) {
                x[i] -= root[i][k] * x[k];
            }
            x[i] /= root[i][i];
        }
        for (int i = n - 1; i >= 0; i--) {
            for (int k = i + 1; k < n; k++) {
                x[i] -= root[k][i] * x[k];
            }
            x[i] /= root[i][i];
        }
        return x;
    }

    /** The inverse of a positive definite matrix. */
    static double[][] inverse(double[][] a) {
        int n = a.length;
        double[][] root = root(a);
        double[][] inverse = new double[n][n];
        for (int j = 0; j < n; j++) {
            double[] unit = new double[n];
            unit[j] = 1;
            double[] column = solve(root, unit);
            for (int i = 0; i < n; i++) {
                inverse[i][j] = column[i];
            }
        }
        return inverse;
    }
}
