package boardside.bench.live;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.bench.fault.Built;
import boardside.bench.fault.Program;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The short form of what docs/performance.md tells of match nights: few matches, with the program as it was just built. */
@Timeout(300)
class LiveBenchTest {
    private static final int MATCHES = 3;
    private static final int SPECTATORS = 12;
    private static final Map<String, String> HOSTED = Map.of("BOARDSIDE_HOSTED", "yes");

    @TempDir
    private Path folder;

    @Test
    void withOneOfTwoInstancesKilledNothingIsLostOrDoubledAndSpectatorsComeBack() throws Exception {
        List<String> command = Built.command();
        List<Process> instances = new ArrayList<>();
        try (EmbeddedPostgres postgres = EmbeddedPostgres.start()) {
            String url = postgres.getJdbcUrl("postgres", "postgres");
            List<String> players = LiveBench.prepare(command, url, MATCHES);
            try (Connection connection = postgres.getPostgresDatabase().getConnection();
                    Statement statement = connection.createStatement()) {
                for (String sql : players) {
                    statement.execute(sql);
                }
            }
            Program program = new Program(command, url, folder.resolve("log"));
            List<String> addresses = new ArrayList<>();
            for (int i = 0; i < 2; i++) {
                int port = Program.freePort();
                instances.add(program.serve(port, HOSTED));
                addresses.add("http://127.0.0.1:" + port);
            }
            LiveBench bench = new LiveBench(addresses, SPECTATORS, 2);
            assertThat(bench.run(
                            MATCHES,
                            4,
                            6,
                            "sleep 1; kill -KILL " + instances.get(0).pid()))
                    .isEmpty();
            assertThat(bench.acknowledged()).isGreaterThanOrEqualTo(5 * MATCHES);
            assertThat(instances.get(0).isAlive()).isFalse();
        } finally {
            instances.forEach(Process::destroyForcibly);
        }
    }
}
