package boardside.app.fuzz;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every input kept in {@code src/test/fuzz}, a folder a target: seeds of our own, and what once broke something. docs/testing.md
 * says how to look for more.
 */
class CorpusTest {
    private static final Path CORPUS = Path.of("src", "test", "fuzz");

    static List<Path> inputs() throws IOException {
        try (Stream<Path> files = Files.walk(CORPUS)) {
            return files.filter(Files::isRegularFile).sorted().toList();
        }
    }

    @ParameterizedTest
    @MethodSource("inputs")
    void isReadOrRefused(Path input) throws Exception {
        String target = CORPUS.relativize(input).getName(0).toString();
        Method fuzz = Class.forName(target).getMethod("fuzzerTestOneInput", byte[].class);
        byte[] data = Files.readAllBytes(input);
        // A hang is what is looked for here; everything else takes milliseconds.
        assertTimeoutPreemptively(Duration.ofSeconds(30), () -> {
            try {
                fuzz.invoke(null, (Object) data);
            } catch (InvocationTargetException e) {
                throw new AssertionError(input.toString(), e.getCause());
            }
        });
    }

    @org.junit.jupiter.api.Test
    void thereIsACorpusForEveryTarget() throws IOException {
        try (Stream<Path> sources = Files.walk(Path.of("src", "test", "java"));
                Stream<Path> folders = Files.list(CORPUS)) {
            List<String> targets = sources.filter(file -> file.toString().endsWith("Fuzz.java"))
                    .map(file -> Path.of("src", "test", "java").relativize(file).toString())
                    .map(name -> name.replace(".java", "").replace('/', '.'))
                    .sorted()
                    .toList();
            assertThat(folders.map(folder -> folder.getFileName().toString()).sorted())
                    .isEqualTo(targets)
                    .isNotEmpty();
        }
    }
}
