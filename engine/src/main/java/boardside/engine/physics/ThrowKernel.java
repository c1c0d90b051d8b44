package boardside.engine.physics;

import java.util.ArrayList;
import java.util.List;

/**
 * The chances of {@link ThrowChances} from a {@link ThrowModel}, by the simulator's own closed forms on an empty board: a
 * bag that reaches the rim of the hole at an offset x from its centre falls in if it crosses the chord there no faster than
 * it falls (see {@link Simulator}), that is if its reach goes beyond the rim by at most a length c(x). Given offset and
 * speed, the landing places that end in the hole are then at most two intervals, whose chances the normal distribution
 * function gives; offsets are integrated by Gauss and Legendre's rule over the hole, speeds by the trapezoidal rule, which
 * is spectrally accurate for a normal weight (Trefethen and Weideman 2014, "The exponentially convergent trapezoidal rule",
 * SIAM Review 56, 385-458). Smooth in all parameters; a few microseconds.
 *
 * <p>Immutable; safe for any number of threads.
 */
public final class ThrowKernel {
    private static final int OFFSETS = 12;
    private static final double SPEED_STEP = 0.5;
    private static final double SPEED_ENDS = 4.5;
    private static final double[] SPEEDS;
    private static final double[] SPEED_WEIGHTS;

    static {
        List<Double> nodes = new ArrayList<>();
        for (double z = -SPEED_ENDS; z <= SPEED_ENDS; z += SPEED_STEP) {
            nodes.add(z);
        }
        SPEEDS = nodes.stream().mapToDouble(z -> z).toArray();
        SPEED_WEIGHTS = new double[SPEEDS.length];
        double sum = 0;
        for (int i = 0; i < SPEEDS.length; i++) {
            SPEED_WEIGHTS[i] = Phi.density(SPEEDS[i]);
            sum += SPEED_WEIGHTS[i];
        }
        for (int i = 0; i < SPEEDS.length; i++) {
            SPEED_WEIGHTS[i] /= sum;
        }
    }

    private final Board board;
    private final double halfWidth;
    private final double sin;
    private final double cos;
    private final double fall2;

    // Offsets within the right half of the hole; those of the left half mirror them.
    private final double[] offsets = new double[OFFSETS];
    private final double[] offsetWeights = new double[OFFSETS];
    private final double[] lowerRims = new double[OFFSETS];
    private final double[] upperRims = new double[OFFSETS];
    private final double[] chords2 = new double[OFFSETS];

    /** Chances on one board, under one rule for falling in. */
    public ThrowKernel(Board board, Contact contact) {
        this.board = board;
        halfWidth = board.width() / 2;
        double slope = StrictMath.toRadians(board.slope());
        sin = StrictMath.sin(slope);
        cos = StrictMath.cos(slope);
        double fall = Simulator.fallTime(contact.drop() * Simulator.INCH, Simulator.GRAVITY * cos);
        fall2 = fall * fall;
        // In x = R sin(t) the chord is smooth up to the hole's sides.
        double[][] rule = legendre(OFFSETS);
        for (int i = 0; i < OFFSETS; i++) {
            double t = StrictMath.PI / 4 * (1 + rule[0][i]);
            offsets[i] = Board.HOLE_RADIUS * StrictMath.sin(t);
            double half = Board.HOLE_RADIUS * StrictMath.cos(t);
            offsetWeights[i] = StrictMath.PI / 4 * rule[1][i] * half;
            lowerRims[i] = Board.HOLE_Y - half;
            upperRims[i] = Board.HOLE_Y + half;
            chords2[i] = 2 * half * Simulator.INCH * (2 * half * Simulator.INCH);
        }
    }

    /** Chances on a board under the usual rule. */
    public ThrowKernel(Board board) {
        this(board, Contact.USUAL);
    }

    /** The board. */
    public Board board() {
        return board;
    }

