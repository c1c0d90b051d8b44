package boardside.app.web;

import boardside.app.practice.Failure;
import boardside.app.record.HostedSeasons;
import boardside.app.season.Arrangement;
import boardside.app.season.MatchSide;
import boardside.engine.league.MatchResult.Award;
import boardside.engine.league.season.GameScore;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.league.season.SeasonMatch.Stage;
import boardside.engine.league.season.SeasonMatch.State;
import boardside.engine.league.season.TotalsSoFar;
import boardside.engine.league.season.Voice;
import boardside.engine.league.season.Window;
import boardside.engine.rules.Finish;
import boardside.engine.rules.Word;
import io.javalin.http.Context;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** A match of a season as its organiser has it: totals, and what may be arranged about it. */
public final class HostedMatchPage {
    private static final Pattern SIGNED = Pattern.compile("[-\u2212+]?\\d{1,5}");

    private final Web web;
    private final Hosted hosted;

    HostedMatchPage(Web web, Hosted hosted) {
        this.web = web;
        this.hosted = hosted;
    }

    /**
     * A match.
     *
     * @param stands what it came to so far
     * @param counts whether it counts for anybody, and can be changed
     * @param open whether games are still to be thrown
     * @param confirm whether it can be settled as told
     * @param reopen whether it can be opened again
     * @param disputable whether something was told that can be disputed
     * @param handicap whether it may have a head start
     * @param fair the fair head start in words
     * @param rounds of a game
     * @param watched where spectators see it
     */
    public record View(
            String seasonPath,
            String season,
            String path,
            String week,
            String window,
            String stands,
            boolean counts,
            boolean open,
            boolean confirm,
            boolean reopen,
            boolean disputable,
            String first,
            String second,
            List<Row> rows,
            boolean handicap,
            String fair,
            String note,
            int games,
            int rounds,
            LivePage.Drawn drawn,
            String watched) {}

    /** A game's fields. */
    public record Row(int number, String first, String second) {}

    void show(Context ctx) {
        Season season = hosted.season(ctx);
        SeasonMatch match = hosted.match(season, ctx);
        show(ctx, season, match, Fields.filled(web.texts(), values(season, match)));
    }

    private static Map<String, String> values(Season season, SeasonMatch match) {
        Map<String, String> values = new TreeMap<>();
        for (int game = 1; game <= season.rules().games(); game++) {
            values.put("first-" + game, typed(match.game(game).first()));
            values.put("second-" + game, typed(match.game(game).second()));
        }
        LocalDateTime extended = match.extended();
        values.put("until", extended == null ? "" : extended.toString());
        values.put("first-substitute", match.firstSubstitute());
        values.put("second-substitute", match.secondSubstitute());
        values.put("head-start", String.valueOf(match.headStart()));
        values.put("note", match.note());
        return values;
    }

    private static String typed(@Nullable Integer total) {
        return total == null ? "" : total.toString();
    }

    private void show(Context ctx, Season season, SeasonMatch match, Fields fields) {
        // What a form did not send stands as it is.
        Map<String, String> values = values(season, match);
        Fields all = fields.over(values);
        List<Row> rows = new ArrayList<>();
        for (int game = 1; game <= season.rules().games(); game++) {
            rows.add(new Row(game, all.value("first-" + game), all.value("second-" + game)));
        }
        Window window = season.window(match);
        String first = season.name(match.first());
        String second = season.name(match.second());
        boolean complete = match.complete(season.rules().games());
        // Once the play-off has begun, the round robin stands.
        boolean changeable =
                season.counts(match) && (match.stage() == Stage.PLAY_OFF || season.playOffStarts() == null);
        int fair = season.rules().handicap() ? TotalsSoFar.of(season).headStart(first, second) : 0;
        View view = new View(
                Hosted.path(season),
                season.name(),
                Hosted.path(season, match),
                hosted.words().week(season, match),
                web.texts()
                        .of(
                                match.extended() == null ? "hosted.match.window" : "hosted.match.window.extended",
                                hosted.words().opens(season, window),
                                hosted.words().closes(season, window),
                                season.weeks().zone().getId()),
                hosted.words().result(season, match),
                changeable,
                !complete && match.state() != State.FORFEITED,
                complete && !match.fixed(),
                match.state() != State.OPEN,
                !match.fixed() && !match.games().isEmpty(),
                first,
                second,
                rows,
                season.rules().handicap(),
                fair == 0
                        ? web.texts().of("hosted.match.head-start.fair.none")
                        : web.texts()
                                .of(
                                        "hosted.match.head-start.fair",
                                        hosted.words().headStart(season, match, fair)),
                match.note(),
                season.rules().games(),
                season.rules().rounds(),
                LivePage.drawn(
                        web,
                        web.records()
                                .matchNights()
                                .find(season.id(), match.id())
                                // Taken out meanwhile.
                                .orElseThrow(() ->
                                        new Failure.NotFound("there is no match " + match.id() + " in this season"))),
                LivePage.path(season.id(), match.id()));
        Map<String, @Nullable Object> model = new HashMap<>();
        model.put("view", view);
        model.put("fields", all);
        web.show(ctx, "hosted_match", hosted.words().match(season, match), model);
    }

