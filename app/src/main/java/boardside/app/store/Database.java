package boardside.app.store;

import boardside.app.practice.Failure;
import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import javax.sql.DataSource;
import org.jdbi.v3.core.Jdbi;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;
import org.sqlite.SQLiteException;
import org.sqlite.util.OSInfo;

/**
 * An open store: one SQLite file, or a PostgreSQL database. Thread safe.
 *
 * <p>SQLite: one connection writes, others read beside it (write-ahead log), so that a page never waits for a tap. What a
 * write has returned is on disk ({@code synchronous=FULL}).
 */
public final class Database implements AutoCloseable {
    private static final int READERS = 4;

    /** Commits that wait for a PostgreSQL server's disk together, which then writes once for all of them. */
    private static final int WRITERS = 16;

    private static final int TRIES = 5;
    private static final Set<String> AGAIN = Set.of("40001", "40P01");
    private static final int BUSY_MILLIS = 20_000;

    /** With less room than this, bytes, a store is in trouble before its writes fail. */
    private static final long LEAST_ROOM = 16L << 20;

    private static final String POSTGRES = "jdbc:postgresql:";

    private final String location;
    private final boolean sqlite;
    private final HikariDataSource writer;
    private final HikariDataSource reader;
    private final Jdbi writing;
    private final Jdbi reading;
    private final Signals signals;
    private final ReentrantLock turn = new ReentrantLock(true);
    private final @Nullable Opened file;

    /** Whether the machine did not let the last write through. */
    private volatile boolean failed;

    /** The file of a store, and which one of that name it was when it was opened. */
    private record Opened(Path path, @Nullable Object key) {}

    private Database(
            String location, @Nullable Opened file, HikariDataSource writer, HikariDataSource reader, Signals signals) {
        this.signals = signals;
        this.location = location;
        this.sqlite = file != null;
        this.file = file;
        this.writer = writer;
        this.reader = reader;
        this.writing = Jdbi.create(writer);
        this.reading = Jdbi.create(reader);
    }

    /**
     * Where the store lies unless told otherwise: {@code boardside/boardside.db} in the user's data folder.
     *
     * @param environment the process's environment variables
     */
    public static String defaultLocation(Map<String, String> environment) {
        String data = environment.getOrDefault("XDG_DATA_HOME", "");
        // The XDG base directory specification: a path that is not absolute is to be ignored.
        Path folder = data.startsWith("/")
                ? Path.of(data)
                : Path.of(environment.getOrDefault("HOME", System.getProperty("user.home")), ".local", "share");
        return folder.resolve("boardside").resolve("boardside.db").toString();
    }

    /** Whether a location names a PostgreSQL database rather than a file. */
    public static boolean isPostgres(String location) {
        return location.startsWith(POSTGRES);
    }

    /**
     * Opens a store, made or brought up to date if need be.
     *
     * @param location path of an SQLite file, or a {@code jdbc:postgresql:} URL
     * @throws Failure.StoreUnusable if it cannot be opened or was written by a newer program
     */
    public static Database open(String location) {
        boolean sqlite = !isPostgres(location);
        if (sqlite && location.startsWith("jdbc:")) {
            throw new Failure.StoreUnusable("the store " + location
                    + " is of a kind unknown here; give the path of a file, or a URL that begins with " + POSTGRES);
        }
        String told = sqlite ? location : location.replaceAll("(?i)(password=)[^&]*", "$1...");
        DataSource writeSource = null;
        DataSource readSource = null;
        Path file = null;
        if (sqlite) {
            file = prepare(location);
            writeSource = sqliteSource(file, SQLiteConfig.TransactionMode.IMMEDIATE);
            readSource = sqliteSource(file, SQLiteConfig.TransactionMode.DEFERRED);
        }
        HikariDataSource writer = null;
        try {
            writer = pool(location, writeSource, sqlite ? 1 : WRITERS, false);
            Schema.bringUpToDate(writer, told, file);
            Opened opened = file == null ? null : new Opened(file, key(file));
            return new Database(
                    told,
                    opened,
                    writer,
                    pool(location, readSource, READERS, true),
                    new Signals(sqlite ? null : location));
        } catch (IOException | RuntimeException e) {
            if (writer != null) {
                writer.close();
            }
            throw e instanceof Failure failure ? failure : unusable(told, e);
        }
    }

    /**
     * Looks whether the file of a store is whole; reads all of it.
     *
     * @throws Failure.StoreUnusable if it is damaged; the file is as it was
     */
    public static void verify(String location) {
        if (!isPostgres(location) && !location.isBlank()) {
            Integrity.verify(Path.of(location).toAbsolutePath());
        }
    }

