package boardside.app.store;

import boardside.app.practice.Change;
import boardside.engine.rules.Word;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** Corrections and deletions, each with what was before and after. */
public final class HistoryRows {
    private final Handle handle;

    HistoryRows(Handle handle) {
        this.handle = handle;
    }

    /**
     * One entry.
     *
     * @param subject id of the run, session or bag set concerned
     * @param earlier JSON of the thing before, or empty where it did not exist
     * @param later JSON of the thing after, or empty
     * @param undoneAt when it was undone, or null
     */
    public record Entry(
            String id,
            String at,
            Change.Kind kind,
            String subject,
            String earlier,
            String later,
            @Nullable String undoneAt) {
        /** Whether it has been undone. */
        public boolean undone() {
            return undoneAt != null;
        }
    }

    /** Adds an entry. */
    public void add(int player, Entry entry) {
        handle.createUpdate("insert into history (player, id, at, kind, subject, earlier, later, undone_at)"
                        + " values (:player, :id, :at, :kind, :subject, :earlier, :later, :undone)")
                .bind("player", player)
                .bind("id", entry.id())
                .bind("at", entry.at())
                .bind("kind", entry.kind().word())
                .bind("subject", entry.subject())
                .bind("earlier", entry.earlier())
                .bind("later", entry.later())
                .bind("undone", entry.undoneAt())
                .execute();
    }

    /** All entries on a run, session or bag set, the latest first. */
    public List<Entry> on(int player, String subject) {
        return handle.createQuery(
                        "select * from history where player = :player and subject = :subject order by id desc")
                .bind("player", player)
                .bind("subject", subject)
                .map((row, context) -> entry(row))
                .list();
    }

    /** All entries of a player, the first made first. */
    public List<Entry> all(int player) {
        return handle.createQuery("select * from history where player = :player order by id")
                .bind("player", player)
                .map((row, context) -> entry(row))
                .list();
    }

    /** One entry. */
    public Optional<Entry> find(int player, String id) {
        return handle.createQuery("select * from history where player = :player and id = :id")
                .bind("player", player)
                .bind("id", id)
                .map((row, context) -> entry(row))
                .findOne();
    }

    private static Entry entry(ResultSet row) throws SQLException {
        return new Entry(
                row.getString("id"),
                row.getString("at"),
                Word.of(Change.Kind.class, row.getString("kind")),
                row.getString("subject"),
                row.getString("earlier"),
                row.getString("later"),
                row.getString("undone_at"));
    }

    /** Marks an entry as undone. */
    public void undone(int player, String id, String at) {
        handle.createUpdate("update history set undone_at = :at where player = :player and id = :id")
                .bind("player", player)
                .bind("id", id)
                .bind("at", at)
                .execute();
    }
}
