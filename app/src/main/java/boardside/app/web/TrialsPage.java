package boardside.app.web;

import boardside.app.json.Json;
import boardside.app.practice.BagSet;
import boardside.app.practice.Contest;
import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import boardside.app.practice.TrialPlan;
import boardside.app.record.SharedTrial;
import boardside.app.record.TrialDetail;
import boardside.app.record.TrialOutlook;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Face;
import boardside.engine.rules.Word;
import boardside.engine.trial.Outlook;
import boardside.engine.trial.TrialDesign;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** All trials, and a new one: what is compared, and what that will take. */
public final class TrialsPage {
    private static final List<Double> MARGINS = List.of(0.3, 0.5, 1.0);

    private final Web web;

    TrialsPage(Web web) {
        this.web = web;
    }

    /** A trial in the list. */
    public record Entry(String path, String name, String says) {}

    /**
     * The list.
     *
     * @param gone id of one just deleted, as a part of an address, or empty
     */
    public record View(List<Entry> trials, String fault, String gone) {}

    /** Something to tick. */
    public record Choice(String value, String label, boolean chosen) {}

    /**
     * A new trial.
     *
     * @param candidates what the ticks make, to leave some out; empty before
     * @param outlook what it will take, or null before
     * @param reaches the same, difference by difference
     */
    public record Blank(
            List<Choice> bags,
            List<Choice> faces,
            List<Choice> approaches,
            List<Choice> boards,
            List<Choice> lengths,
            List<Choice> margins,
            List<Choice> candidates,
            String name,
            @Nullable String block,
            @Nullable String outlook,
            List<Reach> reaches,
            List<String> faults) {}

    /** What one difference takes. */
    public record Reach(String difference, String rounds, String time, String chance) {}

    /** The tile of the first page. */
    static HomePage.Tile tile(Web web, Player player) {
        long open = web.records().trials().all(player.id()).stream()
                .filter(detail -> detail.plan().state() == TrialPlan.State.OPEN)
                .filter(detail -> !detail.state().over())
                .count();
        return new HomePage.Tile(
                "trial",
                web.texts().of("trials.title"),
                open == 0
                        ? web.texts().of("drill.trial.tile")
                        : web.texts().of(open == 1 ? "drill.trial.tile.one" : "drill.trial.tile.open", open));
    }

    void list(Context ctx) {
        list(ctx, "");
    }

    private void list(Context ctx, String fault) {
        Player player = web.player(ctx);
        List<Entry> entries = web.records().trials().all(player.id()).stream()
                .map(detail ->
                        new Entry(TrialPage.path(detail.plan()), detail.plan().name(), says(detail)))
                .toList();
        String gone = Objects.requireNonNullElse(ctx.queryParam("gone"), "");
        web.show(
                ctx,
                "trials",
                web.texts().of("trials.title"),
                Map.of("view", new View(entries, fault, gone.isEmpty() ? "" : Numbers.path(gone))));
    }

    private String says(TrialDetail detail) {
        TrialPlan.State state = detail.plan().state();
        String sentence = detail.state().sentence();
        return state == TrialPlan.State.OPEN
                ? sentence
                : web.texts().of("trials.state." + state.word()) + " " + sentence;
    }

    static Outlook outlook(Web web, Player player, TrialDesign design) {
        return TrialOutlook.of(web.records(), player.id(), web.today(), design);
    }

    static String number(double value) {
        return value == Math.rint(value) ? String.valueOf((long) value) : Numbers.one(value);
    }

    void blank(Context ctx) {
        blank(ctx, ticked(ctx, "candidate"), List.of());
    }

    private static List<String> ticked(Context ctx, String name) {
        List<String> ticked = new ArrayList<>(ctx.queryParams(name));
        ticked.addAll(ctx.formParams(name));
        return ticked;
    }

