package boardside.app.web;

import boardside.app.json.Json;
import boardside.app.record.MatchNights;
import boardside.app.season.MatchId;
import boardside.app.season.MatchNight;
import boardside.app.transfer.MatchRounds;
import io.javalin.http.Context;
import jakarta.servlet.ServletOutputStream;
import jakarta.servlet.WriteListener;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ThreadLocalRandom;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Sends matches to those who watch them, as server-sent events (WHATWG HTML, section 9.2): each event is the whole match as it
 * stands, so that whoever comes back after a failure, or is slow and misses some, has it all again.
 *
 * <p>A match that changes is read and written as JSON once, and those bytes go to all who watch it. Many that change together
 * are read together, and none more often than every {@value #GAP_MILLIS} ms: what comes in between is told with what comes
 * after. No thread waits for a spectator: what a connection does not take yet is replaced by what comes after it. Nothing is kept here but connections;
 * those of other instances hear of a change through the store. Whatever went unheard is found within {@value #BEAT_SECONDS}
 * seconds, when every match that is watched is asked whether it is as it was.
 */
final class Live implements AutoCloseable, MatchNights.Watcher {
    /** Connections of all spectators together; the rest is told to come again. */
    static final int MOST = 10_000;

    /** Connections from one address. */
    static final int MOST_OF_ONE = 250;

    private static final Logger LOG = LoggerFactory.getLogger(Live.class);
    private static final int BEAT_SECONDS = 15;
    private static final int GAP_MILLIS = 250;
    private static final long AGAIN_MILLIS = 1000;

    /** Beats that a connection may take nothing before it is given up. */
    private static final int MOST_STALLED = 3;

    /** Beats after which a connection ends, so that the spectator's browser asks anew and is let in, or not any more. */
    private static final int MOST_BEATS = 30 * 60 / BEAT_SECONDS;

    private static final byte[] BEAT = ":\n\n".getBytes(StandardCharsets.UTF_8);

    private final MatchNights nights;
    private final AutoCloseable watch;
    private final ScheduledExecutorService timer;
    private final Thread reader;
    private final BlockingQueue<Room> due = new LinkedBlockingQueue<>();
    private final Map<MatchId, Room> rooms = new ConcurrentHashMap<>();
    private final Map<String, Integer> byClient = new HashMap<>();
    private int connections;
    private volatile boolean closed;

    Live(MatchNights nights) {
        this.nights = nights;
        this.timer = Executors.newSingleThreadScheduledExecutor(work -> thread("live-beat", work));
        this.reader = thread("live", this::reading);
        reader.start();
        this.watch = nights.watch(this);
        timer.scheduleWithFixedDelay(this::beat, BEAT_SECONDS, BEAT_SECONDS, TimeUnit.SECONDS);
    }

    private static Thread thread(String name, Runnable work) {
        Thread thread = new Thread(work, name);
        thread.setDaemon(true);
        return thread;
    }

    /** Reads matches that changed, as many as there are by then, and sends each to those who watch it. */
    private void reading() {
        List<Room> some = new ArrayList<>();
        while (!closed) {
            try {
                some.clear();
                some.add(due.take());
                due.drainTo(some, MatchNights.MOST_AT_ONCE - 1);
                some.forEach(Room::begin);
                Map<MatchId, MatchNight> found =
                        nights.find(some.stream().map(room -> room.match).toList());
                some.forEach(room -> room.send(found.get(room.match)));
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return;
            } catch (RuntimeException e) {
                // The store may be away for a moment.
                LOG.warn("matches were not sent to their spectators: {}", e.getMessage());
                some.forEach(room -> room.refresh(AGAIN_MILLIS));
            }
        }
    }

    /** Those who watch one match, and what they were sent last. */
    private final class Room {
        private final MatchId match;
        private final Set<Spectator> spectators = ConcurrentHashMap.newKeySet();
        private final AtomicBoolean waiting = new AtomicBoolean();
        private volatile long readAt = System.nanoTime() - TimeUnit.MILLISECONDS.toNanos(GAP_MILLIS);
        private volatile @Nullable String stamp;
        private volatile byte @Nullable [] latest;

        Room(MatchId match) {
            this.match = match;
        }

        /** Has the match read and sent, soon; changes that come until then are part of it. */
        void refresh() {
            refresh(GAP_MILLIS - TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - readAt));
        }

        private void refresh(long millis) {
            if (!closed && waiting.compareAndSet(false, true)) {
                if (millis <= 0) {
                    due.add(this);
                } else {
                    try {
                        timer.schedule(() -> due.add(this), millis, TimeUnit.MILLISECONDS);
                    } catch (RejectedExecutionException e) {
                        // The server is stopping; nobody is left to be told.
                    }
                }
            }
        }

        /** What changes from now on may not be part of what is read. */
        void begin() {
            readAt = System.nanoTime();
            waiting.set(false);
        }

        /** Sends the match as it was read, or ends where it is gone. */
        void send(@Nullable MatchNight night) {
            if (night == null) {
                spectators.forEach(Spectator::end);
                return;
            }
            byte[] event = ("id: " + night.version() + "\ndata: " + Json.write(MatchRounds.of(night)) + "\n\n")
                    .getBytes(StandardCharsets.UTF_8);
            if (!Arrays.equals(event, latest)) {
                latest = event;
                spectators.forEach(spectator -> spectator.offer(event));
            }
            stamp = MatchNights.stamp(night);
            if (!night.head().open()) {
                spectators.stream().filter(spectator -> spectator.stranger).forEach(Spectator::end);
            }
        }

        /** Looks whether anything went unheard. */
        void compare(@Nullable String now) {
            if (now == null || !now.equals(stamp)) {
                refresh();
            }
        }
    }

    /** One connection. What it is still to be sent is one event at most: the newest. */
    private final class Spectator implements WriteListener {
        private final Room room;
        private final String client;
        private final boolean stranger;
        private final ServletOutputStream out;
        private final CompletableFuture<Void> done = new CompletableFuture<>();
        private final AtomicBoolean over = new AtomicBoolean();
        private byte @Nullable [] greeting;
        private byte @Nullable [] event;
        private byte @Nullable [] offered;
        private boolean started;
        private boolean written;
        private boolean beat;
        private int beats;
        private int stalled;

        Spectator(Room room, String client, boolean stranger, ServletOutputStream out) {
            this.room = room;
            this.client = client;
            this.stranger = stranger;
            this.out = out;
            // Browsers that lost an instance together do not all come to another at once.
            this.greeting = ("retry: " + ThreadLocalRandom.current().nextInt(500, 2500) + "\n\n")
                    .getBytes(StandardCharsets.UTF_8);
        }

        void offer(byte[] bytes) {
            synchronized (this) {
                // Whoever comes in while the match is read is offered it by both.
                if (bytes == offered) {
                    return;
                }
                offered = bytes;
                event = bytes;
            }
            write();
        }

        void beat() {
            boolean end;
            synchronized (this) {
                stalled = event != null || written ? stalled + 1 : 0;
                beats++;
                beat = true;
                end = stalled > MOST_STALLED || beats > MOST_BEATS;
            }
            if (end) {
                end();
            } else {
                write();
            }
        }

        @Override
        public void onWritePossible() {
            synchronized (this) {
                started = true;
            }
            write();
        }

        /** Hands the connection what it takes now; it asks for the rest itself. */
        private void write() {
            try {
                synchronized (this) {
                    while (started && !over.get() && out.isReady()) {
                        byte[] next = greeting != null ? greeting : event != null ? event : beat ? BEAT : null;
                        if (next != null) {
                            out.write(next);
                            written = true;
                            beat = false;
                            event = greeting == null ? null : event;
                            greeting = null;
                        } else if (written) {
                            out.flush();
                            written = false;
                        } else {
                            return;
                        }
                    }
                }
            } catch (IOException | RuntimeException e) {
                end();
            }
        }

        @Override
        public void onError(Throwable fault) {
            end();
        }

        void end() {
            if (over.compareAndSet(false, true)) {
                room.spectators.remove(this);
                rooms.computeIfPresent(room.match, (key, kept) -> kept.spectators.isEmpty() ? null : kept);
                left(client);
                done.complete(null);
            }
        }
    }

    private synchronized boolean enter(String client) {
        int already = byClient.getOrDefault(client, 0);
        if (closed || connections >= MOST || already >= MOST_OF_ONE) {
            return false;
        }
        connections++;
        byClient.put(client, already + 1);
        return true;
    }

    private synchronized void left(String client) {
        connections--;
        byClient.computeIfPresent(client, (key, count) -> count == 1 ? null : (Integer) (count - 1));
    }

    /** Connections now. */
    synchronized int connections() {
        return connections;
    }

    /**
     * Sends a match to whoever asks until they leave.
     *
     * @param client where they ask from
     * @param stranger whether they may look only because anybody may
     * @throws Refusal if there are too many already
     */
    void open(Context ctx, MatchId match, String client, boolean stranger) {
        if (!enter(client)) {
            ctx.header("Retry-After", "10");
            throw new Refusal(503, "Too many are watching just now. Try again in a while.");
        }
        ctx.contentType("text/event-stream; charset=utf-8");
        ctx.header("X-Accel-Buffering", "no");
        // How long somebody watches is no time to answer.
        ctx.attribute(Server.SINCE, null);
        ctx.future(() -> watch(ctx, match, client, stranger));
    }

    private CompletableFuture<Void> watch(Context ctx, MatchId match, String client, boolean stranger) {
        Spectator spectator;
        try {
            ServletOutputStream out = ctx.res().getOutputStream();
            // Known to its room before anything is sent, so that nothing falls in between.
            Spectator[] made = new Spectator[1];
            Room room = rooms.compute(match, (same, kept) -> {
                Room there = kept == null ? new Room(same) : kept;
                made[0] = new Spectator(there, client, stranger, out);
                there.spectators.add(made[0]);
                return there;
            });
            spectator = made[0];
            out.setWriteListener(spectator);
            byte[] latest = room.latest;
            if (latest == null) {
                room.refresh();
            } else {
                spectator.offer(latest);
            }
        } catch (IOException e) {
            left(client);
            return CompletableFuture.completedFuture(null);
        }
        return spectator.done;
    }

    @Override
    public void changed(String season, String match) {
        Room room = rooms.get(new MatchId(season, match));
        if (room != null) {
            room.refresh();
        }
    }

    @Override
    public void changed(String season) {
        rooms.values().stream()
                .filter(room -> room.match.season().equals(season))
                .forEach(Room::refresh);
    }

    @Override
    public void missed() {
        rooms.values().forEach(Room::refresh);
    }

    /** Keeps connections open, ends those that are stuck, and asks whether anything went unheard. */
    private void beat() {
        List<Room> all = List.copyOf(rooms.values());
        all.forEach(room -> room.spectators.forEach(Spectator::beat));
        try {
            for (int from = 0; from < all.size(); from += MatchNights.MOST_AT_ONCE) {
                List<Room> some = all.subList(from, Math.min(all.size(), from + MatchNights.MOST_AT_ONCE));
                Map<MatchId, String> stamps =
                        nights.stamps(some.stream().map(room -> room.match).toList());
                some.forEach(room -> room.compare(stamps.get(room.match)));
            }
        } catch (RuntimeException e) {
            LOG.warn("matches that are watched could not be asked for: {}", e.getMessage());
        }
    }

    /** Ends all connections. */
    @Override
    public void close() {
        closed = true;
        try {
            watch.close();
        } catch (Exception e) {
            LOG.debug("watching did not end", e);
        }
        timer.shutdownNow();
        reader.interrupt();
        rooms.values().forEach(room -> room.spectators.forEach(Spectator::end));
    }
}
