package boardside.engine.physics;

/**
 * How one bag slides between two blows, in closed form: a point on an incline under gravity and Coulomb friction, without
 * spin. What it comes to on its way is {@link Slide}'s. Mutable and made once, so that a simulation allocates nothing; SI
 * units throughout.
 *
 * <p>With k = g sin(slope), f = mu g cos(slope), r = f / k and phi the direction of travel off straight up, the motion
 * obeys dv/dt = -f - k cos(phi), v dphi/dt = k sin(phi). In u = tan(phi / 2) = u0 e^s this gives
 *
 * <pre>
 * v = v0 (1 + u0^2 e^(2s)) / (1 + u0^2) e^(-(r+1)s)
 * t = v0 / (k (1 + u0^2)) [F(-(r+1)) + u0^2 F(1-r)]
 * x = 2 v0^2 u0 / (k (1 + u0^2)^2) [F(-(2r+1)) + u0^2 F(1-2r)]
 * y = v0^2 / (k (1 + u0^2)^2) [F(-(2r+2)) - u0^4 F(2-2r)]
 * </pre>
 *
 * with F(a) = (e^(as) - 1) / a, and s where F(0) comes up. The parameter s runs from 0; if r > 1 the bag stops as s grows
 * without bound, at a place that needs no power at all. Straight lines (up, down, or any on a level board) have time
 * itself as the parameter. The direction only ever turns towards straight down: dv/dphi follows from the two equations
 * above (separation of variables, as for the brachistochrone with friction; textbook mechanics).
 */
class Motion {
    /** A time or parameter that never comes. */
    static final double NEVER = Double.POSITIVE_INFINITY;

    /** Off straight up by less than this half-angle tangent, a path is first taken to be straight. */
    static final double NEARLY_STRAIGHT = 0.3;

    /** So near in time that the state can be moved there by its acceleration and what that changes by, s. */
    private static final double NEAR_TIME = 2e-3;

    /** The same as a share of its speed lost; the error, of the fourth order, is below 1e-11 m. */
    private static final double NEAR_SPEED = 5e-3;

    /** No parameter is asked beyond this, where the direction is straight down to the last bit and powers still have values. */
    private static final double FARTHEST = 170;

    /** Nearer than this share of the time from the start, the present state is the better place to begin a search. */
    private static final double NEARBY = 0.25;

    private static final double LN2 = 0.6931471805599453;

    /** Below this exponent F(a) is summed as a series. */
    private static final double SMALL_EXPONENT = 0.05;

    // The board under this bag.
    double pull;
    double grip;
    double ratio;
    double perPull;
    boolean holds;
    boolean singular;
    double perRatio1;
    double perRatioLess1;
    double per2Ratio1;
    double per2Ratio2;
    double per2RatioLess1;
    double per2RatioLess2;

    // The start of this slide.
    double startTime;
    double startX;
    double startY;
    double startSpeed;
    double startDirX;
    double startDirY;

    // A straight slide: its deceleration. A curved one: tan of half the angle off straight up, and what stands before
    // F.
    boolean straight;
    double deceleration;
    double side;
    double tangent;
    double tangent2;
    double timeScale;
    double acrossScale;
    double upScale;
    double speedScale;

    /** Where and when friction stops it; infinite time if it does not. */
    double stopTime;

    double stopX;
    double stopY;

    /** The parameter as a series of the logarithm of the time left, if friction holds. */
    double guess1;

    double guess2;

    /** How far to the right of its first direction the path ends, m; between 0 and there it stays. */
    double swing;

    // The state last asked for: its parameter; as `param` no number where the state has been moved a hair off it.
    double param;
    double where;
    double time;
    double x;
    double y;
    double speed;
    double dirX;
    double dirY;

