package boardside.app.store;

import boardside.app.practice.DayCount;
import boardside.app.practice.Line;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.practice.ThrowTally;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Finish;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import boardside.engine.rules.Tally;
import boardside.engine.rules.Word;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** Sums of a run, and counts of what was thrown how; derived from its rounds. */
public final class TallyRows {
    /** Columns of the counts of finishes, in the order of {@link Finish#values()}: f00, f01, ... */
    private static final List<String> FINISHES = Finish.values().stream()
            .map(finish -> "f" + finish.in() + finish.on())
            .toList();

    private static final List<String> COUNTS = Stream.concat(
                    Stream.of("rounds", "thrown", "bags_in", "known", "known_in", "known_on"), FINISHES.stream())
            .toList();

    private static final List<String> KEYS =
            List.of("player", "run", "side", "bag", "face", "approach", "board", "setting", "conditions");

    private static final List<String> COLUMNS =
            Stream.concat(KEYS.stream(), COUNTS.stream()).toList();

    /** Counts that are there already are set anew. */
    private static final String SET = " on conflict (" + String.join(", ", KEYS) + ") do update set "
            + COUNTS.stream().map(column -> column + " = excluded." + column).collect(Collectors.joining(", "));

    private final Handle handle;

    TallyRows(Handle handle) {
        this.handle = handle;
    }

    /** Whether what is derived from a run's rounds is what it should be. */
    public boolean fits(int player, Run run, List<Round> rounds) {
        Map<Key, List<Integer>> expected = new HashMap<>();
        counts(rounds)
                .forEach((key, count) ->
                        expected.put(key, Arrays.stream(count).boxed().toList()));
        Map<Key, List<Integer>> stored = new HashMap<>();
        handle.createQuery("select * from tally where player = :player and run = :run")
                .bind("player", player)
                .bind("run", run.id())
                .map((row, context) -> stored.put(key(row), counts(row)))
                .list();
        return run.sum().equals(sum(rounds)) && stored.equals(expected);
    }

    private static Key key(ResultSet row) throws SQLException {
        return new Key(
                Word.of(Side.class, row.getString("side")),
                row.getString("bag"),
                RoundRows.word(Face.class, row.getString("face")),
                RoundRows.word(Approach.class, row.getString("approach")),
                Word.of(BoardKind.class, row.getString("board")),
                Word.of(Setting.class, row.getString("setting")),
                RoundRows.word(Conditions.class, row.getString("conditions")));
    }

    private static List<Integer> counts(ResultSet row) throws SQLException {
        List<Integer> counts = new ArrayList<>(COUNTS.size());
        for (String column : COUNTS) {
            counts.add(row.getInt(column));
        }
        return counts;
    }

    private record Key(
            Side side,
            String bag,
            @Nullable Face face,
            @Nullable Approach approach,
            BoardKind board,
            Setting setting,
            @Nullable Conditions conditions) {}

    /**
     * Writes anew what is derived from a run's rounds.
     *
     * @param grown whether rounds were only added since it last was, so that nothing has to be taken out
     */
    public void refresh(int player, String run, List<Round> rounds, boolean grown) {
        Run.Sum sum = sum(rounds);
        handle.createUpdate("update run set rounds = :rounds, thrown = :thrown, bags_in = :in, points = :points, "
                        + RunRows.CHANGED + " where player = :player and id = :run")
                .bind("player", player)
                .bind("run", run)
                .bind("rounds", sum.rounds())
                .bind("thrown", sum.thrown())
                .bind("in", sum.in())
                .bind("points", sum.points())
                .execute();
        if (!grown) {
            handle.createUpdate("delete from tally where player = :player and run = :run")
                    .bind("player", player)
                    .bind("run", run)
                    .execute();
        }
        Map<Key, int[]> counts = counts(rounds);
        if (counts.isEmpty()) {
            return;
        }
        try (Bulk bulk = new Bulk(handle, "tally", COLUMNS, SET)) {
            counts.forEach((key, count) -> {
                Object[] row = new Object[COLUMNS.size()];
                List<Object> keys = List.of(
                        player,
                        run,
                        key.side().word(),
                        key.bag(),
                        RoundRows.word(key.face()),
                        RoundRows.word(key.approach()),
                        key.board().word(),
                        key.setting().word(),
                        RoundRows.word(key.conditions()));
                for (int i = 0; i < row.length; i++) {
                    row[i] = i < keys.size() ? keys.get(i) : (Object) count[i - keys.size()];
                }
                bulk.add(row);
            });
        }
    }

    /** Sums over the player's own sides. */
    static Run.Sum sum(List<Round> rounds) {
        int number = 0;
        int thrown = 0;
        int in = 0;
        Integer points = 0;
        for (Round round : rounds) {
            if (!round.side().mine() || round.bags() == 0) {
                continue;
            }
            number++;
            thrown += round.bags();
            for (Line line : round.lines()) {
                in += line.in() == null ? 0 : line.in();
            }
            Integer more = round.points();
            points = points == null || more == null ? null : (Integer) (points + more);
        }
        return new Run.Sum(number, thrown, in, points);
    }

