package boardside.app.store;

import boardside.app.practice.Failure;
import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteException;

/** Which errors of a database are the machine's rather than the program's, and what to do about each. */
final class Troubles {
    /** SQLite's result codes, https://www.sqlite.org/rescode.html; the low byte is the primary one. */
    private static final int BUSY = 5;

    private static final int READONLY = 8;
    private static final int IOERR = 10;
    private static final int CORRUPT = 11;
    private static final int FULL = 13;
    private static final int CANTOPEN = 14;
    private static final int NOTADB = 26;

    private Troubles() {}

    /** The failure to tell where the machine is at fault; else what was thrown. */
    static RuntimeException told(RuntimeException thrown, String location) {
        String why = thrown instanceof Failure.StoreUnusable ? null : reason(thrown);
        return why == null
                ? thrown
                : new Failure.StoreUnusable("the store " + location + " does not work now: " + why, thrown);
    }

    /** PostgreSQL's code (SQLSTATE) of an error, or empty. */
    static String state(Throwable thrown) {
        for (Throwable cause = thrown; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLException e && e.getSQLState() != null) {
                return e.getSQLState();
            }
        }
        return "";
    }

    /** What is wrong with the machine and what to do, or null where it is none of its errors. */
    static @Nullable String reason(Throwable thrown) {
        for (Throwable cause = thrown; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLiteException e) {
                return sqlite(e.getResultCode().code & 0xff);
            }
            if (cause instanceof SQLTransientConnectionException) {
                return "the database gives no connection; see that it runs and is not overloaded";
            }
            if (cause instanceof SQLException e && e.getSQLState() != null) {
                return postgres(e.getSQLState());
            }
        }
        return null;
    }

    private static @Nullable String sqlite(int code) {
        return switch (code) {
            case BUSY -> "another program holds it; end that one, or wait";
            case READONLY -> "it is read-only; allow this user to write to the file and its folder";
            case IOERR -> "its disk fails or is gone; look at the disk";
            case CORRUPT, NOTADB ->
                "the file is damaged; stop Boardside, keep the file, and bring back the latest backup with"
                        + " boardside restore BACKUP --force";
            case FULL -> "its disk is full; make room";
            case CANTOPEN -> "the file cannot be opened; see that it and its folder are there";
            default -> null;
        };
    }

    /** By SQLSTATE, PostgreSQL's manual, appendix A. */
    private static @Nullable String postgres(String state) {
        if (state.equals("25006")) {
            return "it is read-only; connect to the server that takes writes";
        }
        if (state.equals("53100")) {
            return "the disk of its server is full; make room";
        }
        return switch (state.substring(0, Math.min(2, state.length()))) {
            case "08", "57" -> "the database is gone or stops; see that it runs";
            case "53" -> "the database has run out of something: memory or connections";
            case "58" -> "the database reports an error of its machine; see its log";
            case "XX" -> "the database reports damage; see its log";
            default -> null;
        };
    }
}
