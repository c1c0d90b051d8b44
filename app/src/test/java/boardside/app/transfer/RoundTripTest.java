package boardside.app.transfer;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.record.Records;
import boardside.app.record.Stores;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is written, read into an empty store and written again is the same, byte for byte. */
class RoundTripTest {
    @TempDir
    Path folder;

    private static void read(Records records, String log) {
        LogFiles.read(
                records,
                records.firstPlayer().id(),
                List.of(new LogFiles.Source("log", log.getBytes(StandardCharsets.UTF_8))),
                LogFiles.Progress.NONE);
    }

    private static String write(Records records) {
        StringBuilder out = new StringBuilder();
        LogFiles.write(records, records.firstPlayer().id(), out);
        return out.toString();
    }

    @ParameterizedTest(name = "{0}, seeds from {1}")
    @CsvSource({"SQLITE, 100, 15", "POSTGRES, 200, 5"})
    void sameBytes(Stores kind, long seed, int number) throws Exception {
        for (long each = seed; each < seed + number; each++) {
            String log = new RandomLogs(each).next();
            Path place = folder.resolve("seed" + each);
            Files.createDirectories(place);
            try (Records first = Stores.open(kind.location(place.resolve("1")), 1);
                    Records second = Stores.open(kind.location(place.resolve("2")), 2)) {
                read(first, log);
                String written = write(first);
                read(second, written);
                assertThat(write(second)).as("seed %d", each).isEqualTo(written);
                assertThat(second.check()).as("seed %d", each).isEmpty();
                // Nothing lost: as many rows out as went in.
                assertThat(rows(written)).as("seed %d", each).isEqualTo(rows(log));
                read(first, log);
                assertThat(write(first)).as("seed %d", each).isEqualTo(written);

                Path backup = place.resolve("backup");
                assertThat(Backups.write(first, backup, LogFiles.Progress.NONE))
                        .isEqualTo(Backups.restore(second, backup, true, LogFiles.Progress.NONE));
                assertThat(write(second)).as("seed %d", each).isEqualTo(written);
                assertThat(second.check()).as("seed %d", each).isEmpty();
            }
        }
    }

    private static long rows(String log) {
        try {
            Csv csv = new Csv(log);
            long rows = 0;
            while (csv.next() != null) {
                rows++;
            }
            return rows;
        } catch (Csv.Broken e) {
            throw new AssertionError(e);
        }
    }
}
