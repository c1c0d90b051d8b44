package boardside.app.web;

import boardside.app.practice.Player;
import boardside.app.report.DataTable;
import boardside.app.report.Picture;
import boardside.app.report.Pictures;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Finish;
import boardside.engine.skill.FormAnswer;
import boardside.engine.skill.FormAnswer.Form;
import boardside.engine.skill.Interval;
import boardside.engine.skill.Skill;
import boardside.engine.skill.SwingAnswer;
import boardside.engine.skill.SwingAnswer.Swing;
import boardside.engine.skill.TotalForecast;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** How the player throws today, and how that came about. */
public final class FormPage {
    private static final int TOTAL_ROUNDS = 10;
    private static final List<Integer> TRENDS = List.of(7, 30, 90, 365);
    private static final int FIRST_TREND = 30;
    private static final int FIRST_DAYS = 90;
    private static final List<Integer> DAYS = List.of(90, 365, 0);

    private final Web web;
    private final Remembered<View> remembered;

    FormPage(Web web) {
        this.web = web;
        this.remembered = web.remembered();
    }

    /**
     * What the page shows.
     *
     * @param sentence the answer in words
     * @param trends over how many days the change is
     * @param facts numbers with their ranges; empty without records
     * @param windows how far back the picture can reach
     * @param picture points a round over time, or null without any
     * @param usual what is usual for a total, and how unusual the latest one was
     * @param total the same as a picture, or null without totals
     * @param swing why totals differ
     * @param parts the same as a picture, or null with too few runs
     */
    public record View(
            String sentence,
            List<Window> trends,
            List<Fact> facts,
            List<Window> windows,
            @Nullable Picture picture,
            List<String> usual,
            @Nullable Picture total,
            String swing,
            @Nullable Picture parts) {}

    /** A number in words, and the word of the glossary that explains it. */
    public record Fact(String name, String word, String value, String says) {}

    /** A choice of how far back to look; 0 days is all there is. The address keeps what else was chosen. */
    public record Window(String address, String name, boolean chosen) {}

    void show(Context ctx) {
        Player player = web.player(ctx);
        int days = chosen(ctx.queryParam("days"), DAYS, FIRST_DAYS);
        int trend = chosen(ctx.queryParam("trend"), TRENDS, FIRST_TREND);
        web.showFound(
                ctx,
                "form",
                web.texts().of("form.title"),
                remembered.soon(player, web.today(), days + " " + trend, () -> view(player, days, trend)));
    }

    private static int chosen(@Nullable String asked, List<Integer> choices, int first) {
        return choices.stream()
                .filter(days -> String.valueOf(days).equals(asked))
                .findFirst()
                .orElse(first);
    }

    private View view(Player player, int days, int trend) {
        Skill skill = web.skills().skill(player.id(), web.today());
        FormAnswer answer = skill.form(trend);
        List<Window> windows = DAYS.stream()
                .map(each -> window(each, trend, "form.window." + each, each == days))
                .toList();
        List<Window> trends = TRENDS.stream()
                .map(each -> window(days, each, "form.trend." + each, each == trend))
                .toList();
        SwingAnswer swing = skill.swing();
        return new View(
                answer.sentence(),
                trends,
                answer instanceof Form form ? facts(form) : List.of(),
                windows,
                new FormOverTime(web.texts()).of(skill, web.today(), days),
                usual(skill, player),
                skill.total(TOTAL_ROUNDS).map(this::total).orElse(null),
                swing.sentence(),
                swing instanceof Swing parts ? parts(parts) : null);
    }

    private Window window(int days, int trend, String name, boolean chosen) {
        return new Window("/form?days=" + days + "&trend=" + trend, web.texts().of(name), chosen);
    }

    /** What is usual, and of the latest total how unusual it was, held against the other records. */
    private List<String> usual(Skill skill, Player player) {
        List<String> said = new ArrayList<>();
        said.add(skill.usual(TOTAL_ROUNDS).sentence());
        web.records().lastRun(player.id(), Drill.TOTAL).ifPresent(run -> {
            Integer points = run.sum().points();
            int rounds = run.sum().rounds();
            boolean full = rounds > 0 && run.sum().thrown() == Finish.BAGS * rounds;
            if (full && points != null && run.finishedAt() != null && !run.warmUp()) {
                said.add(web.texts()
                        .of(
                                "form.latest",
                                web.texts().day(LocalDate.parse(run.startedAt().substring(0, 10))),
                                skill.without(run.id()).unusual(points, rounds).sentence()));
            }
        });
        return said;
    }

    private Picture total(TotalForecast forecast) {
        Texts texts = web.texts();
        List<List<String>> rows = List.of(5, 25, 50, 75, 95).stream()
                .map(percent -> List.of(
                        texts.of("summary.forecast.under", percent),
                        String.valueOf(forecast.quantile(percent / 100.0))))
                .toList();
        return Pictures.histogram(
                texts.of("form.total"),
                texts.of("form.total.about", forecast.rounds(), forecast.quantile(0.05), forecast.quantile(0.95)),
                new DataTable(List.of(texts.of("summary.forecast.share"), texts.of("summary.table.points")), rows),
                new Pictures.Chances(0, forecast.chances()),
                null,
                "");
    }

    private Picture parts(Swing swing) {
        Texts texts = web.texts();
        List<Pictures.Named> named = List.of(
                new Pictures.Named(texts.of("form.swing.luck"), inHundred(swing.luck())),
                new Pictures.Named(texts.of("form.swing.days"), inHundred(swing.days())),
                new Pictures.Named(texts.of("form.swing.change"), inHundred(swing.change())));
        return Pictures.ranges(
                texts.of("form.swing"),
                texts.of("form.swing.about"),
                new DataTable(
                        List.of(
                                texts.of("form.swing.part"),
                                texts.of("form.swing.share"),
                                texts.of("form.table.range")),
                        named.stream()
                                .map(part -> List.of(
                                        part.name(),
                                        String.valueOf(Math.round(part.value().estimate())),
                                        Math.round(part.value().low()) + "\u2013"
                                                + Math.round(part.value().high())))
                                .toList()),
                named);
    }

    private static Interval inHundred(Interval share) {
        return new Interval(100 * share.estimate(), 100 * share.low(), 100 * share.high());
    }

    private List<Fact> facts(Form form) {
        return List.of(
                fact("ppr", "ppr", form.pointsPerRound(), 1),
                fact("level", "level", form.level(), 1),
                fact("in", "in-on-off", form.inHole(), 100),
                fact("on", "in-on-off", form.onBoard(), 100),
                fact("four", "four-bagger", form.fourBaggers(), 100));
    }

    private Fact fact(String key, String word, Interval interval, double scale) {
        Interval scaled = scale == 1 ? interval : inHundred(interval);
        return new Fact(
                web.texts().of("form.fact." + key),
                word,
                web.texts().of("form.range", Numbers.one(scaled.low()), Numbers.one(scaled.high())),
                web.texts().of("form.fact." + key + ".about", Numbers.one(scaled.estimate())));
    }
}
