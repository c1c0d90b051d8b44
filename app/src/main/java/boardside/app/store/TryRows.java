package boardside.app.store;

import static boardside.app.store.RoundRows.word;

import boardside.app.json.Json;
import boardside.app.practice.Try;
import boardside.app.practice.TryCounts;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Outcome;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import boardside.engine.rules.Word;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Spot;
import boardside.engine.tactics.Target;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** Tries at targets and in situations. */
public final class TryRows {
    private static final List<String> COLUMNS = List.of(
            "player",
            "run",
            "number",
            "op",
            "taken_back",
            "side",
            "shot",
            "target",
            "position",
            "situation",
            "go",
            "step",
            "steps",
            "by_hand",
            "worked",
            "outcome",
            "miss",
            "rest_x",
            "rest_y",
            "bag",
            "face",
            "approach",
            "board",
            "setting",
            "conditions",
            "at");

    /** Tries that say something of the player, up to a day. */
    private static final String COUNTED =
            " from try t join run r on r.player = t.player and r.id = t.run where t.player = :player and t.side = 'me'"
                    + " and t.taken_back = 0 and r.deleted_at is null and r.warm_up = 0 and r.drill = :drill and r.day <= :to";

    private final Handle handle;

    TryRows(Handle handle) {
        this.handle = handle;
    }

    /** All tries of some runs in order, by id of the run; those taken back are there too. */
    public Map<String, List<Try>> of(int player, List<String> runs) {
        Map<String, List<Try>> tries = new HashMap<>();
        handle.createQuery("select * from try where player = :player and run in (<runs>) order by run, number")
                .bind("player", player)
                .bindList("runs", runs)
                .map((row, context) -> tries.computeIfAbsent(row.getString("run"), run -> new ArrayList<>())
                        .add(tried(row)))
                .list();
        return tries;
    }

    /** One try. */
    public Optional<Try> find(int player, String run, int number) {
        return handle.createQuery("select * from try where player = :player and run = :run and number = :number")
                .bind("player", player)
                .bind("run", run)
                .bind("number", number)
                .map((row, context) -> tried(row))
                .findOne();
    }

    /** The player's tries of a drill, sorted and counted. */
    public List<TryCounts> counts(int player, Drill drill, String to) {
        return handle.createQuery("select t.shot, t.target, t.position, t.bag, t.face, t.approach, t.board, t.by_hand,"
                        + " count(*) as tries, sum(t.worked) as worked" + COUNTED
                        + " group by t.shot, t.target, t.position, t.bag, t.face, t.approach, t.board, t.by_hand"
                        + " order by t.shot, t.target, t.position, t.bag, t.face, t.approach, t.board, t.by_hand")
                .bind("player", player)
                .bind("drill", drill.word())
                .bind("to", to)
                .map((row, context) -> new TryCounts(
                        Word.of(Shot.class, row.getString("shot")),
                        target(row),
                        Json.read(row.getString("position"), Position.class),
                        row.getString("bag"),
                        word(Face.class, row.getString("face")),
                        word(Approach.class, row.getString("approach")),
                        Word.of(BoardKind.class, row.getString("board")),
                        row.getInt("by_hand") == 1,
                        row.getInt("tries"),
                        row.getInt("worked")))
                .list();
    }

    /** The player's latest tries of a drill, the newest first. */
    public List<Try> latest(int player, Drill drill, String to, int most) {
        return handle.createQuery(
                        "select t.*" + COUNTED + " order by r.started_ms desc, r.id desc, t.number desc limit :most")
                .bind("player", player)
                .bind("drill", drill.word())
                .bind("to", to)
                .bind("most", most)
                .map((row, context) -> tried(row))
                .list();
    }

    /** The player's tries in chains, by id of the run, in order. */
    public Map<String, List<Try>> chains(int player, String to) {
        Map<String, List<Try>> tries = new HashMap<>();
        handle.createQuery("select t.*" + COUNTED + " and t.go is not null order by t.run, t.number")
                .bind("player", player)
                .bind("drill", Drill.SITUATION.word())
                .bind("to", to)
                .map((row, context) -> tries.computeIfAbsent(row.getString("run"), run -> new ArrayList<>())
                        .add(tried(row)))
                .list();
        return tries;
    }

