package boardside.engine.skill;

import java.util.Arrays;

/**
 * The posterior precision H of all effects, factorised from the leaves inwards: runs, then days, then the chain of
 * nodes in time, and last the dense border. Runs and days are 2 x 2 blocks of their own and the chain is
 * block-tridiagonal, so the work grows with the number of cells times the covariates a day has, plus the number of nodes
 * times the square of the border.
 *
 * <p>A cell's predictor is x'b + u(run) + v(day) + w(node), so H couples a run with its day and with its node by the same
 * block W (the sum of its cells' weights), and with the border by C = sum of W x'. Eliminating the run leaves
 * {@code W - W G W} and {@code C - W G C} with {@code G = (W + P)^-1} (P the prior precision of a run), which are then
 * its day's: elimination hands weights upwards, never matrices.
 *
 * <p>Effects are one vector: runs at 2 r + k, then days, nodes and the border. {@link #covariances()} gives those entries
 * of the inverse that the cells' predictors need, by the same recursion backwards (Takahashi, Fagan and Chin 1973; Rue and
 * Martino 2007, J. Statistical Planning and Inference 137, 3177-3192, section 2).
 */
final class Arrow {
    final Cells cells;
    final int k;
    final int border;
    final boolean hasRuns;
    final boolean hasDays;
    final boolean hasChain;
    final int dayAt;
    final int nodeAt;
    final int borderAt;

    /** Lower triangle: first the Schur complement, then its Cholesky factor. */
    final double[] factor;
    /** Per run: inverse of weight plus prior, weight. */
    final double[] runInverse;

    final double[] runWeight;
    final double[] dayInverse;
    final double[] dayWeight;
    /** Coupling of day d with the border: rows 0 and 1 at 2 k dayColumnStart[d] + row * (its scalars). */
    final double[] dayBorder;

    /** Per node: inverse of its pivot; coupling with the next node (diagonal); coupling with the border, two rows. */
    final double[] nodeInverse;

    final double[] nodeNext;
    final double[] nodeBorder;
    /** The cells' weights that were factorised. */
    final double[] weight;

    private double[] stays = {};
    private final double[] patternWeight;
    private final double[] row0;
    private final double[] row1;
    private final double[] patternVector;
    private double logDeterminant;

    Arrow(Cells cells, boolean hasRuns, boolean hasDays, boolean hasChain) {
        this.cells = cells;
        this.hasRuns = hasRuns;
        this.hasDays = hasDays;
        this.hasChain = hasChain;
        k = cells.predictors;
        border = cells.border();
        dayAt = hasRuns ? 2 * cells.runs() : 0;
        nodeAt = dayAt + (hasDays ? 2 * cells.days() : 0);
        borderAt = nodeAt + (hasChain ? 2 * cells.nodes() : 0);
        factor = new double[border * border];
        runInverse = new double[hasRuns ? 3 * cells.runs() : 0];
        runWeight = new double[runInverse.length];
        dayInverse = new double[hasDays ? 3 * cells.days() : 0];
        dayWeight = new double[dayInverse.length];
        dayBorder = new double[hasDays ? 2 * k * cells.dayColumns.length : 0];
        nodeInverse = new double[hasChain ? 3 * cells.nodes() : 0];
        nodeNext = new double[hasChain ? 2 * cells.nodes() : 0];
        nodeBorder = new double[hasChain ? 2 * border * cells.nodes() : 0];
        weight = new double[3 * cells.cells()];
        patternWeight = new double[3 * cells.patterns()];
        patternVector = new double[2 * cells.patterns()];
        row0 = new double[border];
        row1 = new double[border];
    }

    /** How much of the level at a node stays to the next, at 2 t + k. */
    double stay(int at) {
        return stays[at];
    }

    /** Effects in all. */
    int size() {
        return borderAt + border;
    }

    /** Logarithm of H's determinant, over the first so many scalars of the border only. */
    double logDeterminant(int inner) {
        double sum = logDeterminant;
        for (int i = 0; i < inner; i++) {
            sum += 2 * Math.log(factor[i * border + i]);
        }
        return sum;
    }

