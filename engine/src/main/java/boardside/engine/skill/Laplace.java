package boardside.engine.skill;

import java.util.Arrays;

/**
 * Laplace's approximation of the marginal likelihood at given prior precisions, and its derivatives. With u the effects,
 * l the log-likelihood, Q the prior precision and H = Q + A'WA,
 *
 * <pre>log p(y) = l(u) - u'Qu / 2 + log det Q / 2 - log det H / 2   at the mode u</pre>
 *
 * (Tierney and Kadane 1986, JASA 81, 82-86; without the 2 pi, which cancel). The derivative by a precision goes through Q,
 * through H and, since W changes with u, through the mode: with s_i = tr(cov(eta_c) dW_c / d eta) gathered by effect and
 * z = H^-1 s,
 *
 * <pre>d log p = tr(Q^-1 dQ) / 2 - tr(dQ (u u' + H^-1 - (z u' + u z') / 2)) / 2</pre>
 *
 * (Skaug and Fournier 2006, Computational Statistics and Data Analysis 51, 699-709, there by automatic differentiation).
 *
 * <p>Border scalars from {@code inner} on are parameters outside: they stay as they are while the mode is sought, as in a
 * fit by maximum likelihood. One object holds one state; not for several threads.
 */
final class Laplace {
    private static final int MOST_STEPS = 100;

    private static final int MOST_CHEAP = 8;

    private static final double LOOSE = 1e-5;

    /** A gain that does not matter any more where the mode is hard to reach. */
    private static final double CREEPING = 1e-3;

    /** Squared length of what conjugate gradients may leave, of the whole. */
    private static final double SMALL = 1e-13;

    final Cells cells;
    final Likelihood likelihood;
    final Arrow arrow;
    /** Scalars of the border that are effects. */
    final int inner;
    /** The effects at the mode; the border's outer scalars at their given values. */
    final double[] effects;

    private final double[] mean;
    private final double[] eta;
    private final double[] slope;
    private final double[] weight;
    private final double[] patternValue;
    private Precisions precisions;
    private double density;
    private boolean hasFactor;

    /**
     * Starts with all effects 0.
     *
     * @param mean the predictors' prior means, two
     * @param inner scalars of the border that are effects; the others are parameters outside
     */
    Laplace(Cells cells, Likelihood likelihood, Precisions precisions, double[] mean, int inner) {
        this.cells = cells;
        this.likelihood = likelihood;
        this.precisions = precisions;
        this.mean = mean;
        this.inner = inner;
        arrow = new Arrow(cells, precisions.run() != null, precisions.day() != null, precisions.first() != null);
        effects = new double[arrow.size()];
        eta = new double[2 * cells.cells()];
        slope = new double[eta.length];
        weight = new double[3 * cells.cells()];
        patternValue = new double[2 * cells.patterns()];
    }

    /**
     * The log marginal likelihood; leaves mode and factor in place.
     *
     * @param tolerance gain in log density that a last step to the mode may be expected to bring
     */
    double fit(Precisions q, double tolerance) {
        precisions = q;
        double[] step = new double[effects.length];
        double[] before = new double[effects.length];
        predict(effects, eta, true);
        density = likelihood.value(eta) - quadratic(effects) / 2;
        approach(tolerance, step, before);
        // Near enough, expected derivatives do, and the last factor is the one wanted.
        boolean sharp = !likelihood.canonical() && tolerance < LOOSE;
        boolean factorised = false;
        double gain = 0;
        for (int i = 0; i < MOST_STEPS && !factorised; i++) {
            likelihood.slopes(eta, slope, weight);
            if (!sharp || i == 0 || !factorisedObserved()) {
                arrow.factorise(q, weight);
            }
            gradient(step);
            double[] gradient = Arrays.copyOf(step, inner + arrow.borderAt);
            arrow.solve(step, inner);
            gain = 0;
            for (int j = 0; j < gradient.length; j++) {
                gain += gradient[j] * step[j];
            }
            // A last creeping approach, if there is one, is as good as there.
            if (!(gain > tolerance) || i == MOST_STEPS - 1 && gain < CREEPING) {
                factorised = true;
                if (sharp) {
                    likelihood.slopes(eta, slope, weight);
                    arrow.factorise(q, weight);
                }
                break;
            }
            System.arraycopy(effects, 0, before, 0, effects.length);
            double best = density;
            double length = 1;
            move(before, step, length);
            if (!likelihood.canonical()) {
                // Expected curvature may be less than there is, and the step too long; then the slope has turned.
                double slopeThere = slopeAlong(step);
                if (slopeThere < -gain / 3) {
                    length = gain / (gain - slopeThere);
                    move(before, step, length);
                }
            }
            for (int half = 0; half < 30 && !(density >= best - 1e-12 * Math.abs(best)); half++) {
                length /= 2;
                move(before, step, length);
            }
        }
        hasFactor = factorised;
        if (!factorised) {
            throw new ArithmeticException("the mode was not found in " + MOST_STEPS + " steps");
        }
        return marginal();
    }

