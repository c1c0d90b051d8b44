package boardside.app.web;

import boardside.app.practice.Board;
import boardside.app.practice.Exercise;
import boardside.app.practice.Player;
import boardside.app.practice.Run;
import boardside.app.practice.Stakes;
import boardside.app.practice.Try;
import boardside.app.record.RunDetail;
import boardside.app.record.TryRates;
import boardside.app.record.TryStanding;
import boardside.app.report.BoardPictures;
import boardside.app.report.DataTable;
import boardside.app.report.Picture;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Outcome;
import boardside.engine.rules.Side;
import boardside.engine.tactics.Spot;
import boardside.engine.tactics.Target;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** How a run of tries went, beside what all tries of the kind say. */
public final class TriesSummary {
    private final Web web;
    private final PlanPage plans;
    private final Remembered<TryRates.Answer> remembered;

    TriesSummary(Web web, PlanPage plans) {
        this.web = web;
        this.plans = plans;
        this.remembered = web.remembered();
    }

    /** What was tried, how often in this run, and how often it works over all tries; null for a partner's or none yet. */
    public record Row(
            String name, int worked, int tries, @Nullable String rate) {}

    /**
     * What the page shows; parts that do not apply are null or empty.
     *
     * @param said honest sentences
     * @param behind whether the rates lack the newest tries
     */
    public record View(
            String id,
            String drill,
            String headline,
            String day,
            String about,
            List<String> said,
            List<Row> rows,
            @Nullable Picture picture,
            boolean behind,
            boolean open) {
        /** The id as a part of an address. */
        public String path() {
            return Numbers.path(id);
        }
    }

    void show(Context ctx, Player player, RunDetail detail) {
        Run run = detail.run();
        List<Try.Played> tries = new ArrayList<>();
        List<Try> all = web.records().tries(player.id(), run.id());
        all.forEach(tried -> {
            Try.Played played = tried.played();
            if (played != null) {
                tries.add(played);
            }
        });
        List<Try.Played> mine =
                tries.stream().filter(played -> played.side() == Side.ME).toList();
        TryWords words = new TryWords(web.texts(), web.records().situations(player.id()), web.bagNames(player.id()));
        Remembered.Found<TryRates.Answer> found = remembered.get(
                player,
                web.today(),
                run.drill().word(),
                () -> TryRates.of(web.records(), player.id(), run.drill(), web.today(), Set.of()));
        TryRates.Answer answer = found.value();
        web.show(
                ctx,
                "tries_summary",
                web.texts().of("drill." + run.drill().word()),
                plans.with(
                        player,
                        run.id(),
                        new View(
                                run.id(),
                                run.drill().word(),
                                web.describe().tried(run, all),
                                web.describe().day(detail.session().day()),
                                about(run, player),
                                said(run, all, tries, answer, words),
                                rows(run, mine, answer, words),
                                picture(run, mine),
                                found.behind(),
                                run.open())));
    }

    private String about(Run run, Player player) {
        String about = web.describe().run(run, web.bagNames(player.id()));
        Exercise exercise = run.setup().exercise();
        return exercise == null || exercise.name().isEmpty() ? about : exercise.name() + ", " + about;
    }

    private List<String> said(Run run, List<Try> all, List<Try.Played> tries, TryRates.Answer answer, TryWords words) {
        List<String> said = new ArrayList<>();
        if (tries.isEmpty()) {
            return List.of(web.texts().of("summary.said.nothing"));
        }
        if (run.warmUp()) {
            said.add(web.texts().of("summary.said.warm-up"));
        }
        Exercise exercise = run.setup().exercise();
        TryStanding standing = TryStanding.after(run.setup(), all);
        if (exercise != null && !exercise.partner().isEmpty()) {
            TryStanding.Sum theirs = standing.of(Side.VERSUS);
            said.add(web.texts().of("try.partner", exercise.partner(), theirs.worked(), theirs.tries()));
        }
        said.addAll(atStake(run, standing));
        for (TryRates.Preference preference : answer.preferences()) {
            TryRates.Row better = answer.rows().get(preference.better());
            if (tries.stream().anyMatch(played -> better.asks(run.drill(), played))) {
                said.add(words.preference(run.drill(), answer, preference));
            }
        }
        said.add(web.texts().of("tries.said"));
        return said;
    }

