package boardside.app.store;

import boardside.app.json.Json;
import boardside.app.practice.Moment;
import boardside.app.practice.Run;
import boardside.app.practice.Session;
import boardside.app.practice.Setup;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Word;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;
import org.jspecify.annotations.Nullable;

/** Sessions and runs. */
public final class RunRows {
    /** Marks a run as changed in this transaction; in an update of runs that binds the player. */
    static final String CHANGED = "version = (select version from player where id = :player)";

    private final Handle handle;

    RunRows(Handle handle) {
        this.handle = handle;
    }

    /** A session. */
    public Optional<Session> session(int player, String id) {
        return handle.createQuery("select * from session where player = :player and id = :id")
                .bind("player", player)
                .bind("id", id)
                .map((row, context) -> session(row))
                .findOne();
    }

    private static Session session(ResultSet row) throws SQLException {
        return new Session(
                row.getString("id"), row.getString("started_at"), row.getString("day"), row.getString("note"));
    }

    /** A new session. */
    public void addSession(int player, String id, Moment start, String note) {
        handle.createUpdate("insert into session (player, id, started_at, started_ms, day, note)"
                        + " values (:player, :id, :start, :millis, :day, :note)")
                .bind("player", player)
                .bind("id", id)
                .bind("start", start.text())
                .bind("millis", start.millis())
                .bind("day", start.day())
                .bind("note", note)
                .execute();
    }

    /** Moves a session's start, and with it the day of all its runs, back to an earlier instant. */
    public void startEarlier(int player, String session, Moment start) {
        int moved = handle.createUpdate("update session set started_at = :start, started_ms = :millis, day = :day"
                        + " where player = :player and id = :id and started_ms > :millis")
                .bind("player", player)
                .bind("id", session)
                .bind("start", start.text())
                .bind("millis", start.millis())
                .bind("day", start.day())
                .execute();
        if (moved > 0) {
            handle.createUpdate("update run set day = :day, " + CHANGED + " where player = :player and session = :id")
                    .bind("player", player)
                    .bind("id", session)
                    .bind("day", start.day())
                    .execute();
        }
    }

    /** Sets a session's note. */
    public void note(int player, String session, String note) {
        handle.createUpdate("update session set note = :note where player = :player and id = :id")
                .bind("player", player)
                .bind("id", session)
                .bind("note", note)
                .execute();
    }

    /** A run, deleted or not. */
    public Optional<Run> find(int player, String id) {
        return handle.createQuery("select * from run where player = :player and id = :id")
                .bind("player", player)
                .bind("id", id)
                .map((row, context) -> run(row))
                .findOne();
    }

    private static Run run(ResultSet row) throws SQLException {
        return new Run(
                row.getString("id"),
                row.getString("session"),
                Word.of(Drill.class, row.getString("drill")),
                row.getString("started_at"),
                row.getInt("warm_up") == 1,
                row.getString("opponent"),
                PlayerRows.whole(row, "target"),
                PlayerRows.whole(row, "game"),
                row.getString("trial"),
                row.getString("note"),
                Json.read(row.getString("setup"), Setup.class),
                row.getString("finished_at"),
                row.getString("deleted_at") != null,
                new Run.Sum(
                        row.getInt("rounds"),
                        row.getInt("thrown"),
                        row.getInt("bags_in"),
                        PlayerRows.whole(row, "points")),
                score(PlayerRows.whole(row, "score_mine"), PlayerRows.whole(row, "score_theirs")));
    }

    private static Run.@Nullable Score score(@Nullable Integer mine, @Nullable Integer theirs) {
        return mine == null || theirs == null ? null : new Run.Score(mine, theirs);
    }

