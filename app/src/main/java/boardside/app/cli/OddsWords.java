package boardside.app.cli;

import boardside.engine.skill.Interval;
import java.util.Locale;

/** Numbers of odds in words. */
final class OddsWords {
    private OddsWords() {}

    /** A chance for people: never 0 or 100 % unless it is. */
    static String percent(double chance) {
        double percent = 100 * chance;
        if (percent > 0 && percent < 0.1) {
            return "less than 0.1 %";
        }
        if (percent > 99.9 && percent < 100 - 1e-9) {
            return "more than 99.9 %";
        }
        return number(percent) + " %";
    }

    static String number(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }

    /** A chance with its range, such as "78 % (66-87)"; near the ends the estimate claims no certainty. */
    static String percent(Interval chance) {
        double estimate = chance.estimate();
        String named = estimate > 0.995 && estimate < 1
                ? "over 99 %"
                : estimate > 0 && estimate < 0.005 ? "under 1 %" : Math.round(100 * estimate) + " %";
        return named + " (" + Math.round(100 * chance.low()) + "-" + Math.round(100 * chance.high()) + ")";
    }

    /** A number with its range, such as "7.2 (6.8-7.5)". */
    static String number(Interval value) {
        return number(value.estimate()) + " (" + number(value.low()) + "-" + number(value.high()) + ")";
    }
}