    /** Puts SQLite's library for this machine into a folder; nothing where it has none for it. */
    public static void unpackDriver(Path folder) throws IOException {
        String library = System.mapLibraryName("sqlitejdbc");
        String packed = "/org/sqlite/native/" + OSInfo.getNativeLibFolderPathForCurrentOS() + "/" + library;
        try (InputStream in = Database.class.getResourceAsStream(packed)) {
            if (in != null) {
                Files.createDirectories(folder);
                Files.copy(in, folder.resolve(library), StandardCopyOption.REPLACE_EXISTING);
            }
        }
    }

    /** Gives a damaged file another name, which is returned, so that a new store can be made in its place. */
    public static Path setAside(String location, Instant now) {
        return Integrity.setAside(Path.of(location).toAbsolutePath(), now);
    }

    private static Failure unusable(String told, Exception e) {
        String why = e.getMessage();
        for (Throwable cause = e; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLException) {
                why = cause.getMessage();
            }
            if (cause instanceof SQLiteException damage && Integrity.isDamage(damage)) {
                return Integrity.damaged(Path.of(told).toAbsolutePath(), String.valueOf(why), e);
            }
        }
        String advice = isPostgres(told)
                ? "check the URL, and that the server runs and lets you in"
                : "check that it exists, that you may write there, and that the disk has room";
        return new Failure.StoreUnusable("the store " + told + " cannot be opened: " + advice + " (" + why + ")", e);
    }

    private static Path prepare(String location) {
        Path file = Path.of(location).toAbsolutePath();
        if (location.isBlank() || location.contains("?") || Files.isDirectory(file)) {
            throw new Failure.StoreUnusable("the store \"" + location
                    + "\" cannot be opened: give the path of a file, without a question mark");
        }
        try {
            boolean posix =
                    FileSystems.getDefault().supportedFileAttributeViews().contains("posix");
            Path folder = file.getParent();
            if (folder != null && !Files.exists(folder)) {
                Files.createDirectories(folder, mode(posix, "rwx------"));
            }
            if (!Files.exists(file)) {
                Files.createFile(file, mode(posix, "rw-------"));
            }
        } catch (IOException e) {
            throw new Failure.StoreUnusable(
                    "the store " + file + " cannot be made: check that you may write there ("
                            + e.getClass().getSimpleName() + ": " + e.getMessage() + ")",
                    new UncheckedIOException(e));
        }
        return file;
    }

    private static FileAttribute<?>[] mode(boolean posix, String permissions) {
        return posix
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(permissions))
                }
                : new FileAttribute<?>[0];
    }

    private static DataSource sqliteSource(Path file, SQLiteConfig.TransactionMode mode) {
        SQLiteConfig config = new SQLiteConfig();
        config.setJournalMode(SQLiteConfig.JournalMode.WAL);
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        config.enforceForeignKeys(true);
        config.setBusyTimeout(BUSY_MILLIS);
        config.setTransactionMode(mode);
        SQLiteDataSource source = new UnicodeLower(config);
        source.setUrl("jdbc:sqlite:" + file);
        return source;
    }

    private static HikariDataSource pool(
            String location, @Nullable DataSource source, int connections, boolean readOnly) {
        HikariConfig config = new HikariConfig();
        config.setPoolName(readOnly ? "read" : "write");
        config.setMaximumPoolSize(connections);
        config.setMinimumIdle(1);
        // Whoever waits longer is told to come again, rather than hold a thread that others need.
        config.setConnectionTimeout(source == null ? 5_000 : 30_000);
        if (source != null) {
            config.setDataSource(source);
            if (readOnly) {
                config.setConnectionInitSql("pragma query_only = on");
            }
        } else {
            config.setJdbcUrl(location);
            config.addDataSourceProperty("tcpKeepAlive", "true");
            config.setReadOnly(readOnly);
            if (readOnly) {
                config.setTransactionIsolation("TRANSACTION_REPEATABLE_READ");
            }
        }
        return new HikariDataSource(config);
    }

    /** The location as it may be shown: passwords hidden. */
    public String location() {
        return location;
    }

    /** Whether the store is an SQLite file. */
    public boolean sqlite() {
        return sqlite;
    }

    /** Reads from one consistent state. */
    public <T> T read(Function<Transaction, T> work) {
        try {
            return reading.inTransaction(handle -> work.apply(new Transaction(handle, new Signals.Batch())));
        } catch (RuntimeException e) {
            throw Troubles.told(e, location);
        }
    }

    /** Reads with a single statement: the same without the questions and answers that a transaction costs. */
    public <T> T ask(Function<Transaction, T> statement) {
        try {
            return reading.withHandle(handle -> statement.apply(new Transaction(handle, new Signals.Batch())));
        } catch (RuntimeException e) {
            throw Troubles.told(e, location);
        }
    }

    /**
     * Writes in one transaction: all of it is on disk when this returns, or nothing if {@code work} threw or asked for
     * {@link Transaction#rollBack()}. Where PostgreSQL ends it in favour of others that it got in the way of, {@code work} is
     * done again.
     *
     * @throws Failure.StoreUnusable if the machine does not let it: a full disk, a read-only file, a database that is gone
     */
    public <T> T write(Function<Transaction, T> work) {
        return write(work, TRIES);
    }

    /** The same for work that cannot be done again, such as reading a stream to its end. */
    public <T> T writeOnce(Function<Transaction, T> work) {
        return write(work, 1);
    }

    private <T> T write(Function<Transaction, T> work, int tries) {
        // Writers queue here, in order, rather than in SQLite's busy loop, which sleeps and is not fair.
        if (sqlite) {
            turn.lock();
        }
        Written<T> written;
        try {
            written = attempt(work, tries);
            failed = false;
        } catch (RuntimeException e) {
            RuntimeException told = Troubles.told(e, location);
            failed = failed || told instanceof Failure.StoreUnusable;
            throw told;
        } finally {
            if (sqlite) {
                turn.unlock();
            }
        }
        signals.tell(written.changes());
        return written.result();
    }

    private record Written<T>(T result, Signals.Batch changes) {}

    private <T> Written<T> attempt(Function<Transaction, T> work, int tries) {
        try {
            return writing.inTransaction(handle -> {
                Transaction transaction = new Transaction(handle, new Signals.Batch());
                T result = work.apply(transaction);
                if (transaction.rolledBack()) {
                    handle.rollback();
                }
                return new Written<>(result, transaction.signals());
            });
        } catch (RuntimeException e) {
            if (tries > 1 && AGAIN.contains(Troubles.state(e))) {
                return attempt(work, tries - 1);
            }
            throw e;
        }
    }

    /** What says to others what has changed. */
    public Signals signals() {
        return signals;
    }

    /**
     * What keeps the store from taking a write now, with what to do; empty if nothing does. Stores nothing, unless the last
     * write failed: then only one that works shows that it is over.
     */
    public Optional<String> trouble() {
        try {
            if (file != null) {
                Optional<String> trouble = troubleOf(file);
                if (trouble.isPresent()) {
                    return trouble;
                }
            }
            boolean writable = writing.inTransaction(handle -> {
                Transaction transaction = new Transaction(handle, new Signals.Batch());
                if (sqlite && failed) {
                    transaction.touch();
                }
                return transaction.writable(sqlite);
            });
            failed = failed && !writable;
            return writable
                    ? Optional.empty()
                    : Optional.of("the database is read-only; connect to one that takes writes");
        } catch (RuntimeException e) {
            String why = Troubles.reason(e);
            return Optional.of(why == null ? "it fails; see the log" : why);
        }
    }

    private static Optional<String> troubleOf(Opened opened) throws UncheckedIOException {
        Path path = opened.path();
        try {
            if (!Objects.equals(opened.key(), key(path))) {
                return Optional.of("its file was replaced while Boardside runs; start Boardside again");
            }
            if (!Files.isWritable(path)) {
                return Optional.of("it is read-only; allow this user to write to the file and its folder");
            }
            if (Files.getFileStore(path).getUsableSpace() < LEAST_ROOM) {
                return Optional.of("its disk has less than " + (LEAST_ROOM >> 20) + " MB left; make room");
            }
            return Optional.empty();
        } catch (IOException e) {
            return Optional.of("its file is gone; stop Boardside, and bring the file or the latest backup back");
        }
    }

    /** What tells a file from another of the same name (its inode); null where the system has none. */
    private static @Nullable Object key(Path path) throws IOException {
        return Files.readAttributes(path, BasicFileAttributes.class).fileKey();
    }

    @Override
    public void close() {
        signals.close();
        reader.close();
        writer.close();
    }

    /** SQLite's own {@code lower} knows ASCII only; names are searched in any script. */
    private static final class UnicodeLower extends SQLiteDataSource {
        UnicodeLower(SQLiteConfig config) {
            super(config);
        }

        @Override
        public org.sqlite.SQLiteConnection getConnection(@Nullable String user, @Nullable String password)
                throws SQLException {
            org.sqlite.SQLiteConnection connection = super.getConnection(user, password);
            org.sqlite.Function.create(connection, "lower", new org.sqlite.Function() {
                @Override
                protected void xFunc() throws SQLException {
                    String text = value_text(0);
                    if (text == null) {
                        result();
                    } else {
                        result(text.toLowerCase(Locale.ROOT));
                    }
                }
            });
            return connection;
        }
    }
}
