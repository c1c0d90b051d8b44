package boardside.app.store;

import static boardside.app.store.RoundRows.word;

import boardside.app.json.Json;
import boardside.app.practice.Moment;
import boardside.app.practice.SlideTest;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Face;
import boardside.engine.rules.Word;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Slide tests. */
public final class SlideTestRows {
    private final Handle handle;

    SlideTestRows(Handle handle) {
        this.handle = handle;
    }

    /** All of a player's, deleted ones too, in the order of their ids. */
    public List<SlideTest> all(int player) {
        return handle.createQuery("select * from slide_test where player = :player order by id")
                .bind("player", player)
                .map((row, context) -> test(row))
                .list();
    }

    /** Those of some days, without deleted ones, the first first. */
    public List<SlideTest> within(int player, String from, String to) {
        return handle.createQuery("select * from slide_test where player = :player and day between :from and :to"
                        + " and taken_back = 0 order by at_ms, id")
                .bind("player", player)
                .bind("from", from)
                .bind("to", to)
                .map((row, context) -> test(row))
                .list();
    }

    /** The latest, without deleted ones, the newest first. */
    public List<SlideTest> latest(int player, int most) {
        return handle.createQuery("select * from slide_test where player = :player and taken_back = 0"
                        + " order by at_ms desc, id desc limit :most")
                .bind("player", player)
                .bind("most", most)
                .map((row, context) -> test(row))
                .list();
    }

    /** One by id, a deleted one too. */
    public Optional<SlideTest> find(int player, String id) {
        return handle.createQuery("select * from slide_test where player = :player and id = :id")
                .bind("player", player)
                .bind("id", id)
                .map((row, context) -> test(row))
                .findOne();
    }

    private static SlideTest test(ResultSet row) throws SQLException {
        return new SlideTest(
                row.getString("id"),
                row.getString("op"),
                row.getInt("taken_back") == 1
                        ? null
                        : new SlideTest.Tapped(
                                row.getString("at"),
                                row.getString("bag"),
                                word(Face.class, row.getString("face")),
                                Word.of(BoardKind.class, row.getString("board")),
                                word(Conditions.class, row.getString("conditions")),
                                List.of(Json.read(row.getString("slides"), SlideTest.Slid[].class))));
    }

    /** Writes one, new or known by its id; of a deleted one nothing but the ids is kept. */
    public void put(int player, SlideTest test) {
        SlideTest.Tapped tapped = test.tapped();
        Moment at = tapped == null ? new Moment("", 0, "") : Moment.of(tapped.at());
        handle.createUpdate("insert into slide_test (player, id, op, taken_back, at, at_ms, day, bag, face, board,"
                        + " conditions, slides) values (:player, :id, :op, :gone, :at, :ms, :day, :bag, :face, :board,"
                        + " :conditions, :slides) on conflict (player, id) do update set op = excluded.op,"
                        + " taken_back = excluded.taken_back, at = excluded.at, at_ms = excluded.at_ms,"
                        + " day = excluded.day, bag = excluded.bag, face = excluded.face, board = excluded.board,"
                        + " conditions = excluded.conditions, slides = excluded.slides")
                .bind("player", player)
                .bind("id", test.id())
                .bind("op", test.op())
                .bind("gone", tapped == null ? 1 : 0)
                .bind("at", at.text())
                .bind("ms", at.millis())
                .bind("day", at.day())
                .bind("bag", tapped == null ? "" : tapped.bag())
                .bind("face", tapped == null ? "" : word(tapped.face()))
                .bind("board", tapped == null ? BoardKind.REGULATION.word() : word(tapped.board()))
                .bind("conditions", tapped == null ? "" : word(tapped.conditions()))
                .bind("slides", tapped == null ? "[]" : Json.write(tapped.slides()))
                .execute();
    }
}