    /**
     * Sets the board under the bag.
     *
     * @param friction coefficient mu, at least 0
     * @param gravityAlong g sin(slope), m/s2, at least 0
     * @param gravityInto g cos(slope), m/s2
     */
    final void ground(double friction, double gravityAlong, double gravityInto) {
        pull = gravityAlong;
        grip = friction * gravityInto;
        perPull = 1 / pull;
        ratio = grip * perPull;
        holds = grip > pull;
        singular = Math.abs(ratio - 1) < SMALL_EXPONENT || Math.abs(ratio - 0.5) < SMALL_EXPONENT;
        perRatio1 = 1 / (ratio + 1);
        perRatioLess1 = 1 / (ratio - 1);
        per2Ratio1 = 1 / (2 * ratio + 1);
        per2Ratio2 = 1 / (2 * ratio + 2);
        per2RatioLess1 = 1 / (2 * ratio - 1);
        per2RatioLess2 = 1 / (2 * ratio - 2);
    }

    /** Starts a slide at a time, place and velocity. */
    final void start(double atTime, double fromX, double fromY, double vx, double vy) {
        startTime = atTime;
        startX = fromX;
        startY = fromY;
        startSpeed = Math.sqrt(vx * vx + vy * vy);
        if (vx == 0 || pull == 0) {
            startStraight(vx, vy);
        } else {
            startCurved(vx, vy);
        }
        atStart();
    }

    private void startStraight(double vx, double vy) {
        straight = true;
        // From rest there is one way to go: down.
        startDirX = startSpeed > 0 ? vx / startSpeed : 0;
        startDirY = startSpeed > 0 ? vy / startSpeed : -1;
        deceleration = grip + pull * startDirY;
        double run = deceleration > 0 ? startSpeed * startSpeed / (2 * deceleration) : NEVER;
        stopTime = deceleration > 0 ? startTime + startSpeed / deceleration : NEVER;
        stopX = startDirX == 0 ? startX : startX + startDirX * run;
        stopY = startDirY == 0 ? startY : startY + startDirY * run;
    }

    private void startCurved(double vx, double vy) {
        straight = false;
        double abs = Math.abs(vx);
        double v = startSpeed;
        double per = 1 / v;
        startDirX = vx * per;
        startDirY = vy * per;
        side = vx > 0 ? 1 : -1;
        tangent = vy > 0 ? abs / (v + vy) : (v - vy) / abs;
        tangent2 = tangent * tangent;
        speedScale = vy > 0 ? 0.5 + 0.5 * startDirY : 1 / (1 + tangent2);
        timeScale = v * perPull * speedScale;
        upScale = timeScale * v * speedScale;
        acrossScale = 2 * tangent * upScale;
        if (holds) {
            double past = tangent2 * perRatioLess1;
            double all = perRatio1 + past;
            stopTime = startTime + timeScale * all;
            guess1 = all * speedScale;
            guess2 = 2 * perRatio1 * past * guess1 * speedScale * speedScale;
            stopX = startX + side * acrossScale * (per2Ratio1 + tangent2 * per2RatioLess1);
            stopY = startY + upScale * (per2Ratio2 - tangent2 * tangent2 * per2RatioLess2);
            swing = (stopX - startX) * startDirY - (stopY - startY) * startDirX;
        } else {
            stopTime = NEVER;
            swing = side * NEVER;
        }
    }

    /** The state at a parameter, 0 or more and finite. */
    final void at(double s) {
        if (s == param) {
            return;
        }
        param = s;
        where = s;
        if (straight) {
            atStraight(s);
            return;
        }
        if (s > FARTHEST) {
            at(FARTHEST);
            return;
        }
        double slowing = Elementary.exp(-(ratio + 1) * s);
        double turning = Elementary.exp(s);
        double turning2 = turning * turning;
        double slowing2 = slowing * slowing;
        double tangent4 = tangent2 * tangent2;
        if (singular) {
            time = startTime + timeScale * ((1 - slowing) * perRatio1 + tangent2 * integral(1 - ratio, s));
            x = startX
                    + side
                            * acrossScale
                            * ((1 - slowing2 * turning) * per2Ratio1 + tangent2 * integral(1 - 2 * ratio, s));
            y = startY + upScale * ((1 - slowing2) * per2Ratio2 - tangent4 * integral(2 - 2 * ratio, s));
        } else {
            time = startTime
                    + timeScale * ((1 - slowing) * perRatio1 + tangent2 * (1 - slowing * turning2) * perRatioLess1);
            x = startX
                    + side
                            * acrossScale
                            * ((1 - slowing2 * turning) * per2Ratio1
                                    + tangent2 * (1 - slowing2 * turning * turning2) * per2RatioLess1);
            y = startY
                    + upScale
                            * ((1 - slowing2) * per2Ratio2
                                    - tangent4 * (1 - slowing2 * turning2 * turning2) * per2RatioLess2);
        }
        double u = tangent * turning;
        double u2 = u * u;
        double per = 1 / (1 + u2);
        speed = startSpeed * speedScale * (1 + u2) * slowing;
        dirX = side * 2 * u * per;
        dirY = (1 - u2) * per;
    }

