package boardside.app.record;

import boardside.app.practice.Ids;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;

/** The kinds of store every test of records runs on. */
public enum Stores {
    SQLITE {
        @Override
        public String location(Path folder) {
            return folder.resolve("boardside.db").toString();
        }
    },
    /** A server of the tests' own, or the one at the URL in BOARDSIDE_TEST_POSTGRES; a schema for each test. */
    POSTGRES {
        @Override
        public String location(Path folder) {
            String url = postgres();
            String schema = "test_" + ProcessHandle.current().pid() + "_" + SCHEMAS.incrementAndGet();
            try (Connection connection = DriverManager.getConnection(url);
                    Statement statement = connection.createStatement()) {
                statement.execute("create schema " + schema);
            } catch (SQLException e) {
                throw new IllegalStateException(e);
            }
            return url + (url.contains("?") ? "&" : "?") + "currentSchema=" + schema;
        }
    };

    private static final AtomicInteger SCHEMAS = new AtomicInteger();
    private static @Nullable EmbeddedPostgres server;

    /** A new, empty store's location. */
    public abstract String location(Path folder);

    /** Opens a store with ids that a seed fixes. */
    public static Records open(String location, long seed) {
        InstantSource clock = InstantSource.fixed(Instant.parse("2026-06-01T12:00:00Z"));
        return Records.open(location, clock, new Ids(clock, new Random(seed)));
    }

    private static synchronized String postgres() {
        String given = System.getenv("BOARDSIDE_TEST_POSTGRES");
        if (given != null && !given.isBlank()) {
            return given;
        }
        if (server == null) {
            try {
                EmbeddedPostgres started = EmbeddedPostgres.builder().start();
                Runtime.getRuntime().addShutdownHook(new Thread(() -> {
                    try {
                        started.close();
                    } catch (IOException e) {
                        throw new UncheckedIOException(e);
                    }
                }));
                server = started;
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return server.getJdbcUrl("postgres", "postgres");
    }
}
