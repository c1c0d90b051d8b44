package boardside.engine.skill;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Equally likely states of the player: draws from the joint posterior of the border's effects and the levels over time,
 * shared among the points of a {@link Fit}. The numbers behind them are fixed, and every draw has its mirror image about
 * the mode, so the same records give the same digits.
 */
final class Draws {
    private static final int FEW = 1000;
    private static final int MANY = 2400;
    /** A border of more scalars than this gets few draws: its log is long, and knows much. */
    private static final int WIDE = 60;

    final Fit fit;
    final LocalDate asOf;
    final int size;
    /** Draws of point p are starts[p] to starts[p + 1]. */
    private final int[] starts;
    /** Border effects less those at the mode, at draw * border. */
    private final double[] border;
    /** Border effects. */
    private final double[] effects;
    /** Level at the last node less that at the mode, at 2 * draw. */
    private final double[] last;
    /** Level today, prior mean included. */
    final double[] now;

    private final int width;
    private @Nullable Today today;

    Draws(Fit fit, LocalDate asOf) {
        this.fit = fit;
        this.asOf = asOf;
        int points = fit.points.size();
        width = fit.log.cells.border();
        int each = 2 * Math.max(1, (width > WIDE ? FEW : MANY) / points / 2);
        size = each * points;
        starts = new int[points + 1];
        border = new double[size * width];
        effects = new double[size * width];
        last = new double[2 * size];
        now = new double[2 * size];
        Normals normals = new Normals(1);
        int nodes = fit.log.cells.nodes();
        double[] z = new double[width + 4];
        for (int p = 0; p < points; p++) {
            starts[p + 1] = starts[p] + each;
            Laplace laplace = fit.points.get(p).laplace();
            Arrow arrow = laplace.arrow;
            double[] root = Block.root(arrow.nodeInverse, 3 * (nodes - 1));
            double gap = Math.max(0, asOf.toEpochDay() - fit.log.cells.times[nodes - 1]);
            for (int i = starts[p]; i < starts[p + 1]; i += 2) {
                for (int j = 0; j < z.length; j++) {
                    z[j] = normals.next();
                }
                System.arraycopy(z, 0, border, i * width, width);
                Dense.solveTransposed(arrow.factor, width, width, border, i * width);
                double y0 = 0;
                double y1 = 0;
                int rows = 2 * width * (nodes - 1);
                for (int j = 0; j < width; j++) {
                    y0 += arrow.nodeBorder[rows + j] * border[i * width + j];
                    y1 += arrow.nodeBorder[rows + width + j] * border[i * width + j];
                }
                double[] g = arrow.nodeInverse;
                int at = 3 * (nodes - 1);
                last[2 * i] = -g[at] * y0 - g[at + 1] * y1 + root[0] * z[width];
                last[2 * i + 1] = -g[at + 1] * y0 - g[at + 2] * y1 + root[1] * z[width] + root[2] * z[width + 1];
                double drift0 = drift(p, 0) * Math.sqrt(gap) * z[width + 2];
                double drift1 = drift(p, 1) * Math.sqrt(gap) * z[width + 3];
                for (int mirror = 0; mirror < 2; mirror++) {
                    int to = i + mirror;
                    double sign = 1 - 2 * mirror;
                    for (int j = 0; j < width; j++) {
                        double off = sign * border[i * width + j];
                        effects[to * width + j] = laplace.effects[arrow.borderAt + j] + off;
                    }
                    now[2 * to] = level(laplace, nodes - 1, 0) + sign * (last[2 * i] + drift0);
                    now[2 * to + 1] = level(laplace, nodes - 1, 1) + sign * (last[2 * i + 1] + drift1);
                }
                for (int j = 0; j < width; j++) {
                    border[(i + 1) * width + j] = -border[i * width + j];
                }
                last[2 * i + 2] = -last[2 * i];
                last[2 * i + 3] = -last[2 * i + 1];
            }
        }
    }

    private double drift(int point, int k) {
        return Math.exp(fit.points.get(point).theta()[k]);
    }

    private static double level(Laplace laplace, int node, int k) {
        return Log.MEAN[k] + laplace.effects[laplace.arrow.nodeAt + 2 * node + k];
    }

    /** Today's skill at the usual mix; most answers need it. */
    synchronized Today today() {
        if (today == null) {
            today = new Today(this);
        }
        return today;
    }

    /** The state of the hyperparameters behind a draw. */
    double[] theta(int draw) {
        int each = starts[1];
        return fit.points.get(draw / each).theta();
    }

    /** Draws per value of the hyperparameters: one after another. */
    int each() {
        return starts[1];
    }

    /**
     * Levels on other days, jointly with everything else: one array like {@link #now} for each.
     *
     * @param dates up to today, the latest first
     */
    double[][] levels(List<LocalDate> dates) {
        double[][] levels = new double[dates.size()][2 * size];
        for (int p = 0; p < fit.points.size(); p++) {
            new Past(p).levels(dates, levels);
        }
        return levels;
    }

    /** A walk back in time through the draws of one point. */
    private final class Past {
        private final int p;
        private final Laplace laplace;
        private final Arrow arrow;
        private final double[] times = fit.log.cells.times;
        private final Normals normals;
        /** The node that {@code at} stands at, and the draws' levels there less the mode. */
        private int node;

        private double[] at;

        Past(int p) {
            this.p = p;
            laplace = fit.points.get(p).laplace();
            arrow = laplace.arrow;
            normals = new Normals(1000 + p);
            node = times.length - 1;
            at = Arrays.copyOfRange(last, 2 * starts[p], 2 * starts[p + 1]);
        }

