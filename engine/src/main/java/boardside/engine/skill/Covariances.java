package boardside.engine.skill;

/**
 * Posterior covariances of the effects, as far as they are needed: each cell's predictors, each node's level, its
 * coupling with the border, the border itself, and sums over runs and days. Computed from the border outwards: a leaf is
 * a linear function of its parents plus an error of its own, {@code q = A parent - G C b + e}, var(e) = G.
 */
final class Covariances {
    /** Of the predictors of cell c, at 3 c: 00, 01, 11. */
    final double[] cell;
    /** Of the border, full. */
    final double[] border;
    /** Of the level at node t, at 3 t. */
    final double[] node;
    /** Of the level at node t with the border: two rows at 2 t * border. */
    final double[] nodeBorder;
    /** Variance of the step from node t to t + 1 beyond what stays, at 2 t + k. */
    final double[] step;
    /** Sums over runs and over days. */
    final double[] runs = new double[3];

    final double[] days = new double[3];

    private final Arrow arrow;
    private final Cells cells;
    private final int k;
    private final int width;
    private final int inner;
    /** Per pattern: covariance of x'b with itself. */
    private final double[] patternVariance;
    /** Covariance of the current day's level with the border, two rows. */
    private final double[] level0;

    private final double[] level1;
    private final double[] sum0;
    private final double[] sum1;
    /** Covariance of the current day's level with itself. */
    private double q00;

    private double q01;
    private double q11;

    /** Those of the border and of the levels over time; {@link #downToCells()} goes on from there. */
    Covariances(Arrow arrow, int inner) {
        this.arrow = arrow;
        this.inner = inner;
        cells = arrow.cells;
        k = arrow.k;
        width = arrow.border;
        cell = new double[3 * cells.cells()];
        border = Dense.inverse(arrow.factor, width, inner);
        node = new double[arrow.hasChain ? 3 * cells.nodes() : 0];
        nodeBorder = new double[arrow.nodeBorder.length];
        step = new double[arrow.hasChain ? 2 * (cells.nodes() - 1) : 0];
        patternVariance = new double[3 * cells.patterns()];
        level0 = new double[width];
        level1 = new double[width];
        sum0 = new double[width];
        sum1 = new double[width];
        for (int p = 0; p < cells.patterns(); p++) {
            double[] v = between(p, p);
            patternVariance[3 * p] = v[0];
            patternVariance[3 * p + 1] = v[1];
            patternVariance[3 * p + 2] = v[3];
        }
        for (int t = cells.nodes() - 1; t >= 0 && arrow.hasChain; t--) {
            node(t);
        }
    }

    /** Fills in those of cells, runs and days; once. */
    Covariances downToCells() {
        for (int t = cells.nodes() - 1; t >= 0; t--) {
            for (int d = cells.nodeDays[t]; d < cells.nodeDays[t + 1]; d++) {
                day(t, d);
                for (int r = cells.dayRuns[d]; r < cells.dayRuns[d + 1]; r++) {
                    run(r);
                }
            }
        }
        return this;
    }

    /** x_p' cov(b) x_q: 00, 01, 10, 11. A new array. */
    private double[] between(int p, int q) {
        double[] v = new double[4];
        int[] rows = cells.columns[p];
        int[] columns = cells.columns[q];
        for (int i = 0; i < rows.length && rows[i] * k < inner; i++) {
            int row = rows[i] * k * width;
            for (int j = 0; j < columns.length && columns[j] * k < inner; j++) {
                double xy = cells.values[p][i] * cells.values[q][j];
                int at = row + columns[j] * k;
                v[0] += xy * border[at];
                if (k == 2) {
                    v[1] += xy * border[at + 1];
                    v[2] += xy * border[at + width];
                    v[3] += xy * border[at + width + 1];
                }
            }
        }
        return v;
    }

