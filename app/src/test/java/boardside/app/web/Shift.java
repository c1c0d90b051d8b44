package boardside.app.web;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;

/** Turns time back for what a test has recorded, as if it had been days ago. */
final class Shift {
    private Shift() {}

    static void back(Path store, int days) {
        long millis = 86_400_000L * days;
        String earlier = "datetime(substr(started_at, 1, 19), '-" + days + " day')";
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + store);
                Statement statement = connection.createStatement()) {
            for (String table : new String[] {"session", "run"}) {
                statement.execute("update " + table + " set started_at = replace(" + earlier
                        + ", ' ', 'T') || substr(started_at, 20), started_ms = started_ms - " + millis
                        + ", day = date(day, '-" + days + " day')");
            }
            statement.execute("update player set version = version + 1");
        } catch (java.sql.SQLException e) {
            throw new IllegalStateException(e);
        }
    }
}
