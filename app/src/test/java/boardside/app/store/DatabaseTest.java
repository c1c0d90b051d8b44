package boardside.app.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import boardside.app.record.Stores;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
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
    void whatPostgresEndsInFavourOfOthersIsDoneAgain() throws Exception {
        try (Database database = Database.open(Stores.POSTGRES.location(folder))) {
            int one = database.write(rows -> added(rows, "One"));
            int other = database.write(rows -> added(rows, "Other"));
            CyclicBarrier both = new CyclicBarrier(2);
            AtomicInteger attempts = new AtomicInteger();
            // The common pool may have one thread for both, where there are two cores.
            Executor threads = task -> new Thread(task).start();
            CompletableFuture<Integer> first =
                    CompletableFuture.supplyAsync(() -> crossing(database, one, other, both, attempts), threads);
            CompletableFuture<Integer> second =
                    CompletableFuture.supplyAsync(() -> crossing(database, other, one, both, attempts), threads);
            assertThat(first.get(60, TimeUnit.SECONDS) + second.get(60, TimeUnit.SECONDS))
                    .as("attempts of each")
                    .isEqualTo(attempts.get())
                    .isGreaterThan(2);
            for (int id : List.of(one, other)) {
                assertThat(database.<Long>read(
                                rows -> rows.players().find(id).orElseThrow().version()))
                        .isEqualTo(2);
            }
        }
    }

    private static int added(Transaction rows, String name) {
        return rows.players()
                .add(name, Player.Hand.RIGHT, Player.Hand.LEFT, "2026-06-01T12:00:00Z")
                .id();
    }

    /** Changes two players, the second once somebody else has changed that one and waits for the first. */
    private static int crossing(Database database, int first, int second, CyclicBarrier both, AtomicInteger attempts) {
        AtomicInteger mine = new AtomicInteger();
        return database.write(rows -> {
            attempts.incrementAndGet();
            rows.players().changed(first);
            if (mine.incrementAndGet() == 1) {
                try {
                    both.await(30, TimeUnit.SECONDS);
                } catch (Exception e) {
                    throw new IllegalStateException(e);
                }
            }
            rows.players().changed(second);
            return mine.get();
        });
    }

    @Test
    void workThatCannotBeDoneAgainIsDoneOnce() {
        AtomicInteger attempts = new AtomicInteger();
        try (Database database = Database.open(folder.resolve("store.db").toString())) {
            RuntimeException deadlock = new IllegalStateException(new SQLException("deadlock detected", "40P01"));
            assertThatThrownBy(() -> database.writeOnce(rows -> {
                        attempts.incrementAndGet();
                        throw deadlock;
                    }))
                    .isSameAs(deadlock);
            assertThat(attempts).hasValue(1);
            assertThatThrownBy(() -> database.write(rows -> {
                        attempts.incrementAndGet();
                        throw deadlock;
                    }))
                    .isSameAs(deadlock);
            assertThat(attempts).hasValue(6);
        }
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
