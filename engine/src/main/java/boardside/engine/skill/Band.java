package boardside.engine.skill;

import boardside.engine.skill.Measured.Mix;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Skill over time: points per round that a mix makes on many days, each with its range, by the delta method on the scale
 * of the logit of a twelfth of the points (which keeps a range within 0..12), averaged over the fit's points.
 */
final class Band {
    private static final double NORMAL_95 = 1.6448536269514722;
    private static final double MOST = 12;
    private static final double STEP = 1e-3;

    private Band() {}

    /** Dates before the first records are left out. */
    static Map<LocalDate, Interval> of(Fit fit, Mix mix, List<LocalDate> dates) {
        LocalDate from = fit.log.counts.get(0).day();
        List<LocalDate> known =
                dates.stream().filter(date -> !date.isBefore(from)).distinct().toList();
        double[] mean = new double[known.size()];
        double[] square = new double[known.size()];
        double[] variance = new double[known.size()];
        for (Fit.Point point : fit.points) {
            One one = new One(fit.log, point, mix);
            for (int i = 0; i < mean.length; i++) {
                one.at(known.get(i));
                mean[i] += one.logit / fit.points.size();
                square[i] += one.logit * one.logit / fit.points.size();
                variance[i] += one.variance / fit.points.size();
            }
        }
        Map<LocalDate, Interval> band = new LinkedHashMap<>();
        for (int i = 0; i < mean.length; i++) {
            double reach = NORMAL_95 * Math.sqrt(variance[i] + Math.max(0, square[i] - mean[i] * mean[i]));
            band.put(
                    known.get(i),
                    new Interval(
                            MOST * BagCounts.logistic(mean[i]),
                            MOST * BagCounts.logistic(mean[i] - reach),
                            MOST * BagCounts.logistic(mean[i] + reach)));
        }
        return band;
    }

    private static final class One {
        private final Cells cells;
        private final Fit.Point point;
        private final Mix mix;
        private final Covariances covariances;
        private final DaySpread spread;
        private final int width;
        private final double[] borderSlope;
        private final List<double[]> fixed = new ArrayList<>();
        double logit;
        double variance;

        One(Log log, Fit.Point point, Mix mix) {
            this.point = point;
            this.mix = mix;
            cells = log.cells;
            width = cells.border();
            covariances = new Covariances(point.laplace().arrow, width);
            spread = new DaySpread(log.variances, point.theta());
            borderSlope = new double[width];
            double[] effects = point.laplace().effects;
            for (Log.Row row : mix.rows()) {
                double[] eta = Log.MEAN.clone();
                for (int i = 0; i < row.columns().length; i++) {
                    int at = point.laplace().arrow.borderAt + 2 * row.columns()[i];
                    eta[0] += row.values()[i] * effects[at];
                    eta[1] += row.values()[i] * effects[at + 1];
                }
                fixed.add(eta);
            }
        }

        void at(LocalDate date) {
            double time = date.toEpochDay();
            int t = Arrays.binarySearch(cells.times, time);
            if (t < 0) {
                int after = -t - 1;
                boolean later = after == cells.nodes()
                        || after > 0 && time - cells.times[after - 1] < cells.times[after] - time;
                t = later ? after - 1 : after;
            }
            double gap = Math.abs(time - cells.times[t]);
            double[] effects = point.laplace().effects;
            int at = point.laplace().arrow.nodeAt + 2 * t;
            Arrays.fill(borderSlope, 0);
            double points = 0;
            double slope0 = 0;
            double slope1 = 0;
            for (int r = 0; r < fixed.size(); r++) {
                double e0 = fixed.get(r)[0] + effects[at];
                double e1 = fixed.get(r)[1] + effects[at + 1];
                double weight = mix.weights()[r];
                double here = points(e0, e1);
                double s0 = weight * (points(e0 + STEP, e1) - here) / STEP;
                double s1 = weight * (points(e0, e1 + STEP) - here) / STEP;
                points += weight * here;
                slope0 += s0;
                slope1 += s1;
                Log.Row row = mix.rows().get(r);
                for (int i = 0; i < row.columns().length; i++) {
                    borderSlope[2 * row.columns()[i]] += s0 * row.values()[i];
                    borderSlope[2 * row.columns()[i] + 1] += s1 * row.values()[i];
                }
            }
            double[] v = covariances.node;
            double d0 = Math.exp(2 * point.theta()[0]) * gap;
            double d1 = Math.exp(2 * point.theta()[1]) * gap;
            double sum = slope0 * slope0 * (v[3 * t] + d0)
                    + 2 * slope0 * slope1 * v[3 * t + 1]
                    + slope1 * slope1 * (v[3 * t + 2] + d1);
            int rows = 2 * width * t;
            for (int i = 0; i < width; i++) {
                if (borderSlope[i] != 0) {
                    double own = 0;
                    for (int j = 0; j < width; j++) {
                        own += covariances.border[i * width + j] * borderSlope[j];
                    }
                    own += 2 * slope0 * covariances.nodeBorder[rows + i];
                    own += 2 * slope1 * covariances.nodeBorder[rows + width + i];
                    sum += borderSlope[i] * own;
                }
            }
            double share = Math.min(1 - 1e-9, Math.max(1e-9, points / MOST));
            double scale = MOST * share * (1 - share);
            logit = Math.log(share / (1 - share));
            variance = sum / (scale * scale);
        }

        private double points(double eta0, double eta1) {
            double[] sums = new double[3];
            spread.add(eta0, eta1, 1, sums);
            return 4 * (2 * sums[0] + sums[1]);
        }
    }
}
