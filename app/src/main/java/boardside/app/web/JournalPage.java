package boardside.app.web;

import boardside.app.practice.Change;
import boardside.app.practice.Exercise;
import boardside.app.practice.Player;
import boardside.app.practice.Run;
import boardside.app.practice.Session;
import boardside.app.practice.Try;
import boardside.app.record.Games;
import boardside.app.record.Journal;
import boardside.app.record.RunDetail;
import boardside.app.record.RunEdit;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Side;
import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** The journal: sessions and their runs, to search, annotate, correct and delete; every change can be undone. */
public final class JournalPage {
    private static final int SIZE = 15;
    private static final int LONGEST_NOTE = 5000;
    private static final int LONGEST_NAME = 100;

    private final Web web;

    JournalPage(Web web) {
        this.web = web;
    }

    /**
     * A page of the journal.
     *
     * @param undo id of a deletion that was just made, to offer its undoing, or empty
     */
    public record View(String search, List<Day> days, int page, int pages, String undo) {
        /** Address of another page of the same search. */
        public String link(int other) {
            return "/journal?page=" + other + "&q=" + URLEncoder.encode(search, StandardCharsets.UTF_8);
        }
    }

    /** One session. */
    public record Day(String session, String date, String note, List<Entry> runs) {
        /** The session's id as a part of an address. */
        public String path() {
            return Numbers.path(session);
        }
    }

    /** One run in a list. */
    public record Entry(String id, String says, String result, boolean warmUp, boolean open, String note) {
        /** The id as a part of an address. */
        public String path() {
            return Numbers.path(id);
        }
    }

    /** One run by itself. */
    public record Detail(
            Entry run,
            String date,
            String opponent,
            List<Bags> rounds,
            List<Tried> tries,
            List<Change> changes,
            List<String> faults,
            boolean game,
            Run.@Nullable Score score) {}

    /** One try, as shown: what was tried with which bag set, what came of it and where the bag ended. */
    public record Tried(int number, String what, String bag, boolean worked, String rest) {}

    /** One line of a round, as shown: counts that were not taken are null. */
    public record Bags(
            int number,
            String side,
            String bag,
            int thrown,
            @Nullable Integer in,
            @Nullable Integer on,
            @Nullable Integer off) {}

    void show(Context ctx) {
        Player player = web.player(ctx);
        String search = Objects.requireNonNullElse(ctx.queryParam("q"), "").strip();
        int page = page(ctx.queryParam("page"));
        Journal journal = web.records().journal(player.id(), search, page, SIZE);
        if (journal.page() >= journal.pages()) {
            journal = web.records().journal(player.id(), search, journal.pages() - 1, SIZE);
        }
        Map<String, String> bags = web.bagNames(player.id());
        List<Day> days = journal.entries().stream()
                .map(entry -> new Day(
                        entry.session().id(),
                        web.describe().day(entry.session().day()),
                        entry.session().note(),
                        entry.runs().stream()
                                .filter(run -> !run.deleted())
                                .map(run -> entry(player, run, bags))
                                .toList()))
                .toList();
        String undo = Objects.requireNonNullElse(ctx.queryParam("undo"), "");
        web.show(
                ctx,
                "journal",
                web.texts().of("journal.title"),
                Map.of("view", new View(search, days, journal.page(), journal.pages(), undo)));
    }

    private static int page(@Nullable String text) {
        return text != null && text.matches("\\d{1,6}") ? Integer.parseInt(text) : 0;
    }

    private Entry entry(Player player, Run run, Map<String, String> bags) {
        List<boardside.app.practice.Round> rounds = Games.played(run.drill())
                ? web.records()
                        .run(player.id(), run.id())
                        .map(RunDetail::rounds)
                        .orElse(List.of())
                : List.of();
        return new Entry(
                run.id(),
                web.describe().run(run, bags),
                TriesPage.DRILLS.contains(run.drill())
                        ? web.describe().tried(run, web.records().tries(player.id(), run.id()))
                        : web.describe().result(run, rounds),
                run.warmUp(),
                run.open(),
                run.note());
    }

    void run(Context ctx) {
        showRun(ctx, List.of(), null);
    }

