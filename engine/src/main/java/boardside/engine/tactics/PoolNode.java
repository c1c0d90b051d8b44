package boardside.engine.tactics;

import boardside.engine.linear.Cholesky;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * The belief at one value of the spreads: the mode of all effects, found by Newton's method, and the Gaussian there. A
 * kind's own effect c touches that kind alone, so it is eliminated by hand and only the shared effects need a factorised
 * matrix.
 */
final class PoolNode {
    private static final double INTERCEPT_VARIANCE = 1.5 * 1.5;
    private static final int MOST_STEPS = 60;
    private static final double SETTLED = 1e-9;

    private final PoolDesign design;
    private final double[] prior;
    private final double own;
    private final double[] shared;
    private final double[] ownEffects;
    private final double[] weight;
    private final Cholesky factor;
    private final double logEvidence;

    private PoolNode(PoolDesign design, double[] spreads, double[] start) {
        this.design = design;
        int effects = design.effects();
        int kinds = design.kinds();
        prior = new double[effects];
        for (int e = 0; e < effects; e++) {
            int spread = design.spreadOf()[e];
            prior[e] = spread < 0 ? INTERCEPT_VARIANCE : spreads[spread] * spreads[spread];
        }
        double last = design.ownEffects() ? spreads[spreads.length - 1] : 0;
        own = last * last;
        shared = new double[effects];
        ownEffects = new double[kinds];
        System.arraycopy(start, 0, shared, 0, effects);
        if (own > 0) {
            System.arraycopy(start, effects, ownEffects, 0, kinds);
        }
        weight = new double[kinds];
        climb();
        weigh();
        factor = factorise();
        logEvidence = evidence();
    }

    /**
     * Fits the effects.
     *
     * @param spreads a value for each spread, above 0
     * @param start where to begin: shared effects, then each kind's own. Not modified
     */
    static PoolNode fit(PoolDesign design, double[] spreads, double[] start) {
        return new PoolNode(design, spreads, start);
    }

    /** The mode: shared effects, then each kind's own. */
    double[] mode() {
        double[] mode = new double[shared.length + ownEffects.length];
        System.arraycopy(shared, 0, mode, 0, shared.length);
        System.arraycopy(ownEffects, 0, mode, shared.length, ownEffects.length);
        return mode;
    }

    /** Logarithm of the tries' probability at these spreads, up to a constant (Laplace). */
    double logEvidence() {
        return logEvidence;
    }

    private double logit(int kind) {
        double sum = ownEffects[kind];
        for (int effect : design.effectsOf()[kind]) {
            sum += shared[effect];
        }
        return sum;
    }

    // Log likelihood and log prior, without constants that do not depend on effects or spreads.
    private double objective() {
        double sum = 0;
        for (int kind = 0; kind < design.kinds(); kind++) {
            double logit = logit(kind);
            sum += design.worked()[kind] * logit - design.tries()[kind] * softPlus(logit);
            sum -= own > 0 ? ownEffects[kind] * ownEffects[kind] / (2 * own) : 0;
        }
        for (int e = 0; e < shared.length; e++) {
            sum -= shared[e] * shared[e] / (2 * prior[e]);
        }
        return sum;
    }

    private static double softPlus(double x) {
        return x > 0 ? x + Math.log1p(Math.exp(-x)) : Math.log1p(Math.exp(x));
    }

    // The likelihood's curvature at the present logits.
    private void weigh() {
        for (int kind = 0; kind < weight.length; kind++) {
            double p = RatePool.logistic(logit(kind));
            weight[kind] = design.tries()[kind] * p * (1 - p);
        }
    }

    // What is left of a kind's weight for the shared effects once its own effect has taken its part.
    private double sharedWeight(int kind) {
        return weight[kind] / (1 + own * weight[kind]);
    }

    private Cholesky factorise() {
        double[][] matrix = new double[shared.length][shared.length];
        for (int e = 0; e < shared.length; e++) {
            matrix[e][e] = 1 / prior[e];
        }
        for (int kind = 0; kind < weight.length; kind++) {
            double s = sharedWeight(kind);
            int[] effects = design.effectsOf()[kind];
            for (int one : effects) {
                for (int other : effects) {
                    matrix[one][other] += s;
                }
            }
        }
        return Cholesky.of(matrix);
    }

