package boardside.app.web;

import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import boardside.app.record.HostedSeasons;
import boardside.engine.league.season.Entrant;
import boardside.engine.league.season.GameScore;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.league.season.SeasonMatch.Said;
import boardside.engine.league.season.SeasonMatch.Stage;
import boardside.engine.league.season.SeasonMatch.State;
import boardside.engine.league.season.SeasonRules;
import boardside.engine.league.season.Voice;
import boardside.engine.league.season.Window;
import io.javalin.http.Context;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * The matches of a player in seasons that are run here: their own totals, and whether those told are right. A player says
 * nothing for anybody else: the other side's totals are to be agreed to or disputed.
 */
public final class HostedMinePage {
    private final Web web;
    private final Hosted hosted;

    HostedMinePage(Web web, Hosted hosted) {
        this.web = web;
        this.hosted = hosted;
    }

    /** A season with the player's matches, those that close first first, those that are settled last. */
    public record Mine(String path, String name, List<Line> matches) {}

    /** A match in a list. */
    public record Line(String path, String says, String more, boolean now) {}

    /**
     * A match of the player's.
     *
     * @param stands what it came to so far
     * @param tell whether totals can be told
     * @param confirm whether the totals told wait for the player's word
     * @param dispute whether they can be disputed
     */
    public record View(
            String seasonPath,
            String season,
            String path,
            String week,
            String window,
            String stands,
            String note,
            String other,
            boolean tell,
            boolean confirm,
            boolean dispute,
            List<Row> rows) {}

    /** A game: the player's total in a field, the other's as told. */
    public record Row(int number, String mine, String theirs) {}

    void list(Context ctx) {
        Player player = web.player(ctx);
        Instant now = web.now();
        List<Mine> seasons = new ArrayList<>();
        for (Season season : web.records().seasons().of(player.id())) {
            Hosted.entrant(season, player)
                    .map(entrant -> mine(season, entrant, now))
                    .ifPresent(seasons::add);
        }
        web.show(ctx, "hosted_mine", web.texts().of("hosted.mine"), Map.of("seasons", seasons));
    }

    /** Matches that are open now, for the first page. */
    static List<Line> due(Web web, Player player) {
        HostedMinePage page = new HostedMinePage(web, new Hosted(web));
        Instant now = web.now();
        return web.records().seasons().of(player.id()).stream()
                .flatMap(season -> Hosted.entrant(season, player).stream()
                        .flatMap(entrant -> page.mine(season, entrant, now).matches().stream()))
                .filter(Line::now)
                .toList();
    }

    private Mine mine(Season season, Entrant entrant, Instant now) {
        List<Line> lines = season.matches().stream()
                .filter(match -> match.has(entrant.id()))
                .sorted(Comparator.comparing((SeasonMatch match) -> !season.pending(match))
                        .thenComparing(match -> season.window(match).closes()))
                .map(match -> {
                    Window window = season.window(match);
                    boolean open = season.pending(match) && !now.isBefore(window.opens());
                    return new Line(
                            path(season, match),
                            hosted.words().match(season, match),
                            hosted.words().week(season, match) + ", "
                                    + web.texts()
                                            .of(
                                                    "hosted.week.closes",
                                                    hosted.words().closes(season, window))
                                    + ": " + hosted.words().result(season, match),
                            open);
                })
                .toList();
        return new Mine(Hosted.path(season) + "/table", season.name(), lines);
    }

    private static String path(Season season, SeasonMatch match) {
        return Hosted.path(season) + "/mine/" + Numbers.path(match.id());
    }

    /** The player's side of the match asked for. */
    private record Asked(Season season, SeasonMatch match, Voice voice) {
        boolean first() {
            return voice == Voice.FIRST;
        }

        @Nullable
        Integer mine(GameScore game) {
            return first() ? game.first() : game.second();
        }

        @Nullable
        Integer theirs(GameScore game) {
            return first() ? game.second() : game.first();
        }
    }

