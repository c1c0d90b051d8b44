package boardside.app.transfer;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/**
 * Writes events as a calendar feed, RFC 5545: instants in UTC, so that no zone has to be described; lines folded at 75
 * octets, never within a character (section 3.1); text escaped (section 3.3.11). The calendar's name is told as RFC 7986 has
 * it, and as older programs want it.
 */
public final class ICalendar {
    private static final DateTimeFormatter UTC =
            DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);
    private static final int MOST_OCTETS = 75;

    private final StringBuilder out = new StringBuilder();

    private ICalendar() {}

    /**
     * One event. It takes up nobody's time: it says when something can be done.
     *
     * @param uid the same for the same event whenever the feed is read
     * @param sequence grows when the event changes
     * @param changed when it last did
     * @param opens when it begins
     * @param closes when it ends, later
     * @param summary its title
     * @param description more text, may have several lines
     * @param cancelled whether it will not take place
     */
    public record Event(
            String uid,
            long sequence,
            Instant changed,
            Instant opens,
            Instant closes,
            String summary,
            String description,
            boolean cancelled) {}

    /** A calendar of that name. */
    public static String of(String name, List<Event> events) {
        ICalendar calendar = new ICalendar();
        calendar.line("BEGIN:VCALENDAR");
        calendar.line("VERSION:2.0");
        calendar.line("PRODID:-//Boardside//Seasons//EN");
        calendar.line("CALSCALE:GREGORIAN");
        calendar.line("NAME:" + text(name));
        calendar.line("X-WR-CALNAME:" + text(name));
        calendar.line("REFRESH-INTERVAL;VALUE=DURATION:PT6H");
        events.forEach(calendar::event);
        calendar.line("END:VCALENDAR");
        return calendar.out.toString();
    }

    private void event(Event event) {
        line("BEGIN:VEVENT");
        line("UID:" + text(event.uid()));
        line("DTSTAMP:" + UTC.format(event.changed()));
        line("LAST-MODIFIED:" + UTC.format(event.changed()));
        line("SEQUENCE:" + event.sequence());
        line("DTSTART:" + UTC.format(event.opens()));
        line("DTEND:" + UTC.format(event.closes()));
        line("SUMMARY:" + text(event.summary()));
        line("DESCRIPTION:" + text(event.description()));
        line("STATUS:" + (event.cancelled() ? "CANCELLED" : "CONFIRMED"));
        line("TRANSP:TRANSPARENT");
        line("END:VEVENT");
    }

    private static String text(String value) {
        return value.replace("\\", "\\\\")
                .replace(";", "\\;")
                .replace(",", "\\,")
                .replaceAll("\\R", "\\\\n")
                .replaceAll("\\p{Cntrl}", "");
    }

    /** One content line, folded: what follows the first part begins with a space, which counts. */
    private void line(String content) {
        int octets = 0;
        for (int i = 0; i < content.length(); ) {
            int character = content.codePointAt(i);
            String text = Character.toString(character);
            int size = text.getBytes(StandardCharsets.UTF_8).length;
            if (octets + size > MOST_OCTETS) {
                out.append("\r\n ");
                octets = 1;
            }
            out.append(text);
            octets += size;
            i += text.length();
        }
        out.append("\r\n");
    }
}
