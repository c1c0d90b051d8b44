package boardside.app.web;

import boardside.app.practice.Board;
import boardside.app.practice.Player;
import boardside.app.practice.Try;
import boardside.app.record.Chains;
import boardside.app.record.TryRates;
import boardside.app.report.BoardPictures;
import boardside.app.report.DataTable;
import boardside.app.report.Picture;
import boardside.app.report.Pictures;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Word;
import boardside.engine.skill.Interval;
import boardside.engine.tactics.Rate;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** How often what was tried works, over all tries: by target, or by situation and shot. */
public final class RatesPage {
    private static final int MOST_PICTURED = 12;
    private static final int MOST_SITUATIONS = 10;
    private static final int LATEST = 150;

    private final Web web;
    private final Remembered<TryRates.Answer> remembered;

    RatesPage(Web web) {
        this.web = web;
        this.remembered = web.remembered();
    }

    /** One kind of try. */
    public record Row(String name, int worked, int tries, String rate) {}

    /** A chain of shots: what it is, each shot's rate, and the whole's. */
    public record Chain(String name, List<Row> steps, Row whole) {}

    /**
     * What the page shows.
     *
     * @param by what rates are told apart by, as words
     * @param said what to prefer where there is a choice, worded
     * @param ranges a picture of the rates, or null
     * @param rests where the latest bags ended, or null
     */
    public record View(
            String drill,
            List<String> by,
            List<Row> rows,
            List<String> said,
            List<Chain> chains,
            @Nullable Picture ranges,
            @Nullable Picture rests,
            boolean behind) {
        public List<String> choices() {
            return Word.words(TryRates.By.class);
        }
    }

    void placement(Context ctx) {
        show(ctx, Drill.PLACEMENT);
    }

    void situation(Context ctx) {
        show(ctx, Drill.SITUATION);
    }

    private void show(Context ctx, Drill drill) {
        Player player = web.player(ctx);
        Set<TryRates.By> by = EnumSet.noneOf(TryRates.By.class);
        for (String word : ctx.queryParams("by")) {
            if (Word.words(TryRates.By.class).contains(word)) {
                by.add(Word.of(TryRates.By.class, word));
            }
        }
        Remembered.Found<TryRates.Answer> found = remembered.get(
                player,
                web.today(),
                drill.word() + by,
                () -> TryRates.of(web.records(), player.id(), drill, web.today(), by));
        TryRates.Answer answer = found.value();
        TryWords words = new TryWords(web.texts(), web.records().situations(player.id()), web.bagNames(player.id()));
        List<Row> rows = answer.rows().stream()
                .map(row -> new Row(
                        ShotWords.capital(words.row(drill, row)), row.worked(), row.tries(), TryWords.rate(row.rate())))
                .toList();
        List<Try.Played> latest = new ArrayList<>();
        for (Try tried :
                web.records().latestTries(player.id(), drill, web.today().toString(), LATEST)) {
            Try.Played played = tried.played();
            if (played != null && played.how().board() == BoardKind.REGULATION) {
                latest.add(played);
            }
        }
        View view = new View(
                drill.word(),
                by.stream().map(Word::word).toList(),
                rows,
                answer.preferences().stream()
                        .map(preference -> ShotWords.capital(words.preference(drill, answer, preference)))
                        .toList(),
                drill == Drill.SITUATION ? chains(player, words) : List.of(),
                drill == Drill.SITUATION && by.isEmpty()
                        ? situations(answer, words, rows)
                        : ranges(drill, answer, words, rows),
                drill == Drill.PLACEMENT ? TriesSummary.picture(web.texts(), drill, 24, latest) : null,
                found.behind());
        web.show(ctx, "rates", title(drill), Map.of("view", view));
    }

    private String title(Drill drill) {
        return drill == Drill.PLACEMENT
                ? web.texts().of("rates.placement")
                : web.texts().of("rates.situation");
    }

    private List<Chain> chains(Player player, TryWords words) {
        List<Chain> chains = new ArrayList<>();
        for (Chains.Row row : Chains.of(web.records(), player.id(), web.today())) {
            List<Row> steps = new ArrayList<>();
            for (int i = 0; i < row.steps().size(); i++) {
                Chains.Step step = row.steps().get(i);
                steps.add(new Row(
                        web.texts()
                                .of("tries.step", i + 1, words.step(row.shots().get(i))),
                        step.worked(),
                        step.tries(),
                        TryWords.rate(step.rate())));
            }
            String start = words.position(row.shots().get(0).position(), BoardKind.REGULATION);
            chains.add(new Chain(
                    start,
                    steps,
                    new Row(web.texts().of("rates.chain"), row.worked(), row.goes(), TryWords.rate(row.rate()))));
        }
        return chains;
    }

    private @Nullable Picture ranges(Drill drill, TryRates.Answer answer, TryWords words, List<Row> rows) {
        if (answer.rows().isEmpty()) {
            return null;
        }
        List<Pictures.Named> named = answer.rows().stream()
                .limit(MOST_PICTURED)
                .map(row -> new Pictures.Named(ShotWords.capital(words.row(drill, row)), percent(row.rate())))
                .toList();
        return Pictures.ranges(
                web.texts().of("rates.picture"),
                web.texts().of("rates.picture.about", named.size()),
                data(rows),
                named);
    }

    private DataTable data(List<Row> rows) {
        return new DataTable(
                List.of(
                        web.texts().of("rates.what"),
                        web.texts().of("rates.worked"),
                        web.texts().of("rates.tries"),
                        web.texts().of("rates.rate")),
                rows.stream()
                        .map(row -> List.of(
                                row.name(), String.valueOf(row.worked()), String.valueOf(row.tries()), row.rate()))
                        .toList());
    }

    /** The situations most tried, as they lie, with what was tried in each. */
    private @Nullable Picture situations(TryRates.Answer answer, TryWords words, List<Row> rows) {
        Map<String, List<TryRates.Row>> byQuestion = new LinkedHashMap<>();
        for (TryRates.Row row : answer.rows()) {
            byQuestion
                    .computeIfAbsent(words.question(Drill.SITUATION, row), question -> new ArrayList<>())
                    .add(row);
        }
        List<BoardPictures.Asked> asked = byQuestion.entrySet().stream()
                .limit(MOST_SITUATIONS)
                .map(entry -> asked(entry.getKey(), entry.getValue(), words))
                .toList();
        return asked.isEmpty()
                ? null
                : BoardPictures.situations(
                        web.texts().of("rates.situations"),
                        web.texts().of("rates.situations.about", asked.size()),
                        data(rows),
                        asked);
    }

    private static BoardPictures.Asked asked(String name, List<TryRates.Row> rows, TryWords words) {
        TryRates.Row first = rows.get(0);
        return new BoardPictures.Asked(
                ShotWords.capital(name),
                first.position().bags(),
                Board.usualWidth(first.board()),
                rows.stream()
                        .map(row -> new Pictures.Named(words.way(row), percent(row.rate())))
                        .toList());
    }

    private static Interval percent(Rate rate) {
        return new Interval(100 * rate.estimate(), 100 * rate.low(), 100 * rate.high());
    }
}
