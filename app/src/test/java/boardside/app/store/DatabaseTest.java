package boardside.app.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.app.practice.Failure;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DatabaseTest {
    @TempDir
    Path folder;

    private static void execute(Path file, String sql) throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    @Test
    void fileAndFoldersArePrivate() throws Exception {
        Path file = folder.resolve("a").resolve("b c").resolve("store.db");
        Database.open(file.toString()).close();
        assertThat(Files.getPosixFilePermissions(file)).isEqualTo(PosixFilePermissions.fromString("rw-------"));
        assertThat(Files.getPosixFilePermissions(folder.resolve("a")))
                .isEqualTo(PosixFilePermissions.fromString("rwx------"));
    }

    @Test
    void storeOfANewerProgramIsRefusedAndLeftAlone() throws Exception {
        Path file = folder.resolve("store.db");
        Database.open(file.toString()).close();
        execute(
                file,
                "insert into flyway_schema_history (installed_rank, version, description, type, script, installed_by,"
                        + " execution_time, success) values (99, '999', 'x', 'SQL', 'x', 'x', 1, 1)");
        byte[] before = Files.readAllBytes(file);
        assertThatThrownBy(() -> Database.open(file.toString()))
                .isInstanceOf(Failure.StoreUnusable.class)
                .hasMessage("the store " + file + " was written by a newer Boardside (schema 999, this program knows "
                        + Schema.NEWEST + "): start that newer program, or give another store with --data");
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
    }

    @Test
    void databaseOfAnotherProgramIsRefused() throws Exception {
        Path file = folder.resolve("other.db");
        execute(file, "create table recipe (name text)");
        assertThatThrownBy(() -> Database.open(file.toString()))
                .isInstanceOf(Failure.StoreUnusable.class)
                .hasMessageContaining("holds tables of another program");
    }

    @Test
    void newestSchemaIsTheLastMigration() throws Exception {
        File[] migrations = new File(Objects.requireNonNull(getClass().getResource("/boardside/migrations"))
                        .toURI())
                .listFiles();
        int newest = 0;
        for (File migration : Objects.requireNonNull(migrations)) {
            newest = Math.max(newest, Integer.parseInt(migration.getName().replaceAll("^V(\\d+)__.*\\.sql$", "$1")));
        }
        assertThat(Schema.NEWEST).isEqualTo(newest);
    }

    @Test
    void acknowledgedMeansOnDisk() {
        try (Database database = Database.open(folder.resolve("store.db").toString())) {
            // synchronous 2 is FULL: SQLite documentation, "PRAGMA synchronous".
            assertThat((String) database.write(rows -> rows.pragma("synchronous")))
                    .isEqualTo("2");
            assertThat((String) database.write(rows -> rows.pragma("journal_mode")))
                    .isEqualTo("wal");
            assertThat((String) database.write(rows -> rows.pragma("foreign_keys")))
                    .isEqualTo("1");
            assertThat((String) database.read(rows -> rows.pragma("query_only")))
                    .isEqualTo("1");
        }
    }

    /** XDG base directory specification 0.8: $XDG_DATA_HOME if absolute, else $HOME/.local/share. */
    @Test
    void liesInTheUsersDataFolder() {
        assertThat(Database.defaultLocation(Map.of("XDG_DATA_HOME", "/d", "HOME", "/h")))
                .isEqualTo("/d/boardside/boardside.db");
        assertThat(Database.defaultLocation(Map.of("XDG_DATA_HOME", "d", "HOME", "/h")))
                .isEqualTo("/h/.local/share/boardside/boardside.db");
        assertThat(Database.defaultLocation(Map.of("HOME", "/h"))).isEqualTo("/h/.local/share/boardside/boardside.db");
    }
}