    /** The chances of a throw. */
    public ThrowChances chances(ThrowModel model) {
        double deceleration = Simulator.GRAVITY * (model.friction() * cos + sin);
        double perInches = 1 / (2 * deceleration * Simulator.INCH);
        double speed = model.speed();
        double land = model.landingY();
        double per = 1 / model.spreadY();
        double across = 1 / model.spreadX();
        double front = Phi.at(-land * per);

        double[] lengths = new double[SPEEDS.length];
        double stops = 0;
        for (int j = 0; j < SPEEDS.length; j++) {
            double v = speed * Math.max(0, 1 + model.spreadSpeed() * SPEEDS[j]);
            lengths[j] = v * v * perInches;
            // From no higher a landing place does it stop on the board.
            stops += SPEED_WEIGHTS[j] * Math.max(0, Phi.at((Board.LENGTH - lengths[j] - land) * per) - front);
        }
        double in = 0;
        double inWithin = 0;
        for (int i = 0; i < OFFSETS; i++) {
            double rim = lowerRims[i];
            double top = upperRims[i];
            double beyond = chords2[i] / fall2 * perInches;
            double atRim = Phi.at((rim - land) * per);
            double flew = Phi.at((top - land) * per) - atRim;
            double slidIn = 0;
            double within = 0;
            for (int j = 0; j < SPEEDS.length; j++) {
                double length = lengths[j];
                double highest = Board.LENGTH - length;
                if (highest > rim) {
                    within += SPEED_WEIGHTS[j] * (highest >= top ? flew : Phi.at((highest - land) * per) - atRim);
                }
                double low = Math.max(0, rim - length);
                double high = beyond >= length ? rim : rim + beyond - length;
                if (high > low) {
                    double atLow = Phi.at((low - land) * per);
                    double chance = (high == rim ? atRim : Phi.at((high - land) * per)) - atLow;
                    slidIn += SPEED_WEIGHTS[j] * chance;
                    if (highest >= high) {
                        within += SPEED_WEIGHTS[j] * chance;
                    } else if (highest > low) {
                        within += SPEED_WEIGHTS[j] * (Phi.at((highest - land) * per) - atLow);
                    }
                }
            }
            double weight = offsetWeights[i]
                    * across
                    * (Phi.density((offsets[i] - model.x()) * across) + Phi.density((offsets[i] + model.x()) * across));
            in += weight * (slidIn + flew);
            inWithin += weight * within;
        }
        double left = Phi.at((-halfWidth - model.x()) * across);
        double right = Phi.at((model.x() - halfWidth) * across);
        double between = 1 - left - right;
        double on = Math.max(0, between * stops - inWithin);
        double shortOf = between * front;
        return new ThrowChances(in, on, left, right, shortOf, Math.max(0, between - shortOf - on - in));
    }

    /**
     * The chance that a bag which landed at a place ends in the hole, or on the board.
     *
     * @param x where it landed, inches
     * @param y where it landed, inches
     */
    double[] fromLanding(ThrowModel model, double x, double y) {
        double deceleration = Simulator.GRAVITY * (model.friction() * cos + sin);
        double perInches = 1 / (2 * deceleration * Simulator.INCH);
        double past = below(model, Board.LENGTH - y, perInches);
        if (!(Math.abs(x) < Board.HOLE_RADIUS)) {
            return new double[] {0, past};
        }
        double half = Math.sqrt(Board.HOLE_RADIUS * Board.HOLE_RADIUS - x * x);
        double rim = Board.HOLE_Y - half;
        if (y >= rim) {
            return y < Board.HOLE_Y + half ? new double[] {1, 0} : new double[] {0, past};
        }
        double chord = 2 * half * Simulator.INCH;
        double atRim = below(model, rim - y, perInches);
        double beyond = below(model, rim - y + chord * chord / fall2 * perInches, perInches);
        double skipped = Math.max(0, past - beyond);
        return new double[] {beyond - atRim, atRim + skipped};
    }

    /** The chance of a slide no longer than a length, inches. */
    private static double below(ThrowModel model, double length, double perInches) {
        if (!(length > 0)) {
            return 0;
        }
        double v = Math.sqrt(length / perInches);
        return Phi.at((v / model.speed() - 1) / model.spreadSpeed());
    }

    /** Nodes and weights of Gauss and Legendre's rule on -1..1, by Newton's method on the Legendre polynomial. */
    private static double[][] legendre(int n) {
        double[][] rule = new double[2][n];
        for (int i = 0; i < n; i++) {
            double x = StrictMath.cos(StrictMath.PI * (i + 0.75) / (n + 0.5));
            double slope = 0;
            for (int step = 0; step < 50; step++) {
                double before = 1;
                double value = x;
                for (int k = 2; k <= n; k++) {
                    double next = ((2 * k - 1) * x * value - (k - 1) * before) / k;
                    before = value;
                    value = next;
                }
                slope = n * (before - x * value) / (1 - x * x);
                double change = value / slope;
                x -= change;
                if (Math.abs(change) < 1e-15) {
                    break;
                }
            }
            rule[0][i] = x;
            rule[1][i] = 2 / ((1 - x * x) * slope * slope);
        }
        return rule;
    }
}
