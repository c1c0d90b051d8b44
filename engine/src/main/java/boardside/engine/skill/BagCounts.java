package boardside.engine.skill;

import java.util.Arrays;
import org.apache.commons.numbers.gamma.LogGamma;

/**
 * Bags counted, as a {@link Likelihood}: the first predictor is the logit of a bag's chance to be kept (on or in), the
 * second that of a kept bag to be in. Of further bags only those in were counted; their chance to be in is the product.
 *
 * <p>Where the product is observed the observed second derivatives need not be positive; the expected ones are, and they
 * stand in for them both in Newton's method (Fisher scoring) and in Laplace's determinant.
 */
final class BagCounts implements Likelihood {
    private final double[] thrown;
    private final double[] kept;
    private final double[] open;
    private final double[] in;
    private final double[] onlyThrown;
    private final double[] onlyIn;
    private final boolean anyOnly;

    /**
     * Counts per cell.
     *
     * @param thrown bags of which it was counted whether they were kept
     * @param kept of these, kept
     * @param open kept bags of which it was counted whether they are in
     * @param in of these, in
     * @param onlyThrown bags of which only those in were counted
     * @param onlyIn of these, in
     */
    BagCounts(double[] thrown, double[] kept, double[] open, double[] in, double[] onlyThrown, double[] onlyIn) {
        this.thrown = thrown;
        this.kept = kept;
        this.open = open;
        this.in = in;
        this.onlyThrown = onlyThrown;
        this.onlyIn = onlyIn;
        boolean any = false;
        for (double only : onlyThrown) {
            any |= only > 0;
        }
        anyOnly = any;
    }

    /** What {@link #value} leaves out: logarithms of the binomial coefficients. */
    double constant() {
        double sum = 0;
        for (int c = 0; c < thrown.length; c++) {
            sum += choices(thrown[c], kept[c]) + choices(open[c], in[c]) + choices(onlyThrown[c], onlyIn[c]);
        }
        return sum;
    }

    /** The counts of some cells only. */
    BagCounts part(int from, int to) {
        return new BagCounts(
                Arrays.copyOfRange(thrown, from, to),
                Arrays.copyOfRange(kept, from, to),
                Arrays.copyOfRange(open, from, to),
                Arrays.copyOfRange(in, from, to),
                Arrays.copyOfRange(onlyThrown, from, to),
                Arrays.copyOfRange(onlyIn, from, to));
    }

    private static double choices(double n, double k) {
        return k == 0 || k == n ? 0 : LogGamma.value(n + 1) - LogGamma.value(k + 1) - LogGamma.value(n - k + 1);
    }

    /** log(1 + exp(x)). */
    static double softplus(double x) {
        return x > 0 ? x + Math.log1p(Math.exp(-x)) : Math.log1p(Math.exp(x));
    }

    static double logistic(double x) {
        return 1 / (1 + Math.exp(-x));
    }

    @Override
    public double value(double[] eta) {
        double sum = 0;
        for (int c = 0; c < thrown.length; c++) {
            double e0 = eta[2 * c];
            double e1 = eta[2 * c + 1];
            double s0 = Math.log(1 + Math.exp(-Math.abs(e0))) + Math.max(e0, 0);
            sum += kept[c] * e0 - thrown[c] * s0;
            if (open[c] > 0) {
                sum += in[c] * e1 - open[c] * (Math.log(1 + Math.exp(-Math.abs(e1))) + Math.max(e1, 0));
            }
            if (onlyThrown[c] > 0) {
                double miss0 = logistic(-e0);
                double p1 = logistic(e1);
                double miss = miss0 + (1 - miss0) * logistic(-e1);
                sum += onlyIn[c] * (e0 - s0 + Math.log(p1)) + (onlyThrown[c] - onlyIn[c]) * Math.log(miss);
            }
        }
        return sum;
    }

    @Override
    public void slopes(double[] eta, double[] slope, double[] weight) {
        for (int c = 0; c < thrown.length; c++) {
            double p0 = logistic(eta[2 * c]);
            double p1 = open[c] > 0 || onlyThrown[c] > 0 ? logistic(eta[2 * c + 1]) : 0;
            double g0 = kept[c] - thrown[c] * p0;
            double g1 = in[c] - open[c] * p1;
            double w00 = thrown[c] * p0 * (1 - p0);
            double w01 = 0;
            double w11 = open[c] * p1 * (1 - p1);
            double m = onlyThrown[c];
            if (m > 0) {
                double a0 = logistic(-eta[2 * c]);
                double a1 = logistic(-eta[2 * c + 1]);
                double p = p0 * p1;
                double miss = a0 + p0 * a1;
                double rest = (onlyIn[c] - m * p) / miss;
                double weightOnly = m * p / miss;
                g0 += a0 * rest;
                g1 += a1 * rest;
                w00 += weightOnly * a0 * a0;
                w01 += weightOnly * a0 * a1;
                w11 += weightOnly * a1 * a1;
            }
            slope[2 * c] = g0;
            slope[2 * c + 1] = g1;
            weight[3 * c] = w00;
            weight[3 * c + 1] = w01;
            weight[3 * c + 2] = w11;
        }
    }

    @Override
    public void change(double[] eta, double[] covariance, double[] change) {
        for (int c = 0; c < thrown.length; c++) {
            double p0 = logistic(eta[2 * c]);
            double p1 = open[c] > 0 || onlyThrown[c] > 0 ? logistic(eta[2 * c + 1]) : 0;
            double v00 = covariance[3 * c];
            double v01 = covariance[3 * c + 1];
            double v11 = covariance[3 * c + 2];
            double s0 = v00 * thrown[c] * p0 * (1 - p0) * (1 - 2 * p0);
            double s1 = v11 * open[c] * p1 * (1 - p1) * (1 - 2 * p1);
            double m = onlyThrown[c];
            if (m > 0) {
                double a0 = logistic(-eta[2 * c]);
                double a1 = logistic(-eta[2 * c + 1]);
                double miss = a0 + p0 * a1;
                double only = m * p0 * p1 / miss;
                double w00 = v00 * only * a0 * a0;
                double w01 = 2 * v01 * only * a0 * a1;
                double w11 = v11 * only * a1 * a1;
                double all = w00 + w01 + w11;
                s0 += all * a0 / miss - p0 * (2 * w00 + w01);
                s1 += all * a1 / miss - p1 * (2 * w11 + w01);
            }
            change[2 * c] = s0;
            change[2 * c + 1] = s1;
        }
    }

    @Override
    public boolean canonical() {
        return !anyOnly;
    }

    @Override
    public void observed(double[] eta, double[] weight) {
        for (int c = 0; c < thrown.length; c++) {
            double p0 = logistic(eta[2 * c]);
            double p1 = logistic(eta[2 * c + 1]);
            double a0 = logistic(-eta[2 * c]);
            double a1 = logistic(-eta[2 * c + 1]);
            double p = p0 * p1;
            double miss = a0 + p0 * a1;
            double m = onlyThrown[c];
            double rest = (onlyIn[c] - m * p) / miss;
            double curve = p * (m - onlyIn[c]) / (miss * miss);
            weight[3 * c] = thrown[c] * p0 * a0 + p0 * a0 * rest + a0 * a0 * curve;
            weight[3 * c + 1] = a0 * a1 * curve;
            weight[3 * c + 2] = open[c] * p1 * a1 + p1 * a1 * rest + a1 * a1 * curve;
        }
    }
}
