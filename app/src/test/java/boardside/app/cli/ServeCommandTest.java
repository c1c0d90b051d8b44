package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ServeCommandTest {
    @TempDir
    private Path folder;

    @Test
    void servesUntilItIsAskedToStopAndLeavesTheStoreClosed() throws Exception {
        Path store = folder.resolve("store.db");
        Process process = start("serve", "--data", store.toString(), "--port", "0");
        try (BufferedReader out = process.inputReader()) {
            String address = out.readLine();
            assertThat(address).startsWith("http://localhost:");
            assertThat(get(address).statusCode()).isEqualTo(200);
            assertThat(folder.resolve("store.db-wal")).exists();
            process.destroy();
            assertThat(process.waitFor(20, TimeUnit.SECONDS)).isTrue();
            // SQLite removes its log when the last connection was closed in order.
            assertThat(folder.resolve("store.db-wal")).doesNotExist();
            assertThat(Files.readString(folder.resolve("errors"))).doesNotContain("ERROR");
        } finally {
            process.destroyForcibly();
        }
    }

    @Test
    void aTakenPortIsToldWithWhatToDo() throws IOException {
        try (ServerSocket taken = new ServerSocket(0, 1, java.net.InetAddress.getByName("127.0.0.1"))) {
            String port = String.valueOf(taken.getLocalPort());
            Ran ran = Ran.of("serve", "--data", folder.resolve("store.db").toString(), "--port", port);
            assertThat(ran.status()).isEqualTo(2);
            assertThat(ran.out()).isEmpty();
            assertThat(ran.err())
                    .isEqualTo("port " + port + " is taken: maybe Boardside is running already. Stop that program, or"
                            + " give another port with --port\n");
        }
    }

    @Test
    void aPortOutOfRangeIsRefused() {
        Ran ran = Ran.of("serve", "--data", folder.resolve("store.db").toString(), "--port", "65536");
        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.err()).isEqualTo("--port: a port is 0 to 65535, not 65536\n");
        assertThat(folder.resolve("store.db"))
                .as("nothing is made for a wrong command")
                .doesNotExist();
    }

    @Test
    void aCertificateIsForHttpsAlone() {
        Ran ran = Ran.of("serve", "--data", folder.resolve("store.db").toString(), "--certificate", "any.pem");
        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.err()).isEqualTo("--certificate: a certificate is for HTTPS; add --tls\n");
    }

    @Test
    void forTheHouseItSaysHowAPhoneGetsInAndKeepsItsCertificateBesideTheStore() throws Exception {
        Path store = folder.resolve("store.db");
        Process process = start("serve", "--data", store.toString(), "--port", "0", "--lan", "--tls", "--json");
        try (BufferedReader out = process.inputReader()) {
            assertThat(out.readLine()).startsWith("{\"address\":\"https://localhost:");
            assertThat(folder.resolve("boardside-tls.p12")).exists();
        } finally {
            process.destroy();
            process.waitFor(20, TimeUnit.SECONDS);
            process.destroyForcibly();
        }
        assertThat(Files.readString(folder.resolve("errors"))).containsAnyOf("/pair?code=", "No house network");
    }

    /** The command in a process of its own, with this test's classes. */
    private Process start(String... args) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                "boardside.app.cli.Main"));
        command.addAll(List.of(args));
        return new ProcessBuilder(command)
                .redirectError(folder.resolve("errors").toFile())
                .start();
    }

    private static HttpResponse<String> get(String address) throws Exception {
        return HttpClient.newHttpClient()
                .send(HttpRequest.newBuilder(URI.create(address)).build(), HttpResponse.BodyHandlers.ofString());
    }
}
