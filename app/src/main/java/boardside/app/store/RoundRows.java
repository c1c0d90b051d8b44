package boardside.app.store;

import boardside.app.practice.Line;
import boardside.app.practice.Round;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Face;
import boardside.engine.rules.Outcome;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import boardside.engine.rules.Word;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;
import org.jspecify.annotations.Nullable;

/** Rounds with their lines and throws. */
public final class RoundRows {
    private static final String OF_RUN = " where player = :player and run = :run";
    private static final String OF_ROUND = OF_RUN + " and number = :number and side = :side";

    private final Handle handle;

    RoundRows(Handle handle) {
        this.handle = handle;
    }

    /** A round as stored, with whether it was corrected after it first was. */
    public record Stored(Round round, boolean corrected) {}

    /** One side of one round. */
    private record Key(int number, String side) {}

    /** All rounds of a run in order, sides in theirs; those taken back are there without lines. */
    public List<Stored> of(int player, String run) {
        return read(player, run, OF_RUN, 0, "");
    }

    /** One side of one round. */
    public Optional<Stored> find(int player, String run, int number, Side side) {
        return read(player, run, OF_ROUND, number, side.word()).stream().findFirst();
    }

    private List<Stored> read(int player, String run, String where, int number, String side) {
        Map<Key, List<Line>> lines = new HashMap<>();
        handle.createQuery("select * from line" + where + " order by number, side, bag, face")
                .bind("player", player)
                .bind("run", run)
                .bind("number", number)
                .bind("side", side)
                .map((row, context) -> lines.computeIfAbsent(key(row), key -> new ArrayList<>())
                        .add(line(row)))
                .list();
        Map<Key, List<Round.Thrown>> thrown = new HashMap<>();
        handle.createQuery("select * from throw" + where + " order by number, side, ordinal")
                .bind("player", player)
                .bind("run", run)
                .bind("number", number)
                .bind("side", side)
                .map((row, context) -> thrown.computeIfAbsent(key(row), key -> new ArrayList<>())
                        .add(thrown(row)))
                .list();
        List<Stored> rounds = handle.createQuery("select * from round" + where)
                .bind("player", player)
                .bind("run", run)
                .bind("number", number)
                .bind("side", side)
                .map((row, context) -> new Stored(
                        new Round(
                                row.getInt("number"),
                                Word.of(Side.class, row.getString("side")),
                                row.getString("op"),
                                lines.getOrDefault(key(row), List.of()),
                                thrown.getOrDefault(key(row), List.of())),
                        row.getInt("corrected") == 1))
                .list();
        List<Stored> sorted = new ArrayList<>(rounds);
        sorted.sort(Comparator.comparingInt((Stored stored) -> stored.round().number())
                .thenComparing(stored -> stored.round().side()));
        return sorted;
    }

    private static Key key(ResultSet row) throws SQLException {
        return new Key(row.getInt("number"), row.getString("side"));
    }

    private static Line line(ResultSet row) throws SQLException {
        return new Line(
                row.getString("bag"),
                word(Face.class, row.getString("face")),
                word(Approach.class, row.getString("approach")),
                Word.of(BoardKind.class, row.getString("board")),
                Word.of(Setting.class, row.getString("setting")),
                word(Conditions.class, row.getString("conditions")),
                PlayerRows.whole(row, "ghost"),
                row.getInt("thrown"),
                PlayerRows.whole(row, "bags_in"),
                PlayerRows.whole(row, "bags_on"),
                PlayerRows.whole(row, "bags_off"),
                new Line.Misses(
                        PlayerRows.whole(row, "miss_left"),
                        PlayerRows.whole(row, "miss_right"),
                        PlayerRows.whole(row, "miss_short"),
                        PlayerRows.whole(row, "miss_long")),
                row.getString("at"),
                row.getString("note"));
    }

    private static Round.Thrown thrown(ResultSet row) throws SQLException {
        return new Round.Thrown(
                row.getString("bag"),
                word(Face.class, row.getString("face")),
                Word.of(Outcome.class, row.getString("outcome")),
                row.getString("miss"),
                row.getString("shot"),
                point(row, "aim"),
                point(row, "land"),
                point(row, "rest"));
    }

    private static Round.@Nullable Point point(ResultSet row, String name) throws SQLException {
        Double x = PlayerRows.number(row, name + "_x");
        Double y = PlayerRows.number(row, name + "_y");
        return x == null || y == null ? null : new Round.Point(x, y);
    }

    /** The constant of a word, null for none. */
    static <E extends Enum<E> & Word> @Nullable E word(Class<E> kind, String word) {
        return word.isEmpty() ? null : Word.of(kind, word);
    }