    /**
     * Factorises.
     *
     * @param q prior precisions
     * @param w the cells' weights, copied
     */
    void factorise(Precisions q, double[] w) {
        System.arraycopy(w, 0, weight, 0, weight.length);
        stays = q.stay();
        Arrays.fill(factor, 0);
        Arrays.fill(patternWeight, 0);
        Arrays.fill(nodeBorder, 0);
        logDeterminant = 0;
        double carry00 = 0;
        double carry01 = 0;
        double carry11 = 0;
        for (int t = 0; t < cells.nodes(); t++) {
            double w00 = carry00;
            double w01 = carry01;
            double w11 = carry11;
            for (int d = cells.nodeDays[t]; d < cells.nodeDays[t + 1]; d++) {
                double d00 = 0;
                double d01 = 0;
                double d11 = 0;
                for (int r = cells.dayRuns[d]; r < cells.dayRuns[d + 1]; r++) {
                    double r00 = 0;
                    double r01 = 0;
                    double r11 = 0;
                    for (int c = cells.runCells[r]; c < cells.runCells[r + 1]; c++) {
                        r00 += w[3 * c];
                        r01 += w[3 * c + 1];
                        r11 += w[3 * c + 2];
                    }
                    run(q, r, r00, r01, r11);
                    d00 += eliminated[0];
                    d01 += eliminated[1];
                    d11 += eliminated[2];
                }
                day(q, t, d, d00, d01, d11);
                w00 += eliminated[0];
                w01 += eliminated[1];
                w11 += eliminated[2];
            }
            if (hasChain) {
                node(q, t, w00, w01, w11);
                carry00 = eliminated[0];
                carry01 = eliminated[1];
                carry11 = eliminated[2];
            }
        }
        border(q);
    }

    /** What the last elimination left of a weight. */
    private final double[] eliminated = new double[3];

    private void run(Precisions q, int r, double w00, double w01, double w11) {
        int from = cells.runCells[r];
        int to = cells.runCells[r + 1];
        double[] w = weight;
        double[] p = q.run();
        if (p == null) {
            eliminated[0] = w00;
            eliminated[1] = w01;
            eliminated[2] = w11;
            for (int c = from; c < to; c++) {
                int at = 3 * cells.pattern[c];
                patternWeight[at] += w[3 * c];
                patternWeight[at + 1] += w[3 * c + 1];
                patternWeight[at + 2] += w[3 * c + 2];
                addToDay(cells.pattern[c], w[3 * c], w[3 * c + 1], w[3 * c + 1], w[3 * c + 2]);
            }
            return;
        }
        double h00 = w00 + p[0];
        double h01 = w01 + p[1];
        double h11 = w11 + p[2];
        double det = h00 * h11 - h01 * h01;
        logDeterminant += Math.log(det);
        double g00 = h11 / det;
        double g01 = -h01 / det;
        double g11 = h00 / det;
        runInverse[3 * r] = g00;
        runInverse[3 * r + 1] = g01;
        runInverse[3 * r + 2] = g11;
        runWeight[3 * r] = w00;
        runWeight[3 * r + 1] = w01;
        runWeight[3 * r + 2] = w11;
        // M = I - W G; what is left of the weight is M W.
        double m00 = 1 - w00 * g00 - w01 * g01;
        double m01 = -w00 * g01 - w01 * g11;
        double m10 = -w01 * g00 - w11 * g01;
        double m11 = 1 - w01 * g01 - w11 * g11;
        eliminated[0] = m00 * w00 + m01 * w01;
        eliminated[1] = m00 * w01 + m01 * w11;
        eliminated[2] = m10 * w01 + m11 * w11;
        for (int c = from; c < to; c++) {
            double c00 = w[3 * c];
            double c01 = w[3 * c + 1];
            double c11 = w[3 * c + 2];
            addToDay(
                    cells.pattern[c],
                    m00 * c00 + m01 * c01,
                    m00 * c01 + m01 * c11,
                    m10 * c00 + m11 * c01,
                    m10 * c01 + m11 * c11);
            // W_c G W_e for the cells of the run: on the diagonal by pattern, off it one by one.
            double a00 = c00 * g00 + c01 * g01;
            double a01 = c00 * g01 + c01 * g11;
            double a10 = c01 * g00 + c11 * g01;
            double a11 = c01 * g01 + c11 * g11;
            int at = 3 * cells.pattern[c];
            patternWeight[at] += c00 - a00 * c00 - a01 * c01;
            patternWeight[at + 1] += c01 - a00 * c01 - a01 * c11;
            patternWeight[at + 2] += c11 - a10 * c01 - a11 * c11;
            for (int e = from; e < c; e++) {
                double e00 = w[3 * e];
                double e01 = w[3 * e + 1];
                double e11 = w[3 * e + 2];
                double x00 = -(a00 * e00 + a01 * e01);
                double x01 = -(a00 * e01 + a01 * e11);
                double x10 = -(a10 * e00 + a11 * e01);
                double x11 = -(a10 * e01 + a11 * e11);
                addToBorder(cells.pattern[c], cells.pattern[e], x00, x01, x10, x11);
                addToBorder(cells.pattern[e], cells.pattern[c], x00, x10, x01, x11);
            }
        }
    }

