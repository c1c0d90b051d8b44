package boardside.app.web;

import boardside.app.practice.Account;
import boardside.app.practice.Role;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** How this device shows pages, and the way to everything that is not thrown; help and safety. */
public final class MorePage {
    /** Words of the glossary, in this order. */
    static final List<String> WORDS = List.of(
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
            "session",
            "chance",
            "forecast",
            "swing",
            "best-choice",
            "given-away",
            "head-start",
            "worth",
            "rate",
            "spread",
            "throw-model",
            "net-points",
            "break-even",
            "goal",
            "standings",
            "ending",
            "marks",
            "trial",
            "slide-test",
            "plan",
            "load");

    /** Keys of the recorder, bag by bag. */
    private static final List<String> KEYS = List.of("in", "on", "off", "undo");

    private static final List<String> OFFLINE = List.of("first", "mark", "reload", "load", "begin");
    private static final List<String> SAFETY = List.of("load", "pain", "warm-up", "lane", "heat");

    private final Web web;

    MorePage(Web web) {
        this.web = web;
    }

    /** A group of choices, each with a word and a text under {@code more.<name>.<word>}. */
    public record Group(String name, List<String> words, String chosen) {}

    /** Where a page is, and the text that names it. */
    public record Link(String address, String name) {}

    /** Pages that belong together, under a heading. */
    public record Part(String name, List<Link> links) {}

    /** What the page shows. */
    public record View(List<Part> parts, List<Group> groups, String version) {}

    void show(Context ctx) {
        Look look = web.look(ctx);
        View view = new View(
                parts(ctx),
                List.of(
                        new Group("theme", Look.THEMES, look.theme()),
                        new Group("units", Look.UNITS, look.units()),
                        new Group("hand", Look.HANDS, look.hand())),
                Version.number());
        web.show(ctx, "more", web.texts().of("more.title"), Map.of("view", view));
    }

    private List<Part> parts(Context ctx) {
        Account account = web.account(ctx);
        List<Link> compete = new ArrayList<>(List.of(
                new Link("/leagues", "league.title"),
                new Link("/seasons/mine", "hosted.mine"),
                new Link("/challenge", "challenge.title"),
                new Link("/odds", "odds.title")));
        if (web.guard().organises(ctx)) {
            compete.add(2, new Link("/seasons", "hosted.title"));
        }
        List<Link> here = new ArrayList<>(List.of(
                new Link("/players", "players.title"),
                new Link("/boards", "boards.title"),
                new Link("/coach", "coach.title")));
        if (account != null) {
            here.add(new Link("/account", "account.title"));
            if (account.role().covers(Role.HOST)) {
                here.add(new Link("/accounts", "accounts.title"));
            }
        }
        if (web.guard().local(ctx)) {
            here.add(new Link("/devices", "devices.title"));
        }
        return List.of(
                new Part(
                        "practise",
                        List.of(
                                new Link("/plan", "plan.title"),
                                new Link("/goals", "goals.title"),
                                new Link("/calendar", "calendar.title"),
                                new Link("/bests", "bests.title"))),
                new Part("compete", compete),
                new Part(
                        "ask",
                        List.of(
                                new Link("/compare", "compare.title"),
                                new Link("/advise", "advise.title"),
                                new Link("/playbook", "playbook.title"),
                                new Link("/throws", "throws.title"),
                                new Link("/spread", "spread.title"),
                                new Link("/reports", "report.title"))),
                new Part("here", here),
                new Part(
                        "help",
                        List.of(
                                new Link("/glossary", "glossary.title"),
                                new Link("/help", "help.title"),
                                new Link("/safety", "safety.title"))));
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
        web.show(ctx, "help", web.texts().of("help.title"), Map.of("keys", KEYS, "offline", OFFLINE));
    }

    /** The same words and texts that stand beside the numbers. */
    void glossary(Context ctx) {
        web.show(ctx, "glossary", web.texts().of("glossary.title"), Map.of("words", WORDS));
    }

    void safety(Context ctx) {
        web.show(ctx, "safety", web.texts().of("safety.title"), Map.of("parts", SAFETY));
    }
}
