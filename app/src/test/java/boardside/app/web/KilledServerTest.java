package boardside.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.record.Records;
import boardside.app.record.RunDetail;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** The server dies in the middle of a run, without a chance to say so, and comes back. */
class KilledServerTest extends Browser {
    @Test
    void aKilledServerLosesNothingAndDoublesNothing() throws Exception {
        Path store = folder.resolve("killed.db");
        int port = freePort();
        Process process = serve(store, port);
        String run;
        try {
            page.navigate("http://127.0.0.1:" + port + "/start/total");
            page.locator("#start").click();
            page.locator("[data-finish=\"4-0-0\"]").waitFor();
            assertThat(page.locator("#sent")).hasText("all stored");
            run = page.url().replaceFirst(".*/runs/", "");
            for (int round = 1; round <= 10; round++) {
                page.locator("[data-finish=\"3-1-0\"]").click();
                if (round == 3 || round == 7) {
                    process.destroyForcibly().waitFor();
                } else if (round == 5 || round == 9) {
                    process = serve(store, port);
                }
            }
            assertThat(page.locator("#sent")).hasText("all stored");
        } finally {
            process.destroyForcibly().waitFor();
        }
        try (Records reopened = Records.open(store.toString())) {
            RunDetail stored = reopened.run(reopened.firstPlayer().id(), run).orElseThrow();
            assertThat(stored.rounds()).hasSize(10);
            assertThat(stored.run().sum().points()).isEqualTo(100);
            assertThat(stored.run().finishedAt()).isNotNull();
        }
    }

    private static int freePort() throws IOException {
        try (ServerSocket free = new ServerSocket(0)) {
            return free.getLocalPort();
        }
    }

    private Process serve(Path store, int port) throws Exception {
        Path java = Path.of(System.getProperty("java.home"), "bin", "java");
        Process process = new ProcessBuilder(
                        java.toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        "boardside.app.cli.Main",
                        "--data",
                        store.toString(),
                        "serve",
                        "--port",
                        String.valueOf(port))
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(folder.resolve("serve.log").toFile())
                .start();
        for (int tries = 0; tries < 400 && process.isAlive(); tries++) {
            try (Socket socket = new Socket()) {
                socket.connect(new InetSocketAddress("127.0.0.1", port), 100);
                return process;
            } catch (IOException e) {
                TimeUnit.MILLISECONDS.sleep(50);
            }
        }
        throw new IllegalStateException("the server did not come up");
    }
}