    /** Adds V x' to the rows that couple the day in hand with the border. */
    private void addToDay(int pattern, double v00, double v01, double v10, double v11) {
        int[] columns = cells.columns[pattern];
        double[] values = cells.values[pattern];
        if (k == 1) {
            for (int i = 0; i < columns.length; i++) {
                row0[columns[i]] += v00 * values[i];
            }
            return;
        }
        for (int i = 0; i < columns.length; i++) {
            int at = 2 * columns[i];
            double x = values[i];
            row0[at] += v00 * x;
            row0[at + 1] += v01 * x;
            row1[at] += v10 * x;
            row1[at + 1] += v11 * x;
        }
    }

    /** Adds x_p V x_q' to the border, where it falls into the lower triangle. */
    private void addToBorder(int p, int q, double v00, double v01, double v10, double v11) {
        int[] rows = cells.columns[p];
        int[] columns = cells.columns[q];
        for (int i = 0; i < rows.length; i++) {
            double x = cells.values[p][i];
            int top = rows[i] * k * border;
            for (int j = 0; j < columns.length && columns[j] <= rows[i]; j++) {
                double xy = x * cells.values[q][j];
                int at = top + columns[j] * k;
                factor[at] += v00 * xy;
                if (k == 2) {
                    // Above the diagonal where the two covariates are the same; never read.
                    factor[at + 1] += v01 * xy;
                    factor[at + border] += v10 * xy;
                    factor[at + border + 1] += v11 * xy;
                }
            }
        }
    }

    private void day(Precisions q, int t, int d, double w00, double w01, double w11) {
        int from = cells.dayColumnStart[d];
        int n = cells.dayColumnStart[d + 1] - from;
        if (cells.daily > 0) {
            addDaily(d, w00, w01, w11);
        }
        double[] p = q.day();
        double m00 = 1;
        double m01 = 0;
        double m10 = 0;
        double m11 = 1;
        eliminated[0] = w00;
        eliminated[1] = w01;
        eliminated[2] = w11;
        if (p != null) {
            double h00 = w00 + p[0];
            double h01 = w01 + p[1];
            double h11 = w11 + p[2];
            double det = h00 * h11 - h01 * h01;
            logDeterminant += Math.log(det);
            double g00 = h11 / det;
            double g01 = -h01 / det;
            double g11 = h00 / det;
            dayInverse[3 * d] = g00;
            dayInverse[3 * d + 1] = g01;
            dayInverse[3 * d + 2] = g11;
            dayWeight[3 * d] = w00;
            dayWeight[3 * d + 1] = w01;
            dayWeight[3 * d + 2] = w11;
            m00 = 1 - w00 * g00 - w01 * g01;
            m01 = -w00 * g01 - w01 * g11;
            m10 = -w01 * g00 - w11 * g01;
            m11 = 1 - w01 * g01 - w11 * g11;
            eliminated[0] = m00 * w00 + m01 * w01;
            eliminated[1] = m00 * w01 + m01 * w11;
            eliminated[2] = m10 * w01 + m11 * w11;
            int at = 2 * k * from;
            int width = k * n;
            for (int i = 0; i < n; i++) {
                int column = k * cells.dayColumns[from + i];
                for (int l = 0; l < k; l++) {
                    dayBorder[at + k * i + l] = row0[column + l];
                    dayBorder[at + width + k * i + l] = row1[column + l];
                }
            }
            for (int i = 0; i < width; i++) {
                double c0 = dayBorder[at + i];
                double c1 = dayBorder[at + width + i];
                double z0 = g00 * c0 + g01 * c1;
                double z1 = g01 * c0 + g11 * c1;
                int row = border(from, i) * border;
                for (int j = 0; j <= i; j++) {
                    factor[row + border(from, j)] -= z0 * dayBorder[at + j] + z1 * dayBorder[at + width + j];
                }
            }
        }
        int rows = 2 * border * t;
        for (int i = 0; i < n; i++) {
            int column = k * cells.dayColumns[from + i];
            for (int l = 0; l < k; l++) {
                double c0 = row0[column + l];
                double c1 = row1[column + l];
                if (hasChain) {
                    nodeBorder[rows + column + l] += m00 * c0 + m01 * c1;
                    nodeBorder[rows + border + column + l] += m10 * c0 + m11 * c1;
                }
                row0[column + l] = 0;
                row1[column + l] = 0;
            }
        }
    }

