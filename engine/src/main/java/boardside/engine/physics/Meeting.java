package boardside.engine.physics;

/**
 * When two sliding bags meet. Both paths are known in closed form, but not as functions of one parameter.
 *
 * <p>Most pairs do not meet, and bounds say so from where they are now: gravity pulls both alike, so that only friction,
 * along each one's direction, tells their accelerations apart.
 *
 * <p>Where bounds do not settle it, the gap g between the discs is looked at here and there in time. Between two looks the
 * cubic through g and g' at both stands in for it; how far the cubic's g'' at the ends is from the true one says how good it
 * is (a fourth derivative G makes an error of G h^4 / 384 at most inside, of 0.008 G h^3 in g', and of G h^2 / 12 in g'' at
 * the ends; Davis 1963, Interpolation and Approximation, 3.6). The first span ends where the parabola at its start comes to
 * 0; it is halved until the cubic surely stays above 0, or is good enough to say where it does not. Overlaps shallower than
 * {@link #GOOD} that come and go between two looks are passed over. Mutable; SI units.
 */
final class Meeting {
    private static final double NEVER = Double.POSITIVE_INFINITY;

    /** Error of the cubic that is good enough, m. */
    private static final double GOOD = 1e-6;

    /** How well the cubic's root is worth knowing, as a share of the span. */
    private static final double CLOSE = 1e-6;

    /** Shortest span looked into, s. */
    private static final double SHORTEST = 1e-5;

    /** First span where neither bag comes to anything by itself, s. */
    private static final double LOOK_AHEAD = 0.1;

    /** How much longer than the parabola says the first span is, so that the cubic's root lies inside. */
    private static final double OVER = 1.03;

    private final double reach;

    private double gap;
    private double rate;
    private double bend;
    private double closing;
    private double nx;
    private double ny;

    Meeting(double reach) {
        this.reach = reach;
    }

    /** The first time from {@code from} on, before {@code to}, at which two bags meet; infinite if they do not. */
    double first(Slide i, Slide j, double from, double to) {
        if (!(from < to)) {
            return NEVER;
        }
        look(i, j, from);
        if (stayApart(i, j, to - from)) {
            return NEVER;
        }
        double a = from;
        double b = Math.min(to, from + ahead(to == NEVER ? LOOK_AHEAD : NEVER));
        for (int n = 0; n < 400; n++) {
            if (gap <= Slide.TOUCH && rate < -Slide.STILL) {
                return a;
            }
            double gapA = gap <= Slide.TOUCH ? 0 : gap;
            double rateA = rate;
            double bendA = bend;
            look(i, j, b);
            double span = b - a;
            double c2 = (3 * (gap - gapA) / span - 2 * rateA - rate) / span;
            double c3 = (2 * (gapA - gap) / span + rateA + rate) / (span * span);
            double off = Math.max(Math.abs(2 * c2 - bendA), Math.abs(2 * c2 + 6 * c3 * span - bend));
            double error = off * span * span / 32;
            if (gap > 0 && (error < GOOD || span <= SHORTEST || lowest(gapA, rateA, c2, c3, span, gap) > 4 * error)) {
                double at = error < GOOD ? root(gapA, rateA, c2, c3, span) : NEVER;
                if (at < NEVER) {
                    return refined(i, j, a, a + at, b);
                }
                if (b >= to) {
                    return NEVER;
                }
                a = b;
                b = Math.min(to, b + ahead(to == NEVER ? 2 * span : NEVER));
                continue;
            }
            // A gap that falls all the way comes to 0 once.
            boolean falls = Math.max(rateA + c2 * span, Math.max(rateA, rate)) < -0.4 * off * span;
            if (gap <= 0 && (falls || error < GOOD || span <= SHORTEST)) {
                double at = root(gapA, rateA, c2, c3, span);
                return refined(i, j, a, at < NEVER ? a + at : b, b);
            }
            double guess = gap <= 0 ? 1.05 * root(gapA, rateA, c2, c3, span) : NEVER;
            b = a + Math.max(0.1 * span, Math.min(guess, 0.5 * span));
            gap = gapA;
            rate = rateA;
            bend = bendA;
        }
        return NEVER;
    }

    /** Whether two bags surely do not meet for so long from the present look on. */
    private boolean stayApart(Slide i, Slide j, double all) {
        if (gap <= Slide.TOUCH && rate <= 0) {
            return false;
        }
        // Friction lets the speed between two bags grow only by what their grips differ by, since
        // -(v1 - v2) . (f1 v1/|v1| - f2 v2/|v2|) <= |f1 - f2| |v1 - v2|.
        if (gap > Slide.TOUCH && gap - all * (closing + 0.5 * Math.abs(i.grip() - j.grip()) * all) > 0) {
            return true;
        }
        if (all == NEVER) {
            return false;
        }
        // Along the present line of centres n they come apart by g + g' t + the integral of (f1 d1 - f2 d2) . n, d
        // their
        // directions; and discs are at least as far apart as along any line.
        double pull = i.leastAlong(nx, ny, all) + j.leastAlong(-nx, -ny, all);
        double late = Math.min(i.boundUntil(), j.boundUntil());
        double slack = i.slack() + j.slack();
        double start = Math.max(0, gap);
        if (rate < 0 && pull > 0 && -rate < pull * all) {
            // It turns before the end.
            return start - 0.5 * rate * rate / pull > slack;
        }
        return start + all * (rate + 0.5 * pull * all) > slack
                && (late >= all || start + late * (rate + 0.5 * pull * late) > slack);
    }

