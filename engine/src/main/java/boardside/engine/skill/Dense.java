package boardside.engine.skill;

/** Small dense matrices, row by row in one array. */
final class Dense {
    private Dense() {}

    /**
     * Cholesky's factor L with L L' = A, in place of the lower triangle.
     *
     * @throws ArithmeticException unless A is positive definite
     */
    static void cholesky(double[] a, int n) {
        for (int i = 0; i < n; i++) {
            int row = i * n;
            for (int j = 0; j < i; j++) {
                int other = j * n;
                double sum = a[row + j];
                for (int m = 0; m < j; m++) {
                    sum -= a[row + m] * a[other + m];
                }
                a[row + j] = sum / a[other + j];
            }
            double sum = a[row + i];
            for (int m = 0; m < i; m++) {
                sum -= a[row + m] * a[row + m];
            }
            if (!(sum > 0)) {
                throw new ArithmeticException("pivot " + i + " of " + n + " is " + sum + ", not above 0");
            }
            a[row + i] = Math.sqrt(sum);
        }
    }

    /** Whether a matrix is positive definite; it is overwritten. */
    static boolean isPositive(double[] a, int n) {
        try {
            cholesky(a, n);
            return true;
        } catch (ArithmeticException e) {
            return false;
        }
    }

    /** Solves with the leading part of a factor: L L' x = y, y and x at {@code at} and on; what follows is set to 0. */
    static void solve(double[] l, int n, int leading, double[] y, int at) {
        for (int i = 0; i < leading; i++) {
            double sum = y[at + i];
            for (int j = 0; j < i; j++) {
                sum -= l[i * n + j] * y[at + j];
            }
            y[at + i] = sum / l[i * n + i];
        }
        solveTransposed(l, n, leading, y, at);
        for (int i = leading; i < n; i++) {
            y[at + i] = 0;
        }
    }

    /** Solves L' x = y in place, with the leading part of a factor. */
    static void solveTransposed(double[] l, int n, int leading, double[] y, int at) {
        for (int i = leading - 1; i >= 0; i--) {
            double x = y[at + i] / l[i * n + i];
            y[at + i] = x;
            int row = i * n;
            for (int j = 0; j < i; j++) {
                y[at + j] -= l[row + j] * x;
            }
        }
    }

    /** The inverse of L L' from the leading part of a factor, full and symmetric; 0 beyond. */
    static double[] inverse(double[] l, int n, int leading) {
        // Rows of the inverse of L first, then its product with its own transpose.
        double[] m = new double[n * n];
        for (int i = 0; i < leading; i++) {
            double pivot = 1 / l[i * n + i];
            for (int c = 0; c < i; c++) {
                double x = l[i * n + c];
                if (x != 0) {
                    for (int j = 0; j <= c; j++) {
                        m[i * n + j] -= x * m[c * n + j];
                    }
                }
            }
            for (int j = 0; j < i; j++) {
                m[i * n + j] *= pivot;
            }
            m[i * n + i] = pivot;
        }
        double[] inverse = new double[n * n];
        for (int r = 0; r < leading; r++) {
            for (int i = 0; i <= r; i++) {
                double x = m[r * n + i];
                for (int j = 0; j <= i; j++) {
                    inverse[i * n + j] += x * m[r * n + j];
                }
            }
        }
        for (int i = 0; i < leading; i++) {
            for (int j = 0; j < i; j++) {
                inverse[j * n + i] = inverse[i * n + j];
            }
        }
        return inverse;
    }
}
