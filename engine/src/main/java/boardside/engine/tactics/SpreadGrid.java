package boardside.engine.tactics;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Values for the spreads, equally likely before any try: quantiles of the half-normal distribution with scale 2, at the
 * middles of equal shares. Of one spread many, of several fewer each, so that the grid stays small. The scale is wide on
 * purpose: narrower ones shrink a handful of tries so far that ranges hold too much where kinds are alike and too little
 * where they differ (docs/rates.md).
 */
final class SpreadGrid {
    /** Values of each spread by the number of spreads, from none. */
    private static final int[] EACH = {1, 40, 12, 6, 4, 3, 3};

    private static final double SCALE = 2;

    private SpreadGrid() {}

    /**
     * The grid.
     *
     * @param spreads how many there are, 0 or more
     * @return points, each with a value per spread; neighbours differ in the last first
     */
    static List<double[]> of(int spreads) {
        int each = EACH[Math.min(spreads, EACH.length - 1)];
        List<double[]> points = new ArrayList<>(List.of(new double[spreads]));
        for (int spread = 0; spread < spreads; spread++) {
            List<double[]> more = new ArrayList<>();
            for (double[] point : points) {
                for (int i = 0; i < each; i++) {
                    double[] with = point.clone();
                    with[spread] = halfNormal((i + 0.5) / each);
                    more.add(with);
                }
            }
            points = more;
        }
        return points;
    }

    private static double halfNormal(double share) {
        return SCALE * NormalDistribution.of(0, 1).inverseCumulativeProbability((1 + share) / 2);
    }
}