    private static Try tried(ResultSet row) throws SQLException {
        return new Try(
                row.getInt("number"),
                row.getString("op"),
                row.getInt("taken_back") == 1
                        ? null
                        : new Try.Played(
                                Word.of(Side.class, row.getString("side")),
                                Word.of(Shot.class, row.getString("shot")),
                                target(row),
                                Json.read(row.getString("position"), Position.class),
                                row.getString("situation"),
                                link(row),
                                row.getInt("by_hand") == 1,
                                row.getInt("worked") == 1,
                                rest(row),
                                new Try.How(
                                        row.getString("bag"),
                                        word(Face.class, row.getString("face")),
                                        word(Approach.class, row.getString("approach")),
                                        Word.of(BoardKind.class, row.getString("board")),
                                        Word.of(Setting.class, row.getString("setting")),
                                        word(Conditions.class, row.getString("conditions"))),
                                row.getString("at")));
    }

    private static @Nullable Target target(ResultSet row) throws SQLException {
        String target = row.getString("target");
        return target.isEmpty() ? null : Target.parse(target);
    }

    private static Try.@Nullable Link link(ResultSet row) throws SQLException {
        Integer go = PlayerRows.whole(row, "go");
        return go == null ? null : new Try.Link(go, row.getInt("step"), row.getInt("steps"));
    }

    private static Try.@Nullable Rest rest(ResultSet row) throws SQLException {
        String outcome = row.getString("outcome");
        Double x = PlayerRows.number(row, "rest_x");
        Double y = PlayerRows.number(row, "rest_y");
        return outcome.isEmpty()
                ? null
                : new Try.Rest(
                        Word.of(Outcome.class, outcome),
                        row.getString("miss"),
                        x == null || y == null ? null : new Spot(x, y));
    }

    /** Sets a try, new or known; one taken back keeps what was played out of sight of all but the history. */
    public void put(int player, String run, Try tried) {
        handle.createUpdate("delete from try where player = :player and run = :run and number = :number")
                .bind("player", player)
                .bind("run", run)
                .bind("number", tried.number())
                .execute();
        addAll(player, run, List.of(tried));
    }

    /** Adds tries of a run that are not there yet. */
    public void addAll(int player, String run, List<Try> tries) {
        try (Bulk bulk = new Bulk(handle, "try", COLUMNS)) {
            tries.forEach(tried -> add(bulk, player, run, tried));
        }
    }

    private static void add(Bulk bulk, int player, String run, Try tried) {
        Try.Played played = tried.played();
        if (played == null) {
            bulk.add(
                    player,
                    run,
                    tried.number(),
                    tried.op(),
                    1,
                    "me",
                    "",
                    "",
                    "",
                    "",
                    null,
                    null,
                    null,
                    0,
                    0,
                    "",
                    "",
                    null,
                    null,
                    "",
                    "",
                    "",
                    "regulation",
                    "practice",
                    "",
                    "");
            return;
        }
        Try.Link link = played.chain();
        Try.Rest rest = played.rest();
        Spot spot = rest == null ? null : rest.spot();
        Target target = played.target();
        Try.How how = played.how();
        bulk.add(
                player,
                run,
                tried.number(),
                tried.op(),
                0,
                played.side().word(),
                played.shot().word(),
                target == null ? "" : target.text(),
                Json.write(played.position()),
                played.situation(),
                link == null ? null : (Integer) link.go(),
                link == null ? null : (Integer) link.step(),
                link == null ? null : (Integer) link.steps(),
                played.byHand() ? 1 : 0,
                played.worked() ? 1 : 0,
                rest == null ? "" : rest.outcome().word(),
                rest == null ? "" : rest.miss(),
                spot == null ? null : (Double) spot.x(),
                spot == null ? null : (Double) spot.y(),
                how.bag(),
                word(how.face()),
                word(how.approach()),
                how.board().word(),
                how.setting().word(),
                word(how.conditions()),
                played.at());
    }
}
