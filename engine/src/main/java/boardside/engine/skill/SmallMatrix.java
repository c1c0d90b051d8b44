package boardside.engine.skill;

import java.util.Optional;

/** Symmetric matrices of a few rows: Cholesky's decomposition and what follows from it. Arguments are not modified. */
final class SmallMatrix {
    private SmallMatrix() {}

    /** Lower triangle L with L L' = a; empty unless a is positive definite. */
    static Optional<double[][]> cholesky(double[][] a) {
        int n = a.length;
        double[][] root = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = a[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= root[i][k] * root[j][k];
                }
                if (i == j) {
                    if (!(sum > 1e-12 * Math.abs(a[i][i]))) {
                        return Optional.empty();
                    }
                    root[i][i] = Math.sqrt(sum);
                } else {
                    root[i][j] = sum / root[j][j];
                }
            }
        }
        return Optional.of(root);
    }

    /** The nearest positive definite matrix reached by adding to the diagonal. */
    static double[][] positive(double[][] a) {
        double ridge = 0;
        while (true) {
            double[][] sum = new double[a.length][];
            for (int i = 0; i < a.length; i++) {
                sum[i] = a[i].clone();
                sum[i][i] += ridge;
            }
            if (cholesky(sum).isPresent()) {
                return sum;
            }
            ridge = Math.max(2 * ridge, 1e-3);
        }
    }

    /** x with a x = b; a is positive definite. */
    static double[] solve(double[][] a, double[] b) {
        double[][] root = cholesky(a).orElseThrow();
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
        double[][] inverse = new double[a.length][];
        for (int i = 0; i < a.length; i++) {
            double[] unit = new double[a.length];
            unit[i] = 1;
            inverse[i] = solve(a, unit);
        }
        return inverse;
    }
}
