package boardside.app.store;

import boardside.app.json.Json;
import boardside.app.practice.Contest;
import boardside.app.practice.TrialPlan;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Word;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Trials as players set them up. */
public final class TrialRows {
    private final Handle handle;

    TrialRows(Handle handle) {
        this.handle = handle;
    }

    /** All of a player's, deleted ones too, in the order made. */
    public List<TrialPlan> all(int player) {
        return handle.createQuery("select * from trial where player = :player order by made_at, id")
                .bind("player", player)
                .map((row, context) -> plan(row))
                .list();
    }

    /** One by id, deleted or not. */
    public Optional<TrialPlan> find(int player, String id) {
        return handle.createQuery("select * from trial where player = :player and id = :id")
                .bind("player", player)
                .bind("id", id)
                .map((row, context) -> plan(row))
                .findOne();
    }

    private static TrialPlan plan(ResultSet row) throws SQLException {
        return new TrialPlan(
                row.getString("id"),
                row.getString("name"),
                Arrays.asList(Json.read(row.getString("candidates"), Contest.Way[].class)),
                Word.of(BoardKind.class, row.getString("board")),
                row.getInt("longest"),
                row.getDouble("margin"),
                row.getLong("seed"),
                row.getString("made_at"),
                Word.of(TrialPlan.State.class, row.getString("state")),
                row.getInt("deleted") == 1);
    }

    /** Writes a trial, new or known by its id; how it was laid out stays as it was. */
    public void put(int player, TrialPlan plan) {
        handle.createUpdate("insert into trial"
                        + " (player, id, name, candidates, board, longest, margin, seed, made_at, state, deleted)"
                        + " values (:player, :id, :name, :candidates, :board, :longest, :margin, :seed, :made, :state,"
                        + " :deleted) on conflict (player, id) do update set name = excluded.name,"
                        + " state = excluded.state, deleted = excluded.deleted")
                .bind("player", player)
                .bind("id", plan.id())
                .bind("name", plan.name())
                .bind("candidates", Json.write(plan.candidates()))
                .bind("board", plan.board().word())
                .bind("longest", plan.longest())
                .bind("margin", plan.margin())
                .bind("seed", plan.seed())
                .bind("made", plan.madeAt())
                .bind("state", plan.state().word())
                .bind("deleted", plan.deleted() ? 1 : 0)
                .execute();
    }
}
