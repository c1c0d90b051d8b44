package boardside.app.web;

import boardside.app.practice.Fixture;
import boardside.app.practice.FixtureRun;
import boardside.app.practice.Line;
import boardside.app.practice.Operation;
import boardside.app.practice.Player;
import boardside.app.practice.Round;
import boardside.app.practice.Setup;
import boardside.app.record.LeagueNight;
import boardside.app.record.LeagueState;
import boardside.app.record.Leagues;
import boardside.app.record.SeasonAsLeague;
import boardside.app.season.MatchRun;
import boardside.engine.league.Reach;
import boardside.engine.league.season.Entrant;
import boardside.engine.league.season.Season;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Finish;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** A league night: starts games, and tells the page at the boards what it needs to do without the network. */
final class Nights {
    private final Web web;
    private final Remembered<LeagueNight> remembered;

    Nights(Web web) {
        this.web = web;
        this.remembered = web.remembered();
    }

    /** What the player's records say of a fixture's games. */
    LeagueNight night(Player player, LeagueState state, Fixture fixture) {
        String question = fixture.id() + " " + state.thrown().size() + " "
                + state.league().rounds();
        return remembered
                .get(
                        player,
                        web.today(),
                        question,
                        () -> LeagueNight.of(web.records(), player.id(), state, fixture.id(), web.today()))
                .value();
    }

    /**
     * What the page at the boards starts from.
     *
     * @param season id of the season that is run here, or empty
     * @param fixture id of the fixture, or of the season's match
     * @param path of the match's page
     * @param opponent who is on the other side
     * @param game number of this game
     * @param rounds of a game
     * @param games by number, game 1 first
     * @param reach by rounds left, none first; empty where records tell nothing
     */
    record Boot(
            String season,
            String fixture,
            String path,
            String opponent,
            int game,
            int rounds,
            List<Game> games,
            List<Chances> reach) {}

    /**
     * A game of the match.
     *
     * @param run id of its run, or empty
     * @param mine total thrown to the end or posted, or null
     * @param theirs posted total, or null
     * @param source where the chances of their total come from, or null where there are none
     * @param totals how many totals of theirs those go by
     * @param chances of each total of theirs from 0 on; empty where it is posted
     */
    record Game(
            String run,
            @Nullable Integer mine,
            @Nullable Integer theirs,
            @Nullable String source,
            int totals,
            List<Double> chances) {}

    /** Chances of so many points or more, from 0 on. */
    record Chances(List<Double> likely, List<Double> low, List<Double> high) {}

    /** What the page of a run needs to know of its match, or null where it was thrown for none. */
    @Nullable
    Boot boot(Player player, String run) {
        Optional<Leagues.OfRun> of = web.records().leagues().ofRun(player.id(), run);
        return of.isPresent()
                ? boot(
                        player,
                        of.get().state(),
                        of.get().fixture(),
                        of.get().game(),
                        "",
                        FixturePage.path(of.get().fixture()))
                : web.records()
                        .matchNights()
                        .ofRun(player.id(), run)
                        .flatMap(match -> ofMatch(player, match))
                        .orElse(null);
    }

    private Optional<Boot> ofMatch(Player player, MatchRun of) {
        return web.records()
                .seasons()
                .find(of.season())
                .flatMap(season -> Hosted.entrant(season, player).map(me -> match(season, me, player, of.match())))
                .flatMap(state -> state.fixture(of.match())
                        .map(fixture -> boot(
                                player,
                                state,
                                fixture,
                                of.game(),
                                of.season(),
                                HostedMinePage.path(of.season(), of.match()))));
    }

    /** A season as a player's league, with their own games of a match. */
    LeagueState match(Season season, Entrant me, Player player, String match) {
        return SeasonAsLeague.of(season, me, web.records().matchNights().thrown(player.id(), season.id(), match));
    }

