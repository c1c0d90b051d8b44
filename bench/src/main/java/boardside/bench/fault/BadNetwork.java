package boardside.bench.fault;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicLong;

/**
 * A proxy for one request a connection that does to it, by chance, what networks do: drops the request or the answer, cuts
 * either in the middle, stalls, or delivers the request twice.
 */
final class BadNetwork implements AutoCloseable {
    private final ServerSocket listening;
    private final ExecutorService workers = Executors.newCachedThreadPool();
    private final int target;
    private final int stallMillis;
    private final SplittableRandom random;
    private final AtomicLong spoilt = new AtomicLong();

    /**
     * @param target port of the server
     * @param stallMillis how long it stalls; longer than a phone's patience makes a phone give up and send again
     */
    BadNetwork(int target, int stallMillis, long seed) throws IOException {
        this.target = target;
        this.stallMillis = stallMillis;
        this.random = new SplittableRandom(seed);
        this.listening = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        workers.execute(this::listen);
    }

    int port() {
        return listening.getLocalPort();
    }

    /** How many requests did not simply pass. */
    long spoilt() {
        return spoilt.get();
    }

    private synchronized int chance() {
        return random.nextInt(12);
    }

    private void listen() {
        while (!listening.isClosed()) {
            try {
                Socket phone = listening.accept();
                workers.execute(() -> pass(phone));
            } catch (IOException e) {
                return;
            }
        }
    }

    private void pass(Socket phone) {
        try (phone) {
            byte[] request = request(phone.getInputStream());
            int fate = chance();
            if (fate < 6) {
                spoilt.incrementAndGet();
            }
            switch (fate) {
                // The request is lost, or half of it arrives.
                case 0 -> {}
                case 1 -> sendHalf(request);
                // The answer is lost, or half of it arrives.
                case 2 -> deliver(request);
                case 3 -> {
                    byte[] answer = deliver(request);
                    phone.getOutputStream().write(answer, 0, answer.length / 2);
                }
                // It arrives twice.
                case 4 -> {
                    deliver(request);
                    phone.getOutputStream().write(deliver(request));
                }
                // It arrives when the phone has long given up.
                case 5 -> {
                    Thread.sleep(stallMillis);
                    phone.getOutputStream().write(deliver(request));
                }
                default -> phone.getOutputStream().write(deliver(request));
            }
        } catch (IOException e) {
            // Either end is gone; so is this request.
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private byte[] deliver(byte[] request) throws IOException {
        try (Socket server = new Socket(InetAddress.getLoopbackAddress(), target)) {
            server.getOutputStream().write(request);
            return server.getInputStream().readAllBytes();
        }
    }

    private void sendHalf(byte[] request) throws IOException {
        try (Socket server = new Socket(InetAddress.getLoopbackAddress(), target)) {
            server.getOutputStream().write(request, 0, request.length / 2);
        }
    }

    /** One request, with {@code Connection: close}, so that its answer ends with the connection. */
    private static byte[] request(InputStream in) throws IOException {
        ByteArrayOutputStream head = new ByteArrayOutputStream();
        while (!head.toString(StandardCharsets.ISO_8859_1).endsWith("\r\n\r\n")) {
            int next = in.read();
            if (next < 0) {
                throw new IOException("the phone is gone");
            }
            head.write(next);
        }
        String lines = head.toString(StandardCharsets.ISO_8859_1);
        int length = 0;
        StringBuilder kept = new StringBuilder();
        for (String line : lines.split("\r\n")) {
            String lower = line.toLowerCase(Locale.ROOT);
            if (lower.startsWith("content-length:")) {
                length = Integer.parseInt(line.substring(line.indexOf(':') + 1).strip());
            }
            if (!lower.startsWith("connection:")
                    && !lower.startsWith("upgrade:")
                    && !lower.startsWith("http2-settings:")) {
                kept.append(line).append("\r\n");
            }
        }
        kept.append("Connection: close\r\n\r\n");
        byte[] body = in.readNBytes(length);
        ByteArrayOutputStream request = new ByteArrayOutputStream();
        request.write(kept.toString().getBytes(StandardCharsets.ISO_8859_1));
        request.write(body);
        return request.toByteArray();
    }

    @Override
    public void close() throws IOException {
        listening.close();
        workers.shutdownNow();
    }
}