    private void node(int t) {
        int rows = 2 * width * t;
        double[] e = arrow.nodeBorder;
        // E cov(b), then minus G (O next + that).
        for (int j = 0; j < width; j++) {
            sum0[j] = 0;
            sum1[j] = 0;
        }
        for (int i = 0; i < width; i++) {
            double e0 = e[rows + i];
            double e1 = e[rows + width + i];
            if (e0 != 0 || e1 != 0) {
                for (int j = 0; j < width; j++) {
                    double b = border[i * width + j];
                    sum0[j] += e0 * b;
                    sum1[j] += e1 * b;
                }
            }
        }
        double g00 = arrow.nodeInverse[3 * t];
        double g01 = arrow.nodeInverse[3 * t + 1];
        double g11 = arrow.nodeInverse[3 * t + 2];
        boolean last = t == cells.nodes() - 1;
        double o0 = arrow.nodeNext[2 * t];
        double o1 = arrow.nodeNext[2 * t + 1];
        int next = rows + 2 * width;
        for (int j = 0; j < width; j++) {
            double y0 = sum0[j] + (last ? 0 : o0 * nodeBorder[next + j]);
            double y1 = sum1[j] + (last ? 0 : o1 * nodeBorder[next + width + j]);
            nodeBorder[rows + j] = -g00 * y0 - g01 * y1;
            nodeBorder[rows + width + j] = -g01 * y0 - g11 * y1;
        }
        // cov(level, E b)
        double f00 = 0;
        double f01 = 0;
        double f10 = 0;
        double f11 = 0;
        // cov(next level, E b)
        double h00 = 0;
        double h01 = 0;
        double h10 = 0;
        double h11 = 0;
        for (int i = 0; i < width; i++) {
            double e0 = e[rows + i];
            double e1 = e[rows + width + i];
            f00 += nodeBorder[rows + i] * e0;
            f01 += nodeBorder[rows + i] * e1;
            f10 += nodeBorder[rows + width + i] * e0;
            f11 += nodeBorder[rows + width + i] * e1;
            if (!last) {
                h00 += nodeBorder[next + i] * e0;
                h01 += nodeBorder[next + i] * e1;
                h10 += nodeBorder[next + width + i] * e0;
                h11 += nodeBorder[next + width + i] * e1;
            }
        }
        double v00 = g00 - f00 * g00 - f01 * g01;
        double v01 = g01 - f00 * g01 - f01 * g11;
        double v11 = g11 - f10 * g01 - f11 * g11;
        if (!last) {
            double n00 = node[3 * t + 3];
            double n01 = node[3 * t + 4];
            double n11 = node[3 * t + 5];
            // cov(next, level) = -(N O + cov(next, E b)) G, N being the next level's covariance.
            double a00 = n00 * o0 + h00;
            double a01 = n01 * o1 + h01;
            double a10 = n01 * o0 + h10;
            double a11 = n11 * o1 + h11;
            double x00 = -a00 * g00 - a01 * g01;
            double x01 = -a00 * g01 - a01 * g11;
            double x10 = -a10 * g00 - a11 * g01;
            double x11 = -a10 * g01 - a11 * g11;
            // minus cov(level, next) O G
            v00 -= x00 * o0 * g00 + x10 * o1 * g01;
            v01 -= x00 * o0 * g01 + x10 * o1 * g11;
            v11 -= x01 * o0 * g01 + x11 * o1 * g11;
            double stay0 = arrow.stay(2 * t);
            double stay1 = arrow.stay(2 * t + 1);
            step[2 * t] = n00 - 2 * stay0 * x00 + stay0 * stay0 * v00;
            step[2 * t + 1] = n11 - 2 * stay1 * x11 + stay1 * stay1 * v11;
        }
        node[3 * t] = v00;
        node[3 * t + 1] = v01;
        node[3 * t + 2] = v11;
    }

