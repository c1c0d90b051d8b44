package boardside.app.store;

import boardside.app.practice.Failure;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.jspecify.annotations.Nullable;

/** The store's schema version: read, refused when newer than this program, brought up to date when older. */
final class Schema {
    /** The newest migration this program ships. */
    static final int NEWEST = 11;

    private static final String TABLE = "flyway_schema_history";

    private Schema() {}

    /**
     * Brings a store up to date.
     *
     * @param file of an SQLite store, or null
     */
    static void bringUpToDate(DataSource source, String location, @Nullable Path file) {
        boolean sqlite = file != null;
        int version = version(source, sqlite);
        if (version > NEWEST) {
            throw new Failure.StoreUnusable("the store " + location + " was written by a newer Boardside (schema "
                    + version + ", this program knows " + NEWEST
                    + "): start that newer program, or give another store with --data");
        }
        // Flyway takes about a third of a second to wake up, most of a start; a store that fits needs none of it.
        if (version == NEWEST) {
            return;
        }
        if (file != null) {
            // To change the tables of a damaged file could make it worse.
            Integrity.verify(file);
        }
        try {
            Flyway.configure()
                    .dataSource(source)
                    .locations("classpath:boardside/migrations")
                    .table(TABLE)
                    // All of them or none.
                    .group(true)
                    .placeholders(Map.of("clustered", sqlite ? "without rowid" : ""))
                    .load()
                    .migrate();
        } catch (FlywayException e) {
            String message = String.valueOf(e.getMessage());
            throw new Failure.StoreUnusable(
                    message.contains("non-empty schema")
                            ? "the store " + location
                                    + " holds tables of another program; give another path with --data"
                            : "the store " + location + " cannot be brought up to date: " + message,
                    e);
        }
    }

    /** The schema's version, 0 for a new store. */
    private static int version(DataSource source, boolean sqlite) {
        String exists = sqlite
                ? "select count(*) from sqlite_master where type = 'table' and name = '" + TABLE + "'"
                : "select count(*) from information_schema.tables where table_schema = current_schema() and table_name = '"
                        + TABLE + "'";
        try (Connection connection = source.getConnection();
                Statement statement = connection.createStatement()) {
            try (ResultSet found = statement.executeQuery(exists)) {
                if (!found.next() || found.getInt(1) == 0) {
                    return 0;
                }
            }
            try (ResultSet newest = statement.executeQuery(
                    "select max(cast(version as integer)) from " + TABLE + " where version is not null and success")) {
                return newest.next() ? newest.getInt(1) : 0;
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e.getMessage(), e);
        }
    }
}
