package boardside.app.watch;

import io.prometheus.metrics.core.metrics.Counter;
import io.prometheus.metrics.core.metrics.Gauge;
import io.prometheus.metrics.core.metrics.Histogram;
import io.prometheus.metrics.core.metrics.Info;
import io.prometheus.metrics.expositionformats.PrometheusTextFormatWriter;
import io.prometheus.metrics.instrumentation.jvm.JvmMetrics;
import io.prometheus.metrics.model.registry.PrometheusRegistry;
import io.prometheus.metrics.model.snapshots.Unit;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.concurrent.atomic.AtomicBoolean;

/**
 * Figures of a running server, as Prometheus reads them (text format 0.0.4). Names, routes and outcomes only: nothing of
 * players, addresses or what was recorded. Thread safe.
 */
public final class Metrics {
    /** The media type of {@link #text()}. */
    public static final String TYPE = PrometheusTextFormatWriter.CONTENT_TYPE;

    private final PrometheusRegistry registry = new PrometheusRegistry();
    private final AtomicBoolean machine = new AtomicBoolean();
    private final Histogram requests;
    private final Counter operations;
    private final Counter rounds;
    private final Counter storeErrors;
    private final Counter backups;
    private final Gauge lastBackup;

    /** Figures of a server of some version, all at nought. */
    public Metrics(String version) {
        Info build = Info.builder()
                .name("boardside_build")
                .help("The version that runs.")
                .labelNames("version")
                .register(registry);
        build.setLabelValues(version);
        requests = Histogram.builder()
                .name("boardside_http_request")
                .help("How long requests took, by route and class of status.")
                .unit(Unit.SECONDS)
                .classicOnly()
                .classicUpperBounds(0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 10)
                .labelNames("method", "route", "status")
                .register(registry);
        operations =
                counter("boardside_outbox_operations", "Operations sent by phones, by what became of them.", "result");
        rounds = counter("boardside_rounds_stored", "Rounds sent by phones and stored, corrections included.");
        storeErrors =
                counter("boardside_store_errors", "Requests that the store could not serve: full, read-only, gone.");
        backups = counter("boardside_backups", "Automatic backups, by how they ended.", "result");
        lastBackup = Gauge.builder()
                .name("boardside_backup_last_success_timestamp")
                .help("When the last automatic backup was written and read back, in seconds since 1970.")
                .unit(Unit.SECONDS)
                .register(registry);
        for (String result : new String[] {"stored", "repeated", "refused"}) {
            operations.initLabelValues(result);
        }
        for (String result : new String[] {"written", "failed"}) {
            backups.initLabelValues(result);
        }
    }

    private Counter counter(String name, String help, String... labels) {
        return Counter.builder().name(name).help(help).labelNames(labels).register(registry);
    }

    /**
     * A request was answered.
     *
     * @param route as the table of routes has it, with its parameters in braces
     * @param nanos from its first handler to its last
     */
    public void request(String method, String route, int status, long nanos) {
        requests.labelValues(method, route, status / 100 + "xx").observe(nanos / 1e9);
    }

    /** Operations of a phone came to an end: "stored", "repeated" or "refused". */
    public void operation(String result) {
        operations.labelValues(result).inc();
    }

    /** A round was stored. */
    public void roundStored() {
        rounds.inc();
    }

    /** The store could not be read or written. */
    public void storeError() {
        storeErrors.inc();
    }

    /** An automatic backup was written and read back. */
    public void backupWritten(Instant at) {
        backups.labelValues("written").inc();
        lastBackup.set(at.getEpochSecond());
    }

    /** An automatic backup could not be written. */
    public void backupFailed() {
        backups.labelValues("failed").inc();
    }

    /** All figures, those of the process included. */
    public String text() {
        // Asking the runtime for its figures costs a start something that most starts never need.
        if (machine.compareAndSet(false, true)) {
            JvmMetrics.builder().register(registry);
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream(1 << 14);
        try {
            PrometheusTextFormatWriter.create().write(out, registry.scrape());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString(StandardCharsets.UTF_8);
    }
}