    private void climb() {
        double now = objective();
        for (int step = 0; step < MOST_STEPS; step++) {
            weigh();
            double[] gradient = new double[shared.length];
            double[] slope = new double[weight.length];
            for (int e = 0; e < shared.length; e++) {
                gradient[e] = -shared[e] / prior[e];
            }
            for (int kind = 0; kind < slope.length; kind++) {
                slope[kind] = design.worked()[kind] - design.tries()[kind] * RatePool.logistic(logit(kind));
                // The gradient for the shared effects after the kind's own effect has been eliminated.
                double ownSlope = own > 0 ? slope[kind] - ownEffects[kind] / own : 0;
                double passed = slope[kind] - weight[kind] * own / (1 + own * weight[kind]) * ownSlope;
                for (int effect : design.effectsOf()[kind]) {
                    gradient[effect] += passed;
                }
            }
            double[] move = factorise().solve(gradient);
            double[] ownMove = new double[slope.length];
            if (own > 0) {
                for (int kind = 0; kind < slope.length; kind++) {
                    double along = 0;
                    for (int effect : design.effectsOf()[kind]) {
                        along += move[effect];
                    }
                    ownMove[kind] = (slope[kind] - ownEffects[kind] / own - weight[kind] * along)
                            * own
                            / (1 + own * weight[kind]);
                }
            }
            double gained = advance(move, ownMove, now);
            now += gained;
            if (!(gained > SETTLED)) {
                return;
            }
        }
    }

    // Goes the whole way, or half of it, and so on, until it leads upwards; says by how much.
    private double advance(double[] move, double[] ownMove, double now) {
        double share = 1;
        add(move, ownMove, 1);
        for (int halving = 0; halving < 40; halving++) {
            double gained = objective() - now;
            if (gained >= 0) {
                return gained;
            }
            add(move, ownMove, -share / 2);
            share /= 2;
        }
        add(move, ownMove, -share);
        return 0;
    }

    private void add(double[] move, double[] ownMove, double share) {
        for (int e = 0; e < shared.length; e++) {
            shared[e] += share * move[e];
        }
        for (int kind = 0; kind < ownEffects.length; kind++) {
            ownEffects[kind] += share * ownMove[kind];
        }
    }

    private double evidence() {
        double sum = objective() - factor.logDeterminant() / 2;
        for (double variance : prior) {
            sum -= Math.log(variance) / 2;
        }
        if (own > 0) {
            for (double w : weight) {
                sum -= Math.log1p(own * w) / 2;
            }
        }
        return sum;
    }

    /** Mean of a kind's logit. */
    double mean(int kind) {
        return logit(kind);
    }

    /** Variance of a kind's logit. */
    double variance(int kind) {
        return covariance(kind, kind);
    }

    private double covariance(int one, int other) {
        double[] side = new double[shared.length];
        for (int effect : design.effectsOf()[other]) {
            side[effect] = 1;
        }
        double[] solved = factor.solve(side);
        double sum = 0;
        for (int effect : design.effectsOf()[one]) {
            sum += solved[effect];
        }
        double left = 1 / (1 + own * weight[one]);
        double right = 1 / (1 + own * weight[other]);
        return left * right * sum + (one == other ? own * left : 0);
    }

    /** Log likelihood of a kind's tries at a logit. */
    static double logLikelihood(TryCount kind, double logit) {
        return kind.worked() * logit - kind.tries() * softPlus(logit);
    }

    /**
     * Adds the density of a kind's logit to a grid: the Gaussian without the kind's own tries, times their exact likelihood.
     *
     * @param variance of the kind's logit
     * @param likelihood log likelihood at the grid's points. Not modified
     * @param low the grid's first point
     * @param step between points
     * @param share what is added in sum
     * @param density by point. Modified
     */
    void addDensity(
            int kind, double variance, double[] likelihood, double low, double step, double share, double[] density) {
        double precision = Math.max(1 / variance - weight[kind], 1e-9);
        double logit = logit(kind);
        double slope = design.worked()[kind] - design.tries()[kind] * RatePool.logistic(logit);
        // The tries' Gaussian stand-in has its top at logit + slope / weight; without it, the rest has its top here.
        double top = logit - slope / precision;
        double reach = RatePool.REACH * Math.sqrt(variance);
        int from = Math.max(0, (int) Math.floor((logit - reach - low) / step));
        int to = Math.min(density.length - 1, (int) Math.ceil((logit + reach - low) / step));
        double[] part = new double[to - from + 1];
        double best = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < part.length; i++) {
            double off = low + (from + i) * step - top;
            part[i] = likelihood[from + i] - precision * off * off / 2;
            best = Math.max(best, part[i]);
        }
        double sum = 0;
        for (int i = 0; i < part.length; i++) {
            part[i] = Math.exp(part[i] - best);
            sum += part[i];
        }
        for (int i = 0; i < part.length; i++) {
            density[from + i] += share * part[i] / sum;
        }
    }

    /** Chance that one kind's logit is the higher. */
    double better(int one, int other) {
        if (one == other) {
            return 0.5;
        }
        double spread = Math.sqrt(variance(one) + variance(other) - 2 * covariance(one, other));
        return NormalDistribution.of(0, 1).cumulativeProbability((mean(one) - mean(other)) / spread);
    }
}
