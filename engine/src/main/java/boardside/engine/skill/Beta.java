package boardside.engine.skill;

import org.apache.commons.numbers.gamma.LogBeta;
import org.apache.commons.numbers.gamma.RegularizedBeta;
import org.apache.commons.statistics.distribution.BetaDistribution;

/**
 * Belief in a share between 0 and 1: the beta distribution.
 *
 * @param a first shape, above 0: a hit adds 1
 * @param b second shape, above 0: a miss adds 1
 */
record Beta(double a, double b) {
    Beta {
        if (!(a > 0 && b > 0)) {
            throw new IllegalArgumentException("shapes are above 0, not " + a + ", " + b);
        }
    }

    double mean() {
        return a / (a + b);
    }

    double variance() {
        double n = a + b;
        return a * b / (n * n * (n + 1));
    }

    /** E[X^k] = product of (a + i) / (a + b + i), i below k. */
    double moment(int k) {
        double product = 1;
        for (int i = 0; i < k; i++) {
            product *= (a + i) / (a + b + i);
        }
        return product;
    }

    double cdf(double x) {
        return x <= 0 ? 0 : x >= 1 ? 1 : RegularizedBeta.value(x, a, b);
    }

    double quantile(double p) {
        return BetaDistribution.of(a, b).inverseCumulativeProbability(p);
    }

    /** The belief's own 90 % interval, equal tails. */
    Interval interval() {
        return Interval.of(mean(), quantile(Interval.TAIL), quantile(1 - Interval.TAIL));
    }

    /**
     * Nodes and weights that turn an expectation under this belief into a sum: row 0 the nodes, row 1 the weights, which
     * add up to 1. Gauss-Legendre in t with x = sin^2 t, which takes away the poles that shapes of 1/2 have at the ends
     * and makes the width nearly the same everywhere: 1 / (2 sqrt(a + b)).
     */
    double[][] nodes() {
        double middle = Math.asin(Math.sqrt(mean()));
        double reach = 4 / Math.sqrt(a + b);
        double from = Math.max(0, middle - reach);
        double to = Math.min(Math.PI / 2, middle + reach);
        double logBeta = LogBeta.value(a, b);
        int n = GaussLegendre.NODES.length;
        double[] x = new double[n];
        double[] weight = new double[n];
        double sum = 0;
        for (int i = 0; i < n; i++) {
            double t = (from + to) / 2 + (to - from) / 2 * GaussLegendre.NODES[i];
            double sin = Math.sin(t);
            double cos = Math.cos(t);
            x[i] = sin * sin;
            weight[i] = GaussLegendre.WEIGHTS[i]
                    * Math.exp((2 * a - 1) * Math.log(sin) + (2 * b - 1) * Math.log(cos) - logBeta);
            sum += weight[i];
        }
        for (int i = 0; i < n; i++) {
            weight[i] /= sum;
        }
        return new double[][] {x, weight};
    }
}
