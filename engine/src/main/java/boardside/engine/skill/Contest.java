package boardside.engine.skill;

import java.util.List;

/**
 * Several numbers, each believed in independently of the others: which is largest, and by how much. Distribution
 * functions are read at equally spaced points, closer than a third of the narrowest belief's standard deviation as long
 * as {@value #MOST_POINTS} points allow; sums over such points converge fast for smooth densities.
 */
final class Contest {
    private static final int MOST_POINTS = 3000;

    private final double from;
    private final double step;
    /** [law][point], ascending along a row; the first point 0, the last 1. */
    private final double[][] cdf;

    Contest(List<Law> laws) {
        double low = Double.MAX_VALUE;
        double high = 0;
        double narrowest = Double.MAX_VALUE;
        for (Law law : laws) {
            low = Math.min(low, Math.max(0, law.mean() - 8 * law.deviation()));
            high = Math.max(high, Math.min(law.most(), law.mean() + 8 * law.deviation()));
            narrowest = Math.min(narrowest, law.deviation());
        }
        int points = (int) Math.min(MOST_POINTS, Math.max(200, Math.ceil(3 * (high - low) / narrowest))) + 1;
        from = low;
        step = (high - low) / (points - 1);
        cdf = new double[laws.size()][points];
        for (int i = 0; i < cdf.length; i++) {
            for (int x = 1; x < points - 1; x++) {
                // Rounding may take a sum of weights a hair below its predecessor or above 1.
                double value = laws.get(i).cdf().applyAsDouble(from + x * step);
                cdf[i][x] = Math.min(1, Math.max(cdf[i][x - 1], value));
            }
            cdf[i][points - 1] = 1;
        }
    }

    /** The chance that number i is the largest. */
    double best(int i) {
        double sum = 0;
        double before = others(i, 0);
        for (int x = 1; x < cdf[i].length; x++) {
            double now = others(i, x);
            sum += (cdf[i][x] - cdf[i][x - 1]) * (before + now) / 2;
            before = now;
        }
        return Math.min(1, sum);
    }

    /** By how much the largest is expected to exceed number i; 0 or more. */
    double loss(int i) {
        // E[max] - E[i] is the integral of F_i minus the product of all F.
        double sum = 0;
        for (int x = 0; x < cdf[i].length; x++) {
            sum += cdf[i][x] * (1 - others(i, x)) * (x == 0 || x == cdf[i].length - 1 ? 0.5 : 1);
        }
        return sum * step;
    }

    /** The first number minus the second: mean and 90 % range. */
    Interval difference() {
        int n = cdf[0].length - 1;
        double[] chance = new double[2 * n - 1];
        double mean = 0;
        for (int x = 0; x < n; x++) {
            double first = cdf[0][x + 1] - cdf[0][x];
            mean += first * x;
            for (int y = 0; y < n; y++) {
                chance[x - y + n - 1] += first * (cdf[1][y + 1] - cdf[1][y]);
            }
        }
        for (int y = 0; y < n; y++) {
            mean -= (cdf[1][y + 1] - cdf[1][y]) * y;
        }
        return Interval.of(mean * step, at(chance, Interval.TAIL, n), at(chance, 1 - Interval.TAIL, n));
    }

    /** Quantile of a difference: cell k of the chances stands for differences within half a step of k - n + 1. */
    private double at(double[] chance, double quantile, int n) {
        double sum = 0;
        for (int k = 0; k < chance.length; k++) {
            if (sum + chance[k] >= quantile) {
                return (k - n + 0.5 + (quantile - sum) / chance[k]) * step;
            }
            sum += chance[k];
        }
        return (n - 0.5) * step;
    }

    private double others(int i, int x) {
        double product = 1;
        for (int j = 0; j < cdf.length; j++) {
            if (j != i) {
                product *= cdf[j][x];
            }
        }
        return product;
    }
}
