package boardside.app.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;

/**
 * A command line run within the test.
 *
 * @param status exit status
 * @param out standard output
 * @param err standard error
 */
record Ran(int status, String out, String err) {
    /** The clock of all such commands. */
    static final Instant NOW = Instant.parse("2026-06-01T18:00:00Z");

    static Ran of(String... args) {
        return with("", args);
    }

    static Ran with(String in, String... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = new Cli(new Surroundings(
                        new PrintStream(out, true, StandardCharsets.UTF_8),
                        new PrintStream(err, true, StandardCharsets.UTF_8),
                        new ByteArrayInputStream(in.getBytes(StandardCharsets.UTF_8)),
                        Map.of(),
                        Clock.fixed(NOW, ZoneOffset.ofHours(2)),
                        false))
                .run(args);
        return new Ran(status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }
}
