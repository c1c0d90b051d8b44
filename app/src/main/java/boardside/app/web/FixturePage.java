package boardside.app.web;

import boardside.app.practice.Failure;
import boardside.app.practice.Fixture;
import boardside.app.practice.FixtureRun;
import boardside.app.practice.League;
import boardside.app.practice.Player;
import boardside.app.record.LeagueNight;
import boardside.app.record.LeagueState;
import boardside.engine.league.Reach;
import boardside.engine.skill.Interval;
import io.javalin.http.Context;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** A match: throw one's games, type posted totals, take the result to the league's chat. */
public final class FixturePage {
    private static final int MOST_WEEK = 999;

    private final Web web;
    private final LeaguesPage leagues;
    private final Nights nights;

    FixturePage(Web web, LeaguesPage leagues, Nights nights) {
        this.web = web;
        this.leagues = leagues;
        this.nights = nights;
    }

    /**
     * A match.
     *
     * @param games by number; empty where the player is not in it
     * @param next number of the game to throw next, or 0
     * @param chat the result as text, empty before anything is known
     */
    public record View(
            String path,
            String league,
            String leaguePath,
            String about,
            String due,
            List<Game> games,
            int next,
            String chat,
            List<Row> rows) {}

    /** A game of the player's own. */
    public record Game(String says, String run, boolean open) {}

    /** A game in the form of posted totals. */
    public record Row(int number, String first, String second) {}

    static String path(Fixture fixture) {
        return "/leagues/" + Numbers.path(fixture.league()) + "/fixtures/" + Numbers.path(fixture.id());
    }

    private Fixture fixture(Context ctx, LeagueState state) {
        return state.fixture(ctx.pathParam("fixture"))
                .orElseThrow(() -> new Refusal(
                        404, web.texts().of("night.nothing", state.league().name())));
    }

    void show(Context ctx) {
        Player player = web.player(ctx);
        LeagueState state = leagues.state(ctx, player);
        Fixture fixture = fixture(ctx, state);
        Map<String, String> values = new TreeMap<>();
        values.put("first", fixture.first());
        values.put("second", fixture.second());
        values.put("week", fixture.week() == 0 ? "" : String.valueOf(fixture.week()));
        values.put("deadline", fixture.deadline());
        for (int game = 1; game <= state.league().games(); game++) {
            values.put("first-" + game, text(fixture.game(game).first()));
            values.put("second-" + game, text(fixture.game(game).second()));
        }
        show(ctx, player, state, fixture, Fields.filled(web.texts(), values));
    }

    private static String text(@Nullable Integer number) {
        return number == null ? "" : number.toString();
    }

    private void show(Context ctx, Player player, LeagueState state, Fixture fixture, Fields fields) {
        League league = state.league();
        List<Game> games = new ArrayList<>();
        int next = 0;
        if (fixture.has(league.me())) {
            LeagueNight night = nights.night(player, state, fixture);
            for (int number = 1; number <= league.games(); number++) {
                FixtureRun run = state.thrown(fixture.id(), number).orElse(null);
                boolean toThrow = state.mine(fixture, number).first() == null;
                next = next == 0 && toThrow ? number : next;
                games.add(new Game(
                        says(web.texts(), state, fixture, number, night, run),
                        run == null ? "" : Numbers.path(run.run()),
                        run != null && !run.finished()));
            }
        }
        List<Row> rows = new ArrayList<>();
        for (int number = 1; number <= league.games(); number++) {
            rows.add(new Row(number, fields.value("first-" + number), fields.value("second-" + number)));
        }
        View view = new View(
                path(fixture),
                league.name(),
                LeaguesPage.path(league),
                fixture.week() == 0 ? "" : web.texts().of("league.week", fixture.week()),
                LeaguesPage.due(web, state, fixture),
                games,
                next,
                state.results().stream()
                                        .anyMatch(result -> result.first().equals(fixture.first())
                                                && !result.games().isEmpty())
                                || !games.isEmpty()
                        ? new MatchText(web.texts()).of(web.records(), player.id(), state, fixture)
                        : "",
                rows);
        Map<String, Object> values = new HashMap<>();
        values.put("view", view);
        values.put("fields", fields);
        web.show(ctx, "fixture", web.texts().of("league.match", fixture.first(), fixture.second()), values);
    }

