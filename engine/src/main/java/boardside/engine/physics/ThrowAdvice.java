package boardside.engine.physics;

/**
 * What a throw is worth, and what would make it worth more, at an empty regulation board.
 *
 * @param in chance of in
 * @param on chance of on
 * @param off chance of off
 * @param points a bag
 * @param narrowKept chance that a bag stays on a narrow board or goes in
 * @param kept the same on a regulation board
 * @param halfAcross chance of in with half the spread across, aimed as now
 * @param halfAlong chance of in with half the spread along, landing place and speed alike, aimed as now
 * @param centred points a bag with the same spreads and the middle of all throws on the line to the hole's centre
 * @param best the reach that makes most points with these spreads, straight at the hole, inches up from the front edge
 * @param bestPoints points a bag at that reach
 * @param gain of that over the present aim, points a bag
 */
public record ThrowAdvice(
        Range in,
        Range on,
        Range off,
        Range points,
        Range kept,
        Range narrowKept,
        Range halfAcross,
        Range halfAlong,
        Range centred,
        Range best,
        Range bestPoints,
        Range gain) {
    private static final double NEAREST = 20;
    private static final double FARTHEST = 60;
    private static final double GOLDEN = 0.6180339887498949;

    /**
     * The advice that follows from a belief.
     *
     * @param narrow the narrow board
     */
    public static ThrowAdvice of(ThrowFit fit, Board narrow) {
        ThrowKernel regulation = new ThrowKernel(Board.of(Board.REGULATION_WIDTH, Board.FRONT_HEIGHT));
        ThrowKernel strip = new ThrowKernel(narrow);
        int n = fit.draws().size();
        double[][] values = new double[12][n];
        double[] equal = new double[n];
        for (int i = 0; i < n; i++) {
            ThrowModel model = fit.draws().get(i);
            ThrowChances now = regulation.chances(model);
            double reach = best(regulation, model);
            double most = regulation.chances(model.aimed(0, reach)).points();
            double[] answers = {
                now.in(),
                now.on(),
                now.off(),
                now.points(),
                1 - now.off(),
                1 - strip.chances(model).off(),
                regulation.chances(model.spread(0.5, 1)).in(),
                regulation.chances(model.spread(1, 0.5)).in(),
                regulation.chances(model.aimed(0, Board.HOLE_Y)).points(),
                reach,
                most,
                most - now.points()
            };
            for (int k = 0; k < answers.length; k++) {
                values[k][i] = answers[k];
            }
            equal[i] = 1.0 / n;
        }
        Range[] ranges = new Range[values.length];
        for (int k = 0; k < ranges.length; k++) {
            ranges[k] = Range.of(values[k], equal);
        }
        return new ThrowAdvice(
                ranges[0],
                ranges[1],
                ranges[2],
                ranges[3],
                ranges[4],
                ranges[5],
                ranges[6],
                ranges[7],
                ranges[8],
                ranges[9],
                ranges[10],
                ranges[11]);
    }

    /**
     * The reach that makes most points, straight at the hole: by golden section, since points rise and then fall with the
     * reach.
     */
    static double best(ThrowKernel kernel, ThrowModel model) {
        double low = NEAREST;
        double high = FARTHEST;
        double a = high - GOLDEN * (high - low);
        double b = low + GOLDEN * (high - low);
        double atA = kernel.chances(model.aimed(0, a)).points();
        double atB = kernel.chances(model.aimed(0, b)).points();
        while (high - low > 0.05) {
            if (atA > atB) {
                high = b;
                b = a;
                atB = atA;
                a = high - GOLDEN * (high - low);
                atA = kernel.chances(model.aimed(0, a)).points();
            } else {
                low = a;
                a = b;
                atA = atB;
                b = low + GOLDEN * (high - low);
                atB = kernel.chances(model.aimed(0, b)).points();
            }
        }
        return (low + high) / 2;
    }
}
