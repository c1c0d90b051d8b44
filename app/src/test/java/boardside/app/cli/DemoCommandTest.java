package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.File;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DemoCommandTest {
    @TempDir
    private Path folder;

    @Test
    void everyPageSaysThatItIsADemoAndNothingIsLeftBehind() throws Exception {
        Path data = Files.createDirectory(folder.resolve("data"));
        Path temporary = Files.createDirectory(folder.resolve("tmp"));
        ProcessBuilder builder = new ProcessBuilder(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Djava.io.tmpdir=" + temporary,
                        "-cp",
                        System.getProperty("java.class.path"),
                        "boardside.app.cli.Main",
                        "demo",
                        "--port",
                        "0"))
                .redirectError(new File(folder.toFile(), "errors"));
        builder.environment().put("XDG_DATA_HOME", data.toString());
        Process process = builder.start();
        try (BufferedReader out = process.inputReader()) {
            String address = out.readLine();
            for (String path : List.of("", "form", "form?days=0", "journal", "journal?page=9", "start/total")) {
                HttpResponse<String> page = HttpClient.newHttpClient()
                        .send(
                                HttpRequest.newBuilder(URI.create(address + path))
                                        .build(),
                                HttpResponse.BodyHandlers.ofString());
                // 202 where the answer is still being worked out.
                assertThat(page.statusCode()).as(path).isIn(200, 202);
                assertThat(page.body()).as(path).contains("Demo: invented practice", "Wren Tallow");
            }
            process.destroy();
            assertThat(process.waitFor(20, TimeUnit.SECONDS)).isTrue();
            assertThat(Files.readString(folder.resolve("errors")))
                    .contains("throws it away")
                    .doesNotContain("ERROR");
            try (Stream<Path> left = Files.list(temporary)) {
                assertThat(left.filter(path -> path.getFileName().toString().startsWith("boardside-demo")))
                        .isEmpty();
            }
            try (Stream<Path> real = Files.list(data)) {
                assertThat(real).as("real data").isEmpty();
            }
        } finally {
            process.destroyForcibly();
        }
    }

    @Test
    void aPortOutOfRangeIsRefused() {
        assertThat(Ran.of("demo", "--port", "70000").status()).isEqualTo(2);
    }
}
