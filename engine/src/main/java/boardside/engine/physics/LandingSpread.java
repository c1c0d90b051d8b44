package boardside.engine.physics;

/**
 * How much landings differ from throw to throw: standard deviations of independent normal errors.
 *
 * @param x inches, 0 or more, finite
 * @param y inches, 0 or more, finite
 * @param speed m/s, 0 or more, finite
 * @param heading degrees, 0 or more, finite
 */
public record LandingSpread(double x, double y, double speed, double heading) {
    /**
     * Checks the ranges.
     *
     * @throws IllegalArgumentException if one is out of range or not a number
     */
    public LandingSpread {
        if (!(x >= 0 && y >= 0 && speed >= 0 && heading >= 0 && x + y + speed + heading < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("a spread is 0 or more and finite, not " + x + ", " + y + ", " + speed
                    + ", " + heading + " (x, y, speed, heading)");
        }
    }
}