    private void atStraight(double t) {
        double run = t * (startSpeed - 0.5 * deceleration * t);
        time = startTime + t;
        x = startX + startDirX * run;
        y = startY + startDirY * run;
        speed = startSpeed - deceleration * t;
        dirX = startDirX;
        dirY = startDirY;
    }

    /** F(a) = (e^(as) - 1) / a, s where a is 0. */
    private static double integral(double a, double s) {
        double z = a * s;
        if (Math.abs(z) > SMALL_EXPONENT) {
            return (Elementary.exp(z) - 1) / a;
        }
        return s * (1 + z / 2 * (1 + z / 3 * (1 + z / 4 * (1 + z / 5 * (1 + z / 6 * (1 + z / 7 * (1 + z / 8)))))));
    }

    /** The state where it started. */
    final void atStart() {
        param = 0;
        where = 0;
        time = startTime;
        x = startX;
        y = startY;
        speed = startSpeed;
        dirX = startDirX;
        dirY = startDirY;
    }

    /** The state at rest, if friction stops it; of the direction, what it was before it swung round at the very end. */
    final void atStop() {
        param = Double.NaN;
        where = NEVER;
        time = stopTime;
        x = stopX;
        y = stopY;
        speed = 0;
        boolean swings = !straight && tangent >= NEARLY_STRAIGHT;
        dirX = swings ? 0 : startDirX;
        dirY = swings ? -1 : startDirY;
    }

    /** Moves the state to a time from the start to before the stop, s; returns the parameter there. */
    final double seek(double when) {
        double tau = when - startTime;
        if (!(tau > 0)) {
            atStart();
            return 0;
        }
        if (straight) {
            at(tau);
            return tau;
        }
        double late = time - when;
        if (near(late)) {
            return moved(late);
        }
        double low = 0;
        double high = NEVER;
        double s = Math.abs(late) < NEARBY * tau && where < NEVER ? Math.max(0, where + ahead(-late)) : guess(when);
        for (int n = 0; n < 60; n++) {
            at(s);
            late = time - when;
            if (near(late)) {
                return moved(late);
            }
            if (late > 0) {
                high = s;
            } else {
                low = s;
            }
            double next = s + ahead(-late);
            if (!(next > low && next < high)) {
                next = high < NEVER ? 0.5 * (low + high) : 2 * low + 1;
            }
            if (next == s) {
                break;
            }
            s = next;
        }
        return s;
    }

    /**
     * The parameter at a time from the start on, nearly. Where the bag stops, the logarithm of the time left is nearly linear
     * in it, and this is its series to second order; else the start's deceleration is taken to last.
     */
    private double guess(double when) {
        if (!holds) {
            double z = 1 - (when - startTime) * (ratio + 1) * pull / startSpeed;
            return z > 0.01 ? -perRatio1 * Elementary.log(z) : 1;
        }
        double lost = Elementary.log((stopTime - startTime) / (stopTime - when));
        return lost * (guess1 + lost * guess2);
    }

