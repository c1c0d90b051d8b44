package boardside.app.store;

import boardside.app.json.Json;
import boardside.app.practice.KeptSituation;
import boardside.engine.tactics.Position;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Situations that players keep. */
public final class SituationRows {
    private final Handle handle;

    SituationRows(Handle handle) {
        this.handle = handle;
    }

    /** All of a player's, those in use first, in the order made. */
    public List<KeptSituation> all(int player) {
        return handle.createQuery("select * from situation where player = :player order by retired, id")
                .bind("player", player)
                .map((row, context) -> situation(row))
                .list();
    }

    /** One by id. */
    public Optional<KeptSituation> find(int player, String id) {
        return handle.createQuery("select * from situation where player = :player and id = :id")
                .bind("player", player)
                .bind("id", id)
                .map((row, context) -> situation(row))
                .findOne();
    }

    private static KeptSituation situation(ResultSet row) throws SQLException {
        return new KeptSituation(
                row.getString("id"),
                row.getString("op"),
                row.getString("name"),
                Json.read(row.getString("position"), Position.class),
                row.getInt("retired") == 1);
    }

    /** Writes a situation, new or known by its id. */
    public void put(int player, KeptSituation situation) {
        handle.createUpdate("insert into situation (player, id, op, name, position, retired)"
                        + " values (:player, :id, :op, :name, :position, :retired)"
                        + " on conflict (player, id) do update set op = excluded.op, name = excluded.name,"
                        + " position = excluded.position, retired = excluded.retired")
                .bind("player", player)
                .bind("id", situation.id())
                .bind("op", situation.op())
                .bind("name", situation.name())
                .bind("position", Json.write(situation.position()))
                .bind("retired", situation.retired() ? 1 : 0)
                .execute();
    }
}
