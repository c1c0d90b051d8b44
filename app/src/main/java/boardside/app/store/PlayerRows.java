package boardside.app.store;

import boardside.app.practice.BagSet;
import boardside.app.practice.Board;
import boardside.app.practice.Player;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Word;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** Players, their bag sets and their boards. */
public final class PlayerRows {
    private final Handle handle;

    PlayerRows(Handle handle) {
        this.handle = handle;
    }

    /** All players, the first one made first. */
    public List<Player> all() {
        return handle.createQuery("select * from player order by id")
                .map((row, context) -> player(row))
                .list();
    }

    /** A player by number. */
    public Optional<Player> find(int id) {
        return handle.createQuery("select * from player where id = :id")
                .bind("id", id)
                .map((row, context) -> player(row))
                .findOne();
    }

    private static Player player(ResultSet row) throws SQLException {
        return new Player(
                row.getInt("id"),
                row.getString("name"),
                Word.of(Player.Hand.class, row.getString("hand")),
                Word.of(Player.Hand.class, row.getString("throws_from")),
                row.getLong("version"));
    }

    /** A new player, with the next free number. */
    public Player add(String name, Player.Hand hand, Player.Hand throwsFrom, String now) {
        int id = handle.createQuery("select coalesce(max(id), 0) + 1 from player")
                .mapTo(Integer.class)
                .one();
        handle.createUpdate("insert into player (id, name, hand, throws_from, created_at)"
                        + " values (:id, :name, :hand, :from, :now)")
                .bind("id", id)
                .bind("name", name)
                .bind("hand", hand.word())
                .bind("from", throwsFrom.word())
                .bind("now", now)
                .execute();
        return new Player(id, name, hand, throwsFrom, 0);
    }

    /** Sets name, hand and side. */
    public void edit(Player player) {
        handle.createUpdate("update player set name = :name, hand = :hand, throws_from = :from where id = :id")
                .bind("id", player.id())
                .bind("name", player.name())
                .bind("hand", player.hand().word())
                .bind("from", player.throwsFrom().word())
                .execute();
    }

    /**
     * Marks the player's records as changed. Comes first in every transaction that changes them: it makes other writers
     * of this player wait.
     *
     * @return whether there is such a player
     */
    public boolean changed(int id) {
        return handle.createUpdate("update player set version = version + 1 where id = :id")
                        .bind("id", id)
                        .execute()
                == 1;
    }

    /** Preferences as JSON. */
    public String preferences(int id) {
        return handle.createQuery("select preferences from player where id = :id")
                .bind("id", id)
                .mapTo(String.class)
                .one();
    }

    /** Sets the preferences. */
    public void preferences(int id, String json) {
        handle.createUpdate("update player set preferences = :json where id = :id")
                .bind("id", id)
                .bind("json", json)
                .execute();
    }

    /** All bag sets of a player, those in use first, in the order made. */
    public List<BagSet> bags(int player) {
        return handle.createQuery("select * from bag where player = :player order by retired, id")
                .bind("player", player)
                .map((row, context) -> bag(row))
                .list();
    }

    /** A bag set by id. */
    public Optional<BagSet> bag(int player, String id) {
        return handle.createQuery("select * from bag where player = :player and id = :id")
                .bind("player", player)
                .bind("id", id)
                .map((row, context) -> bag(row))
                .findOne();
    }

    private static BagSet bag(ResultSet row) throws SQLException {
        return new BagSet(
                row.getString("id"),
                row.getString("name"),
                whole(row, "slow_speed"),
                whole(row, "fast_speed"),
                number(row, "weight_oz"),
                row.getString("fill"),
                row.getString("note"),
                row.getInt("retired") == 1);
    }

    /** A column that may be null. */
    static @Nullable Integer whole(ResultSet row, String column) throws SQLException {
        int value = row.getInt(column);
        return row.wasNull() ? null : (Integer) value;
    }

    /** A column that may be null. */
    static @Nullable Double number(ResultSet row, String column) throws SQLException {
        double value = row.getDouble(column);
        return row.wasNull() ? null : (Double) value;
    }

    /** Writes a bag set, new or known by its id. */
    public void put(int player, BagSet bag) {
        handle.createUpdate("insert into bag (player, id, name, slow_speed, fast_speed, weight_oz, fill, note, retired)"
                        + " values (:player, :id, :name, :slow, :fast, :weight, :fill, :note, :retired)"
                        + " on conflict (player, id) do update set name = excluded.name,"
                        + " slow_speed = excluded.slow_speed, fast_speed = excluded.fast_speed,"
                        + " weight_oz = excluded.weight_oz, fill = excluded.fill, note = excluded.note,"
                        + " retired = excluded.retired")
                .bind("player", player)
                .bind("id", bag.id())
                .bind("name", bag.name())
                .bind("slow", bag.slowSpeed())
                .bind("fast", bag.fastSpeed())
                .bind("weight", bag.weight())
                .bind("fill", bag.fill())
                .bind("note", bag.note())
                .bind("retired", bag.retired() ? 1 : 0)
                .execute();
    }

    /** Sets how often the player's records have changed. */
    public void version(int id, long version) {
        handle.createUpdate("update player set version = :version where id = :id")
                .bind("id", id)
                .bind("version", version)
                .execute();
    }

    /** All boards of a player, those in use first, in the order made. */
    public List<Board> boards(int player) {
        return handle.createQuery("select * from board where player = :player order by retired, id")
                .bind("player", player)
                .map((row, context) -> board(row))
                .list();
    }

    /** A board by id. */
    public Optional<Board> board(int player, String id) {
        return handle.createQuery("select * from board where player = :player and id = :id")
                .bind("player", player)
                .bind("id", id)
                .map((row, context) -> board(row))
                .findOne();
    }

    private static Board board(ResultSet row) throws SQLException {
        return new Board(
                row.getString("id"),
                row.getString("name"),
                Word.of(BoardKind.class, row.getString("kind")),
                row.getDouble("width_in"),
                row.getDouble("front_in"),
                row.getString("note"),
                row.getInt("retired") == 1);
    }

    /** Writes a board, new or known by its id. */
    public void put(int player, Board board) {
        handle.createUpdate("insert into board (player, id, name, kind, width_in, front_in, note, retired)"
                        + " values (:player, :id, :name, :kind, :width, :front, :note, :retired)"
                        + " on conflict (player, id) do update set name = excluded.name, kind = excluded.kind,"
                        + " width_in = excluded.width_in, front_in = excluded.front_in, note = excluded.note,"
                        + " retired = excluded.retired")
                .bind("player", player)
                .bind("id", board.id())
                .bind("name", board.name())
                .bind("kind", board.kind().word())
                .bind("width", board.width())
                .bind("front", board.front())
                .bind("note", board.note())
                .bind("retired", board.retired() ? 1 : 0)
                .execute();
    }
}
