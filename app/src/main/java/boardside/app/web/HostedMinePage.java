package boardside.app.web;

import boardside.app.practice.Failure;
import boardside.app.practice.Fixture;
import boardside.app.practice.FixtureRun;
import boardside.app.practice.Player;
import boardside.app.record.HostedSeasons;
import boardside.app.record.LeagueNight;
import boardside.app.record.LeagueState;
import boardside.app.season.MatchNight;
import boardside.app.season.MatchSide;
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
import boardside.engine.rules.Finish;
import io.javalin.http.Context;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * The matches of a player in seasons that are run here: their own totals, and whether those told are right. A player says
 * nothing for anybody else: the other side's totals are to be agreed to or disputed.
 */
public final class HostedMinePage {
    private final Web web;
    private final Hosted hosted;

    private final Nights nights;

    HostedMinePage(Web web, Hosted hosted, Nights nights) {
        this.web = web;
        this.hosted = hosted;
        this.nights = nights;
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
            List<Row> rows,
            Night night) {}

    /**
     * A game: the player's total in a field, the other's as told.
     *
     * @param thrown whether the player's total follows from its rounds
     */
    public record Row(int number, String mine, String theirs, boolean thrown) {}

    /**
     * The match as it is thrown.
     *
     * @param games of the player, by number
     * @param next number of the game to throw next, or 0
     * @param typed numbers of games whose rounds can be typed in
     * @param rounds of a game
     * @param open whether spectators need no account
     * @param spectators address for them
     * @param overlay address for the video program
     * @param note what is to be known of changes now, or empty
     */
    public record Night(
            List<FixturePage.Game> games,
            int next,
            List<Integer> typed,
            int rounds,
            boolean open,
            String spectators,
            String overlay,
            String note,
            LivePage.Drawn drawn,
            List<LivePage.Stream> streams) {}

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
    List<Line> due(Player player) {
        Instant now = web.now();
        return web.records().seasons().of(player.id()).stream()
                .flatMap(season -> Hosted.entrant(season, player).stream()
                        .flatMap(entrant -> mine(season, entrant, now).matches().stream()))
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
        return path(season.id(), match.id());
    }

    /** The page of a match, for those who throw it. */
    static String path(String season, String match) {
        return "/seasons/" + Numbers.path(season) + "/mine/" + Numbers.path(match);
    }