    /** Steps with the factor of the fit before this one, which cost little, for as long as they help. */
    private void approach(double tolerance, double[] step, double[] before) {
        double last = Double.POSITIVE_INFINITY;
        for (int i = 0; i < MOST_CHEAP && hasFactor; i++) {
            likelihood.slopes(eta, slope, weight);
            gradient(step);
            double[] gradient = Arrays.copyOf(step, inner + arrow.borderAt);
            arrow.solve(step, inner);
            double gain = 0;
            for (int j = 0; j < gradient.length; j++) {
                gain += gradient[j] * step[j];
            }
            if (!(gain > tolerance && gain < last / 2)) {
                return;
            }
            last = gain;
            double best = density;
            System.arraycopy(effects, 0, before, 0, effects.length);
            move(before, step, 1);
            if (!(density >= best)) {
                move(before, step, 0);
                return;
            }
        }
    }

    /** Newton's own step where it can be had: with the observed second derivatives, if they make H positive definite. */
    private boolean factorisedObserved() {
        double[] observed = new double[weight.length];
        likelihood.observed(eta, observed);
        try {
            arrow.factorise(precisions, observed);
            return Double.isFinite(arrow.logDeterminant(arrow.border));
        } catch (ArithmeticException e) {
            return false;
        }
    }

    private void move(double[] from, double[] step, double length) {
        for (int j = 0; j < step.length; j++) {
            effects[j] = from[j] + length * step[j];
        }
        predict(effects, eta, true);
        density = likelihood.value(eta) - quadratic(effects) / 2;
    }

    private double slopeAlong(double[] step) {
        likelihood.slopes(eta, slope, weight);
        double[] gradient = new double[effects.length];
        gradient(gradient);
        double sum = 0;
        for (int j = 0; j < arrow.borderAt + inner; j++) {
            sum += gradient[j] * step[j];
        }
        return sum;
    }

    /** The log marginal likelihood at the mode in place. */
    double marginal() {
        return density
                + precisions.logDeterminant(arrow.hasRuns ? cells.runs() : 0, arrow.hasDays ? cells.days() : 0) / 2
                - arrow.logDeterminant(inner) / 2;
    }

    Precisions precisions() {
        return precisions;
    }

    /** Fills in the cells' predictors; with {@code whole}, prior means included. */
    private void predict(double[] x, double[] out, boolean whole) {
        arrow.predict(x, patternValue);
        double mean0 = whole ? mean[0] : 0;
        double mean1 = whole ? mean[1] : 0;
        for (int t = 0; t < cells.nodes(); t++) {
            double t0 = mean0 + (arrow.hasChain ? x[arrow.nodeAt + 2 * t] : 0);
            double t1 = mean1 + (arrow.hasChain ? x[arrow.nodeAt + 2 * t + 1] : 0);
            for (int d = cells.nodeDays[t]; d < cells.nodeDays[t + 1]; d++) {
                double d0 = t0 + (arrow.hasDays ? x[arrow.dayAt + 2 * d] : 0);
                double d1 = t1 + (arrow.hasDays ? x[arrow.dayAt + 2 * d + 1] : 0);
                if (cells.daily > 0) {
                    d0 += arrow.daily(x, d, 0);
                    d1 += arrow.k == 2 ? arrow.daily(x, d, 1) : 0;
                }
                for (int r = cells.dayRuns[d]; r < cells.dayRuns[d + 1]; r++) {
                    double r0 = d0 + (arrow.hasRuns ? x[2 * r] : 0);
                    double r1 = d1 + (arrow.hasRuns ? x[2 * r + 1] : 0);
                    for (int c = cells.runCells[r]; c < cells.runCells[r + 1]; c++) {
                        int p = 2 * cells.pattern[c];
                        out[2 * c] = r0 + patternValue[p];
                        out[2 * c + 1] = r1 + patternValue[p + 1];
                    }
                }
            }
        }
    }