    private Boot boot(Player player, LeagueState state, Fixture fixture, int game, String season, String path) {
        LeagueNight night = night(player, state, fixture);
        List<Game> games = new ArrayList<>();
        for (int number = 1; number <= state.league().games(); number++) {
            Fixture.Totals totals = state.mine(fixture, number);
            LeagueNight.Rival rival = night.rival(state, fixture, number).orElse(null);
            games.add(new Game(
                    state.thrown(fixture.id(), number).map(FixtureRun::run).orElse(""),
                    totals.first(),
                    totals.second(),
                    rival == null
                            ? null
                            : rival.source()
                                    .name()
                                    .toLowerCase(java.util.Locale.ROOT)
                                    .replace('_', '-'),
                    rival == null ? 0 : rival.totals(),
                    rival == null || totals.second() != null ? List.of() : rounded(rival.chances())));
        }
        return new Boot(
                season,
                fixture.id(),
                path,
                fixture.against(state.league().me()),
                game,
                state.league().rounds(),
                games,
                night.reach().stream().map(Nights::chances).toList());
    }

    private static Chances chances(Reach reach) {
        return new Chances(rounded(reach.likely()), rounded(reach.low()), rounded(reach.high()));
    }

    /** To a millionth: what is shown is whole hundredths, and the table stays small. */
    private static List<Double> rounded(List<Double> chances) {
        return chances.stream().map(chance -> Math.round(chance * 1e6) / 1e6).toList();
    }

    /** The set-up of a game: bags and the like as last thrown, at a league's stake, its rounds. */
    Setup setup(Player player, LeagueState state) {
        Drill before = web.records().lastRun(player.id(), Drill.FIXTURE).isPresent() ? Drill.FIXTURE : Drill.TOTAL;
        return web.nextSetup(player.id(), before).with(draft -> {
            draft.rounds = state.league().rounds();
            draft.setting = Setting.LEAGUE;
            draft.ghost = null;
            draft.target = null;
            draft.stakes = null;
        });
    }

    /** Starts a game of a fixture and returns its run's id; one that is under way or thrown is not started again. */
    String start(Player player, LeagueState state, Fixture fixture, int game) {
        return start(
                player,
                state,
                fixture,
                game,
                (run, at) -> List.of(new Operation.PlayFixture(web.ids().next(), fixture.id(), game, run)));
    }

    /** The same for a match of a season that is run here. */
    String startMatch(Player player, LeagueState state, Fixture match, int game) {
        return start(player, state, match, game, (run, at) -> List.of(play(match, game, run)));
    }

    private Operation play(Fixture match, int game, String run) {
        return new Operation.PlayMatch(web.ids().next(), match.league(), match.id(), game, run);
    }

    /** A game of such a match whose rounds are typed in afterwards, all of them: they carry no times. */
    String typeMatch(Player player, LeagueState state, Fixture match, int game, List<Finish> finishes) {
        Setup setup = setup(player, state);
        return start(player, state, match, game, (run, at) -> {
            List<Operation> operations = new ArrayList<>(List.of(play(match, game, run)));
            for (int number = 1; number <= finishes.size(); number++) {
                Finish finish = finishes.get(number - 1);
                Line line = new Line(
                        setup.bags().isEmpty() ? "" : setup.bags().get(0),
                        setup.face(),
                        setup.approach(),
                        setup.board(),
                        setup.setting(),
                        setup.conditions(),
                        null,
                        Finish.BAGS,
                        finish.in(),
                        finish.on(),
                        finish.off(),
                        Line.Misses.NONE,
                        "",
                        "");
                operations.add(new Operation.PutRound(
                        run, new Round(number, Side.ME, web.ids().next(), List.of(line), List.of())));
            }
            operations.add(new Operation.FinishRun(web.ids().next(), run, at));
            return operations;
        });
    }

    /** What follows the start of a run. */
    private interface Following {
        List<Operation> operations(String run, String at);
    }

    private String start(Player player, LeagueState state, Fixture fixture, int game, Following following) {
        Optional<FixtureRun> there = state.thrown(fixture.id(), game);
        if (there.isPresent()) {
            return there.get().run();
        }
        Setup setup = setup(player, state);
        return web.startRun(player, (run, session, at) -> {
            List<Operation> operations = new ArrayList<>();
            operations.add(new Operation.StartRun(
                    web.ids().next(),
                    run,
                    session,
                    Drill.FIXTURE,
                    at,
                    false,
                    fixture.against(state.league().me()),
                    null,
                    game,
                    setup));
            operations.addAll(following.operations(run, at));
            return operations;
        });
    }
}
