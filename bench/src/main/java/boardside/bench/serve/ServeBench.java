package boardside.bench.serve;

import java.io.IOException;
import java.net.CookieManager;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Recording and reading with years of practice in the store. From the project's folder, after {@code ./boardside
 * --version} has built the program:
 *
 * <pre>mvn -q -B -ntp -pl bench -am -DskipTests package
 * java -cp bench/target/bench.jar boardside.bench.serve.ServeBench [rounds, 250000 by default] [folder]</pre>
 *
 * <p>Writes an invented log, imports it, starts the server, records rounds one by one and reads pages in between (so
 * that nothing is answered from a cache that a tap has not just made stale), and prints what it took. The folder decides
 * which disk is measured; the default is the system's folder for temporary files.
 */
public final class ServeBench {
    private static final int RECORDED = 2000;
    private static final int PAGES_EVERY = 10;
    private static final int WARM_UP = 100;

    private final HttpClient http = HttpClient.newBuilder()
            .cookieHandler(new CookieManager())
            .connectTimeout(Duration.ofSeconds(5))
            .build();
    private final String base;
    private final SplittableRandom random = new SplittableRandom(3);
    private String token = "";
    private long ids;

    private ServeBench(int port) {
        base = "http://127.0.0.1:" + port;
    }

    /** Runs all of it; see the class. */
    public static void main(String[] args) throws Exception {
        int rounds = args.length > 0 ? Integer.parseInt(args[0]) : 250_000;
        Path folder = args.length > 1 ? Path.of(args[1]) : Files.createTempDirectory("boardside-bench");
        Files.createDirectories(folder);
        Path log = folder.resolve("log.csv");
        Path store = folder.resolve("bench.db");
        Files.deleteIfExists(store);
        System.out.println(System.getProperty("java.vm.name") + " " + System.getProperty("java.version") + ", "
                + Runtime.getRuntime().availableProcessors() + " cores");
        PracticeLog.write(log, rounds, LocalDate.now(java.time.ZoneId.systemDefault()), 7);

        long before = System.nanoTime();
        run("import", store, "import", log.toString());
        System.out.printf(
                Locale.ROOT,
                "import of %,d rounds (%,d throws)   %.1f s   store %.0f MB%n",
                rounds,
                4 * rounds,
                (System.nanoTime() - before) / 1e9,
                Files.size(store) / 1e6);

        Latencies start = new Latencies("start of the program to the first page");
        for (int i = 0; i < 5; i++) {
            Serving serving = Serving.start(store);
            start.add(serving.took());
            serving.stop();
        }
        System.out.println(start);
        Serving serving = Serving.start(store);
        try {
            new ServeBench(serving.port()).measure();
            System.out.printf(Locale.ROOT, "memory of the server (resident)   %.0f MB%n", serving.residentMegabytes());
        } finally {
            serving.stop();
        }
        System.out.println(fsync(folder));
    }