    private static String asked(Context ctx, String name, String usual) {
        String form = ctx.formParam(name);
        return Objects.requireNonNullElse(form == null ? ctx.queryParam(name) : form, usual);
    }

    private void blank(Context ctx, List<String> chosen, List<String> faults) {
        Player player = web.player(ctx);
        Texts texts = web.texts();
        List<BagSet> bags = web.records().bags(player.id()).stream()
                .filter(bag -> !bag.retired())
                .toList();
        List<String> bagsChosen = ticked(ctx, "bag");
        List<String> facesChosen = ticked(ctx, "face");
        List<String> approachesChosen = ticked(ctx, "approach");
        List<String> said = new ArrayList<>(faults);
        List<Contest.Way> all = all(bagsChosen, facesChosen, approachesChosen);
        List<Contest.Way> kept =
                chosen.isEmpty() ? all : chosen.stream().map(TrialsPage::way).toList();
        List<Contest.Way> shown = new ArrayList<>(all);
        kept.stream().filter(way -> !shown.contains(way)).forEach(shown::add);
        boolean asked = !ctx.queryParamMap().isEmpty() || !faults.isEmpty();
        int longest = length(asked(ctx, "longest", String.valueOf(TrialDesign.USUAL_LENGTH)));
        double margin = margin(asked(ctx, "margin", String.valueOf(TrialDesign.USUAL_MARGIN)));
        String board = asked(ctx, "board", BoardKind.REGULATION.word());
        boolean fits = kept.size() >= 2 && kept.size() <= TrialDesign.MOST;
        if (asked && !fits && faults.isEmpty()) {
            said.add(texts.of("trials.fault.candidates", TrialDesign.MOST, kept.size()));
        }
        Outlook outlook = fits && asked ? outlook(web, player, new TrialDesign(kept.size(), longest, margin, 0)) : null;
        List<String> names = TrialDetail.names(shown, web.bagNames(player.id()));
        List<Choice> candidates = new ArrayList<>();
        for (int i = 0; asked && shown.size() > 1 && i < shown.size(); i++) {
            candidates.add(new Choice(Json.write(shown.get(i)), names.get(i), kept.contains(shown.get(i))));
        }
        Blank view = new Blank(
                bags.stream()
                        .map(bag -> new Choice(bag.id(), bag.name(), bagsChosen.contains(bag.id())))
                        .toList(),
                words(Face.class, "face.", facesChosen),
                words(Approach.class, "approach.", approachesChosen),
                words(BoardKind.class, "board.", List.of(board)),
                TrialDesign.LENGTHS.stream()
                        .map(each -> new Choice(
                                String.valueOf(each),
                                texts.of("trials.length", each * TrialDesign.ROUNDS),
                                each == longest))
                        .toList(),
                MARGINS.stream()
                        .map(each -> new Choice(number(each), texts.of("trials.margin", number(each)), each == margin))
                        .toList(),
                candidates,
                asked(
                        ctx,
                        "name",
                        fits && asked ? name(texts, TrialDetail.names(kept, web.bagNames(player.id()))) : ""),
                outlook == null
                        ? null
                        : texts.of(
                                "trials.block",
                                kept.size() * TrialDesign.ROUNDS,
                                Math.max(1, Math.round(kept.size() * TrialDesign.ROUNDS * outlook.minutesPerRound()))),
                outlook == null ? null : outlook.sentence(),
                outlook == null ? List.of() : reaches(texts, outlook),
                said);
        web.show(ctx, "trial_new", texts.of("trials.new"), Map.of("view", view));
    }

    private static String name(Texts texts, List<String> names) {
        String said = String.join(texts.of("trials.name.against"), names);
        return said.length() <= 60 ? said : texts.of("trials.name.many", names.get(0), names.size() - 1);
    }

