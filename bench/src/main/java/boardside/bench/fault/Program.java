package boardside.bench.fault;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/**
 * The program under test, started from outside.
 *
 * @param command what starts it, such as {@code ./boardside}
 * @param store its file, or a PostgreSQL URL
 * @param log where what it says goes
 */
public record Program(List<String> command, String store, Path log) {
    private static final int MOST_TRIES = 2400;

    /** What a command ended with and printed. */
    public record Ran(int status, String out) {}

    /** Runs one command to its end. */
    public Ran run(String... arguments) throws IOException, InterruptedException {
        Process process = start(Map.of(), arguments);
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Ran(process.waitFor(), out);
    }

    /** Serves, once it can be connected to. */
    public Process serve(int port, Map<String, String> environment, String... more)
            throws IOException, InterruptedException {
        List<String> line = new ArrayList<>(List.of("serve", "--port", String.valueOf(port), "--backups", "off"));
        line.addAll(List.of(more));
        Process process = start(environment, line.toArray(new String[0]));
        for (int tries = 0; tries < MOST_TRIES && process.isAlive(); tries++) {
            try (Socket socket = new Socket()) {
                socket.connect(new InetSocketAddress("127.0.0.1", port), 100);
                return process;
            } catch (IOException e) {
                TimeUnit.MILLISECONDS.sleep(25);
            }
        }
        process.destroyForcibly();
        throw new IllegalStateException("the server did not come up; see " + log);
    }

    private Process start(Map<String, String> environment, String... arguments) throws IOException {
        List<String> line = new ArrayList<>(command);
        line.addAll(List.of(arguments));
        line.addAll(List.of("--data", store, "--quiet"));
        ProcessBuilder builder = new ProcessBuilder(line).redirectError(ProcessBuilder.Redirect.appendTo(log.toFile()));
        builder.environment().putAll(environment);
        return builder.start();
    }

    /** A port that is free now. */
    public static int freePort() throws IOException {
        try (ServerSocket free = new ServerSocket(0)) {
            return free.getLocalPort();
        }
    }
}
