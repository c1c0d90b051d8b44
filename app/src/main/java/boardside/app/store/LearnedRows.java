package boardside.app.store;

import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** How the last fit of the skill model ended, a player each; derived. */
public final class LearnedRows {
    private final Handle handle;

    LearnedRows(Handle handle) {
        this.handle = handle;
    }

    /** What was kept of a player, as JSON. */
    public Optional<String> find(int player) {
        return handle.createQuery("select value from learned where player = :player")
                .bind("player", player)
                .mapTo(String.class)
                .findOne();
    }

    /** Keeps it in place of what there was. */
    public void put(int player, String value) {
        handle.createUpdate("insert into learned (player, value) values (:player, :value)"
                        + " on conflict (player) do update set value = excluded.value")
                .bind("player", player)
                .bind("value", value)
                .execute();
    }
}
