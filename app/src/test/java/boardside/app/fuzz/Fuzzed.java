package boardside.app.fuzz;

import boardside.app.practice.Failure;
import boardside.app.record.Records;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What targets share: the bytes as text, what an error may say, and a store to put things into. */
public final class Fuzzed {
    /** What an error says when nobody thought of it. */
    private static final Pattern UNTHOUGHT =
            Pattern.compile("Cannot invoke|Exception|java\\.|boardside\\.|Index -?\\d+ out of|\\[statement:|^$");

    private static @Nullable Path folder;
    private static final Map<String, Records> STORES = new HashMap<>();

    private Fuzzed() {}

    /** The bytes as UTF-8; what is none becomes the replacement character. */
    public static String text(byte[] data) {
        return new String(data, StandardCharsets.UTF_8);
    }

    /**
     * Checks that an error was meant for whoever sent the input.
     *
     * @param input what was refused; what an error quotes of it is no fault of the error
     * @throws AssertionError if it reads like one that nobody thought of
     */
    public static void refused(RuntimeException error, String input) {
        Matcher unthought = UNTHOUGHT.matcher(String.valueOf(error.getMessage()));
        if (!(error instanceof Failure || error instanceof IllegalArgumentException)
                || unthought.find() && (unthought.group().isEmpty() || !input.contains(unthought.group()))) {
            throw new AssertionError("an error nobody thought of: " + error, error);
        }
    }

    /**
     * Checks that reading what was written gives the same.
     *
     * @throws AssertionError if not
     */
    public static void same(Object before, Object after) {
        if (!before.equals(after)) {
            throw new AssertionError("written and read again, " + before + " is " + after);
        }
    }

    /** A folder that goes with the process, in memory where there is such a place. */
    public static synchronized Path folder() {
        Path made = folder;
        if (made == null) {
            Path memory = Path.of("/dev/shm");
            try {
                made = Files.isWritable(memory)
                        ? Files.createTempDirectory(memory, "boardside-fuzz")
                        : Files.createTempDirectory("boardside-fuzz");
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            Path gone = made;
            Runtime.getRuntime().addShutdownHook(new Thread(() -> remove(gone)));
            folder = made;
        }
        return made;
    }

    /** A store of that name, with a player of id 1 at first, that stays open. */
    public static synchronized Records records(String name) {
        return STORES.computeIfAbsent(name, made -> {
            Records records = Records.open(folder().resolve(made + ".db").toString());
            records.firstPlayer();
            return records;
        });
    }

    private static void remove(Path gone) {
        try (Stream<Path> files = Files.walk(gone)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        } catch (IOException e) {
            // It is a folder for passing things.
        }
    }
}
