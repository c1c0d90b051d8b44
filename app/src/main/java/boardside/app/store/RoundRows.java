package boardside.app.store;

import boardside.app.practice.Line;
import boardside.app.practice.Moment;
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
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;
import org.jspecify.annotations.Nullable;

/** Rounds with their lines and throws. */
public final class RoundRows {
    private static final String OF_ROUND =
            " where player = :player and run = :run and number = :number and side = :side";

    private static final List<String> LINE = List.of(
            "player",
            "run",
            "number",
            "side",
            "bag",
            "face",
            "approach",
            "board",
            "setting",
            "conditions",
            "ghost",
            "thrown",
            "bags_in",
            "bags_on",
            "bags_off",
            "miss_left",
            "miss_right",
            "miss_short",
            "miss_long",
            "at",
            "note");

    private static final List<String> THROW = List.of(
            "player", "run", "number", "side", "ordinal", "bag", "face", "outcome", "miss", "shot", "aim_x", "aim_y",
            "land_x", "land_y", "rest_x", "rest_y");

    /** Lines of a round in their order: by bag set, then face. */
    static final Comparator<Line> ORDER = Comparator.comparing(Line::bag).thenComparing(line -> word(line.face()));

    /** Rounds of a run in their order. */
    private static final Comparator<Stored> IN_ORDER = Comparator.comparingInt(
                    (Stored stored) -> stored.round().number())
            .thenComparing(stored -> stored.round().side());

    private final Handle handle;

    RoundRows(Handle handle) {
        this.handle = handle;
    }

    /** A round as stored, with whether it was corrected after it first was. */
    public record Stored(Round round, boolean corrected) {}

    /** One side of one round of a run. */
    private record Key(String run, int number, String side) {}

    /** All rounds of a run in order, sides in theirs; those taken back are there without lines. */
    public List<Stored> of(int player, String run) {
        return of(player, List.of(run)).getOrDefault(run, List.of());
    }

    /** The same for some runs at once, by id of the run. */
    public Map<String, List<Stored>> of(int player, List<String> runs) {
        return read(player, runs, "", 0, "");
    }

    /** A line, or none, with the round it is of. */
    private record Row(
            Round round, boolean corrected, @Nullable Line line) {}

    /** All rounds of a run in order, sides in theirs, but without single throws: in one statement, for every round thrown. */
    public List<Stored> counted(int player, String run) {
        Map<Key, List<Row>> rounds = new LinkedHashMap<>();
        handle.createQuery("select r.number as r_number, r.side as r_side, r.op, r.corrected, l.*"
                        + " from round r left join line l on l.player = r.player and l.run = r.run"
                        + " and l.number = r.number and l.side = r.side where r.player = :player and r.run = :run")
                .bind("player", player)
                .bind("run", run)
                .map((row, context) -> new Row(
                        new Round(
                                row.getInt("r_number"),
                                Word.of(Side.class, row.getString("r_side")),
                                row.getString("op"),
                                List.of(),
                                List.of()),
                        row.getInt("corrected") == 1,
                        PlayerRows.whole(row, "thrown") == null ? null : line(row)))
                .forEach(row -> rounds.computeIfAbsent(
                                new Key(
                                        run,
                                        row.round().number(),
                                        row.round().side().word()),
                                key -> new ArrayList<>(1))
                        .add(row));
        return rounds.values().stream().map(RoundRows::stored).sorted(IN_ORDER).toList();
    }

    private static Stored stored(List<Row> rows) {
        Round round = rows.get(0).round();
        List<Line> lines = rows.stream()
                .map(Row::line)
                .filter(Objects::nonNull)
                .sorted(ORDER)
                .toList();
        return new Stored(
                new Round(round.number(), round.side(), round.op(), lines, List.of()),
                rows.get(0).corrected());
    }

    /**
     * Milliseconds between rounds of four that follow each other in a run, of the player's latest runs.
     *
     * @param runs how many runs at most
     */
    public List<Long> gaps(int player, int runs) {
        List<Long> gaps = new ArrayList<>();
        String[] last = {"", ""};
        handle.createQuery("select l.run as run, l.at as at from line l join"
                        + " (select player, id, started_ms from run where player = :player and deleted_at is null"
                        + " order by started_ms desc, id desc limit :runs) r on r.player = l.player and r.id = l.run"
                        + " where l.at <> '' and l.side <> 'versus' and l.thrown = 4 order by l.run, l.number, l.side")
                .bind("player", player)
                .bind("runs", runs)
                .map((row, context) -> {
                    String run = row.getString("run");
                    String at = row.getString("at");
                    if (run.equals(last[0])) {
                        gaps.add(Moment.of(at).millis() - Moment.of(last[1]).millis());
                    }
                    last[0] = run;
                    last[1] = at;
                    return at;
                })
                .list();
        return gaps;
    }

    /** One side of one round. */
    public Optional<Stored> find(int player, String run, int number, Side side) {
        return read(player, List.of(run), " and number = :number and side = :side", number, side.word())
                .getOrDefault(run, List.of())
                .stream()
                .findFirst();
    }