    /** Every combination of what was ticked; where nothing was, nothing is said. */
    private static List<Contest.Way> all(List<String> bags, List<String> faces, List<String> approaches) {
        List<Contest.Way> all = new ArrayList<>();
        for (String bag : bags.isEmpty() ? List.of("") : bags) {
            for (String face : faces.isEmpty() ? List.of("") : faces) {
                for (String approach : approaches.isEmpty() ? List.of("") : approaches) {
                    all.add(new Contest.Way(
                            bag,
                            face.isEmpty() ? null : Word.of(Face.class, face),
                            approach.isEmpty() ? null : Word.of(Approach.class, approach)));
                }
            }
        }
        return all;
    }

    private static Contest.Way way(String json) {
        return Json.read(json, Contest.Way.class);
    }

    private <E extends Enum<E> & Word> List<Choice> words(Class<E> kind, String key, List<String> chosen) {
        return Word.words(kind).stream()
                .map(word -> new Choice(word, web.texts().of(key + word), chosen.contains(word)))
                .toList();
    }

    private static int length(String text) {
        return TrialDesign.LENGTHS.stream()
                .filter(each -> String.valueOf(each).equals(text))
                .findFirst()
                .orElse(TrialDesign.USUAL_LENGTH);
    }

    private static double margin(String text) {
        return MARGINS.stream()
                .filter(each -> number(each).equals(text))
                .findFirst()
                .orElse(TrialDesign.USUAL_MARGIN);
    }

    private static List<Reach> reaches(Texts texts, Outlook outlook) {
        return outlook.reaches().stream()
                .map(reach -> new Reach(
                        number(reach.difference()),
                        String.format(java.util.Locale.ROOT, "%,d", reach.roundsEach()),
                        reach.minutes() < 100
                                ? texts.of("trials.minutes", Math.round(reach.minutes()))
                                : texts.of("trials.hours", Math.round(reach.minutes() / 60)),
                        Numbers.inHundred(reach.chance())))
                .toList();
    }

    void add(Context ctx) {
        Player player = web.player(ctx);
        List<String> chosen = ticked(ctx, "candidate");
        try {
            List<Contest.Way> ways = chosen.stream().map(TrialsPage::way).toList();
            if (!(ways.size() >= 2 && ways.size() <= TrialDesign.MOST)) {
                throw new IllegalArgumentException(
                        web.texts().of("trials.fault.candidates", TrialDesign.MOST, ways.size()));
            }
            TrialPlan made = web.records()
                    .trials()
                    .add(
                            player.id(),
                            new TrialPlan(
                                    "",
                                    Objects.requireNonNullElse(ctx.formParam("name"), ""),
                                    ways,
                                    Word.of(BoardKind.class, asked(ctx, "board", BoardKind.REGULATION.word())),
                                    length(asked(ctx, "longest", "")),
                                    margin(asked(ctx, "margin", "")),
                                    web.seed(),
                                    "",
                                    TrialPlan.State.OPEN,
                                    false));
            ctx.redirect(TrialPage.path(made));
        } catch (Failure.BadInput e) {
            ctx.status(422);
            blank(ctx, chosen, List.of(Web.sentence(e)));
        } catch (IllegalArgumentException e) {
            ctx.status(422);
            blank(ctx, chosen, List.of(String.valueOf(e.getMessage())));
        }
    }

    /** Takes a set-up that somebody shared: a file, or its text. */
    void take(Context ctx) {
        Player player = web.player(ctx);
        try {
            SharedTrial shared = SharedTrial.read(Sharing.text(ctx));
            TrialPlan made = web.records()
                    .trials()
                    .add(player.id(), shared.plan(name -> web.bagNamed(player.id(), name), web.seed()));
            ctx.redirect(TrialPage.path(made));
        } catch (Failure.BadInput e) {
            ctx.status(422);
            list(ctx, web.texts().of("trials.fault", Web.sentence(e)));
        } catch (IllegalArgumentException e) {
            ctx.status(422);
            list(ctx, web.texts().of("trials.fault", String.valueOf(e.getMessage())));
        }
    }
}