    /** A new run of a session that exists; its sums start at nothing. */
    public void add(int player, Run run, Moment start) {
        handle.createUpdate(
                        "insert into run (player, id, session, drill, started_at, started_ms, day, warm_up, opponent,"
                                + " target, game, trial, note, setup, finished_at, points, score_mine, score_theirs, version) values (:player, :id, :session, :drill,"
                                + " :start, :millis, (select day from session where player = :player and id = :session), :warmUp,"
                                + " :opponent, :target, :game, :trial, :note, :setup, :finished, 0, :scoreMine, :scoreTheirs,"
                                + " (select version from player where id = :player))")
                .bind("player", player)
                .bind("id", run.id())
                .bind("session", run.session())
                .bind("drill", run.drill().word())
                .bind("start", run.startedAt())
                .bind("millis", start.millis())
                .bind("warmUp", run.warmUp() ? 1 : 0)
                .bind("opponent", run.opponent())
                .bind("target", run.target())
                .bind("game", run.game())
                .bind("trial", run.trial())
                .bind("note", run.note())
                .bind("setup", Json.write(run.setup()))
                .bind("finished", run.finishedAt())
                .bind(
                        "scoreMine",
                        run.score() == null ? null : (Integer) run.score().mine())
                .bind(
                        "scoreTheirs",
                        run.score() == null ? null : (Integer) run.score().theirs())
                .execute();
    }

    /** Sets what a player may edit of a run. */
    public void edit(int player, String id, String note, String opponent, boolean warmUp, Run.@Nullable Score score) {
        handle.createUpdate("update run set note = :note, opponent = :opponent, warm_up = :warmUp,"
                        + " score_mine = :scoreMine, score_theirs = :scoreTheirs, " + CHANGED
                        + " where player = :player and id = :id")
                .bind("player", player)
                .bind("id", id)
                .bind("note", note)
                .bind("opponent", opponent)
                .bind("warmUp", warmUp ? 1 : 0)
                .bind("scoreMine", score == null ? null : (Integer) score.mine())
                .bind("scoreTheirs", score == null ? null : (Integer) score.theirs())
                .execute();
    }

    /** Keeps how a run is set up now. */
    public void setup(int player, String id, Setup setup) {
        handle.createUpdate("update run set setup = :setup where player = :player and id = :id")
                .bind("player", player)
                .bind("id", id)
                .bind("setup", Json.write(setup))
                .execute();
    }

    /** Says which trial a run is thrown for. */
    public void trial(int player, String id, String trial) {
        handle.createUpdate("update run set trial = :trial, " + CHANGED + " where player = :player and id = :id")
                .bind("player", player)
                .bind("id", id)
                .bind("trial", trial)
                .execute();
    }

    /** The runs that count of a trial, the earliest first. */
    public List<Run> ofTrial(int player, String trial) {
        return handle.createQuery("select * from run where player = :player and trial = :trial and trial <> ''"
                        + " and deleted_at is null and warm_up = 0 order by started_ms, id")
                .bind("player", player)
                .bind("trial", trial)
                .map((row, context) -> run(row))
                .list();
    }

    /** Closes a run, or opens it again with null. */
    public void finish(int player, String id, @Nullable String at) {
        handle.createUpdate("update run set finished_at = :at where player = :player and id = :id")
                .bind("player", player)
                .bind("id", id)
                .bind("at", at)
                .execute();
    }

    /** Deletes a run, or brings it back with null. */
    public void delete(int player, String id, @Nullable String at) {
        handle.createUpdate("update run set deleted_at = :at, " + CHANGED + " where player = :player and id = :id")
                .bind("player", player)
                .bind("id", id)
                .bind("at", at)
                .execute();
    }

    /** The latest run that may be thrown on. */
    public Optional<Run> open(int player) {
        return handle.createQuery("select * from run where player = :player and deleted_at is null"
                        + " and finished_at is null order by started_ms desc, id desc limit 1")
                .bind("player", player)
                .map((row, context) -> run(row))
                .findOne();
    }

    /** The latest run, of a drill or of any. */
    public Optional<Run> last(int player, @Nullable Drill drill) {
        return handle.createQuery("select * from run where player = :player and deleted_at is null"
                        + (drill == null ? "" : " and drill = :drill")
                        + " order by started_ms desc, id desc limit 1")
                .bind("player", player)
                .bind("drill", drill == null ? "" : drill.word())
                .map((row, context) -> run(row))
                .findOne();
    }

