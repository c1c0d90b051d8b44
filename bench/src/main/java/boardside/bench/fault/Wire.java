package boardside.bench.fault;

import java.io.BufferedInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** HTTP by hand over one connection that is opened again when need be, to send what no well-behaved client would. */
final class Wire {
    private static final int PATIENCE = 10_000;
    private static final int MOST_BODY = 4 << 20;

    private final int port;
    private @Nullable Socket socket;
    private @Nullable InputStream in;

    Wire(int port) {
        this.port = port;
    }

    /** An answer; headers by name in lower case, cookies one below the other. */
    record Answer(int status, Map<String, String> headers, String body) {
        String type() {
            return headers.getOrDefault("content-type", "");
        }

        /** A cookie that is set, as "name=value", or empty. */
        String cookie(String name) {
            return headers.getOrDefault("set-cookie", "")
                    .lines()
                    .filter(line -> line.startsWith(name + "="))
                    .map(line -> line.replaceFirst(";.*", ""))
                    .findFirst()
                    .orElse("");
        }
    }

    /**
     * Sends a request and waits for its answer.
     *
     * @throws java.net.SocketTimeoutException if there is none within ten seconds
     * @throws IOException if the connection ends without one
     */
    Answer send(byte[] request) throws IOException {
        Socket open = socket;
        InputStream from = in;
        if (open == null || from == null) {
            open = new Socket(InetAddress.getLoopbackAddress(), port);
            open.setSoTimeout(PATIENCE);
            open.setTcpNoDelay(true);
            from = new BufferedInputStream(open.getInputStream());
            socket = open;
            in = from;
        }
        open.getOutputStream().write(request);
        Answer answer = read(from, new String(request, 0, 4, StandardCharsets.ISO_8859_1).equals("HEAD"));
        if (answer.headers().getOrDefault("connection", "").equalsIgnoreCase("close")
                || answer.type().startsWith("text/event-stream")) {
            close();
        }
        return answer;
    }

    void close() throws IOException {
        if (socket != null) {
            socket.close();
        }
        socket = null;
        in = null;
    }

    private static Answer read(InputStream in, boolean head) throws IOException {
        String status = line(in);
        Map<String, String> headers = new TreeMap<>();
        for (String line = line(in); !line.isEmpty(); line = line(in)) {
            int colon = line.indexOf(':');
            if (colon > 0) {
                headers.merge(
                        line.substring(0, colon).toLowerCase(Locale.ROOT),
                        line.substring(colon + 1).strip(),
                        (one, other) -> one + "\n" + other);
            }
        }
        if (!status.startsWith("HTTP/1.1 ")) {
            throw new IOException("no answer, but the rest of an earlier one: " + status);
        }
        int code = Integer.parseInt(status.split(" ", 3)[1]);
        if (code == 100) {
            return read(in, head);
        }
        byte[] body = head || code == 204 || code == 304 ? new byte[0] : body(in, headers);
        return new Answer(code, headers, new String(body, StandardCharsets.UTF_8));
    }

    private static byte[] body(InputStream in, Map<String, String> headers) throws IOException {
        if (headers.getOrDefault("content-type", "").startsWith("text/event-stream")) {
            return new byte[0];
        }
        if (headers.getOrDefault("transfer-encoding", "").equalsIgnoreCase("chunked")) {
            java.io.ByteArrayOutputStream all = new java.io.ByteArrayOutputStream();
            for (int size = size(in); size > 0; size = size(in)) {
                all.writeBytes(in.readNBytes(size));
                line(in);
            }
            line(in);
            return all.toByteArray();
        }
        String length = headers.get("content-length");
        return length == null ? in.readNBytes(MOST_BODY) : in.readNBytes(Integer.parseInt(length));
    }

    private static int size(InputStream in) throws IOException {
        return Integer.parseInt(line(in).replaceFirst(";.*", "").strip(), 16);
    }

    private static String line(InputStream in) throws IOException {
        StringBuilder line = new StringBuilder();
        while (true) {
            int c = in.read();
            if (c < 0) {
                throw new EOFException("the connection ended");
            }
            if (c == '\n') {
                return line.toString();
            }
            if (c != '\r') {
                line.append((char) c);
            }
        }
    }
}
