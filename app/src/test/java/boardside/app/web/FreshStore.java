package boardside.app.web;

import boardside.app.record.Records;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** An empty store, copied: to make the tables anew takes a tenth of a second, and hundreds of tests want one. */
final class FreshStore {
    private static byte[] made = {};

    private FreshStore() {}

    /** Puts one where there is no file yet. */
    static synchronized void at(Path file) {
        try {
            if (made.length == 0) {
                Path folder = Files.createTempDirectory("boardside-fresh");
                Path first = folder.resolve("store.db");
                // Closing it brings everything into the one file.
                Records.open(first.toString()).close();
                made = Files.readAllBytes(first);
                Files.delete(first);
                Files.delete(folder);
            }
            if (!Files.exists(file)) {
                Files.write(file, made);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