    private void showRun(Context ctx, List<String> faults, @Nullable RunEdit typed) {
        Player player = web.player(ctx);
        RunDetail detail = web.run(player, ctx.pathParam("id"));
        Map<String, String> bags = web.bagNames(player.id());
        Run run = detail.run();
        Entry stored = entry(player, run, bags);
        RunEdit edit = typed == null ? RunEdit.of(run) : typed;
        Entry shown = new Entry(stored.id(), stored.says(), stored.result(), edit.warmUp(), stored.open(), edit.note());
        List<Bags> rounds = detail.rounds().stream()
                .flatMap(round -> round.lines().stream()
                        .map(line -> new Bags(
                                round.number(),
                                round.side() == Side.ME ? "" : round.side().word(),
                                bags.getOrDefault(line.bag(), ""),
                                line.thrown(),
                                line.in(),
                                line.on(),
                                line.off())))
                .toList();
        Detail view = new Detail(
                shown,
                web.describe().day(detail.session().day()),
                edit.opponent(),
                rounds,
                tries(player, run, bags),
                web.records().changes(player.id(), run.id()),
                faults,
                run.drill() == Drill.GAME,
                edit.score());
        Map<String, Object> values = new HashMap<>();
        values.put("view", view);
        web.show(ctx, "journal_run", stored.says(), values);
    }

    private List<Tried> tries(Player player, Run run, Map<String, String> bags) {
        TryWords words = new TryWords(web.texts(), web.records().situations(player.id()), bags);
        List<Tried> shown = new java.util.ArrayList<>();
        for (Try tried : web.records().tries(player.id(), run.id())) {
            Try.Played played = tried.played();
            if (played != null) {
                String what = run.drill() == Drill.SITUATION
                        ? words.situated(played)
                        : words.step(new Exercise.Step(played.shot(), played.target(), played.position()));
                shown.add(new Tried(
                        tried.number(),
                        played.side() == Side.ME
                                ? what
                                : what + ", " + web.texts().of("side.versus"),
                        bags.getOrDefault(played.how().bag(), ""),
                        played.worked(),
                        words.rest(played)));
            }
        }
        return shown;
    }

    void editRun(Context ctx) {
        Player player = web.player(ctx);
        Run run = web.run(player, ctx.pathParam("id")).run();
        List<String> faults = new java.util.ArrayList<>();
        RunEdit edit = new RunEdit(
                field(ctx, "note"),
                field(ctx, "opponent"),
                "yes".equals(ctx.formParam("warm-up")),
                run.drill() == Drill.GAME ? score(ctx, faults) : run.score());
        tooLong(faults, "journal.note", edit.note(), LONGEST_NOTE);
        tooLong(faults, "journal.opponent", edit.opponent(), LONGEST_NAME);
        if (!faults.isEmpty()) {
            ctx.status(422);
            showRun(ctx, faults, edit);
            return;
        }
        web.records().editRun(player.id(), run.id(), edit);
        ctx.redirect("/journal/runs/" + Numbers.path(run.id()) + "?said=saved");
    }

    private Run.@Nullable Score score(Context ctx, List<String> faults) {
        String mine = field(ctx, "score-mine");
        String theirs = field(ctx, "score-theirs");
        if (mine.isEmpty() && theirs.isEmpty()) {
            return null;
        }
        try {
            return new Run.Score(Integer.parseInt(mine), Integer.parseInt(theirs));
        } catch (IllegalArgumentException e) {
            faults.add(web.texts().of("run.score.fault"));
            return null;
        }
    }

    private void tooLong(List<String> faults, String label, String text, int most) {
        if (text.length() > most) {
            faults.add(web.texts().of("journal.fault.long", web.texts().of(label), most, text.length()));
        }
    }

    private static String field(Context ctx, String name) {
        return Objects.requireNonNullElse(ctx.formParam(name), "").strip();
    }

    void deleteRun(Context ctx) {
        Player player = web.player(ctx);
        Run run = web.run(player, ctx.pathParam("id")).run();
        String change = web.records().deleteRun(player.id(), run.id(), web.now());
        ctx.redirect("/journal?said=deleted&undo=" + change);
    }

    void editSession(Context ctx) {
        Player player = web.player(ctx);
        String note = field(ctx, "note");
        if (note.length() > LONGEST_NOTE) {
            throw new Refusal(
                    422,
                    web.texts().of("journal.fault.long", web.texts().of("journal.note"), LONGEST_NOTE, note.length()));
        }
        Session session = web.records().editSession(player.id(), ctx.pathParam("id"), note);
        ctx.redirect("/journal?said=saved#" + URLEncoder.encode(session.id(), StandardCharsets.UTF_8));
    }

    void undo(Context ctx) {
        Player player = web.player(ctx);
        web.records().undo(player.id(), ctx.pathParam("change"), web.now());
        String run = field(ctx, "run");
        ctx.redirect((run.isEmpty() ? "/journal" : "/journal/runs/" + Numbers.path(run)) + "?said=undone");
    }
}
