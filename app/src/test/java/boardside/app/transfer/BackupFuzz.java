package boardside.app.transfer;

import boardside.app.fuzz.Fuzzed;
import boardside.app.practice.Failure;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Backups, compressed or not: read whole, or refused by line. What reads back whole is restored or refused as a whole. */
public final class BackupFuzz {
    private BackupFuzz() {}

    /** Opens the store before the time of the first input counts. */
    public static void fuzzerInitialize() {
        Fuzzed.records("backup");
    }

    /** One input. */
    public static void fuzzerTestOneInput(byte[] data) throws IOException {
        Path file = Fuzzed.folder().resolve("backup.jsonl");
        Files.write(file, data);
        try {
            Backups.read(file, LogFiles.Progress.NONE);
            Backups.restore(Fuzzed.records("backup"), file, true, LogFiles.Progress.NONE);
        } catch (Failure.BadInput refused) {
            Fuzzed.refused(refused, Fuzzed.text(data));
        }
    }
}