    /** Adds a day's own covariates: they couple as its level does, times their values. */
    private void addDaily(int d, double w00, double w01, double w11) {
        int from = cells.dayColumnStart[d];
        int others = k * (cells.dayColumnStart[d + 1] - from - cells.daily);
        int at = cells.dailyAt();
        double[] z = cells.dayValues[d];
        for (int i = 0; i < z.length; i++) {
            int row = (at + k * i) * border;
            for (int j = 0; j < others; j++) {
                int column = border(from, j);
                factor[row + column] += z[i] * row0[column];
                if (k == 2) {
                    factor[row + border + column] += z[i] * row1[column];
                }
            }
            for (int j = 0; j <= i; j++) {
                double zz = z[i] * z[j];
                int column = row + at + k * j;
                factor[column] += zz * w00;
                if (k == 2) {
                    // Above the diagonal where the two covariates are the same; never read.
                    factor[column + 1] += zz * w01;
                    factor[column + border] += zz * w01;
                    factor[column + border + 1] += zz * w11;
                }
            }
        }
        for (int i = 0; i < z.length; i++) {
            int column = at + k * i;
            row0[column] = w00 * z[i];
            if (k == 2) {
                row0[column + 1] = w01 * z[i];
                row1[column] = w01 * z[i];
                row1[column + 1] = w11 * z[i];
            }
        }
    }

    /** What a day's own covariates add to its level, for predictor l. */
    double daily(double[] x, int d, int l) {
        double sum = 0;
        double[] z = cells.dayValues[d];
        int at = borderAt + cells.dailyAt() + l;
        for (int i = 0; i < z.length; i++) {
            sum += z[i] * x[at + k * i];
        }
        return sum;
    }

    /** The reverse: what stands at a day's level, added to the effects of its own covariates. */
    void addDaily(double[] x, int d, double y0, double y1) {
        double[] z = cells.dayValues[d];
        int at = borderAt + cells.dailyAt();
        for (int i = 0; i < z.length; i++) {
            x[at + k * i] += z[i] * y0;
            if (k == 2) {
                x[at + k * i + 1] += z[i] * y1;
            }
        }
    }

    /** The scalar of the border that is the i-th of a day whose covariates start there. */
    private int border(int from, int i) {
        return k == 1 ? cells.dayColumns[from + i] : 2 * cells.dayColumns[from + i / 2] + (i & 1);
    }

    private void node(Precisions q, int t, double w00, double w01, double w11) {
        double[] first = q.first();
        double[] step = q.step();
        double[] stay = q.stay();
        double h00 = w00;
        double h11 = w11;
        if (t == 0 && first != null) {
            h00 += first[0];
            h11 += first[1];
        } else {
            h00 += step[2 * t - 2];
            h11 += step[2 * t - 1];
        }
        boolean last = t == cells.nodes() - 1;
        if (!last) {
            h00 += stay[2 * t] * stay[2 * t] * step[2 * t];
            h11 += stay[2 * t + 1] * stay[2 * t + 1] * step[2 * t + 1];
        }
        double det = h00 * h11 - w01 * w01;
        logDeterminant += Math.log(det);
        double g00 = h11 / det;
        double g01 = -w01 / det;
        double g11 = h00 / det;
        nodeInverse[3 * t] = g00;
        nodeInverse[3 * t + 1] = g01;
        nodeInverse[3 * t + 2] = g11;
        double o0 = last ? 0 : -stay[2 * t] * step[2 * t];
        double o1 = last ? 0 : -stay[2 * t + 1] * step[2 * t + 1];
        nodeNext[2 * t] = o0;
        nodeNext[2 * t + 1] = o1;
        eliminated[0] = -o0 * g00 * o0;
        eliminated[1] = -o0 * g01 * o1;
        eliminated[2] = -o1 * g11 * o1;
        int rows = 2 * border * t;
        int next = rows + 2 * border;
        for (int i = 0; i < border; i++) {
            double e0 = nodeBorder[rows + i];
            double e1 = nodeBorder[rows + border + i];
            if (e0 == 0 && e1 == 0) {
                continue;
            }
            double z0 = g00 * e0 + g01 * e1;
            double z1 = g01 * e0 + g11 * e1;
            if (!last) {
                nodeBorder[next + i] -= o0 * z0;
                nodeBorder[next + border + i] -= o1 * z1;
            }
            int row = i * border;
            for (int j = 0; j <= i; j++) {
                factor[row + j] -= z0 * nodeBorder[rows + j] + z1 * nodeBorder[rows + border + j];
            }
        }
    }