        void levels(List<LocalDate> dates, double[][] out) {
            // What is known above a date: today first, then the node or the date before.
            double upperTime = asOf.toEpochDay();
            double[] upper = Arrays.copyOfRange(now, 2 * starts[p], 2 * starts[p + 1]);
            for (int i = 0; i < dates.size(); i++) {
                double time = dates.get(i).toEpochDay();
                while (node > 0 && times[node - 1] >= time) {
                    int to = node - 1;
                    while (to > 0 && times[to - 1] >= time) {
                        to--;
                    }
                    back(to);
                }
                // Now times[node] >= time, or the node is the last before it, or the first after it.
                if (times[node] >= time && times[node] <= upperTime) {
                    upperTime = times[node];
                    upper = whole();
                }
                if (node > 0 && times[node] > time) {
                    back(node - 1);
                }
                double[] here;
                if (times[node] > time) {
                    here = outwards(whole(), times[node] - time);
                } else if (upperTime <= time) {
                    here = upper;
                } else {
                    here = between(whole(), times[node], time, upper, upperTime);
                }
                upper = here;
                upperTime = time;
                System.arraycopy(here, 0, out[i], 2 * starts[p], here.length);
            }
        }

        /** The levels at the node, mode and prior mean added. */
        private double[] whole() {
            double[] whole = at.clone();
            for (int i = 0; i < whole.length; i++) {
                whole[i] += level(laplace, node, i % 2);
            }
            return whole;
        }

        private double[] outwards(double[] from, double gap) {
            double[] to = new double[from.length];
            for (int i = 0; i < to.length; i++) {
                to[i] = from[i] + drift(p, i % 2) * Math.sqrt(gap) * normals.next();
            }
            return to;
        }

        /** A random walk between two times at which it is known. */
        private double[] between(double[] lower, double lowerTime, double time, double[] upper, double upperTime) {
            double share = (time - lowerTime) / (upperTime - lowerTime);
            double spread = Math.sqrt((time - lowerTime) * (upperTime - time) / (upperTime - lowerTime));
            double[] to = new double[lower.length];
            for (int i = 0; i < to.length; i++) {
                to[i] = lower[i] + share * (upper[i] - lower[i]) + drift(p, i % 2) * spread * normals.next();
            }
            return to;
        }

        /** Moves on to an earlier node: x = M x(node) + N b + e, composed from the steps between. */
        private void back(int to) {
            double[] m = {1, 0, 0, 1};
            double[] n = new double[2 * width];
            double[] v = new double[3];
            for (int t = node - 1; t >= to; t--) {
                double g00 = arrow.nodeInverse[3 * t];
                double g01 = arrow.nodeInverse[3 * t + 1];
                double g11 = arrow.nodeInverse[3 * t + 2];
                double o0 = arrow.nodeNext[2 * t];
                double o1 = arrow.nodeNext[2 * t + 1];
                // A = -G O
                double a00 = -g00 * o0;
                double a01 = -g01 * o1;
                double a10 = -g01 * o0;
                double a11 = -g11 * o1;
                m = new double[] {
                    a00 * m[0] + a01 * m[2], a00 * m[1] + a01 * m[3], a10 * m[0] + a11 * m[2], a10 * m[1] + a11 * m[3]
                };
                int rows = 2 * width * t;
                for (int j = 0; j < width; j++) {
                    double e0 = arrow.nodeBorder[rows + j];
                    double e1 = arrow.nodeBorder[rows + width + j];
                    double n0 = a00 * n[j] + a01 * n[width + j] - g00 * e0 - g01 * e1;
                    n[width + j] = a10 * n[j] + a11 * n[width + j] - g01 * e0 - g11 * e1;
                    n[j] = n0;
                }
                double x00 = a00 * v[0] + a01 * v[1];
                double x01 = a00 * v[1] + a01 * v[2];
                double x10 = a10 * v[0] + a11 * v[1];
                double x11 = a10 * v[1] + a11 * v[2];
                v = new double[] {g00 + x00 * a00 + x01 * a01, g01 + x00 * a10 + x01 * a11, g11 + x10 * a10 + x11 * a11
                };
            }
            double[] root = Block.root(v, 0);
            double[] moved = new double[at.length];
            for (int i = 0; i < at.length / 2; i++) {
                double y0 = m[0] * at[2 * i] + m[1] * at[2 * i + 1];
                double y1 = m[2] * at[2 * i] + m[3] * at[2 * i + 1];
                int from = (starts[p] + i) * width;
                for (int j = 0; j < width; j++) {
                    y0 += n[j] * border[from + j];
                    y1 += n[width + j] * border[from + j];
                }
                double z0 = normals.next();
                double z1 = normals.next();
                moved[2 * i] = y0 + root[0] * z0;
                moved[2 * i + 1] = y1 + root[1] * z0 + root[2] * z1;
            }
            at = moved;
            node = to;
        }
    }

    /** Fills in a row's two predictors in a draw, given the levels there. */
    void predict(int draw, double[] level, Log.Row row, double[] eta) {
        double eta0 = level[2 * draw];
        double eta1 = level[2 * draw + 1];
        int from = draw * width;
        int[] columns = row.columns();
        double[] values = row.values();
        for (int i = 0; i < columns.length; i++) {
            int at = from + 2 * columns[i];
            eta0 += values[i] * effects[at];
            eta1 += values[i] * effects[at + 1];
        }
        eta[0] = eta0;
        eta[1] = eta1;
    }
}
