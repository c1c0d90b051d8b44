package boardside.engine.physics;

/**
 * The way through the air and the landing. Under gravity and drag in a vertical plane, by the classical Runge-Kutta method
 * of fourth order (Kutta 1901); its error over a throw is below a micrometre.
 *
 * <p>The landing takes all speed into the board; friction's impulse, the coefficient times the momentum into the board,
 * takes from the speed along it, at most all.
 *
 * <p>Mutable and used again and again, one for each thread; {@link #fly(double, double, double, double, double, double,
 * double)} allocates nothing.
 */
public final class Flight {
    private static final double STEP = 0.05;
    private static final double LONGEST = 60;
    private static final double KILOGRAMS_PER_OUNCE = 0.028349523125;
    private static final double INCH = Simulator.INCH;

    private final double sin;
    private final double cos;
    private final double front;
    private final double drag;
    private final double friction;

    // The state: way along the ground, height, their speeds; then of the landing.
    private double way;
    private double height;
    private double forward;
    private double rising;
    private double time;
    private double x;
    private double y;
    private double across;
    private double up;
    private double flightSpeed;
    private double flightAngle;

    /** Flights of one bag to one board. */
    public Flight(Board board, Bag bag, Air air) {
        double slope = StrictMath.toRadians(board.slope());
        sin = StrictMath.sin(slope);
        cos = StrictMath.cos(slope);
        front = Board.BACK_HEIGHT * INCH - Board.LENGTH * INCH * sin;
        drag = 0.5 * air.density() * air.dragArea() / (bag.ounces() * KILOGRAMS_PER_OUNCE);
        friction = bag.friction();
    }

    /** Flies a release; the results can then be asked for. */
    public void fly(Release release) {
        fly(
                release.speed(),
                release.elevation(),
                release.azimuth(),
                release.side(),
                release.height(),
                release.distance(),
                release.drift());
    }

    /** The same from plain numbers, in the order and units of {@link Release}; none is checked. */
    public void fly(
            double speed,
            double elevation,
            double azimuth,
            double side,
            double inchesHigh,
            double distance,
            double drift) {
        double angle = StrictMath.toRadians(elevation);
        double aside = StrictMath.toRadians(azimuth);
        double ahead = StrictMath.cos(aside);
        double right = StrictMath.sin(aside);
        double start = distance * INCH;
        way = 0;
        height = inchesHigh * INCH;
        forward = speed * StrictMath.cos(angle);
        rising = speed * StrictMath.sin(angle);
        time = 0;
        double above = above(ahead, start);
        // It lands where it comes down through the board's plane; one thrown from below passes it on the way up first.
        while ((above > 0 || into(ahead) <= 0) && time < LONGEST) {
            double way0 = way;
            double height0 = height;
            double forward0 = forward;
            double rising0 = rising;
            step(STEP);
            time += STEP;
            above = above(ahead, start);
            if (above <= 0 && into(ahead) > 0) {
                // It came down within this step: Newton's method on how much of it was flown.
                double part = STEP;
                for (int n = 0; n < 60; n++) {
                    double change = above / into(ahead);
                    part += change;
                    way = way0;
                    height = height0;
                    forward = forward0;
                    rising = rising0;
                    step(part);
                    above = above(ahead, start);
                    if (Math.abs(change) < 1e-13) {
                        break;
                    }
                }
                time += part - STEP;
                break;
            }
        }
        land(ahead, right, side, start, drift);
    }

    /** Height above the board's plane, m. */
    private double above(double ahead, double start) {
        return (start - way * ahead) * sin + (height - front) * cos;
    }

    /** Speed into the board's plane, m/s. */
    private double into(double ahead) {
        return forward * ahead * sin - rising * cos;
    }

    private void step(double h) {
        double g = Simulator.GRAVITY;
        double f1 = -drag * forward * Math.sqrt(forward * forward + rising * rising);
        double r1 = -g - drag * rising * Math.sqrt(forward * forward + rising * rising);
        double fa = forward + 0.5 * h * f1;
        double ra = rising + 0.5 * h * r1;
        double va = Math.sqrt(fa * fa + ra * ra);
        double f2 = -drag * fa * va;
        double r2 = -g - drag * ra * va;
        double fb = forward + 0.5 * h * f2;
        double rb = rising + 0.5 * h * r2;
        double vb = Math.sqrt(fb * fb + rb * rb);
        double f3 = -drag * fb * vb;
        double r3 = -g - drag * rb * vb;
        double fc = forward + h * f3;
        double rc = rising + h * r3;
        double vc = Math.sqrt(fc * fc + rc * rc);
        double f4 = -drag * fc * vc;
        double r4 = -g - drag * rc * vc;
        way += h / 6 * (forward + 2 * fa + 2 * fb + fc);
        height += h / 6 * (rising + 2 * ra + 2 * rb + rc);
        forward += h / 6 * (f1 + 2 * f2 + 2 * f3 + f4);
        rising += h / 6 * (r1 + 2 * r2 + 2 * r3 + r4);
    }

    private void land(double ahead, double right, double side, double start, double drift) {
        double ground = way * ahead - start;
        x = side + way * right / INCH;
        y = (ground * cos + (height - front) * sin) / INCH;
        flightSpeed = Math.sqrt(forward * forward + rising * rising);
        flightAngle = StrictMath.toDegrees(StrictMath.atan2(-rising, forward));
        double into = Math.max(0, into(ahead));
        across = forward * right;
        up = forward * ahead * cos + rising * sin;
        double along = Math.sqrt(across * across + up * up);
        double left = along > 0 ? Math.max(0, 1 - friction * into / along) : 0;
        across = across * left + drift;
        up *= left;
    }

    /** Time in the air, s. */
    public double time() {
        return time;
    }

    /** Where its centre meets the board's plane, inches to the right of the centre line. */
    public double x() {
        return x;
    }

    /** Where its centre meets the board's plane, inches up from the front edge; below 0 short, above 48 long. */
    public double y() {
        return y;
    }

    /** Speed to the right once it lies, m/s. */
    public double across() {
        return across;
    }

    /** Speed up the board once it lies, m/s. */
    public double up() {
        return up;
    }

    /** Speed in the air just before it lands, m/s. */
    public double flightSpeed() {
        return flightSpeed;
    }

    /** Angle below level just before it lands, degrees. */
    public double flightAngle() {
        return flightAngle;
    }
}
