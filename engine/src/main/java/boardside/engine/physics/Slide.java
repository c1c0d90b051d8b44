package boardside.engine.physics;

/**
 * One bag's slide between two blows, in closed form: a point on an incline under gravity and Coulomb friction, without
 * spin. Mutable and made once, so that a simulation allocates nothing; SI units throughout.
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
final class Slide {
    /** Closer than this two bags touch, m. */
    static final double TOUCH = 1e-12;

    /** Slower than this nothing approaches, m/s. */
    static final double STILL = 1e-9;

    private static final double NEVER = Double.POSITIVE_INFINITY;

    /** Off straight up by less than this half-angle tangent, a path is first taken to be straight. */
    private static final double NEARLY_STRAIGHT = 0.3;

    /** So near in time that the state can be moved there by its acceleration and what that changes by, s. */
    private static final double NEAR_TIME = 2e-3;

    /** The same as a share of its speed lost; the error, of the fourth order, is below 1e-11 m. */
    private static final double NEAR_SPEED = 5e-3;

    /** No parameter is asked beyond this, where the direction is straight down to the last bit and powers still have values. */
    private static final double FARTHEST = 170;

    /** Nearer than this share of the time from the start, the present state is the better place to begin a search. */
    private static final double NEARBY = 0.25;

    /** Halley's step from a gap g at the rate g' is the last where this is above all accelerations times g^2 / g'^2, m. */
    static final double NEAR = 1e-8;

    /** So near to the rim that it counts as there, m. */
    private static final double NEAR_RIM = 1e-7;

    /** Share of its speed below which a bag has all but stopped. */
    private static final double SLOW = 0.05;

    private static final double LN2 = 0.6931471805599453;

    /** Below this exponent F(a) is summed as a series. */
    private static final double SMALL_EXPONENT = 0.05;

    // The board under this bag.
    private double pull;
    private double grip;
    private double ratio;
    private double perPull;
    private boolean holds;
    private boolean singular;
    private double perRatio1;
    private double perRatioLess1;
    private double per2Ratio1;
    private double per2Ratio2;
    private double per2RatioLess1;
    private double per2RatioLess2;

    // The start of this slide.
    private double startTime;
    private double startX;
    private double startY;
    private double startSpeed;
    private double startDirX;
    private double startDirY;

    // A straight slide: its deceleration. A curved one: tan of half the angle off straight up, and what stands before
    // F.
    private boolean straight;
    private double deceleration;
    private double side;
    private double tangent;
    private double tangent2;
    private double timeScale;
    private double acrossScale;
    private double upScale;
    private double speedScale;

    /** Where and when friction stops it; infinite time if it does not. */
    private double stopTime;

    private double stopX;
    private double stopY;

    /** The parameter as a series of the logarithm of the time left, if friction holds. */
    private double guess1;

    private double guess2;

    /** How far to the right of its first direction the path ends, m; between 0 and there it stays. */
    private double swing;

    // How the last bound on what friction does holds.
    private double slack;
    private double boundUntil;

    // The state last asked for: its parameter; as `param` no number where the state has been moved a hair off it.
    private double param;
    private double where;
    private double time;
    private double x;
    private double y;
    private double speed;
    private double dirX;
    private double dirY;

    /**
     * Sets the board under the bag.
     *
     * @param friction coefficient mu, at least 0
     * @param gravityAlong g sin(slope), m/s2, at least 0
     * @param gravityInto g cos(slope), m/s2
     */
    void ground(double friction, double gravityAlong, double gravityInto) {
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
    void start(double atTime, double fromX, double fromY, double vx, double vy) {
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
    void at(double s) {
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
    void atStart() {
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
    void atStop() {
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
    double seek(double when) {
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
    private double ahead(double tau) {
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

    /**
     * The first parameter from {@code from} on at which the bag's centre comes within {@code radius} of a place, heading
     * inwards; infinite if that is not before {@code limit} or its stop. At {@code from} it is outside, or at the rim.
     */
    double enters(double cx, double cy, double radius, double from, double limit) {
        if (outOfReach(cx, cy, radius)) {
            return NEVER;
        }
        if (straight) {
            double along = (cx - startX) * startDirX + (cy - startY) * startDirY;
            double off = (cx - startX) * startDirY - (cy - startY) * startDirX;
            double half2 = radius * radius - off * off;
            if (!(half2 > 0) || along <= 0) {
                return NEVER;
            }
            double t = timeTo(along - Math.sqrt(half2));
            if (t < from) {
                // Passed already, but for rounding at the rim itself.
                at(from);
                double gap = Math.sqrt((x - cx) * (x - cx) + (y - cy) * (y - cy)) - radius;
                t = gap <= TOUCH && (x - cx) * dirX + (y - cy) * dirY < 0 ? from : NEVER;
            }
            return t <= limit ? t : NEVER;
        }
        if (from == 0 && tangent < NEARLY_STRAIGHT && holds) {
            double s = alongTheTangent(cx, cy, radius);
            if (s > 0) {
                return s <= limit ? s : NEVER;
            }
        }
        return stepping(cx, cy, radius, from, limit);
    }

    /** Whether the box around the path surely misses a disc. */
    boolean outOfReach(double cx, double cy, double radius) {
        if ((startX < cx - radius && !(startDirX > 0)) || (startX > cx + radius && !(startDirX < 0))) {
            return true;
        }
        // Friction only takes, so the path's highest point is no higher than straight up at the full speed.
        if (startY < cy - radius && !(startDirY > 0)) {
            return true;
        }
        if (!straight) {
            // It turns one way only, by less than half a turn.
            double off = (cx - startX) * startDirY - (cy - startY) * startDirX;
            if (off > Math.max(0, swing) + radius || off < Math.min(0, swing) - radius) {
                return true;
            }
        }
        if (stopTime == NEVER) {
            return false;
        }
        double highest = startDirY > 0 ? stopY + (straight ? 0 : overshoot()) : startY;
        double lowest = Math.min(startY, stopY);
        return (startX < cx - radius && stopX < cx - radius)
                || (startX > cx + radius && stopX > cx + radius)
                || highest < cy - radius
                || lowest > cy + radius;
    }

    /** At most how much higher than its stop the path's highest point is, if friction holds. */
    private double overshoot() {
        return tangent2 >= 1 ? upScale : upScale * tangent2 * tangent2 / (ratio * ratio - 1);
    }

    /**
     * Halley's method from where the path would enter if it were straight; negative if that is no sure guide.
     */
    private double alongTheTangent(double cx, double cy, double radius) {
        double along = (cx - startX) * startDirX + (cy - startY) * startDirY;
        double off = (cx - startX) * startDirY - (cy - startY) * startDirX;
        double half2 = radius * radius - off * off;
        if (!(along > radius && half2 > 0.1 * radius * radius)) {
            return -1;
        }
        double run = along - Math.sqrt(half2);
        double left = 1 - 2 * (grip + pull * startDirY) * run / (startSpeed * startSpeed);
        if (!(left > 0.02)) {
            return -1;
        }
        double s = -0.5 * perRatio1 * Elementary.log(left);
        for (int n = 0; n < 8; n++) {
            at(s);
            double dx = x - cx;
            double dy = y - cy;
            double distance = Math.sqrt(dx * dx + dy * dy);
            double gap = distance - radius;
            double per = 1 / distance;
            double along0 = (dx * dirX + dy * dirY) * per;
            double rate = speed * along0;
            if (!(along0 < -0.1)) {
                return -1;
            }
            // Halley's step: the gap's second derivative is the speed across, squared, per distance, and the
            // acceleration.
            double bend = speed * speed * (1 - along0 * along0) * per - grip * along0 - pull * dy * per;
            double straight = gap / rate;
            s += ahead(-straight / (1 - 0.5 * straight * bend / rate));
            if ((pull + grip) * gap * gap <= NEAR * rate * rate) {
                return s;
            }
        }
        return -1;
    }

    /**
     * Steps that cannot pass the rim: the distance g to it obeys g'' >= -k while approaching, and >= -(k + f) always, so
     * the parabola through the present g and g' lies below. Near the rim this is Newton's method.
     */
    private double stepping(double cx, double cy, double radius, double from, double limit) {
        double s = from;
        if (from == 0) {
            atStart();
        } else {
            at(from);
        }
        for (int n = 0; n < 500; n++) {
            double dx = x - cx;
            double dy = y - cy;
            double distance = Math.sqrt(dx * dx + dy * dy);
            double gap = distance - radius;
            double rate = speed * (dx * dirX + dy * dirY) / distance;
            double tau;
            if (gap <= TOUCH) {
                if (rate < -STILL) {
                    return s;
                }
                tau = Math.max(1e-4, 2 * rate / (pull + grip));
            } else if (rate < 0) {
                tau = 2 * gap / (-rate + Math.sqrt(rate * rate + 2 * pull * gap));
            } else {
                double most = pull + grip;
                tau = Math.max(Math.sqrt(2 * gap / pull), (rate + Math.sqrt(rate * rate + 2 * most * gap)) / most);
            }
            if (time + tau >= stopTime) {
                return NEVER;
            }
            s += step(tau);
            if (s > limit) {
                return NEVER;
            }
            at(s);
        }
        return NEVER;
    }

    /** A step of the parameter that takes no longer than {@code tau} from the present state. */
    private double step(double tau) {
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

    private double tangentNow2() {
        return dirY > -1 ? (1 - dirY) / (1 + dirY) : NEVER;
    }

    /** The parameter at which a bag within {@code radius} of a place leaves that disc; infinite if it stops there first. */
    double exits(double cx, double cy, double radius, double from) {
        if (stopTime < NEVER && square(stopX - cx) + square(stopY - cy) < radius * radius) {
            return NEVER;
        }
        if (straight) {
            double along = (cx - startX) * startDirX + (cy - startY) * startDirY;
            double off = (cx - startX) * startDirY - (cy - startY) * startDirX;
            return timeTo(along + Math.sqrt(Math.max(0, radius * radius - off * off)));
        }
        double s = from;
        at(s);
        // Along the chord of the present direction, again and again.
        for (int n = 0; n < 100; n++) {
            double along = (cx - x) * dirX + (cy - y) * dirY;
            double off = (cx - x) * dirY - (cy - y) * dirX;
            double way = along + Math.sqrt(Math.max(0, radius * radius - off * off));
            if (!(way > NEAR_RIM)) {
                break;
            }
            s += step(way / speed);
            at(s);
        }
        return s;
    }

    /** The parameter at which the centre leaves the board; infinite if it does not. */
    double leaves(double halfWidth, double length) {
        double first = NEVER;
        if (straight) {
            if (startDirX != 0) {
                first = timeTo(((startDirX > 0 ? halfWidth : -halfWidth) - startX) / startDirX);
            }
            if (startDirY != 0) {
                first = Math.min(first, timeTo(((startDirY > 0 ? length : 0) - startY) / startDirY));
            }
            return first;
        }
        double apex = tangent < 1 ? -Elementary.log(tangent) : 0;
        if (!holds || Math.abs(stopX) > halfWidth) {
            first = crossing(true, side * halfWidth, 0);
        }
        if (tangent < 1) {
            at(apex);
            if (y > length) {
                first = Math.min(first, crossing(false, length, 0));
            }
        }
        if (!holds || stopY < 0) {
            first = Math.min(first, crossing(false, 0, apex));
        }
        return first;
    }

    /** Whether the centre surely stays on the board; the edges are far or friction stops it well before. */
    boolean staysOn(double halfWidth, double length) {
        return holds
                && Math.abs(stopX) <= halfWidth
                && stopY >= 0
                && (startDirY > 0 ? stopY + (straight ? 0 : overshoot()) : startY) <= length;
    }

    /** Whether the centre, if on the board at a parameter, surely was until then; friction holds. */
    boolean onBoardUpTo(double s, double halfWidth, double length) {
        at(s);
        return Math.abs(x) <= halfWidth && y >= 0 && y <= length && (dirY >= 0 || startDirY <= 0);
    }

    /** Where x (or y) passes a value it moves towards from {@code from} on; infinite if it never does. */
    private double crossing(boolean across, double target, double from) {
        at(from);
        double sign = across ? side : dirY >= 0 && target > y ? 1 : -1;
        double low = from;
        double high = NEVER;
        double s = from;
        for (int n = 0; n < 200; n++) {
            double short0 = sign * (target - (across ? x : y));
            if (Math.abs(short0) <= TOUCH) {
                return s;
            }
            if (short0 > 0) {
                low = s;
            } else {
                high = s;
            }
            double rate = sign * speed * (across ? dirX : dirY) / pull * speed;
            double next = rate > 0 ? s + short0 / rate : NEVER;
            if (!(next > low && next < high && next < low + 2)) {
                next = high < NEVER ? 0.5 * (low + high) : low + 1;
            }
            if (next == s || next > 300) {
                return next > 300 ? NEVER : s;
            }
            s = next;
            at(s);
        }
        return s;
    }

    /** When a straight slide has run a length; infinite if it stops before. */
    private double timeTo(double run) {
        double left = startSpeed * startSpeed - 2 * deceleration * run;
        if (!(left >= 0)) {
            return NEVER;
        }
        double sum = startSpeed + Math.sqrt(left);
        return sum > 0 ? 2 * run / sum : run > 0 ? NEVER : 0;
    }

    /**
     * At least how fast friction changes the speed along a unit vector from the present state on, for so long: minus its
     * grip times the direction along it, m/s2, the other way round: {@code grip * (d . n)} is at least this. Where the bag
     * all but stops meanwhile, from {@link #boundUntil} on that holds but for {@link #slack} of way.
     */
    double leastAlong(double nx, double ny, double forSoLong) {
        slack = 0;
        boundUntil = NEVER;
        double along = dirX * nx + dirY * ny;
        if (straight) {
            return grip * along;
        }
        if (along < -0.9) {
            return -grip;
        }
        // The path turns towards straight down. Does that bring it through -n?
        boolean through = side * (dirX * ny - dirY * nx) > 0;
        if (!through) {
            return grip * Math.min(along, -ny);
        }
        // d ln(u) / d ln(v) = -1 / (r + cos phi): at most like the square root where r + cos phi >= 2.
        double slowest = speed - (grip + pull) * forSoLong;
        double least = SLOW * speed;
        double share = 1 / SLOW;
        if (slowest > least) {
            share = speed / slowest;
        } else if (holds) {
            boundUntil = (1 - SLOW) * speed / (grip + pull);
            double per = 1 / (grip - pull);
            slack = least * least * per * (1.5 + 0.5 * (grip + pull) * per);
        } else {
            return -grip;
        }
        double u2 = tangentNow2() * share;
        double per = 1 / (1 + u2);
        double cos = (1 - u2) * per;
        if (!(ratio + cos >= 2)) {
            slack = 0;
            boundUntil = NEVER;
            return -grip;
        }
        double sin = side * 2 * Math.sqrt(u2) * per;
        if (!(side * (sin * ny - cos * nx) > 0)) {
            slack = 0;
            boundUntil = NEVER;
            return -grip;
        }
        return grip * Math.min(along, sin * nx + cos * ny);
    }

    /** How long from the state on the last {@link #leastAlong} holds without slack, s. */
    double boundUntil() {
        return boundUntil;
    }

    /** See {@link #leastAlong}; m. */
    double slack() {
        return slack;
    }

    private static double square(double value) {
        return value * value;
    }

    /** Largest deceleration that friction gives, m/s2. */
    double grip() {
        return grip;
    }

    /** Whether friction holds a bag at rest. */
    boolean holds() {
        return holds;
    }

    /** Whether the board slopes. */
    boolean slopes() {
        return pull > 0;
    }

    /** When friction stops it, s; infinite if it does not. */
    double stopTime() {
        return stopTime;
    }

    /** The time of the state, s. */
    double time() {
        return time;
    }

    /** The state's place to the right, m. */
    double x() {
        return x;
    }

    /** The state's place up the board, m. */
    double y() {
        return y;
    }

    /** The state's speed to the right, m/s. */
    double vx() {
        return speed * dirX;
    }

    /** The state's speed up the board, m/s. */
    double vy() {
        return speed * dirY;
    }

    /** The state's direction to the right, -1..1. */
    double dirX() {
        return dirX;
    }

    /** The state's direction up the board, -1..1. */
    double dirY() {
        return dirY;
    }
}
