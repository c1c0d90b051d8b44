package boardside.app.web;

import boardside.app.practice.Challenge;
import boardside.app.practice.DayBags;
import boardside.app.practice.Line;
import boardside.app.practice.Player;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.record.Challenges;
import boardside.app.record.Journal;
import boardside.app.record.RunDetail;
import boardside.app.report.DataTable;
import boardside.app.report.Palette;
import boardside.app.report.Picture;
import boardside.app.report.Pictures;
import boardside.app.report.ResultCard;
import boardside.engine.rules.Finish;
import boardside.engine.rules.Tally;
import boardside.engine.skill.Interval;
import boardside.engine.skill.Skill;
import io.javalin.http.Context;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** A run or a day as a picture to save or to share; drawn here, made a PNG by the browser. */
public final class CardPage {
    private static final int MOST_ROUNDS = 40;
    private static final int MOST_RUNS = 6;

    private final Web web;

    CardPage(Web web) {
        this.web = web;
    }

    /**
     * What the page shows: the picture, where it is served alone, what to call the file, and the way back.
     *
     * @param day the card of the whole day, or null where this is it
     */
    public record View(
            Picture picture,
            String svg,
            String file,
            String back,
            @Nullable String day) {}

    void run(Context ctx) {
        Player player = web.player(ctx);
        RunDetail detail = web.run(player, ctx.pathParam("id"));
        String path = "/runs/" + Numbers.path(detail.run().id());
        show(
                ctx,
                new View(
                        ofRun(player, detail),
                        path + "/card.svg",
                        "boardside-" + detail.session().day(),
                        path + "/summary",
                        "/days/" + detail.session().day() + "/card"));
    }

    void runSvg(Context ctx) {
        Player player = web.player(ctx);
        svg(ctx, ofRun(player, web.run(player, ctx.pathParam("id"))));
    }

    void day(Context ctx) {
        String day = day(ctx.pathParam("day"));
        show(
                ctx,
                new View(
                        ofDay(web.player(ctx), day),
                        "/days/" + day + "/card.svg",
                        "boardside-" + day,
                        "/journal?q=" + day,
                        null));
    }

    void daySvg(Context ctx) {
        svg(ctx, ofDay(web.player(ctx), day(ctx.pathParam("day"))));
    }

    private String day(String text) {
        try {
            return LocalDate.parse(text).toString();
        } catch (DateTimeException e) {
            throw new Refusal(404, web.texts().of("card.day.fault", text));
        }
    }

    private void show(Context ctx, View view) {
        web.show(ctx, "card", web.texts().of("card.title"), Map.of("view", view));
    }

    private static void svg(Context ctx, Picture picture) {
        ctx.contentType("image/svg+xml; charset=utf-8").result(picture.toPrint(Palette.PAPER));
    }

    private Picture ofRun(Player player, RunDetail detail) {
        Texts texts = web.texts();
        Run run = detail.run();
        List<Round> mine =
                detail.rounds().stream().filter(round -> round.side().mine()).toList();
        List<String> lines = new ArrayList<>();
        Tally bags = tally(mine);
        if (bags.thrown() > 0) {
            Interval rate = Skill.pointsPerRound(bags);
            lines.add(texts.of(
                    "card.rate",
                    Numbers.one(bags.pointsPerRound()),
                    Numbers.one(rate.low()),
                    Numbers.one(rate.high())));
        }
        web.records()
                .deeds()
                .newBests(player.id(), run.id())
                .forEach(best -> lines.add(
                        texts.of("card.best", BestsPage.name(texts, best.kind()), BestsPage.value(texts, best))));
        web.records()
                .challenges()
                .of(player.id(), run.id())
                .filter(told -> told.outcome() == Challenges.Outcome.DONE)
                .map(Challenges.Told::challenge)
                .map(challenge -> challenge(texts, challenge))
                .ifPresent(lines::add);
        boolean strip = !mine.isEmpty()
                && mine.size() <= MOST_ROUNDS
                && mine.stream().allMatch(round -> round.bags() <= Finish.BAGS);
        return card(
                player,
                detail.session().day(),
                web.describe().run(run, web.bagNames(player.id())),
                web.describe().result(run, detail.rounds()),
                lines,
                strip ? mine : List.of());
    }

    private static String challenge(Texts texts, Challenge challenge) {
        return texts.of("challenge.done", ChallengePage.says(texts, challenge), ChallengePage.chance(challenge));
    }

    private Picture ofDay(Player player, String day) {
        Texts texts = web.texts();
        LocalDate date = LocalDate.parse(day);
        DayBags thrown = web.records().deeds().days(player.id(), date, date).stream()
                .findFirst()
                .orElseThrow(() -> new Refusal(404, texts.of("card.day.none", day)));
        List<Run> runs = web.records().journal(player.id(), day, 0, 100).entries().stream()
                .filter(entry -> entry.session().day().equals(day))
                .map(Journal.Entry::runs)
                .flatMap(List::stream)
                .filter(run -> !run.deleted() && run.sum().thrown() > 0)
                .toList();
        List<String> lines = new ArrayList<>();
        for (Run run : runs.subList(0, Math.min(MOST_RUNS, runs.size()))) {
            List<Round> rounds = web.records()
                    .run(player.id(), run.id())
                    .map(RunDetail::rounds)
                    .orElse(List.of());
            lines.add(texts.of(
                    "card.run",
                    texts.of("drill." + run.drill().word()),
                    web.describe().result(run, rounds)));
        }
        if (runs.size() > MOST_RUNS) {
            lines.add(texts.of("card.runs.more", runs.size() - MOST_RUNS));
        }
        return card(
                player,
                day,
                texts.of(runs.size() == 1 ? "card.runs.one" : "card.runs", runs.size()),
                texts.of("card.bags", thrown.bags()),
                lines,
                List.of());
    }

    private Picture card(
            Player player, String day, String what, String result, List<String> lines, List<Round> rounds) {
        Texts texts = web.texts();
        String when = web.describe().day(day);
        List<Pictures.@Nullable Bags> bags = new ArrayList<>();
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of(result, what));
        for (Round round : rounds) {
            Tally tally = tally(List.of(round));
            boolean counted = round.points() != null;
            bags.add(counted ? new Pictures.Bags(tally.in(), tally.on(), tally.off()) : null);
            rows.add(List.of(
                    texts.of("run.where.open", round.number()),
                    counted ? texts.of("run.finish", tally.in(), tally.on(), tally.off(), tally.points()) : ""));
        }
        lines.forEach(line -> rows.add(List.of("", line)));
        List<String> words = new ArrayList<>(List.of(player.name(), when, result, what));
        words.addAll(lines);
        return ResultCard.of(
                String.join(". ", words) + ".",
                new DataTable(List.of(texts.of("card.table.what"), texts.of("card.table.result")), rows),
                player.name(),
                when,
                what,
                result,
                lines,
                bags,
                texts.of("app.name"));
    }

    private static Tally tally(List<Round> rounds) {
        Tally sum = Tally.NONE;
        for (Round round : rounds) {
            for (Line line : round.lines()) {
                Integer on = line.on();
                Integer off = line.off();
                if (on != null && off != null) {
                    sum = sum.plus(new Tally(Objects.requireNonNullElse(line.in(), 0), on, off));
                }
            }
        }
        return sum;
    }
}
