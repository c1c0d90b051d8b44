package boardside.engine.skill;

import java.util.Arrays;

/**
 * The maximum of a smooth function of a few variables by the method of Broyden, Fletcher, Goldfarb and Shanno (Nocedal
 * and Wright 2006, Numerical Optimization, algorithm 6.1), with steps halved until they gain enough.
 */
final class Bfgs {
    /** A function and its derivative, which is asked for only where the function was asked for last. */
    interface Function {
        double value(double[] x);

        double[] gradient();
    }

    /** No coordinate moves further than this in one step; they are logarithms. */
    private static final double LONGEST = 1.0;

    /** Share of the gain that the slope promises which a step must bring (Armijo). */
    private static final double ENOUGH = 1e-4;

    private Bfgs() {}

    /**
     * Where the function is largest, from a start.
     *
     * @param start not modified
     * @param inverse guess of the inverse of the negative second derivative, positive definite, n x n; replaced by the
     *     last approximation
     * @param tolerance stop when a step is expected to gain less
     * @param mostSteps stop after so many steps
     */
    static double[] maximum(Function f, double[] start, double[] inverse, double tolerance, int mostSteps) {
        int n = start.length;
        double[] x = start.clone();
        double value = f.value(x);
        double[] gradient = f.gradient();
        for (int step = 0; step < mostSteps; step++) {
            double[] direction = times(inverse, gradient);
            double promise = dot(direction, gradient);
            if (!(promise / 2 > tolerance)) {
                break;
            }
            double longest = Arrays.stream(direction).map(Math::abs).max().orElse(0);
            double length = Math.min(1, LONGEST / longest);
            double[] next = new double[n];
            double nextValue = Double.NEGATIVE_INFINITY;
            boolean found = false;
            for (int half = 0; half < 25 && !found; half++) {
                for (int i = 0; i < n; i++) {
                    next[i] = x[i] + length * direction[i];
                }
                nextValue = f.value(next);
                found = nextValue >= value + ENOUGH * length * promise;
                length = found ? length : length / 2;
            }
            if (!found) {
                // Nothing is gained along an uphill direction: rounding has the last word.
                f.value(x);
                break;
            }
            double[] nextGradient = f.gradient();
            update(inverse, difference(next, x), difference(gradient, nextGradient));
            x = next;
            value = nextValue;
            gradient = nextGradient;
        }
        return x;
    }

    private static void update(double[] inverse, double[] s, double[] y) {
        double sy = dot(s, y);
        if (!(sy > 1e-10 * Math.sqrt(dot(s, s) * dot(y, y)))) {
            return;
        }
        int n = s.length;
        double[] hy = times(inverse, y);
        double scale = (1 + dot(y, hy) / sy) / sy;
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                inverse[i * n + j] += scale * s[i] * s[j] - (hy[i] * s[j] + s[i] * hy[j]) / sy;
            }
        }
    }

    private static double[] difference(double[] a, double[] b) {
        double[] d = new double[a.length];
        for (int i = 0; i < d.length; i++) {
            d[i] = a[i] - b[i];
        }
        return d;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    private static double[] times(double[] m, double[] x) {
        int n = x.length;
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                y[i] += m[i * n + j] * x[j];
            }
        }
        return y;
    }
}
