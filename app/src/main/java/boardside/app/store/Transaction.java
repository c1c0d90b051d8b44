package boardside.app.store;

import org.jdbi.v3.core.Handle;

/** One transaction's view of the tables, by concept. Valid only while it runs. */
public final class Transaction {
    private final Handle handle;
    private boolean rolledBack;

    Transaction(Handle handle) {
        this.handle = handle;
    }

    /** Players and their bag sets. */
    public PlayerRows players() {
        return new PlayerRows(handle);
    }

    /** Sessions and runs. */
    public RunRows runs() {
        return new RunRows(handle);
    }

    /** Rounds with their lines and throws. */
    public RoundRows rounds() {
        return new RoundRows(handle);
    }

    /** Sums and counts derived from rounds. */
    public TallyRows tallies() {
        return new TallyRows(handle);
    }

    /** Corrections and deletions. */
    public HistoryRows history() {
        return new HistoryRows(handle);
    }

    /** Devices let in by a pairing code. */
    public DeviceRows devices() {
        return new DeviceRows(handle);
    }

    /** Asks for everything done in this transaction to be dropped at its end. */
    public void rollBack() {
        rolledBack = true;
    }

    /** A setting of SQLite, for checks. */
    String pragma(String name) {
        return handle.createQuery("pragma " + name).mapTo(String.class).one();
    }

    boolean rolledBack() {
        return rolledBack;
    }
}
