package boardside.app.store;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import org.jspecify.annotations.Nullable;
import org.postgresql.PGConnection;
import org.postgresql.PGNotification;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Says what has changed to those who watch: in this process at once, in others over the same PostgreSQL database by its
 * notifications. Only that something changed is said, never what; whoever hears it reads the store. Thread safe.
 *
 * <p>Notifications are sent after the change is on disk, by a connection of their own, many at once: a transaction with one
 * holds up the commits of all others until it is done. A process that dies in between leaves others without the news; so does
 * a connection that is lost. Whoever must not miss anything asks the store again now and then, and when told to.
 */
public final class Signals implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Signals.class);
    private static final String CHANNEL = "boardside";
    private static final int LISTEN_MILLIS = 10_000;
    private static final int ALIVE_SECONDS = 5;
    private static final long AGAIN_MILLIS = 1000;
    private static final long STOP_MILLIS = 2000;

    /** Whoever watches. Called on threads of others: must not wait. */
    public interface Listener {
        /** Something of a topic has changed. */
        void changed(String topic);

        /** Changes may have gone unheard. */
        void missed();
    }

    /** What a transaction changes; said once it is on disk. */
    static final class Batch {
        private final Set<String> topics = new LinkedHashSet<>();

        void add(String topic) {
            topics.add(topic);
        }

        Collection<String> topics() {
            return topics;
        }
    }

    private final @Nullable String url;
    private final List<Listener> listeners = new CopyOnWriteArrayList<>();
    private final Set<String> waiting = new LinkedHashSet<>();
    private @Nullable Thread teller;
    private @Nullable Thread hearer;
    private volatile @Nullable Connection ear;

    /** The server's process that tells for this one; 0 while there is none. */
    private volatile int mouth;

    private volatile boolean closed;

    /** @param url of the PostgreSQL database, or null for a store of this process alone */
    Signals(@Nullable String url) {
        this.url = url;
    }

    /** Says what a transaction changed. */
    void tell(Batch batch) {
        if (batch.topics().isEmpty()) {
            return;
        }
        heard(batch.topics());
        if (url != null) {
            synchronized (waiting) {
                waiting.addAll(batch.topics());
                if (teller == null && !closed) {
                    teller = thread("tell", () -> telling(url));
                }
                waiting.notifyAll();
            }
        }
    }

    /** Tells a listener of all changes from now on, those that other processes make too. */
    public void listen(Listener listener) {
        listeners.add(listener);
        synchronized (waiting) {
            if (url != null && hearer == null && !closed) {
                hearer = thread("hear", () -> hearing(url));
            }
        }
    }

    /** Tells a listener no more. */
    public void leave(Listener listener) {
        listeners.remove(listener);
    }

    private static Thread thread(String name, Runnable work) {
        Thread thread = new Thread(work, "signals-" + name);
        thread.setDaemon(true);
        thread.start();
        return thread;
    }

    private void heard(Collection<String> topics) {
        for (Listener listener : listeners) {
            topics.forEach(listener::changed);
        }
    }

    /** Takes what waits to be told; empty when closed with nothing left. */
    private List<String> take() throws InterruptedException {
        synchronized (waiting) {
            while (waiting.isEmpty() && !closed) {
                waiting.wait();
            }
            List<String> some = List.copyOf(waiting);
            waiting.clear();
            return some;
        }
    }

    private void telling(String to) {
        Connection connection = null;
        try {
            for (List<String> topics = take(); !topics.isEmpty(); topics = take()) {
                for (int tries = 0; tries < 3; tries++) {
                    try {
                        connection = connection == null ? connect(to) : connection;
                        mouth = connection.unwrap(PGConnection.class).getBackendPID();
                        send(connection, topics);
                        break;
                    } catch (SQLException e) {
                        LOG.warn("other instances were not told of a change: {}", e.getMessage());
                        connection = dropped(connection);
                        Thread.sleep(closed ? 0 : AGAIN_MILLIS);
                    }
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            dropped(connection);
        }
    }

    private static Connection connect(String url) throws SQLException {
        Connection connection = DriverManager.getConnection(url);
        try (Statement statement = connection.createStatement()) {
            // News need not outlive a crash of the server, so nobody waits for its disk.
            statement.execute("set synchronous_commit to off");
        }
        return connection;
    }

    private static void send(Connection connection, List<String> topics) throws SQLException {
        try (PreparedStatement statement =
                connection.prepareStatement("select pg_notify('" + CHANNEL + "', topic) from unnest(?) as topic")) {
            statement.setArray(1, connection.createArrayOf("text", topics.toArray()));
            statement.execute();
        }
    }

    private static @Nullable Connection dropped(@Nullable Connection connection) {
        try {
            if (connection != null) {
                connection.close();
            }
        } catch (SQLException e) {
            LOG.debug("a connection did not close", e);
        }
        return null;
    }

    private void hearing(String from) {
        while (!closed) {
            try (Connection connection = connect(from);
                    Statement statement = connection.createStatement()) {
                ear = connection;
                // Whoever told before may be gone with that number.
                mouth = 0;
                statement.execute("listen " + CHANNEL);
                listeners.forEach(Listener::missed);
                PGConnection news = connection.unwrap(PGConnection.class);
                while (!closed && connection.isValid(ALIVE_SECONDS)) {
                    PGNotification[] some = news.getNotifications(LISTEN_MILLIS);
                    for (PGNotification one : some == null ? new PGNotification[0] : some) {
                        if (one.getPID() != mouth) {
                            heard(List.of(one.getParameter()));
                        }
                    }
                }
            } catch (SQLException e) {
                if (!closed) {
                    LOG.warn("changes by other instances are not heard of: {}", e.getMessage());
                }
            }
            try {
                Thread.sleep(closed ? 0 : AGAIN_MILLIS);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return;
            }
        }
    }

    /** Says what is still to be said, and stops. */
    @Override
    public void close() {
        closed = true;
        synchronized (waiting) {
            waiting.notifyAll();
        }
        try {
            if (teller != null) {
                teller.join(STOP_MILLIS);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        if (hearer != null) {
            hearer.interrupt();
        }
        dropped(ear);
    }
}
