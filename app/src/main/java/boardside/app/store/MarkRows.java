package boardside.app.store;

import boardside.app.practice.Marking;
import boardside.app.practice.Round;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Outcome;
import boardside.engine.rules.Word;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;
import org.jspecify.annotations.Nullable;

/** Where a player's own bags went, as far as it was recorded; in runs that count, without warm-ups. */
public final class MarkRows {
    private static final String RUNS = " from run r join line l on l.player = r.player and l.run = r.id";
    private static final String COUNTED = " where r.player = :player and r.day >= :from and r.deleted_at is null"
            + " and r.warm_up = 0 and r.drill in (<drills>) and l.side <> 'versus'";

    private final Handle handle;

    MarkRows(Handle handle) {
        this.handle = handle;
    }

    /** Single bags since a day, the latest runs first, at most so many. */
    public List<Marking.Bag> bags(int player, String from, int most) {
        return counted(
                        "select l.board, t.shot, t.outcome, t.miss, t.land_x, t.land_y, t.rest_x, t.rest_y" + RUNS
                                + " join throw t on t.player = l.player and t.run = l.run and t.number = l.number"
                                + " and t.side = l.side and t.bag = l.bag and t.face = l.face" + COUNTED
                                + " order by r.started_ms desc, r.id, t.number, t.side, t.ordinal limit " + most,
                        player,
                        from)
                .map((row, context) -> bag(row))
                .list();
    }

    private static Marking.Bag bag(ResultSet row) throws SQLException {
        return new Marking.Bag(
                Word.of(BoardKind.class, row.getString("board")),
                row.getString("shot"),
                Word.of(Outcome.class, row.getString("outcome")),
                row.getString("miss"),
                point(row, "land"),
                point(row, "rest"));
    }

    private static Round.@Nullable Point point(ResultSet row, String name) throws SQLException {
        Double x = PlayerRows.number(row, name + "_x");
        Double y = PlayerRows.number(row, name + "_y");
        return x == null || y == null ? null : new Round.Point(x, y);
    }

    /** Counts by kind of board of rounds with misses but without single bags. */
    public List<Marking.Misses> misses(int player, String from) {
        return counted(
                        "select l.board, sum(l.bags_in) as b_in, sum(l.bags_on) as b_on, sum(l.bags_off) as b_off,"
                                + " sum(coalesce(l.miss_left, 0)) as m_left, sum(coalesce(l.miss_right, 0)) as m_right,"
                                + " sum(coalesce(l.miss_short, 0)) as m_short, sum(coalesce(l.miss_long, 0)) as m_long"
                                + RUNS + COUNTED
                                + " and l.bags_on is not null and (l.miss_left is not null or l.miss_right is not null"
                                + " or l.miss_short is not null or l.miss_long is not null)"
                                + " and not exists (select 1 from throw t where t.player = l.player and t.run = l.run"
                                + " and t.number = l.number and t.side = l.side) group by l.board order by l.board",
                        player,
                        from)
                .map((row, context) -> new Marking.Misses(
                        Word.of(BoardKind.class, row.getString("board")),
                        row.getInt("b_in"),
                        row.getInt("b_on"),
                        row.getInt("b_off"),
                        row.getInt("m_left"),
                        row.getInt("m_right"),
                        row.getInt("m_short"),
                        row.getInt("m_long")))
                .list();
    }

    private Query counted(String sql, int player, String from) {
        return handle.createQuery(sql)
                .bind("player", player)
                .bind("from", from)
                .bindList(
                        "drills",
                        Stream.of(Drill.values())
                                .filter(Drill::counted)
                                .map(Drill::word)
                                .toList());
    }
}
