package boardside.app.web;

import boardside.app.json.Json;
import boardside.app.practice.Exercise;
import boardside.app.practice.Player;
import boardside.app.practice.Run;
import boardside.app.practice.Setup;
import boardside.app.practice.Try;
import boardside.app.record.RunDetail;
import boardside.app.record.TryRates;
import boardside.engine.rules.Drill;
import boardside.engine.tactics.Target;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Tries at targets and in situations, at the boards. */
final class TriesPage {
    /** Drills that consist of tries. */
    static final Set<Drill> DRILLS = Set.of(Drill.PLACEMENT, Drill.SITUATION);

    /** Beginnings of the keys of the texts that the page's script needs. */
    static final String[] TEXTS = {
        "run.", "try.", "shot.", "situations.", "stakes.", "board.", "face.", "approach.", "conditions.", "outcome."
    };

    private final Web web;

    TriesPage(Web web) {
        this.web = web;
    }

    /**
     * What the page's script starts from.
     *
     * @param tries in order; those taken back are there without what was played
     * @param rates what works how often, by target or shot, where the weakest is called more often
     */
    record Boot(
            int player,
            String token,
            Run run,
            List<Try> tries,
            List<RunPage.BagName> bags,
            Map<String, Double> rates,
            @Nullable PlanBoot plan) {}

    void show(Context ctx, Player player, RunDetail detail, @Nullable PlanBoot plan) {
        Run run = detail.run();
        Boot boot = new Boot(
                player.id(),
                web.guard().token(ctx),
                run,
                web.records().allTries(player.id(), run.id()),
                RunPage.bags(web, player, run),
                rates(web, player, run.drill(), run.setup()),
                plan);
        web.show(
                ctx,
                "tries",
                web.texts().of("drill." + run.drill().word()),
                Map.of(
                        "setup", run.setup(),
                        "drawn", run.drill() == Drill.SITUATION,
                        "run", Json.write(boot),
                        "texts", Json.write(web.texts().startingWith(TEXTS))));
    }

    /** By target, or by shot: then the one that works least anywhere stands for it. Empty where nothing is called by weakness. */
    static Map<String, Double> rates(Web web, Player player, Drill drill, Setup setup) {
        Map<String, Double> rates = new TreeMap<>();
        Exercise exercise = setup.exercise();
        if (exercise == null || exercise.call() != Exercise.Call.WEAKNESS) {
            return rates;
        }
        for (TryRates.Row row : TryRates.of(web.records(), player.id(), drill, web.today(), Set.of())
                .rows()) {
            Target target = row.target();
            if (row.board() == setup.board()) {
                rates.merge(
                        drill == Drill.PLACEMENT && target != null
                                ? target.text()
                                : row.shot().word(),
                        row.rate().estimate(),
                        Math::min);
            }
        }
        return rates;
    }
}
