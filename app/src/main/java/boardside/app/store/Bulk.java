package boardside.app.store;

import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.Collections;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/**
 * Inserts many rows into one table by plain JDBC: named binding costs more than SQLite's own work where a million bags
 * come at once.
 */
final class Bulk implements AutoCloseable {
    private static final int AT_ONCE = 1000;

    private final PreparedStatement statement;
    private int waiting;

    Bulk(Handle handle, String table, List<String> columns) {
        this(handle, table, columns, "");
    }

    /** @param conflict what to do with rows that are there already, in SQL */
    Bulk(Handle handle, String table, List<String> columns, String conflict) {
        try {
            statement = handle.getConnection()
                    .prepareStatement("insert into " + table + " (" + String.join(", ", columns) + ") values ("
                            + String.join(", ", Collections.nCopies(columns.size(), "?")) + ")" + conflict);
        } catch (SQLException e) {
            throw new IllegalStateException(e.getMessage(), e);
        }
    }

    /** Adds a row, values in the order of the columns. */
    void add(@Nullable Object... values) {
        try {
            for (int i = 0; i < values.length; i++) {
                statement.setObject(i + 1, values[i]);
            }
            statement.addBatch();
            if (++waiting == AT_ONCE) {
                statement.executeBatch();
                waiting = 0;
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e.getMessage(), e);
        }
    }

    /** Sends what waits. */
    @Override
    public void close() {
        try (statement) {
            if (waiting > 0) {
                statement.executeBatch();
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e.getMessage(), e);
        }
    }
}
