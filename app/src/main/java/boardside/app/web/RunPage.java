package boardside.app.web;

import boardside.app.json.Json;
import boardside.app.practice.Operation;
import boardside.app.practice.Player;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.record.Applied;
import boardside.app.record.RunDetail;
import boardside.app.record.Standing;
import boardside.app.watch.Metrics;
import boardside.engine.rules.Drill;
import io.javalin.http.Context;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Recording at the boards: the page, and where it sends what was tapped. */
final class RunPage {
    /** Beginnings of the texts its scripts need. */
    static final String[] TEXTS = {
        "run.",
        "drill.",
        "face.",
        "approach.",
        "board.",
        "conditions.",
        "setting.",
        "outcome.",
        "side.",
        "stakes.",
        "miss.",
        "throw."
    };

    private static final int MOST_OPERATIONS = 500;
    private static final Duration MOST_AHEAD = Duration.ofDays(366);

    private final Web web;
    private final TriesPage tries;
    private final Nights nights;
    private final PlanPage plans;

    RunPage(Web web, Nights nights, PlanPage plans) {
        this.plans = plans;
        this.web = web;
        this.tries = new TriesPage(web);
        this.nights = nights;
    }

    /** What the page's script starts from. */
    record Boot(
            int player,
            String token,
            Run run,
            List<Round> rounds,
            List<BagName> bags,
            String ghost,
            @Nullable Standing standing,
            Nights.@Nullable Boot night,
            @Nullable String challenge,
            @Nullable TrialBoot trial,
            @Nullable PlanBoot plan) {}

    record BagName(String id, String name) {}

    /**
     * What the script sends: everything it has not heard back about, oldest first.
     *
     * @param sentAt when, by the device's clock in epoch milliseconds; null where it does not say
     */
    record Upload(
            int player,
            List<Operation> operations,
            @Nullable Long sentAt) {}

    record Answer(List<Result> results) {}

    record Result(String op, String result, String message) {}

    void show(Context ctx) {
        Player player = web.player(ctx);
        RunDetail detail = web.run(player, ctx.pathParam("id"));
        Run run = detail.run();
        if (TriesPage.DRILLS.contains(run.drill())) {
            tries.show(ctx, player, detail, plans.boot(player, run.id()));
            return;
        }
        Integer rounds = run.setup().rounds();
        Boot boot = new Boot(
                player.id(),
                web.guard().token(ctx),
                run,
                detail.rounds(),
                bags(web, player, run),
                web.describe().ghost(run.setup()),
                rounds == null ? null : web.records().standing(player.id(), run.drill(), rounds, run.id()),
                run.drill() == Drill.FIXTURE ? nights.boot(player, run.id()) : null,
                web.records()
                        .challenges()
                        .of(player.id(), run.id())
                        .map(told -> ChallengePage.says(web.texts(), told.challenge()))
                        .orElse(null),
                TrialBoot.of(web, player, run),
                plans.boot(player, run.id()));
        web.show(
                ctx,
                "run",
                web.texts().of("drill." + run.drill().word()),
                Map.of(
                        "setup", run.setup(),
                        "scored", run.drill() == Drill.GAME,
                        "run", Json.write(boot),
                        "texts", Json.write(web.texts().startingWith(TEXTS))));
    }

    /** The bag sets to choose from during a run. */
    static List<BagName> bags(Web web, Player player, Run run) {
        return web.records().bags(player.id()).stream()
                .filter(bag -> !bag.retired() || run.setup().bags().contains(bag.id()))
                .map(bag -> new BagName(bag.id(), bag.name()))
                .toList();
    }

    /** Stores what was sent and says of each operation what became of it, once it is on disk. */
    void receive(Context ctx) {
        Upload upload = upload(ctx.body());
        Player player = web.mayRecordFor(ctx, upload.player());
        Instant now = web.now();
        List<Applied> applied = web.records().apply(player.id(), upload.operations(), now, ahead(upload.sentAt(), now));
        if (upload.operations().stream().anyMatch(Operation.FinishRun.class::isInstance)) {
            web.refresh(player.id());
        }
        count(upload.operations(), applied);
        web.answer(ctx, new Answer(applied.stream().map(RunPage::result).toList()));
    }

    /**
     * What was sent.
     *
     * @throws Refusal saying what is wrong with it
     */
    static Upload upload(String text) {
        Upload upload = OperationJson.read(text, Upload.class);
        if (upload.operations().size() > MOST_OPERATIONS) {
            throw new Refusal(400, "Send 1 to " + MOST_OPERATIONS + " operations at a time.");
        }
        return upload;
    }

    private void count(List<Operation> operations, List<Applied> applied) {
        Metrics metrics = web.metrics();
        for (int i = 0; i < applied.size(); i++) {
            metrics.operation(result(applied.get(i)).result());
            if (operations.get(i) instanceof Operation.PutRound && applied.get(i) instanceof Applied.Stored) {
                metrics.roundStored();
            }
        }
    }

    /** How far the device's clock is ahead of ours, the way here taken as no time; what can be no clock is not gone by. */
    static Duration ahead(@Nullable Long sentAt, Instant now) {
        if (sentAt == null) {
            return Duration.ZERO;
        }
        Duration ahead = Duration.between(now, Instant.ofEpochMilli(sentAt));
        return ahead.abs().compareTo(MOST_AHEAD) > 0 ? Duration.ZERO : ahead;
    }

    private static Result result(Applied applied) {
        if (applied instanceof Applied.Stored stored) {
            return new Result(stored.op(), "stored", "");
        }
        if (applied instanceof Applied.Repeated repeated) {
            return new Result(repeated.op(), "repeated", "");
        }
        Applied.Refused refused = (Applied.Refused) applied;
        return new Result(refused.op(), "refused", refused.message());
    }

    /** The token for this visitor, for a page that outlived its cookie. */
    void token(Context ctx) {
        web.answer(ctx, Map.of("token", web.guard().token(ctx)));
    }
}
