package boardside.app.cli;

import boardside.app.fuzz.Fuzzed;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Command lines, a word a line, in a store of their own: done, no, or an error that says what to do. Input that begins with
 * {@code #} is a settings file.
 */
public final class CommandFuzz {
    /** Commands that read what is typed and write nothing but the store. */
    private static final Set<String> SAFE = Set.of(
            "record", "odds", "goal", "throw", "slide", "rates", "compare", "challenge", "coach", "season", "league");

    private CommandFuzz() {}

    /** One input. */
    public static void fuzzerTestOneInput(byte[] data) throws IOException {
        String text = Fuzzed.text(data);
        if (text.startsWith("#")) {
            Path file = Fuzzed.folder().resolve("settings.properties");
            Files.write(file, data);
            // A port that cannot be, so that nothing is ever served.
            run(List.of("serve", "--port", "70000"), Map.of("BOARDSIDE_SETTINGS", file.toString()));
            return;
        }
        List<String> words = text.lines().limit(40).toList();
        boolean sound = !words.isEmpty()
                && SAFE.contains(words.get(0))
                // Neither another store nor a file of arguments.
                && words.stream().noneMatch(word -> word.contains("--data") || word.startsWith("@"));
        if (sound) {
            run(
                    words,
                    Map.of(
                            "BOARDSIDE_DATA",
                            Fuzzed.folder().resolve("commands.db").toString()));
        }
    }

    private static void run(List<String> words, Map<String, String> environment) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = new Cli(new Surroundings(
                        new PrintStream(out, true, StandardCharsets.UTF_8),
                        new PrintStream(err, true, StandardCharsets.UTF_8),
                        new ByteArrayInputStream(new byte[0]),
                        environment,
                        Clock.fixed(Ran.NOW, ZoneOffset.UTC),
                        false))
                .run(words.toArray(new String[0]));
        String said = err.toString(StandardCharsets.UTF_8);
        if (status < 0 || status > 2 || said.contains("through no fault of yours") || status == 2 && said.isBlank()) {
            throw new AssertionError("status " + status + ": " + said);
        }
    }
}