    /** Leaves the covariance of the day's level (its node's, plus its own effect) with itself and with its covariates. */
    private void day(int t, int d) {
        int from = cells.dayColumnStart[d];
        int n = cells.dayColumnStart[d + 1] - from;
        // What is known has no covariance with anything.
        while (n > 0 && k * cells.dayColumns[from + n - 1] >= inner) {
            n--;
        }
        int rows = 2 * width * t;
        double t00 = arrow.hasChain ? node[3 * t] : 0;
        double t01 = arrow.hasChain ? node[3 * t + 1] : 0;
        double t11 = arrow.hasChain ? node[3 * t + 2] : 0;
        if (!arrow.hasDays) {
            q00 = t00;
            q01 = t01;
            q11 = t11;
            for (int i = 0; i < n; i++) {
                for (int l = 0; l < k; l++) {
                    int at = k * cells.dayColumns[from + i] + l;
                    level0[at] = arrow.hasChain ? nodeBorder[rows + at] : 0;
                    level1[at] = arrow.hasChain ? nodeBorder[rows + width + at] : 0;
                }
            }
            addDaily(d, from, n);
            return;
        }
        double g00 = arrow.dayInverse[3 * d];
        double g01 = arrow.dayInverse[3 * d + 1];
        double g11 = arrow.dayInverse[3 * d + 2];
        double w00 = arrow.dayWeight[3 * d];
        double w01 = arrow.dayWeight[3 * d + 1];
        double w11 = arrow.dayWeight[3 * d + 2];
        // A = I - G W
        double a00 = 1 - g00 * w00 - g01 * w01;
        double a01 = -g00 * w01 - g01 * w11;
        double a10 = -g01 * w00 - g11 * w01;
        double a11 = 1 - g01 * w01 - g11 * w11;
        int size = k * n;
        int all = k * (cells.dayColumnStart[d + 1] - from);
        int coupling = 2 * k * from;
        double f00 = 0;
        double f01 = 0;
        double f10 = 0;
        double f11 = 0;
        double h00 = 0;
        double h01 = 0;
        double h10 = 0;
        double h11 = 0;
        for (int j = 0; j < size; j++) {
            int column = column(from, j);
            double y0 = 0;
            double y1 = 0;
            for (int i = 0; i < size; i++) {
                double b = border[column * width + column(from, i)];
                y0 += arrow.dayBorder[coupling + i] * b;
                y1 += arrow.dayBorder[coupling + all + i] * b;
            }
            double n0 = arrow.hasChain ? nodeBorder[rows + column] : 0;
            double n1 = arrow.hasChain ? nodeBorder[rows + width + column] : 0;
            double l0 = a00 * n0 + a01 * n1 - g00 * y0 - g01 * y1;
            double l1 = a10 * n0 + a11 * n1 - g01 * y0 - g11 * y1;
            level0[column] = l0;
            level1[column] = l1;
            double c0 = arrow.dayBorder[coupling + j];
            double c1 = arrow.dayBorder[coupling + all + j];
            f00 += l0 * c0;
            f01 += l0 * c1;
            f10 += l1 * c0;
            f11 += l1 * c1;
            h00 += n0 * c0;
            h01 += n0 * c1;
            h10 += n1 * c0;
            h11 += n1 * c1;
        }
        // cov(node's level, day's level) = T A' - cov(node's level, C b) G
        double x00 = t00 * a00 + t01 * a01 - h00 * g00 - h01 * g01;
        double x01 = t00 * a10 + t01 * a11 - h00 * g01 - h01 * g11;
        double x10 = t01 * a00 + t11 * a01 - h10 * g00 - h11 * g01;
        double x11 = t01 * a10 + t11 * a11 - h10 * g01 - h11 * g11;
        // cov(day's level) = G + A cov(node's level, day's level) - G cov(C b, day's level)
        q00 = g00 + a00 * x00 + a01 * x10 - g00 * f00 - g01 * f01;
        q01 = g01 + a00 * x01 + a01 * x11 - g00 * f10 - g01 * f11;
        q11 = g11 + a10 * x01 + a11 * x11 - g01 * f10 - g11 * f11;
        days[0] += q00 - 2 * x00 + t00;
        days[1] += q01 - x01 - x10 + t01;
        days[2] += q11 - 2 * x11 + t11;
        addDaily(d, from, n);
    }

    /** Takes the day's own covariates into the day's level: cov(level + z'b) with itself and with the border. */
    private void addDaily(int d, int from, int n) {
        int at = cells.dailyAt();
        if (at >= inner) {
            return;
        }
        double[] z = cells.dayValues[d];
        for (int i = 0; i < z.length; i++) {
            q00 += z[i] * level0[at + k * i];
            if (k == 2) {
                q01 += z[i] * level0[at + 2 * i + 1];
                q11 += z[i] * level1[at + 2 * i + 1];
            }
        }
        for (int j = 0; j < k * n; j++) {
            int column = column(from, j);
            for (int i = 0; i < z.length; i++) {
                level0[column] += z[i] * border[(at + k * i) * width + column];
                level1[column] += k == 1 ? 0 : z[i] * border[(at + 2 * i + 1) * width + column];
            }
        }
        for (int i = 0; i < z.length; i++) {
            q00 += z[i] * level0[at + k * i];
            if (k == 2) {
                q01 += z[i] * level1[at + 2 * i];
                q11 += z[i] * level1[at + 2 * i + 1];
            }
        }
    }

    private int column(int from, int i) {
        return k == 1 ? cells.dayColumns[from + i] : 2 * cells.dayColumns[from + i / 2] + (i & 1);
    }

