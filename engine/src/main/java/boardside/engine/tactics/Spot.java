package boardside.engine.tactics;

/**
 * A point on the board's surface.
 *
 * @param x inches to the thrower's right from the centre line, -12..12, edges included
 * @param y inches up from the front edge, 0..48, edges included
 */
public record Spot(double x, double y) {
    /** Half the width of a regulation board, inches. */
    public static final double HALF_WIDTH = 12;

    /** Length of a board, inches. */
    public static final double LENGTH = 48;

    /** The middle of the hole. */
    public static final Spot HOLE = new Spot(0, 39);

    /** Radius of the hole, and of a bag taken as a disc, inches. */
    public static final double RADIUS = 3;

    /**
     * Checked.
     *
     * @throws IllegalArgumentException if the point is not on a regulation board; NaN fails
     */
    public Spot {
        if (!(Math.abs(x) <= HALF_WIDTH && y >= 0 && y <= LENGTH)) {
            throw new IllegalArgumentException("a bag rests on the board while its middle is within -12..12 across and"
                    + " 0..48 up, not at " + x + ", " + y);
        }
    }

    /** Whether a bag whose middle is here has fallen in. */
    public boolean inHole() {
        return distance(HOLE) < RADIUS;
    }

    /** Inches to another point. */
    public double distance(Spot other) {
        return Math.hypot(x - other.x, y - other.y);
    }

    /** The same on the other side of the centre line. */
    public Spot mirrored() {
        return new Spot(x == 0 ? 0 : -x, y);
    }
}
