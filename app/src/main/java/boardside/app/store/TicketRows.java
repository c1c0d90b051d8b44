package boardside.app.store;

import boardside.app.practice.Role;
import boardside.app.practice.Ticket;
import boardside.engine.rules.Word;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Links that work once. A used one is removed. */
public final class TicketRows {
    private final Handle handle;

    TicketRows(Handle handle) {
        this.handle = handle;
    }

    /** The invitations that can still be taken, the newest first. */
    public List<Ticket> invitations(Instant now) {
        return handle.createQuery("select * from ticket where kind = 'invitation' and until_ms > :now"
                        + " order by made_ms desc, id desc")
                .bind("now", now.toEpochMilli())
                .map((row, context) -> ticket(row))
                .list();
    }

    /** A ticket of a kind that still works. */
    public Optional<Ticket> find(Ticket.Kind kind, String tokenHash, Instant now) {
        return handle.createQuery("select * from ticket where kind = :kind and token_hash = :hash and until_ms > :now")
                .bind("kind", kind.word())
                .bind("hash", tokenHash)
                .bind("now", now.toEpochMilli())
                .map((row, context) -> ticket(row))
                .findOne();
    }

    private static Ticket ticket(ResultSet row) throws SQLException {
        return new Ticket(
                row.getString("id"),
                Word.of(Ticket.Kind.class, row.getString("kind")),
                Word.of(Role.class, row.getString("role")),
                row.getString("note"),
                row.getString("account"),
                Instant.ofEpochMilli(row.getLong("made_ms")),
                Instant.ofEpochMilli(row.getLong("until_ms")));
    }

    /** Makes a ticket. */
    public void add(Ticket ticket, String tokenHash) {
        handle.createUpdate("insert into ticket (id, kind, token_hash, role, note, account, made_ms, until_ms)"
                        + " values (:id, :kind, :hash, :role, :note, :account, :made, :until)")
                .bind("id", ticket.id())
                .bind("kind", ticket.kind().word())
                .bind("hash", tokenHash)
                .bind("role", ticket.role().word())
                .bind("note", ticket.note())
                .bind("account", ticket.account())
                .bind("made", ticket.madeAt().toEpochMilli())
                .bind("until", ticket.until().toEpochMilli())
                .execute();
    }

    /**
     * Uses a ticket up, or takes it back.
     *
     * @return whether it was still there: of several who use it at once, one hears yes
     */
    public boolean remove(String id) {
        return handle.createUpdate("delete from ticket where id = :id")
                        .bind("id", id)
                        .execute()
                == 1;
    }

    /** Takes back an account's tickets. */
    public void removeAll(String account) {
        handle.createUpdate("delete from ticket where account = :account")
                .bind("account", account)
                .execute();
    }

    /** Removes what has ended. */
    public void tidy(Instant now) {
        handle.createUpdate("delete from ticket where until_ms <= :now")
                .bind("now", now.toEpochMilli())
                .execute();
    }
}