    private static Map<Key, int[]> counts(List<Round> rounds) {
        Map<Key, int[]> counts = new LinkedHashMap<>();
        for (Round round : rounds) {
            Finish finish = finish(round);
            List<Line> lines = new ArrayList<>(round.lines());
            lines.sort(RoundRows.ORDER);
            for (Line line : lines) {
                Integer in = line.in();
                if (line.thrown() == 0 || in == null) {
                    continue;
                }
                Key key = new Key(
                        round.side(),
                        line.bag(),
                        line.face(),
                        line.approach(),
                        line.board(),
                        line.setting(),
                        line.conditions());
                int[] count = counts.computeIfAbsent(key, made -> new int[COUNTS.size()]);
                count[0]++;
                count[1] += line.thrown();
                count[2] += in;
                Integer on = line.on();
                if (on != null) {
                    count[3] += line.thrown();
                    count[4] += in;
                    count[5] += on;
                }
                if (finish != null) {
                    count[COUNTS.size() - FINISHES.size() + finish.index()]++;
                    finish = null;
                }
            }
        }
        return counts;
    }

    /** How a full round of four ended, or null where it is none or was not fully counted. */
    private static @Nullable Finish finish(Round round) {
        int in = 0;
        int on = 0;
        for (Line line : round.lines()) {
            if (line.in() == null || line.on() == null) {
                return null;
            }
            in += line.in();
            on += line.on();
        }
        return round.bags() == Finish.BAGS ? new Finish(in, on, Finish.BAGS - in - on) : null;
    }

    /**
     * Counts of the player's own bags by run and what was thrown how, in drills that count, without warm-ups and deleted
     * runs; the earliest day first. Only of runs that changed after a version of the player's records.
     */
    public List<DayCount> changedAfter(int player, long version) {
        String sums = COUNTS.stream()
                .map(column -> "sum(t." + column + ") as " + column)
                .collect(Collectors.joining(", "));
        Map<String, Integer> left = new HashMap<>();
        return handle.createQuery(
                        "select r.day, r.id, r.drill, r.rounds as run_rounds, r.started_ms, t.bag, t.face, t.approach, t.board,"
                                + " t.setting, t.conditions, " + sums
                                + " from run r join tally t on t.player = r.player and t.run = r.id"
                                + " where r.player = :player and r.version > :version and r.deleted_at is null and r.warm_up = 0 and r.drill in (<drills>) and t.side <> 'versus'"
                                + " group by r.day, r.id, r.drill, r.rounds, r.started_ms, t.bag, t.face, t.approach, t.board, t.setting,"
                                + " t.conditions order by r.day, r.started_ms, r.id, t.bag, t.face, t.approach, t.board,"
                                + " t.setting, t.conditions")
                .bind("player", player)
                .bind("version", version)
                .bindList("drills", counted())
                .map((row, context) -> {
                    // A round of several ways counts with the first of them: no more rounds than the run has.
                    int rest = left.getOrDefault(row.getString("id"), row.getInt("run_rounds"));
                    int rounds = Math.min(rest, row.getInt("rounds"));
                    left.put(row.getString("id"), rest - rounds);
                    return dayCount(row, rounds);
                })
                .list();
    }

    /** Bags off and four-baggers of the player's own sides in a run. */
    public int[] ends(int player, String run) {
        return handle.createQuery("select coalesce(sum(known - known_in - known_on), 0) as bags_off,"
                        + " coalesce(sum(f40), 0) as fours from tally"
                        + " where player = :player and run = :run and side <> 'versus'")
                .bind("player", player)
                .bind("run", run)
                .map((row, context) -> new int[] {row.getInt("bags_off"), row.getInt("fours")})
                .one();
    }

    /** Full rounds of four that an opponent threw, by finish: 15 counts in the order of {@link Finish#values()}. */
    public double[] theirFinishes(int player, String opponent) {
        String sums = FINISHES.stream()
                .map(column -> "coalesce(sum(t." + column + "), 0) as " + column)
                .collect(Collectors.joining(", "));
        return handle.createQuery("select " + sums + " from run r join tally t on t.player = r.player and t.run = r.id"
                        + " where r.player = :player and r.opponent = :opponent and r.deleted_at is null"
                        + " and t.side = 'versus'")
                .bind("player", player)
                .bind("opponent", opponent)
                .map((row, context) -> {
                    double[] finishes = new double[FINISHES.size()];
                    for (int i = 0; i < finishes.length; i++) {
                        finishes[i] = row.getInt(FINISHES.get(i));
                    }
                    return finishes;
                })
                .one();
    }

    /**
     * Points of the player's own full rounds in drills that count, without warm-ups and deleted runs, in the order thrown.
     *
     * @param from yyyy-mm-dd, included
     * @param to yyyy-mm-dd, included
     */
    public List<Integer> roundPoints(int player, String from, String to) {
        return handle.createQuery("select sum(3 * l.bags_in + l.bags_on) as points"
                        + " from run r join line l on l.player = r.player and l.run = r.id"
                        + " where r.player = :player and r.day between :from and :to and r.deleted_at is null"
                        + " and r.warm_up = 0 and r.drill in (<drills>) and l.side <> 'versus'"
                        + " group by r.started_ms, r.id, l.number, l.side"
                        + " having sum(l.thrown) = 4 and count(l.bags_on) = count(*)"
                        + " order by r.started_ms, r.id, l.number, l.side")
                .bind("player", player)
                .bind("from", from)
                .bind("to", to)
                .bindList("drills", counted())
                .mapTo(Integer.class)
                .list();
    }

