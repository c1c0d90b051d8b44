package boardside.engine.physics;

/**
 * One bag's slide between two blows, and what it comes to by itself: the rim of the hole, another bag at rest, an edge of the
 * board. Each is found by Newton's or Halley's method in the parameter of the {@link Motion}, from steps that cannot pass it.
 * Mutable and made once, so that a simulation allocates nothing; SI units throughout.
 */
final class Slide extends Motion {
    /** Closer than this two bags touch, m. */
    static final double TOUCH = 1e-12;

    /** Slower than this nothing approaches, m/s. */
    static final double STILL = 1e-9;

    /** Halley's step from a gap g at the rate g' is the last where this is above all accelerations times g^2 / g'^2, m. */
    static final double NEAR = 1e-8;

    /** So near to the rim that it counts as there, m. */
    private static final double NEAR_RIM = 1e-7;

    /** Share of its speed below which a bag has all but stopped. */
    private static final double SLOW = 0.05;

    // How the last bound on what friction does holds.
    private double slack;
    private double boundUntil;

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
}
