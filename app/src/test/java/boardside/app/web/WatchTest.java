package boardside.app.web;

import static boardside.app.web.Wire.ELSEWHERE;
import static boardside.app.web.Wire.HERE;
import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.json.Json;
import boardside.app.record.Records;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What programs that watch over a server hear. */
class WatchTest {
    @TempDir
    private Path folder;

    private Path store;
    private Records records;
    private Server server;

    @BeforeEach
    void serve() {
        store = folder.resolve("store.db");
        records = Records.open(store.toString());
        server = Wire.serverOfAHouse(records, Clock.systemDefaultZone(), new ServerOptions(0, true, null, false));
    }

    @AfterEach
    void stop() {
        server.close();
        records.close();
    }

    private Wire get(String address, String path, String... headers) {
        return Wire.get(address, server.port(), path, headers);
    }

    @Test
    void anybodyUnderAnyNameHearsWhetherItLivesAndWorksAndNothingElse() {
        for (String host : List.of("Host: probe.example", "Host: " + HERE)) {
            assertThat(get(ELSEWHERE, "/health", host).body()).isEqualTo("{\"status\":\"up\"}");
            Wire ready = get(ELSEWHERE, "/ready", host);
            assertThat(ready.status()).isEqualTo(200);
            assertThat(ready.body()).isEqualTo("{\"ready\":true}");
            assertThat(ready.header("set-cookie")).isEmpty();
        }
    }

    @Test
    void aStoreThatIsGoneIsToldWithWhatToDoAndTheProcessStillLives() throws Exception {
        assertThat(get(HERE, "/ready").status()).isEqualTo(200);
        Files.move(store, folder.resolve("away.db"));
        Thread.sleep(1100);
        Wire ready = get(HERE, "/ready");
        assertThat(ready.status()).isEqualTo(503);
        assertThat(Json.read(ready.body(), Map.class))
                .containsEntry("ready", false)
                .containsEntry(
                        "store", "its file is gone; stop Boardside, and bring the file or the latest backup back");
        assertThat(get(HERE, "/health").status()).isEqualTo(200);
        Files.copy(folder.resolve("away.db"), store);
        Thread.sleep(1100);
        assertThat(get(HERE, "/ready").body()).contains("was replaced while Boardside runs");
    }

    @Test
    void figuresAreInPrometheusTextAndCountWhatHappened() {
        get(HERE, "/journal/runs/secret-name");
        Wire metrics = get(HERE, "/metrics");
        assertThat(metrics.status()).isEqualTo(200);
        assertThat(metrics.header("content-type")).startsWith("text/plain; version=0.0.4");
        // Exposition formats, text format 0.0.4: # HELP, # TYPE, or name{labels} value.
        Pattern line = Pattern.compile("# (HELP|TYPE) [a-zA-Z_:][a-zA-Z0-9_:]* .*"
                + "|[a-zA-Z_:][a-zA-Z0-9_:]*(\\{([a-z_]+=\"[^\"]*\",?)*})? (NaN|[+-]?Inf|[+-]?[0-9.]+(E-?[0-9]+)?)");
        assertThat(metrics.body().lines()).allMatch(text -> line.matcher(text).matches());
        assertThat(metrics.body())
                .contains(
                        "boardside_http_request_seconds_count{method=\"GET\",route=\"/journal/runs/{id}\",status=\"4xx\"} 1",
                        "boardside_rounds_stored_total 0.0",
                        "boardside_outbox_operations_total{result=\"refused\"} 0.0",
                        "boardside_store_errors_total 0.0",
                        "boardside_build_info{version=\"" + Version.number() + "\"} 1",
                        "jvm_memory_used_bytes{area=\"heap\"}")
                .doesNotContain("secret-name");
    }

    @Test
    void figuresAreForThisMachineUnlessOpened() {
        assertThat(get(HERE, "/metrics", "Host: evil.example").status()).isEqualTo(421);
        assertThat(get(HERE, "/metrics", "X-Forwarded-For: 192.0.2.7").status()).isEqualTo(403);
        assertThat(get(ELSEWHERE, "/metrics").status()).isEqualTo(403);
        ServerOptions open = new ServerOptions(0, true, null, false, true, null);
        try (Server opened = Wire.serverOfAHouse(records, Clock.systemDefaultZone(), open)) {
            assertThat(Wire.get(ELSEWHERE, opened.port(), "/metrics").status()).isEqualTo(200);
        }
    }

    @Test
    void behindAProxyProbesNeedNeitherHttpsNorThePublicName() {
        Hosting hosting = Hosting.of(List.of("https://boards.example"), true, false);
        ServerOptions options = new ServerOptions(0, false, null, false, hosting);
        try (Server hosted = Server.start(records, options, Clock.systemDefaultZone())) {
            for (String path : List.of("/health", "/ready", "/metrics")) {
                assertThat(Wire.get(HERE, hosted.port(), path).status())
                        .as(path)
                        .isEqualTo(200);
            }
            assertThat(Wire.get(HERE, hosted.port(), "/sign-in").status()).isEqualTo(421);
            Wire throughTheProxy = Wire.get(
                    HERE,
                    hosted.port(),
                    "/metrics",
                    "Host: boards.example",
                    "X-Forwarded-For: 192.0.2.7",
                    "X-Forwarded-Proto: https");
            assertThat(throughTheProxy.status()).isEqualTo(403);
        }
    }
}