    /** Sums what stands at the cells into the effects that they share; the reverse of predict. */
    private void gather(double[] cell, double[] out) {
        Arrays.fill(out, 0);
        double[] sums = patternValue;
        Arrays.fill(sums, 0);
        for (int t = 0; t < cells.nodes(); t++) {
            for (int d = cells.nodeDays[t]; d < cells.nodeDays[t + 1]; d++) {
                double day0 = 0;
                double day1 = 0;
                for (int r = cells.dayRuns[d]; r < cells.dayRuns[d + 1]; r++) {
                    double run0 = 0;
                    double run1 = 0;
                    for (int c = cells.runCells[r]; c < cells.runCells[r + 1]; c++) {
                        run0 += cell[2 * c];
                        run1 += cell[2 * c + 1];
                        sums[2 * cells.pattern[c]] += cell[2 * c];
                        sums[2 * cells.pattern[c] + 1] += cell[2 * c + 1];
                    }
                    if (arrow.hasRuns) {
                        out[2 * r] = run0;
                        out[2 * r + 1] = run1;
                    }
                    day0 += run0;
                    day1 += run1;
                }
                if (arrow.hasDays) {
                    out[arrow.dayAt + 2 * d] = day0;
                    out[arrow.dayAt + 2 * d + 1] = day1;
                }
                arrow.addDaily(out, d, day0, day1);
                if (arrow.hasChain) {
                    out[arrow.nodeAt + 2 * t] += day0;
                    out[arrow.nodeAt + 2 * t + 1] += day1;
                }
            }
        }
        for (int p = 0; p < cells.patterns(); p++) {
            int[] columns = cells.columns[p];
            for (int i = 0; i < columns.length; i++) {
                for (int l = 0; l < arrow.k; l++) {
                    out[arrow.borderAt + arrow.k * columns[i] + l] += cells.values[p][i] * sums[2 * p + l];
                }
            }
        }
    }

    /** Fills in the gradient of the log posterior density; that of outer scalars too. */
    private void gradient(double[] out) {
        gather(slope, out);
        addPrior(effects, out, -1);
    }

    /** Adds sign times Q x. */
    private void addPrior(double[] x, double[] out, double sign) {
        Precisions q = precisions;
        if (q.run() != null) {
            addBlocks(q.run(), x, out, 0, arrow.dayAt, sign);
        }
        if (q.day() != null) {
            addBlocks(q.day(), x, out, arrow.dayAt, arrow.nodeAt, sign);
        }
        double[] first = q.first();
        if (first != null) {
            int at = arrow.nodeAt;
            out[at] += sign * first[0] * x[at];
            out[at + 1] += sign * first[1] * x[at + 1];
            for (int i = 0; i < q.step().length; i++) {
                double gap = q.step()[i] * (x[at + i + 2] - q.stay()[i] * x[at + i]);
                out[at + i + 2] += sign * gap;
                out[at + i] -= sign * q.stay()[i] * gap;
            }
        }
        for (int i = 0; i < inner; i++) {
            out[arrow.borderAt + i] += sign * q.border()[i] * x[arrow.borderAt + i];
        }
    }

    private static void addBlocks(double[] p, double[] x, double[] out, int from, int to, double sign) {
        for (int i = from; i < to; i += 2) {
            out[i] += sign * (p[0] * x[i] + p[1] * x[i + 1]);
            out[i + 1] += sign * (p[1] * x[i] + p[2] * x[i + 1]);
        }
    }

    /** u'Qu. */
    private double quadratic(double[] x) {
        Precisions q = precisions;
        double sum = 0;
        if (q.run() != null) {
            sum += blocks(q.run(), x, 0, arrow.dayAt);
        }
        if (q.day() != null) {
            sum += blocks(q.day(), x, arrow.dayAt, arrow.nodeAt);
        }
        double[] first = q.first();
        if (first != null) {
            int at = arrow.nodeAt;
            sum += first[0] * x[at] * x[at] + first[1] * x[at + 1] * x[at + 1];
            for (int i = 0; i < q.step().length; i++) {
                double gap = x[at + i + 2] - q.stay()[i] * x[at + i];
                sum += q.step()[i] * gap * gap;
            }
        }
        for (int i = 0; i < inner; i++) {
            sum += q.border()[i] * x[arrow.borderAt + i] * x[arrow.borderAt + i];
        }
        return sum;
    }

    private static double blocks(double[] p, double[] x, int from, int to) {
        double s00 = 0;
        double s01 = 0;
        double s11 = 0;
        for (int i = from; i < to; i += 2) {
            s00 += x[i] * x[i];
            s01 += x[i] * x[i + 1];
            s11 += x[i + 1] * x[i + 1];
        }
        return p[0] * s00 + 2 * p[1] * s01 + p[2] * s11;
    }

    /**
     * What the derivative by a precision is the trace of, gathered by kind of effect: {@code d log p = tr(Q^-1 dQ) / 2 -
     * tr(dQ T) / 2}.
     *
     * @param covariances at the mode
     * @param run T summed over runs: 00, 01, 11
     * @param day T summed over days
     * @param step T of the steps of the chain, at 2 t + k
     * @param border T of the border's effects
     * @param outer derivative of log p by the border's outer scalars
     */
    record Slopes(
            Covariances covariances, double[] run, double[] day, double[] step, double[] border, double[] outer) {}

