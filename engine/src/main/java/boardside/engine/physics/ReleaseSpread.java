package boardside.engine.physics;

/**
 * How much releases differ from throw to throw: standard deviations of independent normal errors.
 *
 * @param speed m/s, 0 or more, finite
 * @param elevation degrees, 0 or more, finite
 * @param azimuth degrees, 0 or more, finite
 * @param drift m/s, 0 or more, finite
 */
public record ReleaseSpread(double speed, double elevation, double azimuth, double drift) {
    /**
     * Checks the ranges.
     *
     * @throws IllegalArgumentException if one is out of range or not a number
     */
    public ReleaseSpread {
        if (!(speed >= 0
                && elevation >= 0
                && azimuth >= 0
                && drift >= 0
                && speed + elevation + azimuth + drift < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("a spread is 0 or more and finite, not " + speed + ", " + elevation
                    + ", " + azimuth + ", " + drift + " (speed, elevation, azimuth, drift)");
        }
    }
}
