package boardside.engine.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import org.junit.jupiter.api.Test;

class ScoringVectorsTest {
    @Test
    void theCommittedFileIsWhatTheRulesGiveToday() throws IOException {
        assertThat(ScoringVectors.FILE)
                .as("run ScoringVectors.main in the engine's folder to write it anew")
                .exists();
        assertThat(Files.readString(ScoringVectors.FILE, StandardCharsets.UTF_8))
                .isEqualTo(ScoringVectors.json());
    }

    /** The games must show what they are there for. */
    @Test
    void theGamesCoverEveryEndAndTheFallBack() {
        String json = ScoringVectors.json();
        assertThat(json).contains("\"won\"]", "\"lost\"]", "\"open\"]", "\"ghost\": null", "\"firstThrow\": \"swap\"");
    }
}
