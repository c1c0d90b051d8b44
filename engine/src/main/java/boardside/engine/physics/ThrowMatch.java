package boardside.engine.physics;

import boardside.engine.rules.BoardKind;

/**
 * A throw with given chances at an empty regulation board: for a player of whom only those are known. All spreads of a model
 * and how far it is off to a side are multiplied by one factor, and its reach is moved, until the chances are as given; what
 * two numbers cannot tell stays as the model has it.
 */
public final class ThrowMatch {
    private static final ThrowKernel KERNEL = new ThrowKernel(Board.of(BoardKind.REGULATION));
    private static final int STEPS = 60;
    private static final double STEP = 1e-4;
    private static final double CLOSE = 1e-9;
    private static final double TIGHTEST = -3;
    private static final double WIDEST = 3;
    private static final double NEAREST = -10;
    private static final double FARTHEST = 70;
    private static final double PER_INCH = 10;

    /** Nearer than this, in chances, no other start is tried. */
    private static final double FOUND = 1e-6;

    /** At the hole with the model's own spreads; then tighter, and aimed at it, long and short. */
    private static final double[][] STARTS = {{0, 3.9}, {-0.7, 3.9}, {-0.7, 4.4}, {-0.7, 3.3}};

    private ThrowMatch() {}

    /**
     * The model nearest in that sense; where no such throw has just these chances (nobody puts all bags in, say), one that
     * comes as near as it can, by least squares.
     *
     * @param model where to begin
     * @param in chance of in, 0..1
     * @param on chance of on, 0..1
     * @throws IllegalArgumentException if a chance lies outside 0..1, or the two add to more than 1
     */
    public static ThrowModel of(ThrowModel model, double in, double on) {
        if (!(in >= 0 && on >= 0 && in + on <= 1 + CLOSE)) {
            throw new IllegalArgumentException(
                    "the chances of in and on are 0 or more and add up to at most 1, not " + in + " and " + on);
        }
        double[] best = {};
        double off = Double.POSITIVE_INFINITY;
        for (double[] start : STARTS) {
            double[] at = descended(model, start, in, on);
            double there = square(errors(model, at, in, on));
            if (there < off) {
                best = at;
                off = there;
            }
            if (off <= FOUND * FOUND) {
                break;
            }
        }
        return moved(model, best);
    }

    /** Gauss and Newton's method, damped as Marquardt (1963) does, over the log of the factor and the reach in tens. */
    private static double[] descended(ThrowModel model, double[] start, double in, double on) {
        double[] at = start;
        double[] off = errors(model, at, in, on);
        double damping = 1e-3;
        for (int step = 0; step < STEPS && square(off) > CLOSE * CLOSE; step++) {
            double[] a = slopes(model, at, in, on, 0);
            double[] b = slopes(model, at, in, on, 1);
            double aa = a[0] * a[0] + a[1] * a[1] + damping;
            double bb = b[0] * b[0] + b[1] * b[1] + damping;
            double ab = a[0] * b[0] + a[1] * b[1];
            double ga = a[0] * off[0] + a[1] * off[1];
            double gb = b[0] * off[0] + b[1] * off[1];
            double determinant = aa * bb - ab * ab;
            double[] next = {
                Math.min(WIDEST, Math.max(TIGHTEST, at[0] - (bb * ga - ab * gb) / determinant)),
                Math.min(FARTHEST / PER_INCH, Math.max(NEAREST / PER_INCH, at[1] - (aa * gb - ab * ga) / determinant))
            };
            double[] there = errors(model, next, in, on);
            if (square(there) < square(off)) {
                at = next;
                off = there;
                damping /= 8;
            } else {
                damping *= 4;
            }
        }
        return at;
    }

    private static ThrowModel moved(ThrowModel model, double[] at) {
        double factor = Elementary.exp(at[0]);
        return model.aimed(factor * model.x(), PER_INCH * at[1]).spread(factor, factor);
    }

    private static double[] errors(ThrowModel model, double[] at, double in, double on) {
        ThrowChances chances = KERNEL.chances(moved(model, at));
        return new double[] {chances.in() - in, chances.on() - on};
    }

    private static double[] slopes(ThrowModel model, double[] at, double in, double on, int k) {
        double[] more = at.clone();
        double[] less = at.clone();
        more[k] += STEP;
        less[k] -= STEP;
        double[] above = errors(model, more, in, on);
        double[] below = errors(model, less, in, on);
        return new double[] {(above[0] - below[0]) / (2 * STEP), (above[1] - below[1]) / (2 * STEP)};
    }

    private static double square(double[] v) {
        return v[0] * v[0] + v[1] * v[1];
    }
}
