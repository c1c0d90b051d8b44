package boardside.app.web;

import boardside.app.json.Json;
import boardside.app.practice.BagSet;
import boardside.app.practice.Change;
import boardside.app.practice.Operation;
import boardside.app.practice.Player;
import boardside.app.practice.SlideTest;
import boardside.app.record.Applied;
import boardside.app.record.SlideText;
import boardside.app.record.Throws;
import boardside.engine.physics.ThrowFit;
import boardside.engine.physics.ThrowModel;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Face;
import boardside.engine.rules.Word;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Slide tests: a few bags tapped where they landed and stopped, kept, and what they say of the boards that day. */
public final class SlidesPage {
    private static final int LISTED = 20;

    /** Models that stand for what is known of a bag, for the answer on the phone. */
    private static final int MODELS = 80;

    private final Web web;
    private final Remembered<Optional<ThrowFit.Day>> remembered;

    SlidesPage(Web web) {
        this.web = web;
        remembered = web.remembered();
    }

    /** A bag set's face to choose: its value in the form is its face's word or nothing, a colon, and its id. */
    public record Choice(String value, String name, boolean chosen) {}

    /** A test in the list. */
    public record Entry(String path, String says) {}

    /**
     * The page to tap on.
     *
     * @param id for the test that is sent from it without a script
     * @param slides as typed or tapped
     * @param faults what is wrong with the slides, a sentence each
     * @param boot what the page's script starts from
     * @param texts the script's
     */
    public record View(
            List<Choice> choices,
            String id,
            String slides,
            String board,
            String conditions,
            List<String> faults,
            List<Entry> tests,
            String boot,
            String texts) {}

    /** A slide as it is drawn; where it has no end, that is null. */
    public record Way(
            double x,
            double y,
            @Nullable Double toX,
            @Nullable Double toY) {}

    /**
     * One test.
     *
     * @param path of the page
     * @param says what was tapped, in a line; empty where it was deleted
     * @param answers what it says of the boards, in sentences
     * @param waiting whether that is still being worked out
     */
    public record Detail(
            String path,
            String says,
            List<String> answers,
            boolean waiting,
            double width,
            List<Way> ways,
            List<Change> changes) {}

    /** What the script starts from: how each bag is thrown, as far as that has been worked out. */
    record Boot(int player, String token, String units, Map<String, List<ThrowModel>> models) {}

    void list(Context ctx) {
        list(ctx, "", "", BoardKind.REGULATION.word(), "", List.of());
    }

    private void list(Context ctx, String bag, String slides, String board, String conditions, List<String> faults) {
        Player player = web.player(ctx);
        Throws all = Throws.of(web.records(), player.id(), web.today());
        Map<String, List<ThrowModel>> models = new LinkedHashMap<>();
        for (Throws.Group group : all.groups()) {
            group.known().ifPresent(fit -> models.put(value(group.key()), some(fit.draws())));
        }
        // For the answer on the phone, should the network be away by then.
        web.refreshThrows(player.id());
        Map<String, String> bags = web.bagNames(player.id());
        List<Entry> tests = new ArrayList<>();
        for (SlideTest test : web.records().slideTests().latest(player.id(), LISTED)) {
            tests.add(new Entry(path(test.id()), says(test, bags)));
        }
        web.show(
                ctx,
                "slides",
                web.texts().of("slides.title"),
                Map.of(
                        "view",
                        new View(
                                choices(player, all, bag),
                                web.ids().next(),
                                slides,
                                board,
                                conditions,
                                faults,
                                tests,
                                Json.write(new Boot(
                                        player.id(),
                                        web.guard().token(ctx),
                                        web.look(ctx).units(),
                                        models)),
                                Json.write(web.texts().startingWith("slides.", "throws.unit.")))));
    }

    private static List<ThrowModel> some(List<ThrowModel> draws) {
        List<ThrowModel> some = new ArrayList<>();
        for (int i = 0; i < MODELS; i++) {
            some.add(draws.get((int) ((i + 0.5) * draws.size() / MODELS)));
        }
        return some;
    }

    private static String path(String id) {
        return "/slides/" + Numbers.path(id);
    }

    private static String value(Throws.Key key) {
        Face face = key.face();
        return (face == null ? "" : face.word()) + ":" + key.bag();
    }

    /** Those thrown or known by a printed speed, the usual first, then all other bag sets in use. */
    private List<Choice> choices(Player player, Throws all, String chosen) {
        List<Choice> choices = new ArrayList<>();
        for (Throws.Group group : all.groups()) {
            String value = value(group.key());
            choices.add(new Choice(value, ThrowsPage.name(web.texts(), group), value.equals(chosen)));
        }
        for (BagSet bag : web.records().bags(player.id())) {
            if (!bag.retired()
                    && all.groups().stream()
                            .noneMatch(group -> group.key().bag().equals(bag.id()))) {
                String value = value(new Throws.Key(bag.id(), null));
                choices.add(new Choice(value, bag.name(), value.equals(chosen)));
            }
        }
        return choices;
    }

    private String says(SlideTest test, Map<String, String> bags) {
        SlideTest.Tapped tapped = test.tapped();
        if (tapped == null) {
            return "";
        }
        Conditions conditions = tapped.conditions();
        return web.texts()
                .of(
                        "slides.says",
                        web.describe().day(tapped.day()),
                        ThrowsPage.name(web.texts(), bags.getOrDefault(tapped.bag(), ""), tapped.face()),
                        tapped.slides().size(),
                        web.texts().of("slides.conditions." + (conditions == null ? "none" : conditions.word())),
                        web.texts().of("board." + tapped.board().word()));
    }