    /** A change of a match, by what its form says. */
    private interface Change {
        void make(HostedSeasons seasons, Season season, SeasonMatch match, Fields fields);
    }

    /** Reads a form, makes its change, and shows the match; faults stand beside the field, or at the top. */
    private void change(Context ctx, String field, Change change) {
        Season season = hosted.season(ctx);
        SeasonMatch match = hosted.match(season, ctx);
        Fields fields = Fields.sent(ctx, web.texts());
        try {
            change.make(web.records().seasons(), season, match, fields);
        } catch (Failure.BadInput e) {
            fields.fault(field, Web.sentence(e));
        }
        if (fields.faulty()) {
            ctx.status(422);
            show(ctx, season, match, fields);
        } else {
            ctx.redirect(Hosted.path(season, match) + "?said=saved");
        }
    }

    void tell(Context ctx) {
        change(ctx, "form", (seasons, season, match, fields) -> {
            List<GameScore> games = new ArrayList<>();
            for (int game = 1; game <= season.rules().games(); game++) {
                games.add(new GameScore(
                        hosted.total(season.rules(), fields, "first-" + game),
                        hosted.total(season.rules(), fields, "second-" + game)));
            }
            if (!fields.faulty()) {
                seasons.tell(season.id(), match.id(), games, Voice.ORGANISER);
            }
        });
    }

    /** Sets a round right; an empty one is taken out. */
    void round(Context ctx) {
        change(ctx, "round", (seasons, season, match, fields) -> {
            Integer game = fields.whole("game", 1, season.rules().games());
            Integer number = fields.whole("number", 1, season.rules().rounds());
            String written = fields.value("bags");
            Finish finish = HostedMinePage.finish(written).orElse(null);
            if (game == null || number == null || finish == null && !written.isEmpty()) {
                fields.fault("round", web.texts().of("hosted.match.round.fault"));
                return;
            }
            MatchSide side = fields.value("side").equals("second") ? MatchSide.SECOND : MatchSide.FIRST;
            web.records().matchNights().correct(season.id(), match.id(), game, side, number, finish);
        });
    }

    void confirm(Context ctx) {
        change(
                ctx,
                "form",
                (seasons, season, match, fields) -> seasons.confirm(season.id(), match.id(), Voice.ORGANISER));
    }

    void reopen(Context ctx) {
        change(ctx, "form", (seasons, season, match, fields) -> seasons.reopen(season.id(), match.id()));
    }

    void dispute(Context ctx) {
        change(
                ctx,
                "why",
                (seasons, season, match, fields) -> seasons.dispute(season.id(), match.id(), fields.value("why")));
    }

    void forfeit(Context ctx) {
        change(ctx, "to", (seasons, season, match, fields) -> {
            String to = fields.value("to");
            if (Word.words(Award.class).contains(to)) {
                seasons.forfeit(season.id(), match.id(), Word.of(Award.class, to));
            } else {
                fields.fault("to", web.texts().of("hosted.match.forfeit.about"));
            }
        });
    }

    void extend(Context ctx) {
        change(ctx, "until", (seasons, season, match, fields) -> {
            LocalDateTime until = hosted.time(fields, "until", "hosted.match.extend.fault");
            if (!fields.faulty()) {
                seasons.arrange(season.id(), match.id(), Arrangement.of(match).until(until));
            }
        });
    }

    void substitute(Context ctx) {
        change(
                ctx,
                "first-substitute",
                (seasons, season, match, fields) -> seasons.arrange(
                        season.id(),
                        match.id(),
                        Arrangement.of(match)
                                .substitutes(fields.value("first-substitute"), fields.value("second-substitute"))));
    }

    void headStart(Context ctx) {
        change(ctx, "head-start", (seasons, season, match, fields) -> {
            String text = fields.value("head-start").replace("\u2212", "-");
            if (!SIGNED.matcher(text).matches()
                    || Math.abs(Integer.parseInt(text)) > season.rules().mostPoints()) {
                fields.fault(
                        "head-start",
                        web.texts()
                                .of(
                                        "hosted.match.head-start.fault",
                                        season.rules().mostPoints()));
            } else {
                seasons.arrange(season.id(), match.id(), Arrangement.of(match).headStart(Integer.parseInt(text)));
            }
        });
    }

    void note(Context ctx) {
        change(
                ctx,
                "note",
                (seasons, season, match, fields) -> seasons.arrange(
                        season.id(), match.id(), Arrangement.of(match).note(fields.value("note"))));
    }
}
