package boardside.app.web;

import boardside.app.json.Json;
import boardside.app.practice.GhostPlay;
import boardside.app.practice.Player;
import boardside.app.practice.Setup;
import boardside.app.record.Ghosts;
import boardside.engine.rules.Drill;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What a browser keeps for when there is no network: the service worker, the page that says what still works, and a page at the
 * boards on which a run is begun without the server.
 */
final class WithoutNetwork {
    private static final List<String> PARTS = List.of("throw", "seen", "sent", "rest");

    private static final String[] TEXTS =
            Stream.of(RunPage.TEXTS, TriesPage.TEXTS).flatMap(Stream::of).toArray(String[]::new);

    private final Web web;
    private final String worker;

    WithoutNetwork(Web web) {
        this.web = web;
        List<String> kept = new ArrayList<>(web.files().addresses());
        kept.add("/offline");
        this.worker = StaticFiles.text("worker.js")
                .replace("{version}", web.files().version())
                .replace("[/* files */]", Json.write(kept));
    }

    /**
     * A drill that is begun without the network, as the next run of it would be.
     *
     * @param name of the drill
     * @param says how it would be thrown
     * @param ghost what is raced against, in words, or empty
     * @param rates what works how often, for calling the weakest more often; empty for drills without tries
     */
    record Ready(String name, String says, String ghost, PlanBoot.Start start, Map<String, Double> rates) {}

    /** The run begun last: a pause of some hours after it begins a new session. */
    record Last(String id, String startedAt) {}

    /** What the page's script starts from. */
    record Boot(
            int player,
            String token,
            List<RunPage.BagName> bags,
            @Nullable Last last,
            List<Ready> ready) {}

    void worker(Context ctx) {
        ctx.header("Cache-Control", "no-cache")
                .contentType("text/javascript; charset=utf-8")
                .result(worker);
    }

    /** The same for everybody: it is kept with the program and names nobody. */
    void offline(Context ctx) {
        web.showToAnyone(ctx, "offline", web.texts().of("offline.title"), Map.of("parts", PARTS));
    }

    void boards(Context ctx) {
        Player player = web.player(ctx);
        List<Ready> ready = new ArrayList<>();
        for (Drill drill : HomePage.DRILLS) {
            ready.add(ready(player, drill));
        }
        Boot boot = new Boot(
                player.id(),
                web.guard().token(ctx),
                web.records().bags(player.id()).stream()
                        .filter(bag -> !bag.retired())
                        .map(bag -> new RunPage.BagName(bag.id(), bag.name()))
                        .toList(),
                web.records()
                        .lastRun(player.id(), null)
                        .map(run -> new Last(run.session(), run.startedAt()))
                        .orElse(null),
                ready);
        Map<String, @Nullable Object> values = new LinkedHashMap<>();
        values.put("setup", Setups.first(Drill.TOTAL));
        values.put("boot", Json.write(boot));
        values.put("texts", Json.write(web.texts().startingWith(TEXTS)));
        web.show(ctx, "throw", web.texts().of("throw.title"), values);
    }

    private Ready ready(Player player, Drill drill) {
        Setup last = web.nextSetup(player.id(), drill);
        GhostPlay play = last.ghostPlay();
        // The rounds a ghost plays are drawn now: later there may be nobody to ask.
        Setup setup = play == null
                ? last
                : last.with(draft -> draft.ghostPlay = Ghosts.play(
                        web.records(),
                        player.id(),
                        play.kind(),
                        play.of(),
                        web.ids().next()));
        Integer rounds = setup.rounds();
        return new Ready(
                web.texts().of("drill." + drill.word()),
                web.describe().tile(drill, setup),
                web.describe().ghost(setup),
                new PlanBoot.Start(
                        drill,
                        false,
                        web.nextOpponent(player.id(), drill),
                        setup,
                        rounds == null ? null : web.records().standing(player.id(), drill, rounds, "")),
                TriesPage.rates(web, player, drill, setup));
    }
}
