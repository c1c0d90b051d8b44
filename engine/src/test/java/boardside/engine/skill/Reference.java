package boardside.engine.skill;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import java.util.stream.Stream;

/** Rows of a file of check values, split at commas, without the header; see reference/README.md. */
final class Reference {
    private Reference() {}

    static Stream<String[]> rows(String file) {
        try (InputStream in = Reference.class.getResourceAsStream("/reference/" + file)) {
            String text = new String(Objects.requireNonNull(in, file).readAllBytes(), StandardCharsets.UTF_8);
            return text.lines().skip(1).map(line -> line.split(",", -1)).toList().stream();
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }
}