    /**
     * The day on which the player's own full rounds that count made most points a round; of equal ones the latest.
     *
     * @param to yyyy-mm-dd, included
     * @param least full rounds that a day must have
     */
    public Optional<String> bestDay(int player, String to, int least) {
        String rounds = FINISHES.stream().map(column -> "sum(t." + column + ")").collect(Collectors.joining(" + "));
        String points = Finish.values().stream()
                .map(finish -> finish.points() + " * sum(t." + FINISHES.get(finish.index()) + ")")
                .collect(Collectors.joining(" + "));
        return handle.createQuery("select r.day from run r join tally t on t.player = r.player and t.run = r.id"
                        + " where r.player = :player and r.day <= :to and r.deleted_at is null and r.warm_up = 0"
                        + " and r.drill in (<drills>) and t.side <> 'versus' group by r.day having " + rounds
                        + " >= :least order by (" + points + ") * 1.0 / (" + rounds + ") desc, r.day desc limit 1")
                .bind("player", player)
                .bind("to", to)
                .bind("least", least)
                .bindList("drills", counted())
                .mapTo(String.class)
                .findOne();
    }

    private static List<String> counted() {
        return Stream.of(Drill.values()).filter(Drill::counted).map(Drill::word).toList();
    }

    /**
     * Counts of the player's own bags for the throw model, with where misses went, in drills that count, without warm-ups
     * and deleted runs. Rounds of which more misses were told than bags went off tell none: those were misses of the hole.
     *
     * @param from yyyy-mm-dd, included
     * @param to yyyy-mm-dd, included
     */
    public List<ThrowTally> throwCounts(int player, String from, String to) {
        String told = "coalesce(l.miss_left, 0) + coalesce(l.miss_right, 0) + coalesce(l.miss_short, 0)"
                + " + coalesce(l.miss_long, 0) <= l.bags_off";
        String misses = Stream.of("left", "right", "short", "long")
                .map(way ->
                        "sum(case when " + told + " then coalesce(l.miss_" + way + ", 0) else 0 end) as miss_" + way)
                .collect(Collectors.joining(", "));
        return handle.createQuery("select l.bag, l.face, l.board,"
                        + " sum(case when l.bags_on is null then 0 else l.bags_in end) as known_in,"
                        + " sum(coalesce(l.bags_on, 0)) as known_on, sum(coalesce(l.bags_off, 0)) as known_off, "
                        + misses
                        + ", sum(case when l.bags_on is null then l.thrown - l.bags_in else 0 end) as not_in,"
                        + " sum(case when l.bags_on is null then l.bags_in else 0 end) as in_only"
                        + " from run r join line l on l.player = r.player and l.run = r.id"
                        + " where r.player = :player and r.day between :from and :to and r.deleted_at is null"
                        + " and r.warm_up = 0 and r.drill in (<drills>) and l.side <> 'versus'"
                        + " and l.bags_in is not null"
                        + " group by l.bag, l.face, l.board order by l.bag, l.face, l.board")
                .bind("player", player)
                .bind("from", from)
                .bind("to", to)
                .bindList(
                        "drills",
                        Stream.of(Drill.values())
                                .filter(Drill::counted)
                                .map(Drill::word)
                                .toList())
                .map((row, context) -> new ThrowTally(
                        row.getString("bag"),
                        RoundRows.word(Face.class, row.getString("face")),
                        Word.of(BoardKind.class, row.getString("board")),
                        new Tally(row.getInt("known_in"), row.getInt("known_on"), row.getInt("known_off")),
                        row.getInt("miss_left"),
                        row.getInt("miss_right"),
                        row.getInt("miss_short"),
                        row.getInt("miss_long"),
                        row.getInt("not_in"),
                        row.getInt("in_only")))
                .list();
    }

    private static DayCount dayCount(ResultSet row, int rounds) throws SQLException {
        List<Integer> finishes = new ArrayList<>(FINISHES.size());
        for (String column : FINISHES) {
            finishes.add(row.getInt(column));
        }
        return new DayCount(
                row.getString("day"),
                row.getString("id"),
                Word.of(Drill.class, row.getString("drill")),
                row.getString("bag"),
                RoundRows.word(Face.class, row.getString("face")),
                RoundRows.word(Approach.class, row.getString("approach")),
                Word.of(BoardKind.class, row.getString("board")),
                Word.of(Setting.class, row.getString("setting")),
                RoundRows.word(Conditions.class, row.getString("conditions")),
                rounds,
                row.getInt("thrown"),
                row.getInt("bags_in"),
                row.getInt("known"),
                row.getInt("known_in"),
                row.getInt("known_on"),
                finishes);
    }
}