    /** Derivatives at the mode in place. */
    Slopes slopes() {
        Covariances v = arrow.covariances(inner);
        double[] change = new double[eta.length];
        likelihood.change(eta, v.cell, change);
        double[] s = new double[effects.length];
        gather(change, s);
        double[] z = Arrays.copyOf(s, s.length);
        arrow.solve(z, inner);
        if (!likelihood.canonical()) {
            refine(s, z);
        }
        double[] u = effects;
        double[] run = sum(u, z, 0, arrow.dayAt, v.runs);
        double[] day = sum(u, z, arrow.dayAt, arrow.nodeAt, v.days);
        double[] step = v.step.clone();
        double[] stay = precisions.stay();
        for (int i = 0; i < step.length; i++) {
            int at = arrow.nodeAt + i;
            double ui = u[at + 2] - stay[i] * u[at];
            double zi = z[at + 2] - stay[i] * z[at];
            step[i] += ui * ui - zi * ui;
        }
        double[] border = new double[inner];
        for (int i = 0; i < inner; i++) {
            double ui = u[arrow.borderAt + i];
            border[i] = v.border[i * arrow.border + i] + ui * ui - z[arrow.borderAt + i] * ui;
        }
        return new Slopes(v, run, day, step, border, outer(s, z));
    }

    private static double[] sum(double[] u, double[] z, int from, int to, double[] covariance) {
        double[] sum = covariance.clone();
        for (int i = from; i < to; i += 2) {
            sum[0] += u[i] * u[i] - z[i] * u[i];
            sum[1] += u[i] * u[i + 1] - (z[i] * u[i + 1] + z[i + 1] * u[i]) / 2;
            sum[2] += u[i + 1] * u[i + 1] - z[i + 1] * u[i + 1];
        }
        return sum;
    }

    /**
     * The mode moves by the observed second derivatives, which the factor lacks: conjugate gradients with the factor as
     * preconditioner until z solves with them.
     */
    private void refine(double[] s, double[] z) {
        double[] observed = new double[weight.length];
        likelihood.observed(eta, observed);
        double[] rest = new double[s.length];
        double[] direction = new double[s.length];
        double[] image = new double[s.length];
        curve(observed, z, image);
        for (int j = 0; j < rest.length; j++) {
            rest[j] = s[j] - image[j];
        }
        clearOuter(rest);
        double before = 0;
        double first = dot(s, z);
        for (int i = 0; i < 60; i++) {
            double[] solved = rest.clone();
            arrow.solve(solved, inner);
            double size = dot(rest, solved);
            if (!(size > SMALL * first)) {
                return;
            }
            for (int j = 0; j < direction.length; j++) {
                direction[j] = solved[j] + (i == 0 ? 0 : size / before * direction[j]);
            }
            curve(observed, direction, image);
            clearOuter(image);
            double length = size / dot(direction, image);
            for (int j = 0; j < z.length; j++) {
                z[j] += length * direction[j];
                rest[j] -= length * image[j];
            }
            before = size;
        }
    }

    /** Fills in (A'W A + Q) x. */
    private void curve(double[] w, double[] x, double[] out) {
        times(w, x, out);
        addPrior(x, out, 1);
    }

    private void clearOuter(double[] x) {
        Arrays.fill(x, arrow.borderAt + inner, x.length, 0);
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    /** Fills in A'W A x. */
    private void times(double[] w, double[] x, double[] out) {
        double[] y = new double[eta.length];
        predict(x, y, false);
        for (int c = 0; c < cells.cells(); c++) {
            double y0 = y[2 * c];
            double y1 = y[2 * c + 1];
            y[2 * c] = w[3 * c] * y0 + w[3 * c + 1] * y1;
            y[2 * c + 1] = w[3 * c + 1] * y0 + w[3 * c + 2] * y1;
        }
        gather(y, out);
    }

    private double[] outer(double[] s, double[] z) {
        int n = arrow.border - inner;
        double[] outer = new double[n];
        if (n > 0) {
            double[] observed = weight;
            if (!likelihood.canonical()) {
                observed = new double[weight.length];
                likelihood.observed(eta, observed);
            }
            double[] moved = new double[effects.length];
            times(observed, z, moved);
            double[] gradient = new double[effects.length];
            gather(slope, gradient);
            for (int i = 0; i < n; i++) {
                int at = arrow.borderAt + inner + i;
                outer[i] = gradient[at] - (s[at] - moved[at]) / 2;
            }
        }
        return outer;
    }
}