    /** Ids of runs, deleted ones too, that changed after a version of the player's records. */
    public List<String> changedAfter(int player, long version) {
        return handle.createQuery("select id from run where player = :player and version > :version")
                .bind("player", player)
                .bind("version", version)
                .mapTo(String.class)
                .list();
    }

    /** The latest counted runs of a drill, the latest first, warm-ups left out. */
    public List<Run> latest(int player, Drill drill, int most) {
        return handle.createQuery("select * from run where player = :player and drill = :drill and deleted_at is null"
                        + " and warm_up = 0 order by started_ms desc, id desc limit :most")
                .bind("player", player)
                .bind("drill", drill.word())
                .bind("most", most)
                .map((row, context) -> run(row))
                .list();
    }

    /** Names of opponents, the one met last first. */
    public List<String> opponents(int player, int most) {
        return handle.createQuery("select opponent from run where player = :player and opponent <> ''"
                        + " and deleted_at is null group by opponent order by max(started_ms) desc limit :most")
                .bind("player", player)
                .bind("most", most)
                .mapTo(String.class)
                .list();
    }

    /** How many runs a player has, deleted ones too. */
    public int number(int player) {
        return handle.createQuery("select count(*) from run where player = :player")
                .bind("player", player)
                .mapTo(Integer.class)
                .one();
    }

    /** A run's id, start and deletion, for going through all of them. */
    public record Head(
            String id,
            String session,
            String startedAt,
            long startedMillis,
            @Nullable String deletedAt) {}

    /** All runs of a player, deleted ones too, in no order. */
    public List<Head> heads(int player) {
        return handle.createQuery(
                        "select id, session, started_at, started_ms, deleted_at from run where player = :player")
                .bind("player", player)
                .map((row, context) -> new Head(
                        row.getString("id"),
                        row.getString("session"),
                        row.getString("started_at"),
                        row.getLong("started_ms"),
                        row.getString("deleted_at")))
                .list();
    }

    /** Some runs by id, deleted or not, in no order. */
    public List<Run> withIds(int player, List<String> ids) {
        return handle.createQuery("select * from run where player = :player and id in (<ids>)")
                .bind("player", player)
                .bindList("ids", ids)
                .map((row, context) -> run(row))
                .list();
    }

    /** All sessions of a player, in no order. */
    public List<Session> sessions(int player) {
        return handle.createQuery("select * from session where player = :player")
                .bind("player", player)
                .map((row, context) -> session(row))
                .list();
    }

    /** A run's result beside others of its kind. */
    public record Result(
            String run,
            String day,
            int thrown,
            int in,
            @Nullable Integer points) {}

    /**
     * Finished, counted runs of a drill with that many rounds and a total.
     *
     * @param number how many there are
     * @param best the one with the highest total (volume: share of bags in), of equal ones the latest
     * @param latest the latest first
     */
    public record Results(int number, Optional<Result> best, List<Result> latest) {}

    /** The same, as far as needed to measure a run against. */
    public Results results(int player, Drill drill, int rounds, String except, int latest) {
        String total = drill == Drill.VOLUME ? "bags_in * 1.0 / thrown" : "points";
        String fitting = " from run where player = :player and drill = :drill and rounds = :rounds and id <> :except"
                + " and finished_at is not null and deleted_at is null and warm_up = 0 and thrown > 0 and " + total
                + " is not null";
        String columns = "select id, day, thrown, bags_in, points, started_ms" + fitting + " order by ";
        int number = results("select count(*)" + fitting, player, drill, rounds, except)
                .mapTo(Integer.class)
                .one();
        return new Results(
                number,
                results(columns + total + " desc, started_ms desc, id desc limit 1", player, drill, rounds, except)
                        .map((row, context) -> result(row))
                        .findOne(),
                results(columns + "started_ms desc, id desc limit " + latest, player, drill, rounds, except)
                        .map((row, context) -> result(row))
                        .list());
    }

