package boardside.bench.live;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.ByteBuffer;
import java.nio.channels.SelectionKey;
import java.nio.channels.Selector;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Spectators of matches on one thread, each with a connection of its own that comes back when it is lost. Of each event only
 * the number of rounds in it is read.
 */
final class Spectators implements Runnable, AutoCloseable {
    private static final byte[] ROUND = "\"round\":".getBytes(StandardCharsets.US_ASCII);
    private static final byte[] ANSWER = "HTTP/1.1 200 ".getBytes(StandardCharsets.US_ASCII);
    private static final int OF_ONE_ADDRESS = 200;
    private static final long AGAIN_NANOS = 1_000_000_000L;

    private final List<URI> bases;
    private final List<Match> matches;
    private final Selector selector;
    private final Watching[] all;
    private final ByteBuffer buffer = ByteBuffer.allocateDirect(1 << 16);
    private final AtomicInteger connected = new AtomicInteger();
    private final AtomicInteger lost = new AtomicInteger();
    private volatile boolean closed;

    /** One connection. */
    private final class Watching {
        private final int number;
        private final Match match;
        private int begun;
        private int matched;
        private int rounds;
        private int seen;
        private volatile int latest = -1;
        private int tries;
        private byte before;
        private URI base = bases.get(0);
        private volatile boolean live;
        private long againAt;

        Watching(int number) {
            this.number = number;
            this.match = matches.get(number % matches.size());
        }

        void connect() throws IOException {
            SocketChannel channel = SocketChannel.open();
            channel.configureBlocking(false);
            // So that the server takes them for people in several places, of whom it lets in so many each.
            int place = number / OF_ONE_ADDRESS;
            channel.bind(new InetSocketAddress("127.0." + (1 + place / 200) + "." + (1 + place % 200), 0));
            base = bases.get((number + tries++) % bases.size());
            channel.connect(new InetSocketAddress(base.getHost(), base.getPort()));
            channel.register(selector, SelectionKey.OP_CONNECT, this);
        }

        /** Whether the answer is the one asked for. */
        boolean take(ByteBuffer bytes) {
            long now = System.nanoTime();
            while (bytes.hasRemaining()) {
                byte one = bytes.get();
                if (begun < ANSWER.length && one != ANSWER[begun++]) {
                    return false;
                }
                if (one == ROUND[matched]) {
                    matched++;
                    if (matched == ROUND.length) {
                        rounds++;
                        matched = 0;
                    }
                } else {
                    matched = one == ROUND[0] ? 1 : 0;
                }
                // An event ends with an empty line.
                if (one == '\n' && before == '\n') {
                    event(now);
                }
                before = one;
            }
            return true;
        }

        /** Whether the newest event has that many rounds. */
        boolean has(int number) {
            return live && latest == number;
        }

        private void event(long now) {
            if (rounds > 0 || !live) {
                if (!live) {
                    live = true;
                    connected.incrementAndGet();
                    // What was thrown while nobody could watch is no measure of how fast news is.
                    seen = Math.max(seen, rounds);
                }
                match.seen(seen, rounds, now);
                seen = Math.max(seen, rounds);
                latest = rounds;
            }
            rounds = 0;
        }

        void gone(long now) {
            if (live) {
                connected.decrementAndGet();
                lost.incrementAndGet();
            }
            live = false;
            begun = 0;
            matched = 0;
            rounds = 0;
            before = 0;
            againAt = now + AGAIN_NANOS;
        }
    }

    /** @param bases addresses of instances; whoever loses one asks the next */
    Spectators(List<String> bases, List<Match> matches, int number) throws IOException {
        this.bases = bases.stream().map(URI::create).toList();
        this.matches = matches;
        this.selector = Selector.open();
        this.all = new Watching[number];
        for (int i = 0; i < number; i++) {
            all[i] = new Watching(i);
        }
    }

    /** How many are connected and have had their match. */
    int connected() {
        return connected.get();
    }

    /** How many connections were lost so far. */
    int lost() {
        return lost.get();
    }

    /**
     * How many are not connected, or do not have all of their match.
     *
     * @param rounds of each match by its path
     */
    int behind(Map<String, Integer> rounds) {
        int behind = 0;
        for (Watching one : all) {
            behind += one.has(rounds.getOrDefault(one.match.path(), -1)) ? 0 : 1;
        }
        return behind;
    }

    @Override
    public void run() {
        try {
            int begun = 0;
            while (!closed) {
                // A few at a time, as people come.
                for (int i = 0; i < 50 && begun < all.length; i++, begun++) {
                    all[begun].connect();
                }
                selector.select(20);
                long now = System.nanoTime();
                for (SelectionKey key : selector.selectedKeys()) {
                    serve(key, now);
                }
                selector.selectedKeys().clear();
                for (int i = 0; i < begun; i++) {
                    Watching one = all[i];
                    if (one.againAt != 0 && now - one.againAt > 0) {
                        one.againAt = 0;
                        one.connect();
                    }
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void serve(SelectionKey key, long now) {
        SocketChannel channel = (SocketChannel) key.channel();
        Watching one = (Watching) key.attachment();
        try {
            if (key.isConnectable() && channel.finishConnect()) {
                key.interestOps(SelectionKey.OP_READ);
                channel.write(ByteBuffer.wrap(("GET " + one.match.path() + "/events HTTP/1.1\r\nHost: "
                                + one.base.getAuthority() + "\r\nAccept: text/event-stream\r\n\r\n")
                        .getBytes(StandardCharsets.US_ASCII)));
            } else if (key.isReadable()) {
                buffer.clear();
                int read = channel.read(buffer);
                if (read < 0 || !one.take(buffer.flip())) {
                    channel.close();
                    one.gone(now);
                }
            }
        } catch (IOException e) {
            try {
                channel.close();
            } catch (IOException ignored) {
                // It is gone either way.
            }
            one.gone(now);
        }
    }

    @Override
    public void close() {
        closed = true;
        selector.wakeup();
    }
}
