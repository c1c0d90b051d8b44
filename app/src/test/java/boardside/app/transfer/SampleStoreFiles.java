package boardside.app.transfer;

import boardside.app.record.Records;
import boardside.app.record.SampleStore;
import boardside.app.record.Stores;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

/** Makes the files of the newest schema under {@code src/test/resources/stores}; no test of its own, run by hand. */
class SampleStoreFiles {
    @Test
    @EnabledIfSystemProperty(named = "boardside.sample", matches = "\\d+")
    void make() throws Exception {
        Path stores = Path.of("src/test/resources/stores");
        String version = "v" + System.getProperty("boardside.sample");
        Path file = stores.resolve(version + ".db");
        Files.deleteIfExists(file);
        StringBuilder all = new StringBuilder();
        try (Records records = Stores.open(file.toString(), 1)) {
            SampleStore.fill(records);
            records.snapshot(
                    snapshot -> JsonLines.write(snapshot, player -> true, true, true, all, LogFiles.Progress.NONE));
        }
        // One file, without a log beside it.
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            statement.execute("pragma journal_mode = delete");
            statement.execute("vacuum");
        }
        Files.writeString(stores.resolve(version + ".jsonl"), all);
    }
}
