package boardside.bench.fault;

import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A phone that records: it keeps each operation until the server has said what became of it, sends what it keeps in order,
 * fifty at a time, and sends it again when it hears nothing, as the pages do. For one thread at a time.
 */
final class Phone {
    private static final int BATCH = 50;
    private static final Pattern TOKEN = Pattern.compile("\"token\":\"([0-9a-f]+)\"");
    private static final Pattern RESULT =
            Pattern.compile("\"op\":\"([^\"]+)\",\"result\":\"([a-z]+)\",\"message\":\"([^\"]*)\"");

    private final HttpClient http = HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .cookieHandler(new CookieManager())
            .connectTimeout(Duration.ofSeconds(2))
            .build();
    private final Duration patience;
    private final Model model;
    private final SplittableRandom random;
    private final int number;
    private final Map<String, String> kept = new LinkedHashMap<>();
    private final List<String> refused = new ArrayList<>();
    private String token = "";
    private String run = "";
    private int round;
    private long millis;
    private long acknowledged;
    private long repeated;
    private int lastStatus;

    /**
     * @param number tells phones apart, from 0 to 4095
     * @param model what all phones recorded
     * @param patience how long it waits for an answer
     */
    Phone(int number, Model model, Duration patience, long seed) {
        this.number = number;
        this.model = model;
        this.patience = patience;
        this.random = new SplittableRandom(seed + number);
        this.millis = System.currentTimeMillis();
    }

    /** A UUIDv7, each later than the one before; the phone's number stands where chance would. */
    private String id() {
        millis = Math.max(millis + 1, System.currentTimeMillis());
        String hex = String.format(Locale.ROOT, "%012x", millis);
        return hex.substring(0, 8) + "-" + hex.substring(8) + "-7" + String.format(Locale.ROOT, "%03x", number)
                + "-8000-" + String.format(Locale.ROOT, "%012x", random.nextLong(1L << 47));
    }

    /** Starts a run, which others may join; returns its id. */
    String start() {
        String at = OffsetDateTime.now(java.time.ZoneId.systemDefault())
                .truncatedTo(ChronoUnit.SECONDS)
                .toString();
        join(id());
        String op = id();
        kept.put(
                op,
                "{\"type\":\"run\",\"op\":\"" + op + "\",\"run\":\"" + run
                        + "\",\"session\":\"faults\",\"drill\":\"casual\","
                        + "\"startedAt\":\"" + at
                        + "\",\"warmUp\":false,\"opponent\":\"\",\"setup\":{\"bags\":[],\"bagsPerSet\":4,"
                        + "\"board\":\"regulation\",\"setting\":\"practice\",\"exact\":false,\"bagByBag\":false,"
                        + "\"onlyIn\":false}}");
        return run;
    }

    /** Records in a run that this phone or another started. */
    void join(String other) {
        run = other;
        round = 0;
    }

    /** Records the next round, and now and then corrects an earlier one of the run. */
    void tap() {
        round(round > 0 && random.nextInt(10) == 0 ? 1 + random.nextInt(round) : ++round);
    }

    /** Records a round, new or corrected. */
    void round(int which) {
        int in = random.nextInt(5);
        int on = random.nextInt(5 - in);
        String op = id();
        kept.put(
                op,
                "{\"type\":\"round\",\"run\":\"" + run + "\",\"round\":{\"number\":" + which
                        + ",\"side\":\"me\",\"op\":\"" + op
                        + "\",\"thrown\":[],\"lines\":[{\"bag\":\"\",\"board\":\"regulation\",\"setting\":\"practice\","
                        + "\"thrown\":4,\"in\":" + in + ",\"on\":" + on + ",\"off\":" + (4 - in - on)
                        + ",\"misses\":{},\"at\":\"\",\"note\":\"\"}]}}");
        model.put(run, which, op, in, on);
    }

    /** How many rounds of its run it has recorded. */
    int rounds() {
        return round;
    }

    /** How many operations wait. */
    int waiting() {
        return kept.size();
    }

    /** How many operations the server said it stored, and how many it had already. */
    long acknowledged() {
        return acknowledged;
    }

    long repeated() {
        return repeated;
    }

    /** The status of the last answer, 0 where none came. */
    int lastStatus() {
        return lastStatus;
    }

    /** What the server refused, which it never should. */
    List<String> refused() {
        return refused;
    }

    /** Sends once what is kept, up to fifty; true if the server said what became of each. */
    boolean send(int port) throws InterruptedException {
        List<String> ops = kept.keySet().stream().limit(BATCH).toList();
        if (ops.isEmpty()) {
            return true;
        }
        lastStatus = 0;
        try {
            if (token.isEmpty()) {
                // The first page makes the first player.
                lastStatus = ask(HttpRequest.newBuilder(uri(port, "/"))).statusCode();
                if (lastStatus != 200) {
                    return false;
                }
                Matcher matcher = TOKEN.matcher(
                        ask(HttpRequest.newBuilder(uri(port, "/api/token"))).body());
                if (!matcher.find()) {
                    return false;
                }
                token = matcher.group(1);
            }
            String body = "{\"player\":1,\"operations\":["
                    + String.join(",", ops.stream().map(kept::get).toList()) + "]}";
            HttpResponse<String> answer = ask(HttpRequest.newBuilder(uri(port, "/api/outbox"))
                    .header("Content-Type", "application/json")
                    .header("X-Boardside-Token", token)
                    .POST(HttpRequest.BodyPublishers.ofString(body)));
            lastStatus = answer.statusCode();
            if (lastStatus == 403) {
                token = "";
            }
            if (lastStatus != 200) {
                return false;
            }
            int settled = 0;
            Matcher results = RESULT.matcher(answer.body());
            while (results.find()) {
                settled++;
                kept.remove(results.group(1));
                switch (results.group(2)) {
                    case "stored" -> acknowledged++;
                    case "repeated" -> repeated++;
                    default -> refused.add(results.group(3));
                }
            }
            return settled == ops.size();
        } catch (IOException e) {
            return false;
        }
    }

    /** Sends until nothing is kept; false if that takes longer than a minute. */
    boolean sendAll(int port) throws InterruptedException {
        long until = System.nanoTime() + 60_000_000_000L;
        while (waiting() > 0) {
            if (!send(port)) {
                if (System.nanoTime() > until) {
                    return false;
                }
                Thread.sleep(20);
            }
        }
        return true;
    }

    private static URI uri(int port, String path) {
        return URI.create("http://127.0.0.1:" + port + path);
    }

    private HttpResponse<String> ask(HttpRequest.Builder request) throws IOException, InterruptedException {
        return http.send(request.timeout(patience).build(), HttpResponse.BodyHandlers.ofString());
    }
}
