package boardside.engine.skill;

import org.apache.commons.numbers.gamma.Erfc;

/**
 * Where a bag comes down or comes to rest, as chance has it: two independent normal numbers, across and along the board.
 *
 * @param meanX inches to the thrower's right of the board's centre line
 * @param deviationX standard deviation, inches, above 0
 * @param meanY inches up the board from its front edge
 * @param deviationY standard deviation, inches, above 0
 */
public record BivariateNormal(double meanX, double deviationX, double meanY, double deviationY) {
    /** Beyond so many standard deviations lies less than 1e-18 of a normal number. */
    private static final double FAR = 9;

    private static final int MOST_PANELS = 8;

    /**
     * Checks the deviations.
     *
     * @throws IllegalArgumentException unless both are above 0; NaN fails
     */
    public BivariateNormal {
        if (!(deviationX > 0 && deviationY > 0)) {
            throw new IllegalArgumentException(
                    "standard deviations are above 0, not " + deviationX + " and " + deviationY);
        }
    }

    /**
     * The chance of a point within a circle, to 1e-10: over lines across the circle, each a difference of two normal
     * distribution functions (the integral of DiDonato and Jarnagin 1961, Mathematics of Computation 15, 375-382), with x =
     * r sin t, which takes the poles from its ends.
     *
     * @param x centre, inches
     * @param y centre, inches
     * @param radius inches, 0 or more
     */
    public double inCircle(double x, double y, double radius) {
        // Integrate over the wider of the two, so that what is summed bends least.
        if (deviationX < deviationY) {
            return new BivariateNormal(meanY, deviationY, meanX, deviationX).inCircle(y, x, radius);
        }
        double low = Math.max(-radius, meanX - x - FAR * deviationX);
        double high = Math.min(radius, meanX - x + FAR * deviationX);
        if (!(low < high)) {
            return 0;
        }
        // More panels where the law is narrow beside the circle, so that none holds an edge too sharp for its nodes.
        int panels = (int) Math.min(MOST_PANELS, 1 + radius / (2 * deviationY));
        double from = Math.asin(low / radius);
        double step = (Math.asin(high / radius) - from) / panels;
        double sum = 0;
        for (int panel = 0; panel < panels; panel++) {
            for (int i = 0; i < GaussLegendre.NODES.length; i++) {
                double t = from + step * (panel + (1 + GaussLegendre.NODES[i]) / 2);
                double half = radius * Math.cos(t);
                double z = (x + radius * Math.sin(t) - meanX) / deviationX;
                sum += GaussLegendre.WEIGHTS[i]
                        * half
                        * Math.exp(-z * z / 2)
                        * between((y - half - meanY) / deviationY, (y + half - meanY) / deviationY);
            }
        }
        return sum * step / 2 / (deviationX * Math.sqrt(2 * Math.PI));
    }

    /** The chance of a point within a rectangle; ends may be infinite. */
    public double inRectangle(double left, double right, double bottom, double top) {
        return between((left - meanX) / deviationX, (right - meanX) / deviationX)
                * between((bottom - meanY) / deviationY, (top - meanY) / deviationY);
    }

    /**
     * Radius of the circle around the mean that holds a share of the points, to 1e-9 of itself (tabulated by Harter 1960,
     * JASA 55, 723-731).
     *
     * @param share 0 < share < 1
     */
    public double radius(double share) {
        double low = 0;
        double high = FAR * Math.max(deviationX, deviationY);
        while (high - low > 1e-10 * high) {
            double middle = (low + high) / 2;
            if (inCircle(meanX, meanY, middle) < share) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    /** Chance of a standard normal number between two, without loss in the tails. */
    static double between(double low, double high) {
        return low > 0 ? below(-low) - below(-high) : below(high) - below(low);
    }

    private static double below(double z) {
        return Erfc.value(-z / Math.sqrt(2)) / 2;
    }
}
