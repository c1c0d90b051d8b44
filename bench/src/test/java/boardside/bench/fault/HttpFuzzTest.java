package boardside.bench.fault;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The short form of the wild requests that docs/faults.md tells of, with the program as it was just built. */
class HttpFuzzTest {
    private static final Path APP = Path.of("..", "app");

    @TempDir
    private Path folder;

    private Program program() {
        return new Program(Built.command(), folder.resolve("fuzz.db").toString(), folder.resolve("log"));
    }

    @Test
    void wildRequestsAreAnsweredAndLeaveTheStoreSound() throws Exception {
        HttpFuzz fuzz = new HttpFuzz(program(), false, 5, HttpFuzz.documents(APP));
        HttpFuzz.Result result = fuzz.run(APP, 1500, 30);
        assertThat(result.faults()).as(result.statuses().toString()).isEmpty();
        assertThat(result.statuses()).containsKeys(200, 302, 400, 403, 404);
        assertThat(fuzz.described()).hasSizeGreaterThan(150);
        assertThat(result.routes())
                .as("every described route is asked for")
                .containsKeys(fuzz.described().toArray(String[]::new));
    }

    @Test
    void aFormThatIsNoneIsTheSendersFault() throws Exception {
        int port = Program.freePort();
        Process process = program().serve(port, Map.of());
        Wire wire = new Wire(port);
        try {
            String body = "--y\r\nnot what was announced";
            Wire.Answer answer = wire.send(("POST /players HTTP/1.1\r\nHost: 127.0.0.1:" + port
                            + "\r\nContent-Type: multipart/form-data; boundary=x\r\nContent-Length: " + body.length()
                            + "\r\n\r\n" + body)
                    .getBytes(StandardCharsets.UTF_8));
            assertThat(answer.status()).isEqualTo(400);
            assertThat(answer.body()).contains("could not be read");
        } finally {
            wire.close();
            process.destroy();
            process.waitFor();
        }
    }
}
