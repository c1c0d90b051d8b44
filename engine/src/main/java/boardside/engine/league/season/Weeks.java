package boardside.engine.league.season;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;

/**
 * The weeks of a season, as the clocks of its time zone show them: each begins seven days after the one before at the same
 * time of day, and ends where the next one begins, so that weeks neither overlap nor leave a gap, and one in which the clocks
 * change is an hour shorter or longer. A beginning that the clocks skip is the first moment after the gap; of two moments
 * that show the same time the earlier one counts (as {@link LocalDateTime#atZone}).
 *
 * @param starts when the first week begins
 * @param zone the time zone
 */
public record Weeks(LocalDateTime starts, ZoneId zone) {
    /** When a week is to be thrown in, the first being 1. */
    public Window window(int week) {
        return new Window(instant(begins(week)), instant(begins(week + 1)));
    }

    /** When a week begins, as the season's clocks show it. */
    public LocalDateTime begins(int week) {
        return starts.plusWeeks(week - 1L);
    }

    /** A time of the season's clocks as an instant. */
    public Instant instant(LocalDateTime local) {
        return local.atZone(zone).toInstant();
    }

    /** An instant as the season's clocks show it. */
    public LocalDateTime local(Instant instant) {
        return instant.atZone(zone).toLocalDateTime();
    }

    /** The week an instant falls in; 0 before the first. */
    public int at(Instant now) {
        if (now.isBefore(instant(starts))) {
            return 0;
        }
        // At most one off, where the clocks have changed since.
        int week = (int) (Duration.between(instant(starts), now).toDays() / 7) + 1;
        if (window(week).over(now)) {
            return week + 1;
        }
        return now.isBefore(window(week).opens()) ? week - 1 : week;
    }
}