    private Asked asked(Context ctx) {
        Season season = hosted.season(ctx);
        SeasonMatch match = hosted.match(season, ctx);
        // Somebody else's match is told as one that does not exist.
        Entrant entrant = Hosted.entrant(season, web.player(ctx))
                .filter(one -> match.has(one.id()))
                .orElseThrow(() -> new Refusal(404, web.texts().of("hosted.match.nothing")));
        return new Asked(season, match, match.first().equals(entrant.id()) ? Voice.FIRST : Voice.SECOND);
    }

    void show(Context ctx) {
        show(ctx, asked(ctx), Fields.filled(web.texts(), Map.of()));
    }

    private void show(Context ctx, Asked asked, Fields sent) {
        Season season = asked.season();
        SeasonMatch match = asked.match();
        Map<String, String> values = new TreeMap<>();
        List<Row> rows = new ArrayList<>();
        for (int game = 1; game <= season.rules().games(); game++) {
            Integer mine = asked.mine(match.game(game));
            values.put("mine-" + game, mine == null ? "" : mine.toString());
        }
        Fields fields = sent.over(values);
        for (int game = 1; game <= season.rules().games(); game++) {
            rows.add(new Row(game, fields.value("mine-" + game), LeaguesPage.total(asked.theirs(match.game(game)))));
        }
        boolean changeable =
                season.pending(match) && (match.stage() == Stage.PLAY_OFF || season.playOffStarts() == null);
        Said mine = asked.first() ? Said.FIRST : Said.SECOND;
        Window window = season.window(match);
        View view = new View(
                Hosted.path(season) + "/table",
                season.name(),
                path(season, match),
                hosted.words().week(season, match),
                web.texts()
                        .of(
                                match.extended() == null ? "hosted.match.window" : "hosted.match.window.extended",
                                hosted.words().opens(season, window),
                                hosted.words().closes(season, window),
                                season.weeks().zone().getId()),
                hosted.words().result(season, match),
                match.note(),
                season.name(asked.first() ? match.second() : match.first()),
                changeable && match.state() != State.DISPUTED,
                changeable && match.state() == State.REPORTED && match.said() != mine,
                changeable && match.state() == State.REPORTED,
                rows);
        Map<String, @Nullable Object> model = new HashMap<>();
        model.put("view", view);
        model.put("fields", fields);
        web.show(ctx, "hosted_my_match", hosted.words().match(season, match), model);
    }

    /** A change of the player's match, by what their form says. */
    private interface Change {
        void make(HostedSeasons seasons, Asked asked, Fields fields);
    }

    private void change(Context ctx, String field, Change change) {
        Asked asked = asked(ctx);
        Fields fields = Fields.sent(ctx, web.texts());
        try {
            change.make(web.records().seasons(), asked, fields);
        } catch (Failure.BadInput e) {
            fields.fault(field, Web.sentence(e));
        }
        if (fields.faulty()) {
            ctx.status(422);
            show(ctx, asked, fields);
        } else {
            ctx.redirect(path(asked.season(), asked.match()) + "?said=saved");
        }
    }

    void tell(Context ctx) {
        change(ctx, "form", (seasons, asked, fields) -> {
            SeasonRules rules = asked.season().rules();
            List<GameScore> games = new ArrayList<>();
            boolean news = false;
            for (int game = 1; game <= rules.games(); game++) {
                Integer mine = hosted.total(rules, fields, "mine-" + game);
                news |= !Objects.equals(mine, asked.mine(asked.match().game(game)));
                Integer theirs = asked.theirs(asked.match().game(game));
                games.add(asked.first() ? new GameScore(mine, theirs) : new GameScore(theirs, mine));
            }
            // One's own totals said again agree to nobody else's, which may have been told since the page was opened.
            if (news && !fields.faulty()) {
                seasons.tell(asked.season().id(), asked.match().id(), games, asked.voice());
            }
        });
    }

    void confirm(Context ctx) {
        change(
                ctx,
                "form",
                (seasons, asked, fields) ->
                        seasons.confirm(asked.season().id(), asked.match().id(), asked.voice()));
    }

    void dispute(Context ctx) {
        change(
                ctx,
                "why",
                (seasons, asked, fields) ->
                        seasons.dispute(asked.season().id(), asked.match().id(), fields.value("why")));
    }
}
