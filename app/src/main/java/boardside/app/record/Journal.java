package boardside.app.record;

import boardside.app.practice.Run;
import boardside.app.practice.Session;
import java.util.List;

/**
 * A page of the journal.
 *
 * @param entries sessions, the newest first
 * @param total sessions on all pages
 * @param page which page this is, from 0
 * @param size sessions on a full page
 */
public record Journal(List<Entry> entries, int total, int page, int size) {
    /** Lists copied. */
    public Journal {
        entries = List.copyOf(entries);
    }

    /** A session with its runs, the first thrown first. */
    public record Entry(Session session, List<Run> runs) {
        /** Lists copied. */
        public Entry {
            runs = List.copyOf(runs);
        }
    }

    /** Pages in all, at least 1. */
    public int pages() {
        return Math.max(1, (total + size - 1) / size);
    }
}
