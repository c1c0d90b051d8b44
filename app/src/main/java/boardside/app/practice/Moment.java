package boardside.app.practice;

import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.DateTimeParseException;
import java.time.format.ResolverStyle;

/**
 * An instant as somebody wrote it: ISO-8601 with offset, kept as given.
 *
 * @param text as written
 * @param millis the instant, milliseconds since 1970-01-01T00:00Z
 * @param day the date in its own offset, yyyy-mm-dd
 */
public record Moment(String text, long millis, String day) {
    private static final DateTimeFormatter FORM = new DateTimeFormatterBuilder()
            .parseCaseInsensitive()
            .append(DateTimeFormatter.ISO_LOCAL_DATE_TIME)
            .optionalStart()
            .appendOffset("+HH:MM:ss", "Z")
            .optionalEnd()
            .optionalStart()
            .appendOffset("+HHmm", "Z")
            .optionalEnd()
            .toFormatter()
            .withResolverStyle(ResolverStyle.STRICT);

    /**
     * Reads an instant.
     *
     * @throws IllegalArgumentException if it is no date and time of the years 1 to 9999 with an offset
     */
    public static Moment of(String text) {
        try {
            OffsetDateTime time = OffsetDateTime.parse(text, FORM);
            if (time.getYear() >= 1 && time.getYear() <= 9999) {
                return new Moment(
                        text,
                        time.toInstant().toEpochMilli(),
                        time.toLocalDate().toString());
            }
        } catch (DateTimeParseException e) {
            // Told below in words.
        }
        throw new IllegalArgumentException(
                "\"" + text
                        + "\" is no date and time with an offset; write it like 2026-05-31T18:30:00+02:00 or 2026-05-31T16:30:00Z");
    }
}