    /** How much the parameter grows in a time from the present state on, by its deceleration there. */
    final double ahead(double tau) {
        double slows = ratio + dirY;
        double z = slows * pull * tau / speed;
        // -ln(1 - z) / slows
        if (Math.abs(z) < 0.1) {
            return pull * tau / speed * (1 + z * (0.5 + z * (1.0 / 3 + z * 0.25)));
        }
        return Math.min(where + 1, z < 0.95 ? -Elementary.log(1 - z) / slows : NEVER);
    }

    /** Whether the rest of the way is straight enough to be gone by {@link #moved}. */
    private boolean near(double late) {
        return Math.abs(late) <= NEAR_TIME && Math.abs(late) * (grip + pull) <= NEAR_SPEED * speed;
    }

    /** Moves the state back in time by a hair, to third order, and says which parameter that is. */
    private double moved(double late) {
        if (late != 0) {
            where -= late * pull / (speed + 0.5 * late * (grip + pull * dirY));
            double t = -late;
            // The acceleration, and what it changes by as the bag turns.
            double ax = -grip * dirX;
            double ay = -grip * dirY - pull;
            double turn = grip * pull * dirX / speed;
            double bx = -turn * dirY;
            double by = turn * dirX;
            double vx = speed * dirX;
            double vy = speed * dirY;
            x += t * (vx + 0.5 * t * (ax + t * (1.0 / 3) * bx));
            y += t * (vy + 0.5 * t * (ay + t * (1.0 / 3) * by));
            vx += t * (ax + 0.5 * t * bx);
            vy += t * (ay + 0.5 * t * by);
            speed = Math.sqrt(vx * vx + vy * vy);
            double per = 1 / speed;
            dirX = vx * per;
            dirY = vy * per;
            time += t;
            param = Double.NaN;
        }
        return where;
    }

    /** At most how much higher than its stop the path's highest point is, if friction holds. */
    final double overshoot() {
        return tangent2 >= 1 ? upScale : upScale * tangent2 * tangent2 / (ratio * ratio - 1);
    }

    /** A step of the parameter that takes no longer than {@code tau} from the present state. */
    final double step(double tau) {
        double z = pull * tau / speed;
        if (!holds) {
            return z / (1 + z);
        }
        // dv/ds = -(r + cos phi) v; over a step of ln 2 at most, cos phi is at least that of twice the tangent.
        double u2 = 4 * tangentNow2();
        double rate = ratio + (1 - u2) / (1 + u2);
        double left = 1 - rate * z;
        return left > 0.01 ? Math.min(LN2, -Elementary.log(left) / rate) : LN2;
    }

    final double tangentNow2() {
        return dirY > -1 ? (1 - dirY) / (1 + dirY) : NEVER;
    }

    /** When a straight slide has run a length; infinite if it stops before. */
    final double timeTo(double run) {
        double left = startSpeed * startSpeed - 2 * deceleration * run;
        if (!(left >= 0)) {
            return NEVER;
        }
        double sum = startSpeed + Math.sqrt(left);
        return sum > 0 ? 2 * run / sum : run > 0 ? NEVER : 0;
    }

    /** Largest deceleration that friction gives, m/s2. */
    final double grip() {
        return grip;
    }

    /** Whether friction holds a bag at rest. */
    final boolean holds() {
        return holds;
    }

    /** Whether the board slopes. */
    final boolean slopes() {
        return pull > 0;
    }

    /** When friction stops it, s; infinite if it does not. */
    final double stopTime() {
        return stopTime;
    }

    /** The time of the state, s. */
    final double time() {
        return time;
    }

    /** The state's place to the right, m. */
    final double x() {
        return x;
    }

    /** The state's place up the board, m. */
    final double y() {
        return y;
    }

    /** The state's speed to the right, m/s. */
    final double vx() {
        return speed * dirX;
    }

    /** The state's speed up the board, m/s. */
    final double vy() {
        return speed * dirY;
    }

    /** The state's direction to the right, -1..1. */
    final double dirX() {
        return dirX;
    }

    /** The state's direction up the board, -1..1. */
    final double dirY() {
        return dirY;
    }
}
