package boardside.app.transfer;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** A deadline within a line somebody wrote: "due Sun 29 Nov, 9 pm", "by 2026-11-29 23:59", "until 29.11.2026". */
final class PastedDeadline {
    private static final String MONTHS = "jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec";
    private static final String WEEKDAY =
            "(?:(?:mon|tue|tues|wed|wednes|thu|thur|thurs|fri|sat|satur|sun)(?:day)?\\.?,?\\s+)?";
    private static final String DATE = "(?<iso>\\d{4}-\\d{1,2}-\\d{1,2})"
            + "|(?<dotted>\\d{1,2}\\.\\s?\\d{1,2}\\.(?:\\s?\\d{4})?)"
            + "|(?<slashed>\\d{1,2}/\\d{1,2}(?:/\\d{2,4})?)"
            + "|(?<day>\\d{1,2})(?:st|nd|rd|th)?\\.?\\s+(?<month>" + MONTHS + ")[a-z]*\\.?,?(?:\\s+(?<year>\\d{4}))?"
            + "|(?<month2>" + MONTHS + ")[a-z]*\\.?\\s+(?<day2>\\d{1,2})(?:st|nd|rd|th)?(?:,?\\s+(?<year2>\\d{4}))?";
    private static final String TIME = "(?:[T,]?\\s*(?:at\\s+)?(?<midnight>midnight)"
            + "|[T,]?\\s*(?:at\\s+)?(?<hour>\\d{1,2}):(?<minute>\\d{2})\\s*(?<half>[ap]\\.?m\\.?)?"
            + "|[T,]?\\s*(?:at\\s+)?(?<hour2>\\d{1,2})\\s*(?<half2>[ap]\\.?m\\.?))?";
    private static final Pattern DEADLINE = Pattern.compile(
            "[(\\[,;]?\\s*\\b(?:due|deadline|throw by|by|until|till|before|ends?)\\b:?\\s*(?:is|by|on)?\\s*" + WEEKDAY
                    + "(?:" + DATE + ")" + TIME + "\\s*[)\\]]?",
            Pattern.CASE_INSENSITIVE);
    private static final Pattern WORD = Pattern.compile("\\b(?:due|deadline|throw by)\\b", Pattern.CASE_INSENSITIVE);

    private PastedDeadline() {}

    /**
     * A line with its deadline taken out.
     *
     * @param rest the line without it
     * @param deadline yyyy-mm-ddThh:mm, or null where none was written
     * @param fault what is wrong with it, or null
     */
    record Found(
            String rest,
            @Nullable String deadline,
            @Nullable String fault) {}

    static Found in(String line, LocalDate today) {
        Matcher found = DEADLINE.matcher(line);
        if (!found.find()) {
            return new Found(
                    line,
                    null,
                    WORD.matcher(line).find()
                            ? "the deadline cannot be read; write it like: due 2026-11-29 23:59"
                            : null);
        }
        String rest = (line.substring(0, found.start()) + " " + line.substring(found.end())).strip();
        String slashed = found.group("slashed");
        if (slashed != null) {
            return new Found(
                    rest,
                    null,
                    "\"" + slashed + "\" may be one of two days; write the deadline like: due 2026-11-29 23:59");
        }
        Optional<String> deadline = day(found, today).flatMap(day -> time(found).map(time -> day + "T" + time));
        return deadline.isPresent()
                ? new Found(rest, deadline.get(), null)
                : new Found(
                        rest,
                        null,
                        "\"" + found.group().strip()
                                + "\" is no day there is; write the deadline like: due 2026-11-29 23:59");
    }

    private static Optional<LocalDate> day(Matcher found, LocalDate today) {
        String iso = found.group("iso");
        String dotted = found.group("dotted");
        if (iso != null) {
            String[] parts = iso.split("-");
            return day(parts[0], parts[1], parts[2], today);
        }
        if (dotted != null) {
            String[] parts = dotted.replace(" ", "").split("\\.");
            return day(parts.length > 2 ? parts[2] : null, parts[1], parts[0], today);
        }
        String month = found.group("month") == null ? found.group("month2") : found.group("month");
        String day = found.group("day") == null ? found.group("day2") : found.group("day");
        String year = found.group("year") == null ? found.group("year2") : found.group("year");
        int number = List.of(MONTHS.split("\\|")).indexOf(month.toLowerCase(Locale.ROOT)) + 1;
        return day(year, String.valueOf(number), day, today);
    }

    /** Without a year, the day nearest to today. */
    private static Optional<LocalDate> day(@Nullable String year, String month, String day, LocalDate today) {
        try {
            int m = Integer.parseInt(month);
            int d = Integer.parseInt(day);
            if (year != null) {
                return Optional.of(LocalDate.of(Integer.parseInt(year), m, d));
            }
            LocalDate here = LocalDate.of(today.getYear(), m, d);
            long away = here.toEpochDay() - today.toEpochDay();
            return Optional.of(away < -183 ? here.plusYears(1) : away > 183 ? here.minusYears(1) : here);
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    /** Without a time, the end of the day. */
    private static Optional<LocalTime> time(Matcher found) {
        String hour = found.group("hour") == null ? found.group("hour2") : found.group("hour");
        if (hour == null) {
            return Optional.of(LocalTime.of(23, 59));
        }
        String minute = found.group("minute");
        String half = found.group("half") == null ? found.group("half2") : found.group("half");
        int h = Integer.parseInt(hour);
        if (half != null) {
            if (!(h >= 1 && h <= 12)) {
                return Optional.empty();
            }
            h = h % 12 + (half.toLowerCase(Locale.ROOT).startsWith("p") ? 12 : 0);
        }
        int m = minute == null ? 0 : Integer.parseInt(minute);
        return h < 24 && m < 60 ? Optional.of(LocalTime.of(h, m)) : Optional.empty();
    }
}
