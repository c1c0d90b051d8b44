package boardside.app.store;

import boardside.app.practice.Challenge;
import boardside.engine.rules.Word;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Challenges that were taken up. */
public final class ChallengeRows {
    private final Handle handle;

    ChallengeRows(Handle handle) {
        this.handle = handle;
    }

    /** All challenges of a player, in the order taken up. */
    public List<Challenge> all(int player) {
        return handle.createQuery("select * from challenge where player = :player order by id")
                .bind("player", player)
                .map((row, context) -> challenge(row))
                .list();
    }

    /** The latest challenges whose run is not deleted, the newest first. */
    public List<Challenge> latest(int player, int most) {
        return handle.createQuery("select c.* from challenge c join run r on r.player = c.player and r.id = c.run"
                        + " where c.player = :player and r.deleted_at is null order by c.id desc limit :most")
                .bind("player", player)
                .bind("most", most)
                .map((row, context) -> challenge(row))
                .list();
    }

    /** The challenge a run was started for. */
    public Optional<Challenge> of(int player, String run) {
        return handle.createQuery("select * from challenge where player = :player and run = :run order by id limit 1")
                .bind("player", player)
                .bind("run", run)
                .map((row, context) -> challenge(row))
                .findOne();
    }

    private static Challenge challenge(ResultSet row) throws SQLException {
        return new Challenge(
                row.getString("id"),
                row.getString("day"),
                Word.of(Challenge.Kind.class, row.getString("kind")),
                row.getInt("rounds"),
                row.getInt("ghost"),
                row.getInt("need"),
                row.getDouble("chance"),
                row.getDouble("low"),
                row.getDouble("high"),
                row.getString("run"));
    }

    /** A new challenge; its run exists. */
    public void add(int player, Challenge challenge) {
        handle.createUpdate("insert into challenge (player, id, day, kind, rounds, ghost, need, chance, low, high, run)"
                        + " values (:player, :id, :day, :kind, :rounds, :ghost, :need, :chance, :low, :high, :run)")
                .bind("player", player)
                .bind("id", challenge.id())
                .bind("day", challenge.day())
                .bind("kind", challenge.kind().word())
                .bind("rounds", challenge.rounds())
                .bind("ghost", challenge.ghost())
                .bind("need", challenge.need())
                .bind("chance", challenge.chance())
                .bind("low", challenge.low())
                .bind("high", challenge.high())
                .bind("run", challenge.run())
                .execute();
    }
}
