package boardside.app.web;

import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** How this device shows pages, and the way to everything that is not thrown; help and safety. */
public final class MorePage {
    /** Words the help explains, in this order. */
    private static final List<String> WORDS = List.of(
            "in-on-off",
            "round",
            "ppr",
            "range",
            "four-bagger",
            "ghost",
            "ladder",
            "level",
            "verdict",
            "best-usual",
            "bag-set",
            "approach",
            "board",
            "conditions",
            "setting",
            "stakes",
            "sides",
            "warm-up",
            "session");

    /** Keys of the recorder, bag by bag. */
    private static final List<String> KEYS = List.of("in", "on", "off", "undo");

    private static final List<String> OFFLINE = List.of("first", "mark", "reload", "load");
    private static final List<String> SAFETY = List.of("load", "pain", "warm-up", "lane", "heat");

    private final Web web;

    MorePage(Web web) {
        this.web = web;
    }

    /** A group of choices, each with a word and a text under {@code more.<name>.<word>}. */
    public record Group(String name, List<String> words, String chosen) {}

    /**
     * What the page shows.
     *
     * @param here whether this is the machine that runs Boardside, where devices are let in
     */
    public record View(List<Group> groups, boolean here, String version) {}

    void show(Context ctx) {
        Look look = web.look(ctx);
        View view = new View(
                List.of(
                        new Group("theme", Look.THEMES, look.theme()),
                        new Group("units", Look.UNITS, look.units()),
                        new Group("hand", Look.HANDS, look.hand())),
                web.guard().local(ctx),
                Version.number());
        web.show(ctx, "more", web.texts().of("more.title"), Map.of("view", view));
    }

    void look(Context ctx) {
        Look look = Look.of(String.join(".", sent(ctx, "theme"), sent(ctx, "units"), sent(ctx, "hand")));
        ctx.cookie(web.guard().cookie(Web.LOOK, look.cookie()));
        ctx.redirect("/more?said=look");
    }

    private static String sent(Context ctx, String name) {
        return Objects.requireNonNullElse(ctx.formParam(name), "");
    }

    void help(Context ctx) {
        web.show(ctx, "help", web.texts().of("help.title"), Map.of("words", WORDS, "keys", KEYS, "offline", OFFLINE));
    }

    void safety(Context ctx) {
        web.show(ctx, "safety", web.texts().of("safety.title"), Map.of("parts", SAFETY));
    }
}