    private static void run(String what, Path store, String... arguments) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of("./boardside", "--data", store.toString(), "--quiet"));
        command.addAll(List.of(arguments));
        int status = new ProcessBuilder(command).inheritIO().start().waitFor();
        if (status != 0) {
            throw new IllegalStateException(what + " ended with status " + status);
        }
    }

    private void measure() throws IOException, InterruptedException {
        Matcher matcher = Pattern.compile("\"token\":\"([0-9a-f]+)\"").matcher(get("/api/token"));
        if (!matcher.find()) {
            throw new IllegalStateException("no token");
        }
        token = matcher.group(1);
        Latencies record = new Latencies("record a round, until it is acknowledged");
        String[] paths = {"/", "/journal", "/form"};
        Latencies[] pages = new Latencies[paths.length];
        for (int i = 0; i < paths.length; i++) {
            pages[i] = new Latencies("page " + paths[i] + " after a round");
        }
        for (int i = -WARM_UP; i < RECORDED; i++) {
            if ((i + WARM_UP) % 10 == 0) {
                startRun();
            }
            long taken = timed(this::recordRound);
            if (i >= 0) {
                record.add(taken);
            }
            if (i % PAGES_EVERY == 0) {
                for (int p = 0; p < paths.length; p++) {
                    String path = paths[p];
                    long page = timed(() -> get(path));
                    if (i >= 0) {
                        pages[p].add(page);
                    }
                }
            }
        }
        System.out.println(record);
        for (Latencies page : pages) {
            System.out.println(page);
        }
    }

    private interface Work {
        Object run() throws IOException, InterruptedException;
    }

    private static long timed(Work work) throws IOException, InterruptedException {
        long before = System.nanoTime();
        work.run();
        return System.nanoTime() - before;
    }

    private String run = "";
    private int number;

    private void startRun() throws IOException, InterruptedException {
        run = id();
        number = 0;
        String now = OffsetDateTime.now(java.time.ZoneId.systemDefault())
                .truncatedTo(ChronoUnit.SECONDS)
                .toString();
        send("{\"type\":\"run\",\"op\":\"" + id() + "\",\"run\":\"" + run
                + "\",\"session\":\"bench\",\"drill\":\"total\","
                + "\"startedAt\":\"" + now
                + "\",\"warmUp\":false,\"opponent\":\"\",\"setup\":{\"bags\":[],\"bagsPerSet\":4,"
                + "\"board\":\"regulation\",\"setting\":\"practice\",\"rounds\":10,\"exact\":false,\"bagByBag\":false,"
                + "\"onlyIn\":false}}");
    }

    private String recordRound() throws IOException, InterruptedException {
        int in = random.nextInt(5);
        return send("{\"type\":\"round\",\"run\":\"" + run + "\",\"round\":{\"number\":" + ++number
                + ",\"side\":\"me\",\"op\":\"" + id()
                + "\",\"thrown\":[],\"lines\":[{\"bag\":\"\",\"board\":\"regulation\","
                + "\"setting\":\"practice\",\"thrown\":4,\"in\":" + in + ",\"on\":" + (4 - in)
                + ",\"off\":0,\"misses\":{},\"at\":\"\",\"note\":\"\"}]}}");
    }

    private String send(String operation) throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(URI.create(base + "/api/outbox"))
                .header("Content-Type", "application/json")
                .header("X-Boardside-Token", token)
                .POST(HttpRequest.BodyPublishers.ofString("{\"player\":1,\"operations\":[" + operation + "]}"))
                .build();
        String answer = asked(request);
        if (!answer.contains("\"stored\"")) {
            throw new IllegalStateException(answer);
        }
        return answer;
    }

    private String get(String path) throws IOException, InterruptedException {
        return asked(HttpRequest.newBuilder(URI.create(base + path)).build());
    }

    private String asked(HttpRequest request) throws IOException, InterruptedException {
        HttpResponse<String> response = http.send(request, HttpResponse.BodyHandlers.ofString());
        // A first answer that is still being worked out; a page would ask again, too.
        while (response.statusCode() == 202) {
            Thread.sleep(50);
            response = http.send(request, HttpResponse.BodyHandlers.ofString());
        }
        if (response.statusCode() != 200) {
            throw new IllegalStateException(
                    request.uri() + " answered " + response.statusCode() + ": " + response.body());
        }
        return response.body();
    }

    /** A UUIDv7, each later than the one before. */
    private String id() {
        String millis = String.format(Locale.ROOT, "%012x", Instant.now().toEpochMilli());
        String count = String.format(Locale.ROOT, "%012x", ++ids);
        return millis.substring(0, 8) + "-" + millis.substring(8) + "-7" + count.substring(0, 3) + "-8"
                + count.substring(3, 6) + "-" + count.substring(6) + "000000";
    }

    /** What the disk itself takes to make a small append last. */
    private static Latencies fsync(Path folder) throws IOException {
        Latencies latencies = new Latencies("the disk: append 4 kB and fsync");
        Path file = folder.resolve("fsync.bin");
        try (FileChannel channel = FileChannel.open(
                file, StandardOpenOption.CREATE, StandardOpenOption.WRITE, StandardOpenOption.APPEND)) {
            for (int i = 0; i < RECORDED; i++) {
                long before = System.nanoTime();
                channel.write(ByteBuffer.allocate(4096));
                channel.force(false);
                latencies.add(System.nanoTime() - before);
            }
        }
        Files.delete(file);
        return latencies;
    }

    /** A running server. */
    private record Serving(Process process, int port, long took) {
        static Serving start(Path store) throws IOException, InterruptedException {
            int port;
            try (ServerSocket free = new ServerSocket(0)) {
                port = free.getLocalPort();
            }
            HttpClient http = HttpClient.newHttpClient();
            HttpRequest request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/"))
                    .build();
            long before = System.nanoTime();
            Process process = new ProcessBuilder(
                            "./boardside", "--data", store.toString(), "serve", "--port", String.valueOf(port))
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .redirectError(ProcessBuilder.Redirect.INHERIT)
                    .start();
            while (process.isAlive()) {
                try {
                    if (http.send(request, HttpResponse.BodyHandlers.discarding())
                                    .statusCode()
                            == 200) {
                        return new Serving(process, port, System.nanoTime() - before);
                    }
                } catch (IOException e) {
                    TimeUnit.MILLISECONDS.sleep(5);
                }
            }
            throw new IllegalStateException("the server stopped with status " + process.exitValue());
        }

        void stop() throws InterruptedException {
            process.destroy();
            process.waitFor();
        }

        double residentMegabytes() throws IOException {
            for (String line : Files.readAllLines(Path.of("/proc", String.valueOf(process.pid()), "status"))) {
                if (line.startsWith("VmRSS:")) {
                    return Long.parseLong(line.replaceAll("\\D", "")) / 1024.0;
                }
            }
            return Double.NaN;
        }
    }
}
