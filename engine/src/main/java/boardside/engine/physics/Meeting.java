package boardside.engine.physics;

/**
 * When two sliding bags meet. Both paths are known in closed form; the gap g between the discs obeys g'' >= -A, with A the
 * most that their decelerations can differ by, so that parabolas through the gap and its rate at two times bound it from
 * below in between: either they stay above 0, or a safe step leads nearer. Mutable; SI units.
 */
final class Meeting {
    private static final double NEVER = Double.POSITIVE_INFINITY;

    /** Overlaps that come and go within less than this time are no contact, s. */
    private static final double BLINK = 2e-5;

    private final double reach;

    private double gap;
    private double rate;
    private double iDirX;
    private double iDirY;
    private double jDirX;
    private double jDirY;

    Meeting(double reach) {
        this.reach = reach;
    }

    /** The first time from {@code from} on, before {@code to}, at which two bags meet; infinite if they do not. */
    double first(Slide i, Slide j, double from, double to) {
        if (!(from < to)) {
            return NEVER;
        }
        double most = i.grip() + j.grip();
        double a = from;
        look(i, j, a);
        // Just before the first of them stops, directions swing round; up to there they change little.
        double calm = to == NEVER ? to : from + 0.97 * (to - from);
        double b = calm;
        for (int n = 0; n < 400; n++) {
            if (gap <= Slide.TOUCH && rate < -Slide.STILL) {
                return a;
            }
            double gapA = Math.max(0, gap);
            double rateA = gap <= Slide.TOUCH && Math.abs(rate) <= Slide.STILL ? 0 : rate;
            double aiX = iDirX;
            double aiY = iDirY;
            double ajX = jDirX;
            double ajY = jDirY;
            // The furthest this step may go without looking.
            double safe = rateA < 0
                    ? 2 * gapA / (-rateA + Math.sqrt(rateA * rateA + 2 * most * gapA))
                    : (rateA + Math.sqrt(rateA * rateA + 2 * most * gapA)) / most;
            if (a + safe >= to) {
                return NEVER;
            }
            if (b == NEVER || b <= a) {
                b = b == NEVER ? a + 4 * safe + 0.05 : to;
            }
            look(i, j, b);
            double curve = Math.abs(i.grip() - j.grip())
                    + Math.min(i.grip(), j.grip())
                            * Math.min(
                                    2,
                                    length(aiX - ajX, aiY - ajY)
                                            + length(iDirX - aiX, iDirY - aiY)
                                            + length(jDirX - ajX, jDirY - ajY));
            if (gap >= 0 && clear(gapA, rateA, gap, rate, curve, b - a)) {
                if (b >= to) {
                    return NEVER;
                }
                a = b;
                b = to == NEVER ? NEVER : b < calm ? calm : to;
                continue;
            }
            double better = curve > 0 ? safeStep(gapA, rateA, curve) : b - a;
            double step = Math.max(Math.min(better, b - a), BLINK);
            if (step >= b - a) {
                // Too short to tell apart: what is overlapped at its end has met.
                if (gap < 0) {
                    a = root(i, j, a, b);
                    look(i, j, a);
                    return rate < 0 || gap < -1e-10 ? a : NEVER;
                }
                a = b;
                b = to == NEVER ? NEVER : b < calm ? calm : to;
                continue;
            }
            double end = b;
            a += step;
            look(i, j, a);
            if (gap < 0) {
                return root(i, j, a - step, a);
            }
            b = end;
        }
        return NEVER;
    }

    private static double safeStep(double gap, double rate, double curve) {
        double root = Math.sqrt(rate * rate + 2 * curve * gap);
        return rate < 0 ? 2 * gap / (-rate + root) : (rate + root) / curve;
    }

    /** Whether two parabolas of second derivative -curve, from either end, keep the gap above 0. */
    private static boolean clear(double gapA, double rateA, double gapB, double rateB, double curve, double span) {
        // Left: gapA + rateA t - curve t^2 / 2. Right: gapB - rateB (span - t) - curve (span - t)^2 / 2. They cross
        // where
        double slope = rateA - rateB - curve * span;
        double level = gapB - rateB * span - 0.5 * curve * span * span - gapA;
        double t = slope != 0 ? level / slope : span;
        t = Math.max(0, Math.min(span, t));
        double lowest = Math.max(
                gapA + rateA * t - 0.5 * curve * t * t,
                gapB - rateB * (span - t) - 0.5 * curve * (span - t) * (span - t));
        return lowest >= 0;
    }

    /** The first overlap between a time without and one with it, by regula falsi (Illinois). */
    private double root(Slide i, Slide j, double from, double to) {
        double a = from;
        double b = to;
        look(i, j, a);
        double fa = Math.max(gap, 0);
        look(i, j, b);
        double fb = gap;
        if (fa <= Slide.TOUCH) {
            return b;
        }
        for (int n = 0; n < 60 && b - a > 1e-15; n++) {
            double c = (a * fb - b * fa) / (fb - fa);
            look(i, j, c);
            if (Math.abs(gap) <= Slide.TOUCH) {
                return c;
            }
            if (gap < 0) {
                b = c;
                fb = gap;
                fa *= 0.5;
            } else {
                a = c;
                fa = gap;
                fb *= 0.5;
            }
        }
        return b;
    }

    private void look(Slide i, Slide j, double when) {
        see(i, when);
        see(j, when);
        double dx = j.x() - i.x();
        double dy = j.y() - i.y();
        double distance = Math.sqrt(dx * dx + dy * dy);
        gap = distance - reach;
        rate = ((j.vx() - i.vx()) * dx + (j.vy() - i.vy()) * dy) / distance;
        iDirX = i.dirX();
        iDirY = i.dirY();
        jDirX = j.dirX();
        jDirY = j.dirY();
    }

    private static void see(Slide slide, double when) {
        if (when >= slide.stopTime()) {
            slide.atStop();
        } else {
            slide.paramAt(when);
        }
    }

    private static double length(double dx, double dy) {
        return Math.sqrt(dx * dx + dy * dy);
    }
}