    private void border(Precisions q) {
        for (int p = 0; p < cells.patterns(); p++) {
            double v01 = patternWeight[3 * p + 1];
            addToBorder(p, p, patternWeight[3 * p], v01, v01, patternWeight[3 * p + 2]);
        }
        for (int i = 0; i < border; i++) {
            factor[i * border + i] += q.border()[i];
        }
        Dense.cholesky(factor, border);
    }

    /**
     * Solves H x = rhs.
     *
     * @param rhs replaced by x
     * @param inner scalars of the border that take part; the others stay 0
     */
    void solve(double[] rhs, int inner) {
        Arrays.fill(patternVector, 0);
        for (int t = 0; t < cells.nodes(); t++) {
            for (int d = cells.nodeDays[t]; d < cells.nodeDays[t + 1]; d++) {
                double down0 = 0;
                double down1 = 0;
                if (hasRuns) {
                    for (int r = cells.dayRuns[d]; r < cells.dayRuns[d + 1]; r++) {
                        double y0 = rhs[2 * r];
                        double y1 = rhs[2 * r + 1];
                        double x0 = runInverse[3 * r] * y0 + runInverse[3 * r + 1] * y1;
                        double x1 = runInverse[3 * r + 1] * y0 + runInverse[3 * r + 2] * y1;
                        for (int c = cells.runCells[r]; c < cells.runCells[r + 1]; c++) {
                            int at = 2 * cells.pattern[c];
                            patternVector[at] += weight[3 * c] * x0 + weight[3 * c + 1] * x1;
                            patternVector[at + 1] += weight[3 * c + 1] * x0 + weight[3 * c + 2] * x1;
                        }
                        down0 += runWeight[3 * r] * x0 + runWeight[3 * r + 1] * x1;
                        down1 += runWeight[3 * r + 1] * x0 + runWeight[3 * r + 2] * x1;
                    }
                    addDaily(rhs, d, -down0, -down1);
                }
                if (hasDays) {
                    int at = dayAt + 2 * d;
                    rhs[at] -= down0;
                    rhs[at + 1] -= down1;
                    double x0 = dayInverse[3 * d] * rhs[at] + dayInverse[3 * d + 1] * rhs[at + 1];
                    double x1 = dayInverse[3 * d + 1] * rhs[at] + dayInverse[3 * d + 2] * rhs[at + 1];
                    int from = cells.dayColumnStart[d];
                    int width = k * (cells.dayColumnStart[d + 1] - from);
                    int rows = 2 * k * from;
                    for (int i = 0; i < width; i++) {
                        rhs[borderAt + border(from, i)] -= dayBorder[rows + i] * x0 + dayBorder[rows + width + i] * x1;
                    }
                    down0 += dayWeight[3 * d] * x0 + dayWeight[3 * d + 1] * x1;
                    down1 += dayWeight[3 * d + 1] * x0 + dayWeight[3 * d + 2] * x1;
                }
                if (hasChain) {
                    rhs[nodeAt + 2 * t] -= down0;
                    rhs[nodeAt + 2 * t + 1] -= down1;
                }
            }
            if (hasChain) {
                int at = nodeAt + 2 * t;
                double x0 = nodeInverse[3 * t] * rhs[at] + nodeInverse[3 * t + 1] * rhs[at + 1];
                double x1 = nodeInverse[3 * t + 1] * rhs[at] + nodeInverse[3 * t + 2] * rhs[at + 1];
                if (t < cells.nodes() - 1) {
                    rhs[at + 2] -= nodeNext[2 * t] * x0;
                    rhs[at + 3] -= nodeNext[2 * t + 1] * x1;
                }
                int rows = 2 * border * t;
                for (int i = 0; i < border; i++) {
                    rhs[borderAt + i] -= nodeBorder[rows + i] * x0 + nodeBorder[rows + border + i] * x1;
                }
            }
        }
        if (hasRuns) {
            for (int p = 0; p < cells.patterns(); p++) {
                int[] columns = cells.columns[p];
                for (int i = 0; i < columns.length; i++) {
                    for (int l = 0; l < k; l++) {
                        rhs[borderAt + k * columns[i] + l] -= cells.values[p][i] * patternVector[2 * p + l];
                    }
                }
            }
        }
        Dense.solve(factor, border, inner, rhs, borderAt);
        back(rhs);
    }

