package boardside.app.store;

import java.time.Instant;
import org.jdbi.v3.core.Handle;

/** Tries that count against somebody, within a window that begins with the first. */
public final class AttemptRows {
    private final Handle handle;

    AttemptRows(Handle handle) {
        this.handle = handle;
    }

    /**
     * Counts one more try. Others who count for the same subject wait until this transaction is over.
     *
     * @param windowStart a window that began by then is over, and a new one begins now
     * @return how many there were in this window, this one included
     */
    public int count(String subject, Instant windowStart, Instant now) {
        return handle.createQuery("insert into attempt (subject, tries, since_ms) values (:subject, 1, :now)"
                        + " on conflict (subject) do update set"
                        + " tries = case when attempt.since_ms <= :start then 1 else attempt.tries + 1 end,"
                        + " since_ms = case when attempt.since_ms <= :start then :now else attempt.since_ms end"
                        + " returning tries")
                .bind("subject", subject)
                .bind("start", windowStart.toEpochMilli())
                .bind("now", now.toEpochMilli())
                .mapTo(Integer.class)
                .one();
    }

    /** Takes one try back. */
    public void takeBack(String subject) {
        handle.createUpdate("update attempt set tries = tries - 1 where subject = :subject and tries > 0")
                .bind("subject", subject)
                .execute();
    }

    /** Forgets all tries of a subject. */
    public void forget(String subject) {
        handle.createUpdate("delete from attempt where subject = :subject")
                .bind("subject", subject)
                .execute();
    }

    /** Removes windows that are over. */
    public void tidy(Instant windowStart) {
        handle.createUpdate("delete from attempt where since_ms <= :start")
                .bind("start", windowStart.toEpochMilli())
                .execute();
    }
}
