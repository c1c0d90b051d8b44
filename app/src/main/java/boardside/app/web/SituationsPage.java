package boardside.app.web;

import boardside.app.account.QrCode;
import boardside.app.json.Json;
import boardside.app.practice.Ids;
import boardside.app.practice.KeptSituation;
import boardside.app.practice.Operation;
import boardside.app.practice.Player;
import boardside.app.record.Applied;
import boardside.app.record.OfferedSituation;
import boardside.engine.tactics.Lying;
import boardside.engine.tactics.Position;
import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The common situations and the player's own: drawn with a finger, kept, shared as a file or a picture to scan. */
public final class SituationsPage {
    private final Web web;

    SituationsPage(Web web) {
        this.web = web;
    }

    /** A situation in a list. */
    public record Entry(String id, String name, Position position, boolean own) {
        /** The id as a part of an address. */
        public String path() {
            return Numbers.path(id);
        }
    }

    /** The list. */
    public record View(List<Entry> own, List<Entry> common, String fault) {}

    /**
     * One to draw.
     *
     * @param share what is shared: JSON of the name and the bags, as the adviser reads positions
     */
    public record Detail(
            Entry entry, String share, @Nullable QrCode code, boolean known) {}

    /** What a shared situation is: the adviser's position with a name. */
    record Shared(String name, List<Lying> bags) {}

    /** What the page's script starts from. */
    record Boot(int player, String token, String id, String op, String name, Position position) {}

    void list(Context ctx) {
        list(ctx, "");
    }

    private void list(Context ctx, String fault) {
        Player player = web.player(ctx);
        List<Entry> entries = OfferedSituation.of(web.records(), player).stream()
                .map(this::entry)
                .toList();
        View view = new View(
                entries.stream().filter(Entry::own).toList(),
                entries.stream().filter(entry -> !entry.own()).toList(),
                fault);
        web.show(ctx, "situations", web.texts().of("situations.title"), Map.of("view", view));
    }

    private Entry entry(OfferedSituation situation) {
        TryWords words = new TryWords(web.texts(), List.of(), Map.of());
        return new Entry(situation.id(), words.offered(situation), situation.position(), situation.common() == null);
    }

    void blank(Context ctx) {
        draw(ctx, new KeptSituation("", "", "", Position.EMPTY, false));
    }

    void edit(Context ctx) {
        Player player = web.player(ctx);
        String id = ctx.pathParam("id");
        for (KeptSituation kept : web.records().situations(player.id())) {
            if (kept.id().equals(id)) {
                draw(ctx, kept);
                return;
            }
        }
        for (OfferedSituation situation : OfferedSituation.of(web.records(), player)) {
            if (situation.id().equals(id)) {
                // A common one is drawn on as one's own; it stays as it is.
                draw(ctx, new KeptSituation("", "", entry(situation).name(), situation.position(), false));
                return;
            }
        }
        throw new Refusal(404, "There is no situation \"" + id + "\" of " + player.name() + ".");
    }

    private void draw(Context ctx, KeptSituation kept) {
        Player player = web.player(ctx);
        boolean known = !kept.id().isEmpty();
        String share = Json.write(new Shared(kept.name(), kept.position().bags()));
        Map<String, Object> values = new HashMap<>();
        values.put(
                "view",
                new Detail(
                        new Entry(kept.id(), kept.name(), kept.position(), known),
                        share,
                        known ? QrCode.of(share) : null,
                        known));
        values.put(
                "boot",
                Json.write(new Boot(
                        player.id(), web.guard().token(ctx), kept.id(), kept.op(), kept.name(), kept.position())));
        values.put("texts", Json.write(web.texts().startingWith("board.", "run.", "situations.")));
        web.show(ctx, "situation", known ? kept.name() : web.texts().of("situations.new"), values);
    }

    /** The situation as a file. */
    void file(Context ctx) {
        Player player = web.player(ctx);
        KeptSituation kept = find(player, ctx.pathParam("id"));
        Sharing.file(
                ctx,
                "situation.json",
                Json.write(new Shared(kept.name(), kept.position().bags())));
    }

    private KeptSituation find(Player player, String id) {
        return web.records().situations(player.id()).stream()
                .filter(kept -> kept.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new Refusal(404, "There is no situation \"" + id + "\" of " + player.name() + "."));
    }

    /** Takes a situation that somebody shared: a file, or its text. */
    void take(Context ctx) {
        Player player = web.player(ctx);
        try {
            KeptSituation read = read(Sharing.text(ctx));
            Applied applied = keep(player, read);
            if (applied instanceof Applied.Refused refused) {
                throw new IllegalArgumentException(refused.message());
            }
            ctx.redirect("/situations?said=saved");
        } catch (IllegalArgumentException e) {
            ctx.status(422);
            list(ctx, web.texts().of("situations.fault", String.valueOf(e.getMessage())));
        }
    }

    private Applied keep(Player player, KeptSituation situation) {
        Operation operation = new Operation.KeepSituation(
                situation.op(), situation.id(), situation.name(), situation.position(), false);
        return web.records().apply(player.id(), List.of(operation), web.now()).get(0);
    }

    private KeptSituation read(String text) {
        if (text.isEmpty()) {
            throw new IllegalArgumentException(web.texts().of("situations.fault.none"));
        }
        JsonNode node = Json.read(text, JsonNode.class);
        List<Lying> bags = new ArrayList<>();
        for (JsonNode bag : node.path("bags")) {
            bags.add(Json.read(bag.toString(), Lying.class));
        }
        if (bags.isEmpty()) {
            throw new IllegalArgumentException(web.texts().of("situations.fault.none"));
        }
        Ids ids = web.records().ids();
        String name = node.path("name").asText("").strip();
        return new KeptSituation(
                ids.next(),
                ids.next(),
                name.isEmpty() ? web.texts().of("situations.unnamed") : name,
                new Position(bags),
                false);
    }
}