    /** The word of a constant, empty for none. */
    static String word(@Nullable Word constant) {
        return constant == null ? "" : constant.word();
    }

    /** Sets one side of one round, new or known. */
    public void put(int player, String run, Round round, boolean corrected) {
        for (String table : List.of("line", "throw")) {
            handle.createUpdate("delete from " + table + OF_ROUND)
                    .bind("player", player)
                    .bind("run", run)
                    .bind("number", round.number())
                    .bind("side", round.side().word())
                    .execute();
        }
        handle.createUpdate("insert into round (player, run, number, side, op, corrected)"
                        + " values (:player, :run, :number, :side, :op, :corrected)"
                        + " on conflict (player, run, number, side) do update set op = excluded.op,"
                        + " corrected = excluded.corrected")
                .bind("player", player)
                .bind("run", run)
                .bind("number", round.number())
                .bind("side", round.side().word())
                .bind("op", round.op())
                .bind("corrected", corrected ? 1 : 0)
                .execute();
        addContents(player, run, List.of(round));
    }

    /** Adds rounds of a run that are not there yet, many at once. */
    public void addAll(int player, String run, List<Stored> rounds) {
        PreparedBatch batch = handle.prepareBatch("insert into round (player, run, number, side, op, corrected)"
                + " values (:player, :run, :number, :side, :op, :corrected)");
        for (Stored stored : rounds) {
            batch.bind("player", player)
                    .bind("run", run)
                    .bind("number", stored.round().number())
                    .bind("side", stored.round().side().word())
                    .bind("op", stored.round().op())
                    .bind("corrected", stored.corrected() ? 1 : 0)
                    .add();
        }
        execute(batch);
        addContents(player, run, rounds.stream().map(Stored::round).toList());
    }

    private void addContents(int player, String run, List<Round> rounds) {
        PreparedBatch lines =
                handle.prepareBatch("insert into line (player, run, number, side, bag, face, approach, board,"
                        + " setting, conditions, ghost, thrown, bags_in, bags_on, bags_off, miss_left, miss_right, miss_short,"
                        + " miss_long, at, note) values (:player, :run, :number, :side, :bag, :face, :approach, :board, :setting,"
                        + " :conditions, :ghost, :thrown, :in, :on, :off, :left, :right, :short, :long, :at, :note)");
        PreparedBatch throwsOf = handle.prepareBatch(
                "insert into throw (player, run, number, side, ordinal, bag, face,"
                        + " outcome, miss, shot, aim_x, aim_y, land_x, land_y, rest_x, rest_y) values (:player, :run, :number,"
                        + " :side, :ordinal, :bag, :face, :outcome, :miss, :shot, :aimX, :aimY, :landX, :landY, :restX, :restY)");
        for (Round round : rounds) {
            for (Line line : round.lines()) {
                bind(lines, player, run, round)
                        .bind("bag", line.bag())
                        .bind("face", word(line.face()))
                        .bind("approach", word(line.approach()))
                        .bind("board", line.board().word())
                        .bind("setting", line.setting().word())
                        .bind("conditions", word(line.conditions()))
                        .bind("ghost", line.ghost())
                        .bind("thrown", line.thrown())
                        .bind("in", line.in())
                        .bind("on", line.on())
                        .bind("off", line.off())
                        .bind("left", line.misses().left())
                        .bind("right", line.misses().right())
                        .bind("short", line.misses().shortOf())
                        .bind("long", line.misses().past())
                        .bind("at", line.at())
                        .bind("note", line.note())
                        .add();
            }
            for (int i = 0; i < round.thrown().size(); i++) {
                Round.Thrown thrown = round.thrown().get(i);
                bind(throwsOf, player, run, round)
                        .bind("ordinal", i + 1)
                        .bind("bag", thrown.bag())
                        .bind("face", word(thrown.face()))
                        .bind("outcome", thrown.outcome().word())
                        .bind("miss", thrown.miss())
                        .bind("shot", thrown.shot());
                bind(throwsOf, "aim", thrown.aim());
                bind(throwsOf, "land", thrown.land());
                bind(throwsOf, "rest", thrown.rest());
                throwsOf.add();
            }
        }
        execute(lines);
        execute(throwsOf);
    }

    private static PreparedBatch bind(PreparedBatch batch, int player, String run, Round round) {
        return batch.bind("player", player)
                .bind("run", run)
                .bind("number", round.number())
                .bind("side", round.side().word());
    }

    private static void bind(PreparedBatch batch, String name, Round.@Nullable Point point) {
        batch.bind(name + "X", point == null ? null : (Double) point.x())
                .bind(name + "Y", point == null ? null : (Double) point.y());
    }

    private static void execute(PreparedBatch batch) {
        if (batch.size() > 0) {
            batch.execute();
        }
    }
}
