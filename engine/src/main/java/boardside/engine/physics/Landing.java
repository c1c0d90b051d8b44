package boardside.engine.physics;

/**
 * A bag that has just landed and now slides.
 *
 * @param x of its centre, inches to the right of the centre line, finite
 * @param y of its centre, inches up from the front edge, finite
 * @param speed along the board, metres a second, 0..100
 * @param heading degrees to the right of straight up the board, -180..180
 */
public record Landing(double x, double y, double speed, double heading) {
    private static final double FASTEST = 100;
    private static final double BACKWARDS = 180;

    /**
     * Checks the ranges.
     *
     * @throws IllegalArgumentException if one is out of range or not a number
     */
    public Landing {
        if (!(Math.abs(x) < Double.POSITIVE_INFINITY && Math.abs(y) < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("a bag lands at a finite place, not (" + x + ", " + y + ")");
        }
        if (!(speed >= 0 && speed <= FASTEST)) {
            throw new IllegalArgumentException("a speed is 0 to " + FASTEST + " m/s, not " + speed);
        }
        if (!(Math.abs(heading) <= BACKWARDS)) {
            throw new IllegalArgumentException("a heading is -180 to 180 degrees, not " + heading);
        }
    }

    /** Speed to the right, metres a second; exactly 0 straight up and straight down. */
    public double across() {
        return Math.abs(heading) == BACKWARDS ? 0 : speed * StrictMath.sin(StrictMath.toRadians(heading));
    }

    /** Speed up the board, metres a second. */
    public double up() {
        return speed * StrictMath.cos(StrictMath.toRadians(heading));
    }
}
