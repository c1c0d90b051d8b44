package boardside.app.web;

import boardside.app.account.QrCode;
import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import boardside.app.practice.Run;
import boardside.app.practice.TrialPlan;
import boardside.app.record.RunDetail;
import boardside.app.record.SharedTrial;
import boardside.app.record.TrialDetail;
import boardside.app.report.DataTable;
import boardside.app.report.Picture;
import boardside.app.report.Pictures;
import boardside.engine.rules.Word;
import boardside.engine.skill.Interval;
import boardside.engine.trial.TrialState;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** A trial: how it stands, on to the boards, laid aside, shared. */
public final class TrialPage {
    private final Web web;
    private final TrialStart starts;

    TrialPage(Web web) {
        this.web = web;
        this.starts = new TrialStart(web);
    }

    /**
     * What the page shows; parts that do not apply are null or empty.
     *
     * @param path of the page
     * @param name in its field
     * @param fault what is wrong with that
     * @param about length and margin in a few words
     * @param sentence how it stands
     * @param state whether it is thrown
     * @param next whom to throw next
     * @param outlook what it will probably take, before the first block
     * @param picture points a round of the candidates
     * @param candidates each in words
     * @param runs what was thrown for it, the latest first
     * @param share what is shared
     */
    public record View(
            String path,
            String name,
            @Nullable String fault,
            String about,
            String sentence,
            TrialPlan.State state,
            boolean over,
            @Nullable String next,
            @Nullable String outlook,
            @Nullable Picture picture,
            List<Candidate> candidates,
            List<Thrown> runs,
            String share,
            @Nullable QrCode code) {}

    /** A candidate: its name, and how it does. */
    public record Candidate(String name, String says) {}

    /** A run: where to find it, and when it was. */
    public record Thrown(String path, String says) {}

    /** Address of a trial. */
    static String path(TrialPlan plan) {
        return "/trials/" + Numbers.path(plan.id());
    }

    private TrialDetail detail(Player player, Context ctx) {
        String id = ctx.pathParam("trial");
        return web.records()
                .trials()
                .find(player.id(), id)
                .orElseThrow(() -> new Refusal(
                        404, "There is no trial \"" + id + "\" of " + player.name() + ". It may have been deleted."));
    }

    void show(Context ctx) {
        show(ctx, null, null);
    }

    private void show(Context ctx, @Nullable String name, @Nullable String fault) {
        Player player = web.player(ctx);
        TrialDetail detail = detail(player, ctx);
        TrialPlan plan = detail.plan();
        TrialState state = detail.state();
        Texts texts = web.texts();
        String share = SharedTrial.of(plan, web.bagNames(player.id())).text();
        View view = new View(
                path(plan),
                Objects.requireNonNullElse(name, plan.name()),
                fault,
                about(texts, plan),
                state.sentence(),
                plan.state(),
                state.over(),
                next(texts, detail, plan),
                state.blocks() == 0
                        ? TrialsPage.outlook(web, player, plan.design()).sentence()
                        : null,
                state.blocks() == 0 ? null : picture(texts, detail, state),
                state.standings().stream()
                        .map(standing -> new Candidate(detail.names().get(standing.candidate()), says(texts, standing)))
                        .toList(),
                runs(detail),
                share,
                QrCode.of(share));
        web.show(ctx, "trial", plan.name(), Map.of("view", view));
    }

    static String about(Texts texts, TrialPlan plan) {
        return texts.of("trial.about", plan.candidates().size(), plan.longest(), TrialsPage.number(plan.margin()));
    }

    private static @Nullable String next(Texts texts, TrialDetail detail, TrialPlan plan) {
        return plan.state() != TrialPlan.State.OPEN
                ? null
                : detail.next()
                        .map(block -> texts.of(
                                "trial.next",
                                block.number(),
                                detail.names().get(block.order().get(0))))
                        .orElse(null);
    }

    private static String says(Texts texts, TrialState.Standing standing) {
        Interval points = standing.pointsPerRound();
        Interval behind = standing.behind();
        if (points == null) {
            return texts.of("trial.candidate.none");
        }
        String said =
                texts.of("trial.candidate", Numbers.one(points.estimate()), Numbers.range(points), standing.rounds());
        if (behind != null) {
            said += " " + texts.of("trial.candidate.behind", Numbers.one(behind.estimate()), signed(behind));
        }
        return standing.droppedAfter() == null
                ? said
                : said + " " + texts.of("trial.candidate.out", standing.droppedAfter());
    }

