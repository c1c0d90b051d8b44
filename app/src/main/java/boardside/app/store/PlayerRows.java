package boardside.app.store;

import boardside.app.practice.BagSet;
import boardside.app.practice.Board;
import boardside.app.practice.Player;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Word;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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

    /**
     * The players of an account, or with null those of a household without accounts, the first one made first. One of an
     * account bears the name that the account gave.
     */
    public List<Player> of(@Nullable String account) {
        return handle.createQuery(
                        account == null
                                ? "select * from player where account is null order by id"
                                : "select * from player where account = :account order by id")
                .bindMap(account == null ? Map.of() : Map.of("account", account))
                .map((row, context) -> player(row))
                .list();
    }

    /** A player with those of the same account or, without one, of the same household, the first one made first. */
    public List<Player> household(int id) {
        return handle.createQuery("select other.* from player me join player other"
                        + " on other.account = me.account or other.account is null and me.account is null"
                        + " where me.id = :id order by other.id")
                .bind("id", id)
                .map((row, context) -> player(row))
                .list();
    }

    /** A player by the name that is unique in the store. */
    public Optional<Player> named(String name) {
        return handle.createQuery("select * from player where name = :name")
                .bind("name", name)
                .map((row, context) -> player(row))
                .findOne();
    }

    /** The names that are unique in the store by number, the first player's first. */
    public Map<Integer, String> names() {
        Map<Integer, String> names = new LinkedHashMap<>();
        handle.createQuery("select id, name from player order by id")
                .map((row, context) -> Map.entry(row.getInt("id"), row.getString("name")))
                .forEach(entry -> names.put(entry.getKey(), entry.getValue()));
        return names;
    }

    /** Whose a player is: id of an account, or empty for one of a household without accounts. */
    public Optional<String> account(int id) {
        return handle.createQuery("select account from player where id = :id and account is not null")
                .bind("id", id)
                .mapTo(String.class)
                .findOne();
    }

    /** A player by number. */
    public Optional<Player> find(int id) {
        return handle.createQuery("select * from player where id = :id")
                .bind("id", id)
                .map((row, context) -> player(row))
                .findOne();
    }

    private static Player player(ResultSet row) throws SQLException {
        String called = row.getString("called");
        return new Player(
                row.getInt("id"),
                called.isEmpty() ? row.getString("name") : called,
                Word.of(Player.Hand.class, row.getString("hand")),
                Word.of(Player.Hand.class, row.getString("throws_from")),
                row.getLong("version"));
    }

    /** A new player of a household without accounts, with a number that no player has had. */
    public Player add(String name, Player.Hand hand, Player.Hand throwsFrom, String now) {
        return add(null, name, hand, throwsFrom, now);
    }

    /** A new player of an account, or with null of a household, with a number that no player has had. */
    public Player add(
            AccountRows.@Nullable Stored owner, String name, Player.Hand hand, Player.Hand throwsFrom, String now) {
        int id = handle.createQuery("update player_number set last = last + 1 where only_row = 1 returning last")
                .mapTo(Integer.class)
                .one();
        handle.createUpdate("insert into player (id, name, hand, throws_from, created_at, account, called)"
                        + " values (:id, :name, :hand, :from, :now, :account, :called)")
                .bind("id", id)
                .bind("name", unique(owner, name))
                .bind("hand", hand.word())
                .bind("from", throwsFrom.word())
                .bind("now", now)
                .bind("account", owner == null ? null : owner.account().id())
                .bind("called", owner == null ? "" : name)
                .execute();
        return new Player(id, name, hand, throwsFrom, 0);
    }

    // Names are unique within an account, and accounts by what they sign in with.
    private static String unique(AccountRows.@Nullable Stored owner, String name) {
        return owner == null ? name : name + " (" + owner.signIn() + ")";
    }

    /** Makes a player of a household one of an account, or one of another account. */
    public void give(Player player, AccountRows.Stored owner) {
        handle.createUpdate("update player set account = :account, name = :name, called = :called where id = :id")
                .bind("account", owner.account().id())
                .bind("name", unique(owner, player.name()))
                .bind("called", player.name())
                .bind("id", player.id())
                .execute();
    }

    /** Sets name, hand and side of a player with its owner. */
    public void edit(AccountRows.@Nullable Stored owner, Player player) {
        handle.createUpdate("update player set name = :name, called = :called, hand = :hand, throws_from = :from"
                        + " where id = :id")
                .bind("id", player.id())
                .bind("name", unique(owner, player.name()))
                .bind("called", owner == null ? "" : player.name())
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