    /** The player's side of the match asked for. */
    private record Asked(
            Season season, SeasonMatch match, Player player, Entrant me, MatchSide side, MatchNight night) {
        boolean first() {
            return side == MatchSide.FIRST;
        }

        Voice voice() {
            return side.voice();
        }

        /** Whether the player's rounds of a game are all there, so that its total follows from them. */
        boolean thrown(int game) {
            return night.rounds(game, side).size() == night.head().rounds();
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
        Season season = hosted.any(ctx);
        SeasonMatch match = hosted.match(season, ctx);
        Player player = web.player(ctx);
        // Somebody else's match is told as one that does not exist.
        Entrant entrant = Hosted.entrant(season, player)
                .filter(one -> match.has(one.id()))
                .orElseThrow(() -> new Refusal(404, web.texts().of("hosted.match.nothing")));
        return new Asked(
                season,
                match,
                player,
                entrant,
                match.first().equals(entrant.id()) ? MatchSide.FIRST : MatchSide.SECOND,
                web.records()
                        .matchNights()
                        .find(season.id(), match.id())
                        .orElseThrow(() -> new Refusal(404, web.texts().of("hosted.match.nothing"))));
    }

    void show(Context ctx) {
        Asked asked = asked(ctx);
        show(ctx, asked, Fields.filled(web.texts(), Map.of()));
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
        values.put("stream", Objects.requireNonNullElse(asked.night().streams().get(asked.side()), ""));
        Fields fields = sent.over(values);
        for (int game = 1; game <= season.rules().games(); game++) {
            rows.add(new Row(
                    game,
                    fields.value("mine-" + game),
                    LeaguesPage.total(asked.theirs(match.game(game))),
                    asked.thrown(game)));
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
                rows,
                night(ctx, asked));
        Map<String, @Nullable Object> model = new HashMap<>();
        model.put("view", view);
        model.put("fields", fields);
        web.show(ctx, "hosted_my_match", hosted.words().match(season, match), model);
    }

    private LeagueState state(Asked asked) {
        return nights.match(
                asked.season(), asked.me(), asked.player(), asked.match().id());
    }

    private Night night(Context ctx, Asked asked) {
        Season season = asked.season();
        LeagueState state = state(asked);
        Optional<Fixture> fixture = state.fixture(asked.match().id());
        List<FixturePage.Game> games = new ArrayList<>();
        List<Integer> typed = new ArrayList<>();
        int next = 0;
        boolean may = may(asked);
        if (fixture.isPresent()) {
            LeagueNight night = nights.night(asked.player(), state, fixture.get());
            for (int number = 1; number <= season.rules().games(); number++) {
                FixtureRun run = state.thrown(asked.match().id(), number).orElse(null);
                boolean toThrow = may && state.mine(fixture.get(), number).first() == null;
                next = next == 0 && toThrow ? number : next;
                if (toThrow && run == null) {
                    typed.add(number);
                }
                games.add(new FixturePage.Game(
                        FixturePage.says(web.texts(), state, fixture.get(), number, night, run),
                        run == null ? "" : Numbers.path(run.run()),
                        run != null && !run.finished()));
            }
        }
        String live = web.guard().address(ctx)
                + LivePage.path(season.id(), asked.match().id());
        return new Night(
                games,
                next,
                typed,
                season.rules().rounds(),
                season.open(),
                live,
                live + "/overlay",
                asked.night().head().throwing() ? "" : web.texts().of("hosted.mine.stands"),
                LivePage.drawn(web, asked.night()),
                LivePage.streams(asked.night()));
    }

    /** Whether games can be thrown now: the week has begun, and nothing is settled, disputed or given away. */
    private boolean may(Asked asked) {
        return asked.night().head().throwing()
                && !web.now().isBefore(asked.season().window(asked.match()).opens());
    }

    private Fixture toThrow(Asked asked, LeagueState state) {
        return state.fixture(asked.match().id())
                .filter(fixture -> may(asked))
                .orElseThrow(() -> new Refusal(422, web.texts().of("hosted.mine.not-now")));
    }

    /** Starts the next game, or goes on with the one under way. */
    void start(Context ctx) {
        Asked asked = asked(ctx);
        LeagueState state = state(asked);
        Fixture fixture = toThrow(asked, state);
        if (!state.toThrow(fixture)) {
            ctx.redirect(path(asked.season(), asked.match()));
            return;
        }
        int game = 1;
        while (state.mine(fixture, game).first() != null) {
            game++;
        }
        ctx.redirect("/runs/" + Numbers.path(nights.startMatch(asked.player(), state, fixture, game)));
    }

    /** Takes all rounds of a game that was thrown without the program. */
    void typed(Context ctx) {
        Asked asked = asked(ctx);
        LeagueState state = state(asked);
        Fixture fixture = toThrow(asked, state);
        Fields fields = Fields.sent(ctx, web.texts());
        SeasonRules rules = asked.season().rules();
        Integer game = fields.whole("game", 1, rules.games());
        List<Finish> finishes = new ArrayList<>();
        for (String written : fields.value("rounds").strip().split("[\\s,;]+")) {
            finish(written).ifPresentOrElse(finishes::add, () -> {
                if (fields.fault("rounds") == null) {
                    fields.fault("rounds", web.texts().of("hosted.mine.rounds.fault", written));
                }
            });
        }
        if (fields.fault("rounds") == null && finishes.size() != rules.rounds()) {
            fields.fault("rounds", web.texts().of("hosted.mine.rounds.count", rules.rounds(), finishes.size()));
        }
        if (game == null) {
            fields.fault("rounds", web.texts().of("field.whole", 1, rules.games()));
        } else if (state.thrown(fixture.id(), game).isPresent()
                || state.mine(fixture, game).first() != null) {
            fields.fault("rounds", web.texts().of("hosted.mine.rounds.there", game));
        }
        if (fields.faulty()) {
            ctx.status(422);
            show(ctx, asked, fields);
        } else {
            nights.typeMatch(asked.player(), state, fixture, Objects.requireNonNull(game), finishes);
            web.refresh(asked.player().id());
            ctx.redirect(path(asked.season(), asked.match()) + "?said=saved");
        }
    }

    /** A round as in-on-off; empty where it is none. */
    static Optional<Finish> finish(String written) {
        return written.matches("[0-4]-[0-4]-[0-4]")
                        && written.chars()
                                        .filter(Character::isDigit)
                                        .map(c -> c - '0')
                                        .sum()
                                == Finish.BAGS
                ? Optional.of(new Finish(written.charAt(0) - '0', written.charAt(2) - '0', written.charAt(4) - '0'))
                : Optional.empty();
    }

    /** Keeps where the player shows themselves throwing. */
    void stream(Context ctx) {
        change(
                ctx,
                "stream",
                (seasons, asked, fields) -> web.records().matchNights().stream(
                        asked.season().id(), asked.match().id(), asked.side(), fields.value("stream")));
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
                // What follows from rounds is typed by nobody.
                Integer mine = asked.thrown(game)
                        ? asked.mine(asked.match().game(game))
                        : hosted.total(rules, fields, "mine-" + game);
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
