package boardside.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class StaticFilesTest {
    private static final Path FOLDER = Path.of("src", "main", "resources", "boardside", "static");

    @Test
    void theListNamesEveryFileOfTheFolderAndNoOther() throws IOException {
        try (Stream<Path> files = Files.walk(FOLDER)) {
            List<String> names = files.filter(Files::isRegularFile)
                    .map(file -> FOLDER.relativize(file).toString().replace('\\', '/'))
                    .sorted()
                    .toList();
            assertThat(StaticFiles.text("static.txt").lines())
                    .as("boardside/static.txt")
                    .containsExactlyElementsOf(names);
        }
    }
}
