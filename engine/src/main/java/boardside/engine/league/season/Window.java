package boardside.engine.league.season;

import java.time.Instant;

/**
 * The time in which a match is to be thrown.
 *
 * @param opens the first instant that belongs to it
 * @param closes the first one after it
 */
public record Window(Instant opens, Instant closes) {
    /**
     * Checked.
     *
     * @throws IllegalArgumentException if it would close before it opens
     */
    public Window {
        if (!opens.isBefore(closes)) {
            throw new IllegalArgumentException(
                    "a match's time ends after it begins, not at " + closes + " where it begins at " + opens);
        }
    }

    /** Whether an instant belongs to it. */
    public boolean contains(Instant instant) {
        return !instant.isBefore(opens) && instant.isBefore(closes);
    }

    /** Whether it is over at an instant. */
    public boolean over(Instant instant) {
        return !instant.isBefore(closes);
    }
}
