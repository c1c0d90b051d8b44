package boardside.app.web;

import boardside.app.practice.Player;
import boardside.app.practice.Run;
import boardside.app.practice.Setup;
import boardside.engine.rules.Drill;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The first page, "what now?" at a glance: go on with the open run or throw the same again, matches that are due, a plan for the
 * minutes there are, what the last day came to; then every drill.
 */
public final class HomePage {
    /** Drills that can be started from the first page. */
    static final List<Drill> DRILLS = List.of(
            Drill.TOTAL,
            Drill.RACE,
            Drill.CLIMB,
            Drill.VOLUME,
            Drill.PLACEMENT,
            Drill.SITUATION,
            Drill.DUEL,
            Drill.GAME,
            Drill.CASUAL);

    /** Of each kind of match that is due, so that the page stays one glance. */
    private static final int MOST_DUE = 2;

    private final Web web;
    private final PlanPage plans;
    private final Lately lately;
    private final HostedMinePage matches;

    HomePage(Web web, PlanPage plans, Nights nights) {
        this.matches = new HostedMinePage(web, new Hosted(web), nights);
        this.web = web;
        this.plans = plans;
        this.lately = new Lately(web);
    }

    /**
     * What the page shows; parts that do not apply are null.
     *
     * @param first whether nothing was ever thrown
     * @param plan the plan under way, or null
     * @param nights league matches to throw next, one a league
     * @param matches matches of seasons run here that are open now
     * @param lately what the last day came to
     * @param caution where much more is thrown than usual
     */
    public record View(
            @Nullable Offer open,
            @Nullable Offer again,
            boolean first,
            PlanPage.@Nullable Card plan,
            List<Tile> tiles,
            List<LeaguesPage.Next> nights,
            List<HostedMinePage.Line> matches,
            @Nullable Day lately,
            @Nullable String caution) {
        /** Minutes to make a plan of. */
        public List<Integer> minutes() {
            return PlanPage.MINUTES;
        }
    }

    /** A run to go on with or to repeat. */
    public record Offer(String id, String drill, String says) {
        /** The id as a part of an address. */
        public String path() {
            return Numbers.path(id);
        }
    }

    /** A day, as part of an address, and what it came to. */
    public record Day(String day, String says) {}

    /** A drill to start. */
    public record Tile(String drill, String name, String says) {}

    void show(Context ctx) {
        Player player = web.player(ctx);
        Optional<Run> open = web.records().openRun(player.id());
        Optional<Run> any = web.records().lastRun(player.id(), null);
        Optional<Run> last = any.filter(run -> DRILLS.contains(run.drill()));
        View view = new View(
                open.map(run -> offer(player, run)).orElse(null),
                open.isPresent() ? null : last.map(run -> offer(player, run)).orElse(null),
                any.isEmpty(),
                plans.card(player),
                tiles(player),
                nights(player),
                matches.due(player).stream().limit(MOST_DUE).toList(),
                lately.of(player).map(said -> new Day(said.day(), said.says())).orElse(null),
                CalendarPage.caution(web.texts(), web.records().deeds().load(player.id(), web.today())));
        web.show(ctx, "home", web.texts().of("home.title"), Map.of("view", view));
    }

    private List<LeaguesPage.Next> nights(Player player) {
        return web.records().leagues().all(player.id()).stream()
                .flatMap(state ->
                        state.toThrow().stream().limit(1).map(fixture -> LeaguesPage.next(web, state, fixture)))
                .limit(MOST_DUE)
                .toList();
    }

    private Offer offer(Player player, Run run) {
        return new Offer(run.id(), run.drill().word(), web.describe().run(run, web.bagNames(player.id())));
    }

    private List<Tile> tiles(Player player) {
        List<Tile> tiles = new ArrayList<>();
        DRILLS.forEach(drill -> tiles.add(tile(player, drill)));
        tiles.add(TrialsPage.tile(web, player));
        return tiles;
    }

    private Tile tile(Player player, Drill drill) {
        Setup setup = web.nextSetup(player.id(), drill);
        return new Tile(
                drill.word(),
                web.texts().of("drill." + drill.word()),
                web.describe().tile(drill, setup));
    }
}
