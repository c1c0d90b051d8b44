package boardside.engine.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class SlideVectorsTest {
    private static final Pattern NUMBER = Pattern.compile("-?\\d+\\.\\d+(E-?\\d+)?");

    private static List<Double> numbers(String json) {
        return NUMBER.matcher(json)
                .results()
                .map(MatchResult::group)
                .map(Double::parseDouble)
                .toList();
    }

    /** To nine digits: a virtual machine may round a logarithm otherwise. */
    @Test
    void theCommittedFileIsWhatTheEngineSays() throws IOException {
        assertThat(SlideVectors.FILE)
                .as("run SlideVectors.main in the engine's folder to write it anew")
                .exists();
        String committed = Files.readString(SlideVectors.FILE, StandardCharsets.UTF_8);
        String today = SlideVectors.json();
        assertThat(NUMBER.matcher(committed).replaceAll("n"))
                .isEqualTo(NUMBER.matcher(today).replaceAll("n"));
        List<Double> before = numbers(committed);
        List<Double> now = numbers(today);
        assertThat(before).hasSizeGreaterThan(2000);
        for (int i = 0; i < before.size(); i++) {
            assertThat(now.get(i)).isEqualTo(before.get(i), within(1e-9 * Math.max(1, Math.abs(before.get(i)))));
        }
    }
}