    private void back(double[] x) {
        if (hasRuns) {
            predict(x, patternVector);
        }
        for (int t = cells.nodes() - 1; t >= 0; t--) {
            double level0 = 0;
            double level1 = 0;
            if (hasChain) {
                int at = nodeAt + 2 * t;
                boolean last = t == cells.nodes() - 1;
                double y0 = x[at] - (last ? 0 : nodeNext[2 * t] * x[at + 2]);
                double y1 = x[at + 1] - (last ? 0 : nodeNext[2 * t + 1] * x[at + 3]);
                int rows = 2 * border * t;
                for (int i = 0; i < border; i++) {
                    y0 -= nodeBorder[rows + i] * x[borderAt + i];
                    y1 -= nodeBorder[rows + border + i] * x[borderAt + i];
                }
                level0 = nodeInverse[3 * t] * y0 + nodeInverse[3 * t + 1] * y1;
                level1 = nodeInverse[3 * t + 1] * y0 + nodeInverse[3 * t + 2] * y1;
                x[at] = level0;
                x[at + 1] = level1;
            }
            for (int d = cells.nodeDays[t]; d < cells.nodeDays[t + 1]; d++) {
                double q0 = level0;
                double q1 = level1;
                if (hasDays) {
                    int at = dayAt + 2 * d;
                    double y0 = x[at] - dayWeight[3 * d] * level0 - dayWeight[3 * d + 1] * level1;
                    double y1 = x[at + 1] - dayWeight[3 * d + 1] * level0 - dayWeight[3 * d + 2] * level1;
                    int from = cells.dayColumnStart[d];
                    int width = k * (cells.dayColumnStart[d + 1] - from);
                    int rows = 2 * k * from;
                    for (int i = 0; i < width; i++) {
                        double b = x[borderAt + border(from, i)];
                        y0 -= dayBorder[rows + i] * b;
                        y1 -= dayBorder[rows + width + i] * b;
                    }
                    x[at] = dayInverse[3 * d] * y0 + dayInverse[3 * d + 1] * y1;
                    x[at + 1] = dayInverse[3 * d + 1] * y0 + dayInverse[3 * d + 2] * y1;
                    q0 += x[at];
                    q1 += x[at + 1];
                }
                if (hasRuns && cells.daily > 0) {
                    q0 += daily(x, d, 0);
                    q1 += k == 2 ? daily(x, d, 1) : 0;
                }
                for (int r = cells.dayRuns[d]; hasRuns && r < cells.dayRuns[d + 1]; r++) {
                    double y0 = x[2 * r] - runWeight[3 * r] * q0 - runWeight[3 * r + 1] * q1;
                    double y1 = x[2 * r + 1] - runWeight[3 * r + 1] * q0 - runWeight[3 * r + 2] * q1;
                    for (int c = cells.runCells[r]; c < cells.runCells[r + 1]; c++) {
                        double b0 = patternVector[2 * cells.pattern[c]];
                        double b1 = patternVector[2 * cells.pattern[c] + 1];
                        y0 -= weight[3 * c] * b0 + weight[3 * c + 1] * b1;
                        y1 -= weight[3 * c + 1] * b0 + weight[3 * c + 2] * b1;
                    }
                    x[2 * r] = runInverse[3 * r] * y0 + runInverse[3 * r + 1] * y1;
                    x[2 * r + 1] = runInverse[3 * r + 1] * y0 + runInverse[3 * r + 2] * y1;
                }
            }
        }
    }

    /** Fills in, at 2 p + k, the border's part x'b of each pattern's predictors. */
    void predict(double[] x, double[] pattern) {
        for (int p = 0; p < cells.patterns(); p++) {
            int[] columns = cells.columns[p];
            double sum0 = 0;
            double sum1 = 0;
            for (int i = 0; i < columns.length; i++) {
                double value = cells.values[p][i];
                sum0 += value * x[borderAt + k * columns[i]];
                sum1 += k == 2 ? value * x[borderAt + 2 * columns[i] + 1] : 0;
            }
            pattern[2 * p] = sum0;
            pattern[2 * p + 1] = sum1;
        }
    }

    /** The covariances that the cells need; the border's scalars from {@code inner} on count as known. */
    Covariances covariances(int inner) {
        return new Covariances(this, inner).downToCells();
    }
}