    /** Keeps a test that was sent as a form. */
    void keep(Context ctx) {
        Player player = web.player(ctx);
        String text = field(ctx, "slides");
        String bag = field(ctx, "bag");
        String board = field(ctx, "board");
        String conditions = field(ctx, "conditions");
        List<String> faults = new ArrayList<>();
        List<SlideTest.Slid> slides = SlideText.read(text, faults);
        if (faults.isEmpty()) {
            String id = field(ctx, "id").isEmpty() ? web.ids().next() : field(ctx, "id");
            int colon = bag.indexOf(':');
            try {
                String face = colon < 0 ? "" : bag.substring(0, colon);
                SlideTest.Tapped tapped = new SlideTest.Tapped(
                        web.isoNow(),
                        bag.substring(colon + 1),
                        face.isEmpty() ? null : Word.of(Face.class, face),
                        board.isEmpty() ? BoardKind.REGULATION : Word.of(BoardKind.class, board),
                        conditions.isEmpty() ? null : Word.of(Conditions.class, conditions),
                        slides);
                Applied applied = web.records()
                        .apply(
                                player.id(),
                                List.of(new Operation.KeepSlideTest(web.ids().next(), id, tapped)),
                                web.now())
                        .get(0);
                if (applied instanceof Applied.Refused refused) {
                    throw new IllegalArgumentException(refused.message());
                }
                ctx.redirect(path(id) + "?said=saved");
                return;
            } catch (IllegalArgumentException e) {
                faults.add(String.valueOf(e.getMessage()));
            }
        }
        ctx.status(422);
        list(ctx, bag, text, board.isEmpty() ? BoardKind.REGULATION.word() : board, conditions, faults);
    }

    private static String field(Context ctx, String name) {
        return Objects.requireNonNullElse(ctx.formParam(name), "").strip();
    }

    private SlideTest test(Player player, Context ctx) {
        String id = ctx.pathParam("test");
        return web.records()
                .slideTests()
                .find(player.id(), id)
                .orElseThrow(() -> new Refusal(404, "There is no slide test \"" + id + "\" of " + player.name() + "."));
    }

    void show(Context ctx) {
        Player player = web.player(ctx);
        SlideTest test = test(player, ctx);
        SlideTest.Tapped tapped = test.tapped();
        List<String> answers = List.of();
        boolean waiting = false;
        List<Way> ways = new ArrayList<>();
        if (tapped != null) {
            for (SlideTest.Slid slid : tapped.slides()) {
                ways.add(new Way(
                        slid.landing().x(),
                        slid.landing().y(),
                        slid.rest() == null ? null : (Double) slid.rest().x(),
                        slid.rest() == null ? null : (Double) slid.rest().y()));
            }
            Optional<Optional<ThrowFit.Day>> found = remembered
                    .soon(player, web.today(), test.id(), () -> day(player, tapped))
                    .map(Remembered.Found::value);
            waiting = found.isEmpty();
            answers = found.map(day -> day.map(known -> answers(web.look(ctx), known))
                            .orElseGet(() -> List.of(web.texts().of("slides.old"))))
                    .orElse(List.of());
        }
        if (waiting) {
            ctx.status(Web.WORKING);
        }
        Map<String, Object> model = new HashMap<>();
        model.put(
                "view",
                new Detail(
                        path(test.id()),
                        says(test, web.bagNames(player.id())),
                        answers,
                        waiting,
                        tapped == null
                                ? 0
                                : boardside.engine.physics.Board.of(tapped.board())
                                        .width(),
                        ways,
                        web.records().changes(player.id(), test.id())));
        web.show(ctx, "slide_test", web.texts().of("slides.title"), model);
    }

    private Optional<ThrowFit.Day> day(Player player, SlideTest.Tapped tapped) {
        return Throws.of(web.records(), player.id(), web.today())
                .find(new Throws.Key(tapped.bag(), tapped.face()))
                .flatMap(group -> group.day(tapped));
    }

    private List<String> answers(Look look, ThrowFit.Day day) {
        double percent = 100 * (day.factor().estimate() - 1);
        boolean slower = day.probabilitySlower() > 0.5;
        double sure = slower ? day.probabilitySlower() : 1 - day.probabilitySlower();
        return List.of(
                web.texts()
                        .of(
                                "slides.length",
                                day.slides(),
                                ThrowsPage.length(look, day.slide()),
                                ThrowsPage.unit(web.texts(), look)),
                web.texts()
                        .of(
                                slower ? "slides.slower" : "slides.faster",
                                Numbers.one(Math.abs(percent)),
                                Numbers.percent(sure),
                                difference(100 * (day.factor().low() - 1)),
                                difference(100 * (day.factor().high() - 1))),
                web.texts()
                        .of(
                                "slides.friction",
                                Numbers.two(day.friction().estimate()),
                                Numbers.two(day.friction().low()),
                                Numbers.two(day.friction().high())));
    }

    private String difference(double percent) {
        return web.texts().of(percent < 0 ? "slides.by.faster" : "slides.by.slower", Numbers.one(Math.abs(percent)));
    }

    void delete(Context ctx) {
        Player player = web.player(ctx);
        SlideTest test = test(player, ctx);
        String op = web.records().ids().nextAfter(test.op());
        web.records().applyAll(player.id(), List.of(new Operation.KeepSlideTest(op, test.id(), null)), web.now());
        ctx.redirect(path(test.id()) + "?said=deleted");
    }

    void undo(Context ctx) {
        Player player = web.player(ctx);
        SlideTest test = test(player, ctx);
        web.records().undo(player.id(), ctx.pathParam("change"), web.now());
        ctx.redirect(path(test.id()) + "?said=undone");
    }
}
