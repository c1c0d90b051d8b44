package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.json.Json;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What the command answers about a store, for tests elsewhere that show the same figures. */
public final class Answers {
    private Answers() {}

    /** An answer in JSON, today. */
    public static JsonNode json(Path store, String... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        List<String> line = new ArrayList<>(List.of("--data", store.toString(), "--json"));
        line.addAll(List.of(args));
        int status = new Cli(new Surroundings(
                        new PrintStream(out, true, StandardCharsets.UTF_8),
                        new PrintStream(err, true, StandardCharsets.UTF_8),
                        new ByteArrayInputStream(new byte[0]),
                        Map.of(),
                        Clock.systemDefaultZone(),
                        false))
                .run(line.toArray(String[]::new));
        assertThat(err.toString(StandardCharsets.UTF_8)).isEmpty();
        assertThat(status).isZero();
        try {
            return Json.MAPPER.readTree(out.toString(StandardCharsets.UTF_8));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }
}