    private Map<String, List<Stored>> read(int player, List<String> runs, String which, int number, String side) {
        Map<Key, List<Line>> lines = new HashMap<>();
        rows("line", which, player, runs, number, side)
                .map((row, context) -> lines.computeIfAbsent(key(row), key -> new ArrayList<>(1))
                        .add(line(row)))
                .list();
        Map<Key, TreeMap<Integer, Round.Thrown>> thrown = new HashMap<>();
        rows("throw", which, player, runs, number, side)
                .map((row, context) -> thrown.computeIfAbsent(key(row), key -> new TreeMap<>())
                        .put(row.getInt("ordinal"), thrown(row)))
                .list();
        Map<String, List<Stored>> rounds = new HashMap<>();
        rows("round", which, player, runs, number, side)
                .map((row, context) -> {
                    List<Line> sorted = new ArrayList<>(lines.getOrDefault(key(row), List.of()));
                    sorted.sort(ORDER);
                    return rounds.computeIfAbsent(row.getString("run"), run -> new ArrayList<>())
                            .add(new Stored(
                                    new Round(
                                            row.getInt("number"),
                                            Word.of(Side.class, row.getString("side")),
                                            row.getString("op"),
                                            sorted,
                                            List.copyOf(thrown.getOrDefault(key(row), new TreeMap<>())
                                                    .values())),
                                    row.getInt("corrected") == 1));
                })
                .list();
        for (List<Stored> ofRun : rounds.values()) {
            ofRun.sort(IN_ORDER);
        }
        return rounds;
    }

    private Query rows(String table, String which, int player, List<String> runs, int number, String side) {
        return handle.createQuery("select * from " + table + " where player = :player and run in (<runs>)" + which)
                .bind("player", player)
                .bindList("runs", runs)
                .bind("number", number)
                .bind("side", side);
    }

    private static Key key(ResultSet row) throws SQLException {
        return new Key(row.getString("run"), row.getInt("number"), row.getString("side"));
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

    /**
     * Sets one side of one round.
     *
     * @param known whether it is there already, taken back or not
     */
    public void put(int player, String run, Round round, boolean corrected, boolean known) {
        for (String table : known ? List.of("line", "throw") : List.<String>of()) {
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
        addContents(player, Map.of(run, List.of(round)));
    }

    /** Adds rounds of runs that are not there yet, by id of the run, many at once. */
    public void addAll(int player, Map<String, List<Stored>> rounds) {
        try (Bulk bulk = new Bulk(handle, "round", List.of("player", "run", "number", "side", "op", "corrected"))) {
            rounds.forEach((run, ofRun) -> {
                for (Stored stored : ofRun) {
                    Round round = stored.round();
                    bulk.add(player, run, round.number(), round.side().word(), round.op(), stored.corrected() ? 1 : 0);
                }
            });
        }
        Map<String, List<Round>> plain = new LinkedHashMap<>();
        rounds.forEach(
                (run, ofRun) -> plain.put(run, ofRun.stream().map(Stored::round).toList()));
        addContents(player, plain);
    }

    private void addContents(int player, Map<String, List<Round>> rounds) {
        try (Bulk lines = new Bulk(handle, "line", LINE);
                Bulk throwsOf = new Bulk(handle, "throw", THROW)) {
            rounds.forEach((run, ofRun) -> {
                for (Round round : ofRun) {
                    round.lines().forEach(line -> add(lines, player, run, round, line));
                    int ordinal = 0;
                    for (Round.Thrown thrown : round.thrown()) {
                        add(throwsOf, player, run, round, ++ordinal, thrown);
                    }
                }
            });
        }
    }

    private static void add(Bulk lines, int player, String run, Round round, Line line) {
        lines.add(
                player,
                run,
                round.number(),
                round.side().word(),
                line.bag(),
                word(line.face()),
                word(line.approach()),
                line.board().word(),
                line.setting().word(),
                word(line.conditions()),
                line.ghost(),
                line.thrown(),
                line.in(),
                line.on(),
                line.off(),
                line.misses().left(),
                line.misses().right(),
                line.misses().shortOf(),
                line.misses().past(),
                line.at(),
                line.note());
    }

    private static void add(Bulk throwsOf, int player, String run, Round round, int ordinal, Round.Thrown thrown) {
        Round.Point aim = thrown.aim();
        Round.Point land = thrown.land();
        Round.Point rest = thrown.rest();
        throwsOf.add(
                player,
                run,
                round.number(),
                round.side().word(),
                ordinal,
                thrown.bag(),
                word(thrown.face()),
                thrown.outcome().word(),
                thrown.miss(),
                thrown.shot(),
                aim == null ? null : (Double) aim.x(),
                aim == null ? null : (Double) aim.y(),
                land == null ? null : (Double) land.x(),
                land == null ? null : (Double) land.y(),
                rest == null ? null : (Double) rest.x(),
                rest == null ? null : (Double) rest.y());
    }
}