    /** A game in a sentence or two: how it ended, or how it stands with what is needed and the chance. */
    static String says(
            Texts texts, LeagueState state, Fixture fixture, int number, LeagueNight night, @Nullable FixtureRun run) {
        Fixture.Totals totals = state.mine(fixture, number);
        Integer mine = totals.first();
        Integer theirs = totals.second();
        String opponent = fixture.against(state.league().me());
        if (mine != null && theirs != null) {
            String how = mine > theirs ? "won" : mine.equals(theirs) ? "tied" : "lost";
            return texts.of("night.game." + how, number, mine, theirs, opponent);
        }
        if (mine != null) {
            return texts.of("night.game.waiting", number, mine, opponent);
        }
        Integer points = run == null ? Integer.valueOf(0) : run.points();
        int thrown = run == null ? 0 : run.rounds();
        int left = state.league().rounds() - thrown;
        String begun = thrown == 0
                ? texts.of("night.game.open", number)
                : texts.of("night.game.begun", number, Objects.requireNonNullElse(points, 0), thrown);
        if (points == null || left <= 0) {
            return begun;
        }
        String needed = theirs == null
                ? ""
                : " " + texts.of("night.game.needed", opponent, theirs, pace(theirs + 1 - points, left), left);
        return begun + needed + chance(texts, night, state, fixture, number, points, left);
    }

    /** Points a round that are needed, rounded up to a tenth so that it is enough. */
    static String pace(int need, int left) {
        return Numbers.half(Math.max(0, Math.ceil(10.0 * need / left - 1e-9) / 10));
    }

    private static String chance(
            Texts texts, LeagueNight night, LeagueState state, Fixture fixture, int number, int points, int left) {
        return night.standing(state, fixture, number, points, left)
                .map(standing -> {
                    Reach.Game chances = standing.chances();
                    return chances == null ? "" : " " + chance(texts, fixture, state, standing, chances.win());
                })
                .orElse("");
    }

    private static String chance(
            Texts texts, Fixture fixture, LeagueState state, LeagueNight.Standing standing, Reach.Chance win) {
        String source = standing.rival()
                .source()
                .name()
                .toLowerCase(java.util.Locale.ROOT)
                .replace('_', '-');
        return texts.of(
                "run.night.chance." + source,
                Numbers.percent(new Interval(win.likely(), win.low(), win.high())),
                fixture.against(state.league().me()),
                standing.rival().totals());
    }

    /** Starts the next game, or goes on with the one under way. */
    void start(Context ctx) {
        Player player = web.player(ctx);
        LeagueState state = leagues.state(ctx, player);
        Fixture fixture = fixture(ctx, state);
        if (!state.toThrow(fixture)) {
            ctx.redirect(path(fixture));
            return;
        }
        int game = 1;
        while (state.mine(fixture, game).first() != null) {
            game++;
        }
        ctx.redirect("/runs/" + Numbers.path(nights.start(player, state, fixture, game)));
    }

    void save(Context ctx) {
        Player player = web.player(ctx);
        LeagueState state = leagues.state(ctx, player);
        League league = state.league();
        Fixture before = fixture(ctx, state);
        Fields fields = Fields.sent(ctx, web.texts());
        Integer week = fields.whole("week", 1, MOST_WEEK);
        String deadline = fields.value("deadline");
        if (!deadline.isEmpty()) {
            try {
                LocalDateTime.parse(deadline);
            } catch (DateTimeException e) {
                fields.fault("deadline", web.texts().of("night.deadline.fault"));
            }
        }
        Fixture after = before.withGames(List.of());
        for (int game = 1; game <= league.games(); game++) {
            after = after.withGame(
                    game,
                    new Fixture.Totals(
                            fields.whole("first-" + game, 0, league.mostPoints()),
                            fields.whole("second-" + game, 0, league.mostPoints())));
        }
        if (!fields.faulty()) {
            try {
                web.records()
                        .leagues()
                        .edit(
                                player.id(),
                                new Fixture(
                                        before.id(),
                                        before.league(),
                                        week == null ? 0 : week,
                                        fields.value("first"),
                                        fields.value("second"),
                                        deadline.length() > 16 ? deadline.substring(0, 16) : deadline,
                                        after.games(),
                                        false));
                ctx.redirect(path(before) + "?said=saved");
                return;
            } catch (Failure.BadInput e) {
                fields.fault("form", Web.sentence(e));
            } catch (IllegalArgumentException e) {
                fields.fault("form", web.texts().of("night.names.fault"));
            }
        }
        ctx.status(422);
        show(ctx, player, state, before, fields);
    }

    void delete(Context ctx) {
        Player player = web.player(ctx);
        LeagueState state = leagues.state(ctx, player);
        web.records().leagues().edit(player.id(), fixture(ctx, state).deleted(true));
        ctx.redirect(LeaguesPage.path(state.league()) + "?said=deleted");
    }
}