    private static String signed(Interval interval) {
        return (interval.low() < -0.05 ? "\u2212" : "")
                + Numbers.one(Math.abs(interval.low()))
                + "\u2009\u2026\u2009"
                + Numbers.one(interval.high());
    }

    private static Picture picture(Texts texts, TrialDetail detail, TrialState state) {
        List<List<String>> rows = new ArrayList<>();
        List<Pictures.Named> named = new ArrayList<>();
        for (TrialState.Standing standing : state.standings()) {
            Interval points = Objects.requireNonNull(standing.pointsPerRound());
            String name = detail.names().get(standing.candidate());
            named.add(new Pictures.Named(name, points));
            rows.add(List.of(
                    name, String.valueOf(standing.rounds()), Numbers.one(points.estimate()), Numbers.range(points)));
        }
        return Pictures.ranges(
                texts.of("trial.picture"),
                texts.of("trial.picture.about"),
                new DataTable(
                        List.of(
                                texts.of("trial.table.candidate"),
                                texts.of("trial.table.rounds"),
                                texts.of("form.table.ppr"),
                                texts.of("form.table.range")),
                        rows),
                named);
    }

    private List<Thrown> runs(TrialDetail detail) {
        List<Thrown> runs = new ArrayList<>();
        for (RunDetail one : detail.runs()) {
            Run run = one.run();
            runs.add(
                    0,
                    new Thrown(
                            "/runs/" + Numbers.path(run.id()) + (run.open() ? "" : "/summary"),
                            web.texts()
                                    .of(
                                            run.open() ? "trial.run.open" : "trial.run",
                                            web.describe().day(one.session().day()),
                                            run.sum().rounds())));
        }
        return runs;
    }

    /** Goes to the boards. */
    void start(Context ctx) {
        Player player = web.player(ctx);
        ctx.redirect("/runs/" + Numbers.path(starts.start(player, detail(player, ctx))));
    }

    /** Pauses, resumes or stops it. */
    void set(Context ctx) {
        Player player = web.player(ctx);
        TrialPlan plan = detail(player, ctx).plan();
        TrialPlan.State state;
        try {
            state = Word.of(TrialPlan.State.class, Objects.requireNonNullElse(ctx.formParam("state"), ""));
        } catch (IllegalArgumentException e) {
            throw new Refusal(422, Web.sentence(new Failure.BadInput(String.valueOf(e.getMessage()))));
        }
        web.records().trials().set(player.id(), plan.id(), state);
        ctx.redirect(path(plan) + "?said=trial." + state.word());
    }

    /** Gives it another name. */
    void rename(Context ctx) {
        Player player = web.player(ctx);
        TrialPlan plan = detail(player, ctx).plan();
        try {
            web.records()
                    .trials()
                    .rename(player.id(), plan.id(), Objects.requireNonNullElse(ctx.formParam("name"), ""));
        } catch (Failure.BadInput e) {
            ctx.status(422);
            show(ctx, Objects.requireNonNullElse(ctx.formParam("name"), ""), Web.sentence(e));
            return;
        }
        ctx.redirect(path(plan) + "?said=saved");
    }

    void delete(Context ctx) {
        Player player = web.player(ctx);
        TrialPlan plan = detail(player, ctx).plan();
        web.records().trials().delete(player.id(), plan.id(), true);
        ctx.redirect("/trials?said=deleted&gone=" + Numbers.path(plan.id()));
    }

    void restore(Context ctx) {
        Player player = web.player(ctx);
        TrialPlan plan = web.records().trials().delete(player.id(), ctx.pathParam("trial"), false);
        ctx.redirect(path(plan) + "?said=undone");
    }

    /** The set-up as a file. */
    void file(Context ctx) {
        Player player = web.player(ctx);
        TrialPlan plan = detail(player, ctx).plan();
        Sharing.file(
                ctx,
                "trial.json",
                SharedTrial.of(plan, web.bagNames(player.id())).text());
    }
}
