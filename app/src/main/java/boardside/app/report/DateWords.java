package boardside.app.report;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/**
 * How days are written at the axis of a picture: patterns of {@link DateTimeFormatter} in a language.
 *
 * @param day a day of a month, without the year
 * @param month a month by itself
 * @param year a month with its year
 */
public record DateWords(Locale locale, String day, String month, String year) {
    String day(LocalDate day) {
        return write(this.day, day);
    }

    String month(LocalDate day) {
        return write(month, day);
    }

    String year(LocalDate day) {
        return write(year, day);
    }

    private String write(String pattern, LocalDate day) {
        return DateTimeFormatter.ofPattern(pattern, locale).format(day);
    }
}
