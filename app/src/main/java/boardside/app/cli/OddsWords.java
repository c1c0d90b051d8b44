package boardside.app.cli;

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
}
