package boardside.app.store;

import boardside.app.practice.DayBags;
import boardside.app.practice.Feat;
import boardside.app.practice.Held;
import boardside.engine.rules.Drill;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;

/** What runs did that their sums do not show, and the best of it. */
public final class FeatRows {
    /** Runs that can hold a best: closed, counted, not deleted. */
    private static final String COUNTED = " from run r join feat f on f.player = r.player and f.run = r.id"
            + " where r.player = :player and r.finished_at is not null and r.deleted_at is null and r.warm_up = 0";

    private final Handle handle;

    FeatRows(Handle handle) {
        this.handle = handle;
    }

    /** Writes what a run did anew. */
    public void put(int player, String run, Feat feat) {
        Boolean won = feat.won();
        handle.createUpdate("insert into feat (player, run, streak, twenty, won, ghost)"
                        + " values (:player, :run, :streak, :twenty, :won, :ghost)"
                        + " on conflict (player, run) do update set streak = excluded.streak,"
                        + " twenty = excluded.twenty, won = excluded.won, ghost = excluded.ghost")
                .bind("player", player)
                .bind("run", run)
                .bind("streak", feat.streak())
                .bind("twenty", feat.twenty())
                .bind("won", won == null ? null : (Integer) (won ? 1 : 0))
                .bind("ghost", feat.ghost())
                .execute();
    }

    /** What a run did, where it is known. */
    public Optional<Feat> of(int player, String run) {
        return handle.createQuery("select * from feat where player = :player and run = :run")
                .bind("player", player)
                .bind("run", run)
                .map((row, context) -> feat(row))
                .findOne();
    }

    private static Feat feat(ResultSet row) throws SQLException {
        Integer won = PlayerRows.whole(row, "won");
        return new Feat(
                row.getInt("streak"),
                PlayerRows.whole(row, "twenty"),
                won == null ? null : (Boolean) (won == 1),
                PlayerRows.whole(row, "ghost"));
    }

    /** Whether there are runs and nothing at all is known of what they did: a store from before this was kept. */
    public boolean missing() {
        return handle.createQuery("select case when exists (select 1 from run) and not exists (select 1 from feat)"
                                + " then 1 else 0 end")
                        .mapTo(Integer.class)
                        .one()
                == 1;
    }

    /** The most four-baggers in a row, of equal ones the earliest. */
    public Optional<Held> streak(int player, String except) {
        return best("f.streak", " and f.streak > 0", "desc", player, except);
    }

    /** The most points of twenty bags in a row in a drill. */
    public Optional<Held> twenty(int player, Drill drill, String except) {
        return best(
                "f.twenty", " and r.drill = '" + drill.word() + "' and f.twenty is not null", "desc", player, except);
    }

    /** The fewest rounds in which a game to 21 was won. */
    public Optional<Held> fewestRounds(int player, String except) {
        return best("r.rounds", " and f.won = 1 and coalesce(r.target, 21) = 21", "asc", player, except);
    }

    /** The best ghost beaten in a game to 21 or more. */
    public Optional<Held> ghost(int player, String except) {
        return best(
                "f.ghost",
                " and f.won = 1 and f.ghost is not null and coalesce(r.target, 21) >= 21",
                "desc",
                player,
                except);
    }

    /** The highest total of so many rounds of four. */
    public Optional<Held> total(int player, int rounds, String except) {
        return best(
                "r.points",
                " and r.drill in ('total', 'fixture') and r.rounds = " + rounds
                        + " and r.points is not null and r.thrown = 4 * r.rounds",
                "desc",
                player,
                except);
    }

    private Optional<Held> best(String value, String fitting, String order, int player, String except) {
        return query(
                        "select " + value + " as value, r.id, r.day" + COUNTED + fitting
                                + " and r.id <> :except order by " + value + " " + order
                                + ", r.started_ms, r.id limit 1",
                        player)
                .bind("except", except)
                .map((row, context) -> held(row))
                .findOne();
    }

    private Query query(String sql, int player) {
        return handle.createQuery(sql).bind("player", player);
    }

    private static Held held(ResultSet row) throws SQLException {
        return new Held(row.getInt("value"), row.getString("id"), row.getString("day"));
    }

    /** Each total of ten rounds of four that beat all before it, the earliest first. */
    public List<Held> totalsOfTen(int player) {
        return rising("r.points", " and r.drill in ('total', 'fixture') and r.rounds = 10 and r.thrown = 40", player);
    }

    /** Each ghost beaten in a game to 21 or more that was better than all beaten before it. */
    public List<Held> ghosts(int player) {
        return rising("f.ghost", " and f.won = 1 and coalesce(r.target, 21) >= 21", player);
    }

    /** Each row of four-baggers that was longer than all before it. */
    public List<Held> streaks(int player) {
        return rising("f.streak", " and f.streak > 0", player);
    }

    private List<Held> rising(String value, String fitting, int player) {
        return query(
                        "select value, id, day from (select " + value
                                + " as value, r.id as id, r.day as day, r.started_ms as started_ms, max(" + value
                                + ") over (order by r.started_ms, r.id rows between unbounded preceding and 1 preceding)"
                                + " as before" + COUNTED + fitting + " and " + value
                                + " is not null) risen where before is null or value > before order by started_ms, id",
                        player)
                .map((row, context) -> held(row))
                .list();
    }

    /** Days with bags thrown, the earliest first. */
    public List<DayBags> days(int player, String from, String to) {
        return query(
                        "select day, sum(bags) as bags, count(*) as runs from (select r.day as day, r.thrown"
                                + " + case when r.drill in ('placement', 'situation') then (select count(*) from try t"
                                + " where t.player = r.player and t.run = r.id and t.side = 'me' and t.taken_back = 0)"
                                + " else 0 end as bags from run r where r.player = :player"
                                + " and r.day between :from and :to and r.deleted_at is null) thrown"
                                + " where bags > 0 group by day order by day",
                        player)
                .bind("from", from)
                .bind("to", to)
                .map((row, context) -> new DayBags(row.getString("day"), row.getInt("bags"), row.getInt("runs")))
                .list();
    }

    /** The most tries that worked of twenty in a row, in a drill of single tries. */
    public Optional<Held> tries(int player, Drill drill) {
        return query(
                        "select hits as value, run as id, day from (select r.id as run, r.day as day,"
                                + " r.started_ms as started_ms, sum(t.worked) over twenty as hits,"
                                + " count(*) over twenty as tries from run r"
                                + " join try t on t.player = r.player and t.run = r.id where r.player = :player"
                                + " and r.drill = :drill and r.deleted_at is null and r.warm_up = 0 and t.side = 'me'"
                                + " and t.taken_back = 0 window twenty as (partition by r.id order by t.number"
                                + " rows between 19 preceding and current row)) tried where tries = 20"
                                + " order by hits desc, started_ms, run limit 1",
                        player)
                .bind("drill", drill.word())
                .map((row, context) -> held(row))
                .findOne();
    }

    /** How many games of leagues were thrown here to their end, and the day of the first; empty without any. */
    public Optional<Held> fixtures(int player) {
        return query(
                        "select count(*) as value, '' as id, min(r.day) as day from run r where r.player = :player"
                                + " and r.drill = 'fixture' and r.finished_at is not null and r.deleted_at is null"
                                + " having count(*) > 0",
                        player)
                .map((row, context) -> held(row))
                .findOne();
    }
}
