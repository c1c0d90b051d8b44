package boardside.app.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.UnaryOperator;

/** A cable between browser and server that can be pulled, that can be slow, and behind which the server can look like another. */
final class Cable implements AutoCloseable {
    private final int server;
    private final int port;
    private final Set<Socket> sockets = ConcurrentHashMap.newKeySet();
    private volatile ServerSocket listening;
    private volatile int delay;
    private volatile UnaryOperator<String> answers = UnaryOperator.identity();

    Cable(int server) {
        this.server = server;
        this.listening = listen(0);
        this.port = listening.getLocalPort();
    }

    int port() {
        return port;
    }

    /** Nobody answers any more, and what was under way breaks off. */
    void pull() {
        close();
    }

    void plug() {
        listening = listen(port);
    }

    /** Every piece of an answer takes so many milliseconds longer. */
    void delay(int millis) {
        delay = millis;
    }

    /** Changes each piece of an answer; it keeps its length. */
    void answers(UnaryOperator<String> change) {
        answers = change;
    }

    private ServerSocket listen(int at) {
        try {
            ServerSocket socket = new ServerSocket();
            socket.setReuseAddress(true);
            socket.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), at));
            start(() -> accept(socket));
            return socket;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void accept(ServerSocket socket) {
        try {
            while (true) {
                Socket browser = socket.accept();
                Socket end = new Socket(InetAddress.getLoopbackAddress(), server);
                sockets.add(browser);
                sockets.add(end);
                if (socket.isClosed()) {
                    // Pulled between the two lines above: nobody else would know of these.
                    browser.close();
                    end.close();
                }
                start(() -> pump(browser, end, false));
                start(() -> pump(end, browser, true));
            }
        } catch (IOException e) {
            // Pulled.
        }
    }

    private void pump(Socket from, Socket to, boolean answer) {
        byte[] piece = new byte[1 << 16];
        try (from;
                to) {
            InputStream in = from.getInputStream();
            OutputStream out = to.getOutputStream();
            for (int length = in.read(piece); length >= 0; length = in.read(piece)) {
                if (answer) {
                    Thread.sleep(delay);
                    String text = new String(piece, 0, length, StandardCharsets.ISO_8859_1);
                    out.write(answers.apply(text).getBytes(StandardCharsets.ISO_8859_1));
                } else {
                    // Answers are to be read here, so none is asked for in a packed form.
                    String text = new String(piece, 0, length, StandardCharsets.ISO_8859_1);
                    out.write(
                            text.replace("Accept-Encoding:", "X-Not-Accepted-:").getBytes(StandardCharsets.ISO_8859_1));
                }
                out.flush();
            }
        } catch (IOException e) {
            // Either end is gone.
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            sockets.remove(from);
            sockets.remove(to);
        }
    }

    private static void start(Runnable work) {
        Thread thread = new Thread(work, "cable");
        thread.setDaemon(true);
        thread.start();
    }

    @Override
    public void close() {
        try {
            listening.close();
            for (Socket socket : sockets) {
                socket.close();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
