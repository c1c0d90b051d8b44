package boardside.app.web;

import boardside.app.practice.Player;
import boardside.app.practice.Run;
import boardside.app.practice.Setup;
import boardside.engine.rules.Drill;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The first page: go on with the open run, throw the same again, or choose a drill. */
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

    private final Web web;

    HomePage(Web web) {
        this.web = web;
    }

    /** What the page shows; parts that do not apply are null. */
    public record View(@Nullable Offer open, @Nullable Offer again, List<Tile> tiles) {}

    /** A run to go on with or to repeat. */
    public record Offer(String id, String drill, String says) {
        /** The id as a part of an address. */
        public String path() {
            return Numbers.path(id);
        }
    }

    /** A drill to start. */
    public record Tile(String drill, String name, String says) {}

    void show(Context ctx) {
        Player player = web.player(ctx);
        Optional<Run> open = web.records().openRun(player.id());
        Optional<Run> last = web.records().lastRun(player.id(), null).filter(run -> DRILLS.contains(run.drill()));
        View view = new View(
                open.map(run -> offer(player, run)).orElse(null),
                open.isPresent() ? null : last.map(run -> offer(player, run)).orElse(null),
                DRILLS.stream().map(drill -> tile(player, drill)).toList());
        web.show(ctx, "home", web.texts().of("home.title"), Map.of("view", view));
    }

    private Offer offer(Player player, Run run) {
        return new Offer(run.id(), run.drill().word(), web.describe().run(run, web.bagNames(player.id())));
    }

    private Tile tile(Player player, Drill drill) {
        Setup setup = web.nextSetup(player.id(), drill);
        return new Tile(
                drill.word(),
                web.texts().of("drill." + drill.word()),
                web.describe().tile(drill, setup));
    }
}
