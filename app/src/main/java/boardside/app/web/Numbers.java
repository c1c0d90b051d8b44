package boardside.app.web;

import boardside.engine.skill.Interval;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** Numbers as pages write them. */
final class Numbers {
    private Numbers() {}

    static String one(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }

    /** A half is written, a whole number is not given a fraction. */
    static String half(double value) {
        return value == Math.rint(value) ? String.valueOf((long) value) : one(value);
    }

    static String range(Interval interval) {
        return one(interval.low()) + "\u2013" + one(interval.high());
    }

    static String two(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }

    /** A chance as times in a hundred, for sentences that say "of 100"; never quite none or all. */
    static String inHundred(double chance) {
        if (chance > 0.995) {
            return "over 99";
        }
        return chance < 0.005 ? "under 1" : String.valueOf(Math.round(100 * chance));
    }

    /** A chance in whole hundredths; near the ends it says so rather than claim certainty. */
    static String percent(double chance) {
        if (chance > 0.995 && chance < 1) {
            return "over 99 %";
        }
        return chance < 0.005 && chance > 0 ? "under 1 %" : Math.round(100 * chance) + " %";
    }

    /** A chance with its range, "78 % (66\u201387)". */
    static String percent(Interval chance) {
        return percent(chance.estimate()) + " (" + Math.round(100 * chance.low()) + "\u2013"
                + Math.round(100 * chance.high()) + ")";
    }

    /** A run's or session's id, which may be any text, as a part of an address. */
    static String path(String id) {
        return URLEncoder.encode(id, StandardCharsets.UTF_8).replace("+", "%20");
    }
}
