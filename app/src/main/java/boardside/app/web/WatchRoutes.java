package boardside.app.web;

import boardside.app.record.Records;
import boardside.app.watch.Metrics;
import io.javalin.http.Context;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/** What programs that watch over this one ask: whether it lives, whether it can work, and its figures. */
final class WatchRoutes {
    /** Answered under any name and over plain HTTP too, since such programs know an address at best; they tell of nobody. */
    static final Set<String> PROBES = Set.of("/health", "/ready");

    /** Where figures are; they too are not sent on to HTTPS, which a scraper on this machine does not need. */
    static final String METRICS = "/metrics";

    /** How long the store may take to answer before it counts as not answering. */
    private static final long PATIENCE_MILLIS = 3000;

    /** How long an answer holds, so that asking often costs nothing. */
    private static final long HOLDS_NANOS = 1_000_000_000L;

    private final Records records;
    private final Metrics metrics;
    private final ExecutorService worker;

    /** What keeps the store from working, if anything, and when that was found out. */
    private record Found(Optional<String> trouble, long at) {}

    private volatile Found found = new Found(Optional.empty(), System.nanoTime() - HOLDS_NANOS);

    /**
     * @param worker asks the store, one question at a time; nobody else's, so that nothing else is waited for
     */
    WatchRoutes(Records records, Metrics metrics, ExecutorService worker) {
        this.records = records;
        this.metrics = metrics;
        this.worker = worker;
    }

    List<Route> routes() {
        return List.of(
                Route.get("/health", Access.PROBE, WatchRoutes::health),
                Route.get("/ready", Access.PROBE, this::ready),
                Route.get(METRICS, Access.MONITOR, this::metrics));
    }

    /** The process answers. */
    private static void health(Context ctx) {
        json(ctx, Map.of("status", "up"));
    }

    /** 200 if the store takes writes, else 503 with what is wrong and what to do. */
    private void ready(Context ctx) throws InterruptedException {
        Optional<String> trouble = trouble();
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("ready", trouble.isEmpty());
        trouble.ifPresent(why -> answer.put("store", why));
        ctx.status(trouble.isEmpty() ? 200 : 503);
        json(ctx, answer);
    }

    private synchronized Optional<String> trouble() throws InterruptedException {
        if (System.nanoTime() - found.at() >= HOLDS_NANOS) {
            found = new Found(asked(), System.nanoTime());
        }
        return found.trouble();
    }

    private Optional<String> asked() throws InterruptedException {
        Future<Optional<String>> answer = worker.submit(records::trouble);
        try {
            return answer.get(PATIENCE_MILLIS, TimeUnit.MILLISECONDS);
        } catch (TimeoutException e) {
            answer.cancel(false);
            return Optional.of("it does not answer within " + PATIENCE_MILLIS / 1000
                    + " seconds; see that its disk or database works, and that no long import runs");
        } catch (ExecutionException e) {
            return Optional.of("it fails; see the log");
        }
    }

    private void metrics(Context ctx) {
        ctx.contentType(Metrics.TYPE).result(metrics.text());
    }

    private static void json(Context ctx, Object value) {
        ctx.contentType("application/json; charset=utf-8").result(boardside.app.json.Json.write(value));
    }
}