    /** What became of what was at stake. */
    private List<String> atStake(Run run, TryStanding standing) {
        List<String> said = new ArrayList<>();
        Stakes stakes = run.setup().stakes();
        Exercise exercise = run.setup().exercise();
        if (stakes == null || exercise == null) {
            return said;
        }
        if (stakes.misses() != null) {
            said.add(web.texts().of(standing.end() > 0 ? "tries.said.sudden" : "tries.said.survived"));
        }
        TryStanding.Sum mine = standing.of(Side.ME);
        Integer planned = exercise.tries();
        Boolean last = mine.last();
        if (stakes.lastBag() && last != null && planned != null && mine.tries() >= planned) {
            said.add(web.texts().of(last ? "tries.said.last" : "tries.said.last.not"));
        }
        return said;
    }

    private List<Row> rows(Run run, List<Try.Played> mine, TryRates.Answer answer, TryWords words) {
        Map<String, int[]> counts = new LinkedHashMap<>();
        Map<String, String> rates = new TreeMap<>();
        boolean redrawn = redrawn(run, mine);
        for (Try.Played played : mine) {
            Target target = played.target();
            Try.Link link = played.chain();
            String what = run.drill() == Drill.PLACEMENT && target != null
                    ? words.target(target)
                    : redrawn
                            ? words.situated(played)
                            : words.step(new Exercise.Step(played.shot(), target, played.position()));
            String name = link == null ? what : web.texts().of("tries.step", link.step(), what);
            int[] sum = counts.computeIfAbsent(name, key -> new int[2]);
            sum[0] += played.worked() ? 1 : 0;
            sum[1]++;
            for (TryRates.Row row : answer.rows()) {
                if (row.counts(run.drill(), played)) {
                    rates.put(name, TryWords.rate(row.rate()));
                }
            }
        }
        List<Row> rows = new ArrayList<>();
        counts.forEach((name, sum) -> rows.add(new Row(name, sum[0], sum[1], rates.get(name))));
        return rows;
    }

    /** Whether a set-up was changed on the way, so that shots must be told apart by it. */
    private static boolean redrawn(Run run, List<Try.Played> tries) {
        return run.drill() == Drill.SITUATION
                && tries.stream()
                                .map(played -> (played.chain() == null
                                                ? 1
                                                : played.chain().step())
                                        + played.position()
                                                .code(Board.usualWidth(
                                                        played.how().board())))
                                .distinct()
                                .count()
                        > tries.stream()
                                .map(played -> played.chain() == null
                                        ? 1
                                        : played.chain().step())
                                .distinct()
                                .count();
    }

    private @Nullable Picture picture(Run run, List<Try.Played> mine) {
        return picture(web.texts(), run.drill(), Board.usualWidth(run.setup().board()), mine);
    }

    /** Where bags ended, on a board; null where nobody said. */
    static @Nullable Picture picture(Texts texts, Drill drill, double width, List<Try.Played> tries) {
        List<BoardPictures.Mark> marks = new ArrayList<>();
        Map<String, Integer> off = new LinkedHashMap<>();
        List<String> misses = List.of("left", "right", "short", "long");
        misses.forEach(miss -> off.put(miss, 0));
        int told = 0;
        int in = 0;
        for (Try.Played played : tries) {
            Try.Rest rest = played.rest();
            if (rest != null) {
                told++;
                in += rest.outcome() == Outcome.IN ? 1 : 0;
                off.computeIfPresent(rest.miss(), (miss, number) -> number + 1);
                Spot spot = rest.spot();
                if (spot != null) {
                    marks.add(new BoardPictures.Mark(spot, played.worked()));
                }
            }
        }
        if (told == 0) {
            return null;
        }
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of(texts.of("try.rest.in"), String.valueOf(in)));
        rows.add(List.of(texts.of("outcome.on"), String.valueOf(marks.size())));
        misses.forEach(miss -> rows.add(List.of(texts.of("try.rest." + miss), String.valueOf(off.get(miss)))));
        return BoardPictures.rests(
                texts.of("tries.picture"),
                texts.of(
                        drill == Drill.PLACEMENT ? "tries.picture.placement" : "tries.picture.situation",
                        told,
                        marks.stream().filter(BoardPictures.Mark::worked).count(),
                        in,
                        off.getOrDefault("left", 0),
                        off.getOrDefault("right", 0),
                        off.getOrDefault("short", 0),
                        off.getOrDefault("long", 0)),
                new DataTable(List.of(texts.of("tries.picture.where"), texts.of("tries.picture.bags")), rows),
                width,
                marks,
                List.copyOf(off.values()));
    }
}
