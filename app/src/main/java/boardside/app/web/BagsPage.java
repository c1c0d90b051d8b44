package boardside.app.web;

import boardside.app.practice.BagSet;
import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** A player's bag sets: what is known of them, adding, editing, retiring. */
public final class BagsPage {
    private static final int SLOWEST = 1;
    private static final int FASTEST = 10;
    private static final double LIGHTEST = 1;
    private static final double HEAVIEST = 64;

    private final Web web;

    BagsPage(Web web) {
        this.web = web;
    }

    /** A set or board in a list, with what is known of it in words. */
    public record Entry(String id, String name, String says, String note, boolean retired) {}

    void list(Context ctx) {
        List<Entry> bags = web.records().bags(web.player(ctx).id()).stream()
                .map(this::entry)
                .toList();
        web.show(ctx, "bags", web.texts().of("bags.title"), Map.of("bags", bags));
    }

    private Entry entry(BagSet bag) {
        List<String> known = new ArrayList<>();
        if (bag.slowSpeed() != null) {
            known.add(web.texts().of("bags.known.slow", bag.slowSpeed()));
        }
        if (bag.fastSpeed() != null) {
            known.add(web.texts().of("bags.known.fast", bag.fastSpeed()));
        }
        Double weight = bag.weight();
        if (weight != null) {
            known.add(web.texts().of("bags.known.weight", Units.plain(weight), Units.grams(weight)));
        }
        if (!bag.fill().isEmpty()) {
            known.add(bag.fill());
        }
        String says = known.isEmpty() ? web.texts().of("bags.known.nothing") : String.join(", ", known);
        return new Entry(bag.id(), bag.name(), says, bag.note(), bag.retired());
    }

    void blank(Context ctx) {
        show(ctx, null, Fields.filled(web.texts(), Map.of("retired", "no")));
    }

    void edit(Context ctx) {
        BagSet bag = found(ctx, web.player(ctx));
        Map<String, String> values = new TreeMap<>();
        values.put("name", bag.name());
        values.put("slow", bag.slowSpeed() == null ? "" : bag.slowSpeed().toString());
        values.put("fast", bag.fastSpeed() == null ? "" : bag.fastSpeed().toString());
        values.put("weight", bag.weight() == null ? "" : Units.plain(bag.weight()));
        values.put("fill", bag.fill());
        values.put("note", bag.note());
        values.put("retired", bag.retired() ? "yes" : "no");
        show(ctx, bag, Fields.filled(web.texts(), values));
    }

    private BagSet found(Context ctx, Player player) {
        String id = ctx.pathParam("id");
        return web.records().bags(player.id()).stream()
                .filter(bag -> bag.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new Refusal(404, web.texts().of("bags.nothing", player.name())));
    }

    private void show(Context ctx, @Nullable BagSet bag, Fields fields) {
        Map<String, @Nullable Object> values = new HashMap<>();
        values.put("action", bag == null ? "/bags" : "/bags/" + bag.id());
        values.put("fields", fields);
        web.show(ctx, "bag", bag == null ? web.texts().of("bags.new") : bag.name(), values);
    }

    void add(Context ctx) {
        save(ctx, web.player(ctx), null);
    }

    void save(Context ctx) {
        Player player = web.player(ctx);
        save(ctx, player, found(ctx, player));
    }

    private void save(Context ctx, Player player, @Nullable BagSet before) {
        Fields fields = Fields.sent(ctx, web.texts());
        BagSet bag = new BagSet(
                before == null ? "" : before.id(),
                fields.value("name"),
                fields.whole("slow", SLOWEST, FASTEST),
                fields.whole("fast", SLOWEST, FASTEST),
                fields.number("weight", LIGHTEST, HEAVIEST),
                fields.value("fill"),
                fields.value("note"),
                fields.value("retired").equals("yes"));
        if (!fields.faulty()) {
            try {
                web.records().saveBag(player.id(), bag);
                ctx.redirect("/bags?said=saved");
                return;
            } catch (Failure.BadInput e) {
                // The numbers are in their ranges, so what is left is the name.
                fields.fault("name", Web.sentence(e));
            }
        }
        ctx.status(422);
        show(ctx, before, fields);
    }
}