    /** How long from the present look until the parabola of the gap comes to 0, and a little more; else what is said. */
    private double ahead(double otherwise) {
        if (gap <= Slide.TOUCH) {
            return otherwise;
        }
        double under = rate * rate - 2 * gap * bend;
        if (!(under >= 0)) {
            return otherwise;
        }
        double denominator = Math.sqrt(under) - rate;
        return denominator > 0 ? OVER * 2 * gap / denominator : otherwise;
    }

    /** The cubic's lowest value after its start, where that is 0, or else anywhere on the span. */
    private static double lowest(double g, double rate, double c2, double c3, double span, double end) {
        double low = g > 0 ? Math.min(g, end) : end;
        // g' = rate + 2 c2 t + 3 c3 t^2 turns from falling to rising at the larger root, the smaller if c3 < 0.
        double under = c2 * c2 - 3 * c3 * rate;
        if (under > 0) {
            double root = Math.sqrt(under);
            double t = c2 > 0 ? -rate / (c2 + root) : (root - c2) / (3 * c3);
            if (t > 0 && t < span) {
                low = Math.min(low, g + t * (rate + t * (c2 + t * c3)));
            }
        }
        return g > 0 || rate > 0 ? low : Math.min(low, 0);
    }

    /** The first time after the start at which the cubic falls below 0; infinite if it does not. */
    private static double root(double g, double rate, double c2, double c3, double span) {
        double end = g + span * (rate + span * (c2 + span * c3));
        double low = span;
        double under = c2 * c2 - 3 * c3 * rate;
        if (under > 0) {
            double root = Math.sqrt(under);
            double t = c2 > 0 ? -rate / (c2 + root) : (root - c2) / (3 * c3);
            if (t > 0 && t < span && g + t * (rate + t * (c2 + t * c3)) < 0) {
                low = t;
            }
        }
        if (low == span && end > 0) {
            return NEVER;
        }
        // Above 0 from the start on, or just parted from it, and below at `low`: Newton's method between the two, from
        // where
        // the chord crosses.
        double a = 0;
        double b = low;
        double t = g > 0 && low == span ? low * g / (g - end) : 0.5 * low;
        for (int n = 0; n < 40; n++) {
            double value = g > 0 ? g + t * (rate + t * (c2 + t * c3)) : rate + t * (c2 + t * c3);
            double slope = g > 0 ? rate + t * (2 * c2 + 3 * t * c3) : c2 + 2 * t * c3;
            if (value > 0) {
                a = t;
            } else {
                b = t;
            }
            double next = t - value / slope;
            if (!(next > a && next < b)) {
                next = 0.5 * (a + b);
            }
            if (Math.abs(next - t) < CLOSE * low) {
                return next;
            }
            t = next;
        }
        return b;
    }

    /** Halley's method on the gap itself from the cubic's root. */
    private double refined(Slide i, Slide j, double a, double guess, double b) {
        double t = guess;
        for (int n = 0; n < 6; n++) {
            look(i, j, t);
            if (!(rate < 0) || Math.abs(gap) <= Slide.TOUCH) {
                break;
            }
            double straight = gap / rate;
            double next = Math.max(a, Math.min(b, t - straight / (1 - 0.5 * straight * bend / rate)));
            boolean close = (i.grip() + j.grip()) * gap * gap <= Slide.NEAR * rate * rate;
            t = next;
            if (close) {
                break;
            }
        }
        return t;
    }

    private void look(Slide i, Slide j, double when) {
        see(i, when);
        see(j, when);
        double dx = j.x() - i.x();
        double dy = j.y() - i.y();
        double vx = j.vx() - i.vx();
        double vy = j.vy() - i.vy();
        double distance = Math.sqrt(dx * dx + dy * dy);
        double per = 1 / distance;
        nx = dx * per;
        ny = dy * per;
        gap = distance - reach;
        rate = vx * nx + vy * ny;
        closing = Math.sqrt(vx * vx + vy * vy);
        double turning = vx * ny - vy * nx;
        bend = turning * turning * per
                + (i.grip() * i.dirX() - j.grip() * j.dirX()) * nx
                + (i.grip() * i.dirY() - j.grip() * j.dirY()) * ny;
    }

    private static void see(Slide slide, double when) {
        if (when >= slide.stopTime()) {
            slide.atStop();
        } else {
            slide.seek(when);
        }
    }
}
