package boardside.engine.skill;

/** Gauss-Legendre quadrature on -1..1 with 48 nodes. */
final class GaussLegendre {
    /** Ascending. */
    static final double[] NODES = new double[48];

    /** In the order of the nodes; they add up to 2. */
    static final double[] WEIGHTS = new double[48];

    static {
        int n = NODES.length;
        for (int i = 0; i < n; i++) {
            // Newton on the Legendre polynomial from Tricomi's first guess (Abramowitz and Stegun, 22.16.6).
            double x = -Math.cos(Math.PI * (i + 0.75) / (n + 0.5));
            double slope = 1;
            for (int step = 0; step < 8; step++) {
                double p = 1;
                double before = 0;
                for (int k = 1; k <= n; k++) {
                    double next = ((2 * k - 1) * x * p - (k - 1) * before) / k;
                    before = p;
                    p = next;
                }
                slope = n * (x * p - before) / (x * x - 1);
                x -= p / slope;
            }
            NODES[i] = x;
            WEIGHTS[i] = 2 / ((1 - x * x) * slope * slope);
        }
    }

    private GaussLegendre() {}
}
