package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.json.Json;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.OutputStream;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
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
    void aRequestUnderWayIsFinishedWhenItIsAskedToStop() throws Exception {
        Process process = start("serve", "--data", folder.resolve("store.db").toString(), "--port", "0");
        try (BufferedReader out = process.inputReader()) {
            String address = out.readLine();
            int port = URI.create(address).getPort();
            // The first requests of a process take a while to come to our code.
            assertThat(get(address).statusCode()).isEqualTo(200);
            try (Socket socket = new Socket("127.0.0.1", port)) {
                OutputStream body = socket.getOutputStream();
                body.write(("POST /api/outbox HTTP/1.1\r\nHost: localhost\r\nAccept: application/json\r\n"
                                + "Content-Type: application/x-www-form-urlencoded\r\nContent-Length: 10\r\n\r\n")
                        .getBytes(StandardCharsets.US_ASCII));
                for (int sent = 0; sent < 10; sent++) {
                    body.write('x');
                    TimeUnit.MILLISECONDS.sleep(200);
                    if (sent == 7) {
                        process.destroy();
                    }
                }
                String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
                assertThat(answer).startsWith("HTTP/1.1 403 ").contains("did not come from a page of Boardside");
            }
            assertThat(process.waitFor(20, TimeUnit.SECONDS)).isTrue();
        } finally {
            process.destroyForcibly();
        }
    }

    @Test
    void theNewestEntryOfTheChangelogIsThisVersion() throws IOException {
        assertThat(Files.readString(Path.of("..", "CHANGELOG.md")).lines().filter(line -> line.startsWith("## ")))
                .first()
                .isEqualTo("## " + boardside.app.web.Version.number());
    }

    @Test
    void logsAreOneJsonObjectALine() throws Exception {
        Process process = start(
                "serve",
                "--data",
                folder.resolve("store.db").toString(),
                "--port",
                "0",
                "--quiet",
                "--log",
                "json",
                "--log-level",
                "debug");
        try (BufferedReader out = process.inputReader()) {
            get(out.readLine() + "runs/secret");
        } finally {
            process.destroy();
            process.waitFor(20, TimeUnit.SECONDS);
            process.destroyForcibly();
        }
        List<String> lines = Files.readAllLines(folder.resolve("errors"));
        assertThat(lines)
                .allSatisfy(line ->
                        assertThat(Json.read(line, Map.class)).containsKeys("timestamp", "level", "formattedMessage"))
                .anyMatch(line -> line.contains("\"level\":\"INFO\"") && line.contains("Serving"))
                .anyMatch(line -> line.contains("GET \\/runs\\/{id} 404"))
                .noneMatch(line -> line.contains("secret"));
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
        if (Runtime.version().feature() >= 22) {
            // As the jar's manifest says, of which there is none here; Java would warn.
            command.add(1, "--enable-native-access=ALL-UNNAMED");
        }
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
