package boardside.app.store;

import boardside.app.practice.Failure;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** Whether an SQLite file is whole, looked at through a connection that cannot write, so that nothing makes it worse. */
final class Integrity {
    /** The file, its log of what is not merged yet, and the index of that log. */
    private static final List<String> PARTS = List.of("", "-wal", "-shm");

    private Integrity() {}

    /**
     * Reads every page of a file and holds it against the others ({@code pragma quick_check}).
     *
     * @throws Failure.StoreUnusable if it is damaged; the file is as it was
     */
    static void verify(Path file) {
        if (!isThere(file)) {
            return;
        }
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        config.setBusyTimeout(20_000);
        try (Connection connection = config.createConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement();
                ResultSet found = statement.executeQuery("pragma quick_check(1)")) {
            String said = found.next() ? found.getString(1) : "nothing said";
            if (!said.equals("ok")) {
                throw damaged(file, said, null);
            }
        } catch (SQLiteException e) {
            if (isDamage(e)) {
                throw damaged(file, String.valueOf(e.getMessage()), e);
            }
            // Anything else is told where the store is opened to work with it.
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private static boolean isThere(Path file) {
        try {
            return Files.exists(file) && Files.size(file) > 0;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static boolean isDamage(SQLiteException e) {
        int code = e.getResultCode().code & 0xff;
        return code == SQLiteErrorCode.SQLITE_CORRUPT.code || code == SQLiteErrorCode.SQLITE_NOTADB.code;
    }

    /** What to tell of a damaged file, or of none at all: that it was left alone, and the way out. */
    static Failure.StoreUnusable damaged(Path file, String said, @Nullable Throwable cause) {
        if (isGzip(file)) {
            return new Failure.StoreUnusable(
                    file
                            + " is packed with gzip, as a backup is, and no store. To bring a backup back into a store: boardside"
                            + " restore " + file + " --data STORE",
                    cause);
        }
        Path backups = file.resolveSibling("backups");
        return Failure.StoreUnusable.damaged(
                "the store " + file + " is damaged, or no store of Boardside ("
                        + said.strip().replaceAll("\\s+", " ")
                        + "). It was left as it is. To go on from a backup: boardside restore BACKUP --force --data "
                        + file
                        + ", which sets the damaged file aside"
                        + (Files.isDirectory(backups) ? "; automatic backups lie in " + backups : ""),
                cause);
    }

    /** Whether a file begins as gzip does (RFC 1952, section 2.3.1). */
    private static boolean isGzip(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            return in.read() == 0x1f && in.read() == 0x8b;
        } catch (IOException e) {
            // It is told as what SQLite found.
            return false;
        }
    }

    /**
     * Gives a file and its log another name, so that a new store can be made in its place.
     *
     * @return the file's new name
     */
    static Path setAside(Path file, Instant now) {
        String suffix = ".damaged-"
                + DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss", Locale.ROOT)
                        .withZone(ZoneOffset.UTC)
                        .format(now);
        Path aside = file.resolveSibling(file.getFileName() + suffix);
        try {
            for (String part : PARTS) {
                Path from = file.resolveSibling(file.getFileName() + part);
                if (Files.exists(from)) {
                    // The log belongs to its file by name.
                    Files.move(from, file.resolveSibling(aside.getFileName() + part));
                }
            }
        } catch (IOException e) {
            throw new Failure.StoreUnusable("the damaged store " + file + " cannot be set aside: " + e.getMessage(), e);
        }
        return aside;
    }
}
