package boardside.app.web;

import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import io.javalin.http.Context;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Who throws: choosing for this device, adding, editing. */
final class PlayersPage {
    private final Web web;

    PlayersPage(Web web) {
        this.web = web;
    }

    void list(Context ctx) {
        // There is one from the first page on, also in an empty store.
        web.player(ctx);
        List<Player> players = web.players(ctx);
        web.show(ctx, "players", web.texts().of("players.title"), Map.of("players", players));
    }

    void choose(Context ctx) {
        choose(ctx, found(ctx).id());
        ctx.redirect("/?said=player.chosen");
    }

    private void choose(Context ctx, int id) {
        ctx.cookie(web.guard().cookie(Web.PLAYER, String.valueOf(id)));
    }

    private Player found(Context ctx) {
        String id = ctx.pathParam("id");
        return web.players(ctx).stream()
                .filter(player -> String.valueOf(player.id()).equals(id))
                .findFirst()
                .orElseThrow(() -> new Refusal(404, web.texts().of("players.nobody")));
    }

    void blank(Context ctx) {
        show(ctx, null, Fields.filled(web.texts(), Map.of("hand", "right", "throws-from", "left")));
    }

    void edit(Context ctx) {
        Player player = found(ctx);
        Map<String, String> values = Map.of(
                "name", player.name(),
                "hand", player.hand().word(),
                "throws-from", player.throwsFrom().word());
        show(ctx, player, Fields.filled(web.texts(), values));
    }

    private void show(Context ctx, @Nullable Player player, Fields fields) {
        String title = player == null ? web.texts().of("players.new") : player.name();
        Map<String, @Nullable Object> values = new HashMap<>();
        values.put("action", player == null ? "/players" : "/players/" + player.id());
        values.put("fields", fields);
        web.show(ctx, "player", title, values);
    }

    void add(Context ctx) {
        Fields fields = Fields.sent(ctx, web.texts());
        try {
            Player added =
                    web.records().addPlayer(web.owner(ctx), fields.value("name"), hand(fields), throwsFrom(fields));
            choose(ctx, added.id());
            ctx.redirect("/?said=player.chosen");
        } catch (Failure.BadInput e) {
            again(ctx, null, fields, e);
        }
    }

    void save(Context ctx) {
        Player player = found(ctx);
        Fields fields = Fields.sent(ctx, web.texts());
        try {
            web.records()
                    .editPlayer(new Player(
                            player.id(), fields.value("name"), hand(fields), throwsFrom(fields), player.version()));
            ctx.redirect("/players?said=saved");
        } catch (Failure.BadInput e) {
            again(ctx, player, fields, e);
        }
    }

    private void again(Context ctx, @Nullable Player player, Fields fields, Failure.BadInput wrong) {
        fields.fault("name", Web.sentence(wrong));
        ctx.status(422);
        show(ctx, player, fields);
    }

    private static Player.Hand hand(Fields fields) {
        return fields.word("hand", Player.Hand.class, Player.Hand.RIGHT);
    }

    private static Player.Hand throwsFrom(Fields fields) {
        return fields.word("throws-from", Player.Hand.class, Player.Hand.LEFT);
    }
}
