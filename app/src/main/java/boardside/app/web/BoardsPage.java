package boardside.app.web;

import boardside.app.practice.Board;
import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import boardside.engine.rules.BoardKind;
import io.javalin.http.Context;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** A player's boards, with their sizes in the units of this device. */
final class BoardsPage {
    private static final double NARROWEST = 1;
    private static final double LOWEST_FRONT = 2;
    private static final double HIGHEST_FRONT = 6;

    private final Web web;

    BoardsPage(Web web) {
        this.web = web;
    }

    void list(Context ctx) {
        Look look = web.look(ctx);
        List<BagsPage.Entry> boards = web.records().boards(web.player(ctx).id()).stream()
                .map(board -> entry(board, look))
                .toList();
        web.show(ctx, "boards", web.texts().of("boards.title"), Map.of("boards", boards));
    }

    private BagsPage.Entry entry(Board board, Look look) {
        String says = web.texts()
                .of(
                        "boards.known",
                        web.texts().of("board." + board.kind().word()),
                        Units.length(look, board.width()),
                        Units.length(look, board.front()),
                        web.texts().of("units." + look.units()));
        return new BagsPage.Entry(board.id(), board.name(), says, board.note(), board.retired());
    }

    void blank(Context ctx) {
        Map<String, String> values = Map.of(
                "kind", BoardKind.REGULATION.word(),
                "front", Units.length(web.look(ctx), Board.USUAL_FRONT),
                "retired", "no");
        show(ctx, null, Fields.filled(web.texts(), values));
    }

    void edit(Context ctx) {
        Look look = web.look(ctx);
        Board board = found(ctx, web.player(ctx));
        Map<String, String> values = new TreeMap<>();
        values.put("name", board.name());
        values.put("kind", board.kind().word());
        values.put("width", Units.length(look, board.width()));
        values.put("front", Units.length(look, board.front()));
        values.put("note", board.note());
        values.put("retired", board.retired() ? "yes" : "no");
        show(ctx, board, Fields.filled(web.texts(), values));
    }

    private Board found(Context ctx, Player player) {
        String id = ctx.pathParam("id");
        return web.records().boards(player.id()).stream()
                .filter(board -> board.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new Refusal(404, web.texts().of("boards.nothing", player.name())));
    }

    private void show(Context ctx, @Nullable Board board, Fields fields) {
        Look look = web.look(ctx);
        Map<String, @Nullable Object> values = new HashMap<>();
        values.put("action", board == null ? "/boards" : "/boards/" + board.id());
        values.put("fields", fields);
        values.put("unit", web.texts().of("units." + look.units()));
        values.put("wide", Units.length(look, Board.REGULATION_WIDTH));
        values.put("narrow", Units.length(look, Board.NARROW_WIDTH));
        web.show(ctx, "board", board == null ? web.texts().of("boards.new") : board.name(), values);
    }

    void add(Context ctx) {
        save(ctx, web.player(ctx), null);
    }

    void save(Context ctx) {
        Player player = web.player(ctx);
        save(ctx, player, found(ctx, player));
    }

    private void save(Context ctx, Player player, @Nullable Board before) {
        Look look = web.look(ctx);
        Fields fields = Fields.sent(ctx, web.texts());
        BoardKind kind = fields.word("kind", BoardKind.class, BoardKind.REGULATION);
        double width = kind == BoardKind.REGULATION
                ? Board.REGULATION_WIDTH
                : length(fields, look, "width", NARROWEST, Board.REGULATION_WIDTH, Board.NARROW_WIDTH);
        double front = length(fields, look, "front", LOWEST_FRONT, HIGHEST_FRONT, Board.USUAL_FRONT);
        if (!fields.faulty()) {
            try {
                web.records()
                        .saveBoard(
                                player.id(),
                                new Board(
                                        before == null ? "" : before.id(),
                                        fields.value("name"),
                                        kind,
                                        width,
                                        front,
                                        fields.value("note"),
                                        fields.value("retired").equals("yes")));
                ctx.redirect("/boards?said=saved");
                return;
            } catch (Failure.BadInput e) {
                // The sizes are in their ranges, so what is left is the name.
                fields.fault("name", Web.sentence(e));
            }
        }
        ctx.status(422);
        show(ctx, before, fields);
    }

    /** A length in inches; the usual one where the field is empty or faulty. */
    private static double length(Fields fields, Look look, String name, double least, double most, double usual) {
        double unit = Units.perInch(look);
        Double typed = fields.number(name, least * unit, most * unit);
        return typed == null ? usual : Units.inches(look, typed);
    }
}