    private void run(int r) {
        int from = cells.runCells[r];
        int to = cells.runCells[r + 1];
        if (!arrow.hasRuns) {
            for (int c = from; c < to; c++) {
                double[] y = withLevel(cells.pattern[c]);
                cell(c, q00, q01, q11, y[0], y[1], y[2], y[3]);
            }
            return;
        }
        double[] w = arrow.weight;
        double g00 = arrow.runInverse[3 * r];
        double g01 = arrow.runInverse[3 * r + 1];
        double g11 = arrow.runInverse[3 * r + 2];
        double w00 = arrow.runWeight[3 * r];
        double w01 = arrow.runWeight[3 * r + 1];
        double w11 = arrow.runWeight[3 * r + 2];
        double a00 = 1 - g00 * w00 - g01 * w01;
        double a01 = -g00 * w01 - g01 * w11;
        double a10 = -g01 * w00 - g11 * w01;
        double a11 = 1 - g01 * w01 - g11 * w11;
        int n = to - from;
        // Per cell: cov(run's level, x'b); sums: cov(level above, C b), cov(run's level, C b).
        double[] own = n == 1 ? one : new double[4 * n];
        double h00 = 0;
        double h01 = 0;
        double h10 = 0;
        double h11 = 0;
        double f00 = 0;
        double f01 = 0;
        double f10 = 0;
        double f11 = 0;
        for (int c = from; c < to; c++) {
            int p = cells.pattern[c];
            double[] y = withLevel(p);
            double c00 = w[3 * c];
            double c01 = w[3 * c + 1];
            double c11 = w[3 * c + 2];
            h00 += y[0] * c00 + y[1] * c01;
            h01 += y[0] * c01 + y[1] * c11;
            h10 += y[2] * c00 + y[3] * c01;
            h11 += y[2] * c01 + y[3] * c11;
            // cov(C b, x_c'b) = sum over e of W_e cov(x_e'b, x_c'b)
            double s00 = 0;
            double s01 = 0;
            double s10 = 0;
            double s11 = 0;
            for (int e = from; e < to; e++) {
                double v00;
                double v01;
                double v10;
                double v11;
                if (e == c) {
                    v00 = patternVariance[3 * p];
                    v01 = patternVariance[3 * p + 1];
                    v10 = v01;
                    v11 = patternVariance[3 * p + 2];
                } else {
                    double[] v = between(cells.pattern[e], p);
                    v00 = v[0];
                    v01 = v[1];
                    v10 = v[2];
                    v11 = v[3];
                }
                s00 += w[3 * e] * v00 + w[3 * e + 1] * v10;
                s01 += w[3 * e] * v01 + w[3 * e + 1] * v11;
                s10 += w[3 * e + 1] * v00 + w[3 * e + 2] * v10;
                s11 += w[3 * e + 1] * v01 + w[3 * e + 2] * v11;
            }
            int at = 4 * (c - from);
            double o00 = a00 * y[0] + a01 * y[2] - g00 * s00 - g01 * s10;
            double o01 = a00 * y[1] + a01 * y[3] - g00 * s01 - g01 * s11;
            double o10 = a10 * y[0] + a11 * y[2] - g01 * s00 - g11 * s10;
            double o11 = a10 * y[1] + a11 * y[3] - g01 * s01 - g11 * s11;
            own[at] = o00;
            own[at + 1] = o01;
            own[at + 2] = o10;
            own[at + 3] = o11;
            f00 += o00 * c00 + o01 * c01;
            f01 += o00 * c01 + o01 * c11;
            f10 += o10 * c00 + o11 * c01;
            f11 += o10 * c01 + o11 * c11;
        }
        double x00 = q00 * a00 + q01 * a01 - h00 * g00 - h01 * g01;
        double x01 = q00 * a10 + q01 * a11 - h00 * g01 - h01 * g11;
        double x10 = q01 * a00 + q11 * a01 - h10 * g00 - h11 * g01;
        double x11 = q01 * a10 + q11 * a11 - h10 * g01 - h11 * g11;
        double r00 = g00 + a00 * x00 + a01 * x10 - g00 * f00 - g01 * f01;
        double r01 = g01 + a00 * x01 + a01 * x11 - g00 * f10 - g01 * f11;
        double r11 = g11 + a10 * x01 + a11 * x11 - g01 * f10 - g11 * f11;
        runs[0] += r00 - 2 * x00 + q00;
        runs[1] += r01 - x01 - x10 + q01;
        runs[2] += r11 - 2 * x11 + q11;
        for (int c = from; c < to; c++) {
            int at = 4 * (c - from);
            cell(c, r00, r01, r11, own[at], own[at + 1], own[at + 2], own[at + 3]);
        }
    }

    private final double[] one = new double[4];
    private final double[] pair = new double[4];

    /** Covariance of the day's level with a pattern's x'b: 00, 01, 10, 11; valid until the next call. */
    private double[] withLevel(int p) {
        int[] columns = cells.columns[p];
        double y00 = 0;
        double y01 = 0;
        double y10 = 0;
        double y11 = 0;
        for (int i = 0; i < columns.length; i++) {
            double x = cells.values[p][i];
            int at = k * columns[i];
            y00 += x * level0[at];
            y10 += x * level1[at];
            if (k == 2) {
                y01 += x * level0[at + 1];
                y11 += x * level1[at + 1];
            }
        }
        pair[0] = y00;
        pair[1] = y01;
        pair[2] = y10;
        pair[3] = y11;
        return pair;
    }

    private void cell(int c, double r00, double r01, double r11, double y00, double y01, double y10, double y11) {
        int p = 3 * cells.pattern[c];
        cell[3 * c] = r00 + 2 * y00 + patternVariance[p];
        cell[3 * c + 1] = r01 + y01 + y10 + patternVariance[p + 1];
        cell[3 * c + 2] = r11 + 2 * y11 + patternVariance[p + 2];
    }
}
