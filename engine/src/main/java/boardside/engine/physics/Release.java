package boardside.engine.physics;

/**
 * A bag as it leaves the hand.
 *
 * @param speed metres a second, 0..30
 * @param elevation above level, degrees, -90..90
 * @param azimuth to the right of straight at the board, degrees, -90..90
 * @param side where it is released, inches to the right of the board's centre line, -120..120
 * @param height above the ground, inches, 0..120
 * @param distance along the ground to the board's front edge, inches, 0..600 (from board to board 324)
 * @param drift speed to the right that the bag's turn gives it once it lies down, metres a second, -5..5: what a cut does
 */
public record Release(
        double speed, double elevation, double azimuth, double side, double height, double distance, double drift) {
    private static final double FASTEST = 30;
    private static final double RIGHT_ANGLE = 90;
    private static final double FARTHEST_ASIDE = 120;
    private static final double HIGHEST = 120;
    private static final double FARTHEST = 600;
    private static final double STRONGEST_DRIFT = 5;

    /**
     * Checks the ranges.
     *
     * @throws IllegalArgumentException if one is out of range or not a number
     */
    public Release {
        within("a release speed", speed, 0, FASTEST, "m/s");
        within("an elevation", elevation, -RIGHT_ANGLE, RIGHT_ANGLE, "degrees");
        within("an azimuth", azimuth, -RIGHT_ANGLE, RIGHT_ANGLE, "degrees");
        within("a side of release", side, -FARTHEST_ASIDE, FARTHEST_ASIDE, "in");
        within("a height of release", height, 0, HIGHEST, "in");
        within("a distance", distance, 0, FARTHEST, "in");
        within("a drift", drift, -STRONGEST_DRIFT, STRONGEST_DRIFT, "m/s");
    }

    private static void within(String what, double value, double low, double high, String unit) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException(what + " is " + low + " to " + high + " " + unit + ", not " + value);
        }
    }

    /** The same throw at another speed, m/s. */
    public Release withSpeed(double other) {
        return new Release(other, elevation, azimuth, side, height, distance, drift);
    }

    /** The same throw at another azimuth, degrees. */
    public Release withAzimuth(double other) {
        return new Release(speed, elevation, other, side, height, distance, drift);
    }
}
