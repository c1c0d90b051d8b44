package boardside.engine.physics;

import boardside.engine.rules.BoardKind;

/**
 * A board as bags know it: a tilted rectangle 48 in long with a hole. All measures are published by the bodies that make the
 * rules, but the narrow board's width, which is common practice and a setting.
 *
 * @param width across, inches, above 6, at most 24
 * @param slope angle to the ground, degrees, 0 inclusive to 45 exclusive
 */
public record Board(double width, double slope) {
    /** Length up the board, inches. */
    public static final double LENGTH = 48;

    /** Width of a regulation board, inches. */
    public static final double REGULATION_WIDTH = 24;

    /** Width of a narrow board unless said otherwise, inches. */
    public static final double NARROW_WIDTH = 12;

    /** Height of the back edge above the ground, inches. */
    public static final double BACK_HEIGHT = 12;

    /** Height of the front edge unless said otherwise, inches. */
    public static final double FRONT_HEIGHT = 3.5;

    /** The hole's centre, inches up the board from the front edge, on the centre line. */
    public static final double HOLE_Y = 39;

    /** Radius of the hole, inches. */
    public static final double HOLE_RADIUS = 3;

    /** Steepest slope, degrees; exclusive. */
    private static final double STEEPEST = 45;

    /**
     * Checks the measures.
     *
     * @throws IllegalArgumentException if one is out of range or not a number
     */
    public Board {
        if (!(width > 2 * HOLE_RADIUS && width <= REGULATION_WIDTH)) {
            throw new IllegalArgumentException("a board is wider than its hole, " + 2 * HOLE_RADIUS
                    + " in, and at most " + REGULATION_WIDTH + " in wide, not " + width);
        }
        if (!(slope >= 0 && slope < STEEPEST)) {
            throw new IllegalArgumentException("a board's slope is 0 to below " + STEEPEST + " degrees, not " + slope);
        }
    }

    /** A board of a kind, of usual measures. */
    public static Board of(BoardKind kind) {
        return of(kind == BoardKind.NARROW ? NARROW_WIDTH : REGULATION_WIDTH, FRONT_HEIGHT);
    }

    /**
     * A board as measured; its slope is asin((12 - front) / 48).
     *
     * @param width across, inches, above 6, at most 24
     * @param front height of the front edge's top, inches, above -21.9 (a slope below 45 degrees), at most 12
     * @throws IllegalArgumentException if a measure is out of range or not a number
     */
    public static Board of(double width, double front) {
        if (!(front <= BACK_HEIGHT && front > BACK_HEIGHT - LENGTH / 2)) {
            throw new IllegalArgumentException("a front edge is lower than the back edge, " + BACK_HEIGHT
                    + " in, by less than half the length, not " + front + " in high");
        }
        return new Board(width, StrictMath.toDegrees(StrictMath.asin((BACK_HEIGHT - front) / LENGTH)));
    }

    /** The same board at another slope, degrees. */
    public Board withSlope(double degrees) {
        return new Board(width, degrees);
    }

    /** Whether a bag whose centre is at (x, y), inches, is on the board, edges included; false for NaN. */
    public boolean holds(double x, double y) {
        return Math.abs(x) <= width / 2 && y >= 0 && y <= LENGTH;
    }

    /** Whether a bag whose centre is at (x, y), inches, is over the hole, its edge excluded. */
    public static boolean overHole(double x, double y) {
        return x * x + (y - HOLE_Y) * (y - HOLE_Y) < HOLE_RADIUS * HOLE_RADIUS;
    }
}