    private Query results(String sql, int player, Drill drill, int rounds, String except) {
        return handle.createQuery(sql)
                .bind("player", player)
                .bind("drill", drill.word())
                .bind("rounds", rounds)
                .bind("except", except);
    }

    private static Result result(ResultSet row) throws SQLException {
        return new Result(
                row.getString("id"),
                row.getString("day"),
                row.getInt("thrown"),
                row.getInt("bags_in"),
                PlayerRows.whole(row, "points"));
    }

    /** Sessions of a page of the journal, with the number of all that fit. */
    public record Page(List<Session> sessions, int total) {}

    /**
     * Sessions with at least one run that is not deleted, the newest first.
     *
     * @param words each must be found in the session or one of its runs
     * @param skip how many to leave out at the start
     * @param size how many at most
     */
    public Page sessions(int player, List<String> words, int skip, int size) {
        String fits =
                " from session s where s.player = :player and exists (select 1 from run r where r.player = s.player"
                        + " and r.session = s.id and r.deleted_at is null)"
                        + matching(words.size());
        // The number of all comes with each row of the page, so that what fits is looked for once.
        int[] total = {0};
        List<Session> page = search(
                        "select s.*, count(*) over () as total" + fits
                                + " order by s.started_ms desc, s.id desc limit :size offset :skip",
                        player,
                        words)
                .bind("size", size)
                .bind("skip", skip)
                .map((row, context) -> {
                    total[0] = row.getInt("total");
                    return session(row);
                })
                .list();
        if (page.isEmpty() && skip > 0) {
            total[0] = search("select count(*)" + fits, player, words)
                    .mapTo(Integer.class)
                    .one();
        }
        return new Page(page, total[0]);
    }

    private Query search(String sql, int player, List<String> words) {
        Query query = handle.createQuery(sql).bind("player", player);
        for (int i = 0; i < words.size(); i++) {
            String escaped = words.get(i).toLowerCase(Locale.ROOT).replaceAll("[!%_]", "!$0");
            query.bind("word" + i, "%" + escaped + "%");
        }
        return query;
    }

    private static String matching(int words) {
        StringBuilder sql = new StringBuilder();
        for (int i = 0; i < words; i++) {
            String like = " like :word" + i + " escape '!'";
            // Subqueries that do not depend on the session are worked out once; most notes are empty and cost nothing.
            // A
            // cross join keeps SQLite to the order written: from the few rows that match to their runs.
            sql.append(" and (s.day" + like + " or s.note <> '' and lower(s.note)" + like
                    + " or s.id in (select r.session from run r where r.player = :player and r.deleted_at is null"
                    + " and (r.drill" + like + " or r.note <> '' and lower(r.note)" + like
                    + " or r.opponent <> '' and lower(r.opponent)" + like + "))"
                    + " or s.id in (select r.session from bag b cross join tally t cross join run r"
                    + " where b.player = :player and lower(b.name)" + like + " and t.player = b.player and t.bag = b.id"
                    + " and r.player = t.player and r.id = t.run and r.deleted_at is null)"
                    + " or s.id in (select r.session from line l cross join run r where l.player = :player"
                    + " and l.note <> '' and lower(l.note)" + like
                    + " and r.player = l.player and r.id = l.run and r.deleted_at is null))");
        }
        return sql.toString();
    }

    /** All runs of some sessions that are not deleted, the first thrown first. */
    public List<Run> of(int player, List<Session> sessions) {
        if (sessions.isEmpty()) {
            return new ArrayList<>();
        }
        return handle.createQuery("select * from run where player = :player and session in (<sessions>)"
                        + " and deleted_at is null order by started_ms, id")
                .bind("player", player)
                .bindList("sessions", sessions.stream().map(Session::id).toList())
                .map((row, context) -> run(row))
                .list();
    }
}
