package boardside.engine.skill;

import java.util.Arrays;

/**
 * A binomial mixed model fitted by maximum likelihood, fixed effects outside of Laplace's approximation: what {@code
 * glmer(nAGQ = 1)} of R package lme4 and {@code glmmTMB} do. It holds the solver against those two; a player's records are
 * fitted by {@link Fit}, which has priors. The last covariates of the border are the fixed effects.
 */
final class MixedModel {
    /**
     * Estimates.
     *
     * @param fixed effects of the fixed covariates, at covariate * predictors + k
     * @param deviations standard deviations in the order of {@link Variances}
     * @param logLikelihood with all constants
     * @param laplace the state at the estimates
     */
    record Estimates(double[] fixed, double[] deviations, double logLikelihood, Laplace laplace) {}

    private MixedModel() {}

    /**
     * Fits.
     *
     * @param variances without priors; with them, the log-likelihood is that of both together
     * @param outer the last so many covariates are fixed effects
     * @param tolerance expected gain in log-likelihood that may be left
     * @param mode the same for the mode of the random effects
     */
    static Estimates fit(
            Cells cells, BagCounts likelihood, Variances variances, int outer, double tolerance, double mode) {
        int n = outer * cells.predictors;
        int inner = cells.border() - n;
        double[] theta = variances.start();
        // With fixed effects as flat-prior effects first: that gives their start and their curvature.
        Laplace joint = new Laplace(cells, likelihood, variances.precisions(theta), new double[2], cells.border());
        joint.fit(variances.precisions(theta), mode);
        Laplace laplace = new Laplace(cells, likelihood, variances.precisions(theta), new double[2], inner);
        System.arraycopy(joint.effects, 0, laplace.effects, 0, joint.effects.length);
        laplace.fit(variances.precisions(theta), mode);
        Bfgs.Function function = new Bfgs.Function() {
            private double[] at = {};

            @Override
            public double value(double[] x) {
                at = x.clone();
                System.arraycopy(x, 0, laplace.effects, laplace.arrow.borderAt + inner, n);
                double[] own = Arrays.copyOfRange(x, n, x.length);
                return laplace.fit(variances.precisions(own), mode) + variances.prior(own);
            }

            @Override
            public double[] gradient() {
                double[] own = Arrays.copyOfRange(at, n, at.length);
                Laplace.Slopes slopes = laplace.slopes();
                double[] gradient = Arrays.copyOf(slopes.outer(), at.length);
                System.arraycopy(variances.gradient(own, slopes, laplace.precisions()), 0, gradient, n, own.length);
                return gradient;
            }
        };
        double[] start = new double[n + theta.length];
        System.arraycopy(laplace.effects, laplace.arrow.borderAt + inner, start, 0, n);
        System.arraycopy(theta, 0, start, n, theta.length);
        double[] inverse = new double[start.length * start.length];
        double[] fixedInverse = Dense.inverse(joint.arrow.factor, cells.border(), cells.border());
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                inverse[i * start.length + j] = fixedInverse[(inner + i) * cells.border() + inner + j];
            }
        }
        double[] curvature = variances.curvature(theta, laplace.slopes(), laplace.precisions());
        for (int i = 0; i < theta.length; i++) {
            inverse[(n + i) * start.length + n + i] = 1 / curvature[i];
        }
        double[] best = Bfgs.maximum(function, start, inverse, tolerance, 200);
        double value = function.value(best) + likelihood.constant();
        double[] deviations = Arrays.stream(best, n, best.length).map(Math::exp).toArray();
        return new Estimates(Arrays.copyOf(best, n), deviations, value, laplace);
    }
}
