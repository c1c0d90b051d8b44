package boardside.bench.live;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * A league night of many matches at once, thrown and watched, against servers in hosted mode over PostgreSQL.
 *
 * <pre>java -cp bench/target/bench.jar boardside.bench.live.LiveBench prepare jdbc:postgresql://… matches
 * java -cp bench/target/bench.jar boardside.bench.live.LiveBench throw http://127.0.0.1:8027 matches spectators seconds [command]</pre>
 *
 * <p>{@code prepare} makes seasons of forty players with {@code ./boardside season new} and prints SQL, to be run with
 * {@code psql}, that makes an account with a player and a login for each of them: a thousand passwords would take minutes.
 * {@code throw} has each player throw a round every thirty seconds for so long, and once all of them in the same second; half
 * way a command is run, such as one that restarts the database or ends an instance. A round that is not acknowledged is sent
 * again, as a phone does. At the end all matches are asked for: every round that was acknowledged has to be there once.
 */
public final class LiveBench {
    private static final int A_SEASON = 40;
    private static final int EVERY_SECONDS = 30;
    private static final int ROUNDS = 100;
    private static final String LOGIN = "boardside-login";

    private final String base;
    private final int spectators;
    private final int seconds;
    private final HttpClient http;
    private final ScheduledExecutorService timer = Executors.newScheduledThreadPool(2);
    private final Times stored = new Times();
    private final Times reached = new Times();
    private final AtomicInteger acknowledged = new AtomicInteger();
    private final AtomicInteger again = new AtomicInteger();
    private final AtomicInteger underWay = new AtomicInteger();
    private final SplittableRandom random = new SplittableRandom(11);
    private final List<Thrower> throwers = new ArrayList<>();
    private final List<Match> matches = new ArrayList<>();

    private LiveBench(String base, int spectators, int seconds) {
        this.base = base;
        this.spectators = spectators;
        this.seconds = seconds;
        this.http = HttpClient.newBuilder()
                .version(HttpClient.Version.HTTP_1_1)
                .connectTimeout(Duration.ofSeconds(5))
                .executor(Executors.newFixedThreadPool(2))
                .build();
    }

    /** See the class. */
    public static void main(String[] args) throws Exception {
        if (args.length == 3 && args[0].equals("prepare")) {
            prepare(args[1], Integer.parseInt(args[2]));
        } else if (args.length >= 5 && args[0].equals("throw")) {
            LiveBench bench = new LiveBench(args[1], Integer.parseInt(args[3]), Integer.parseInt(args[4]));
            bench.run(Integer.parseInt(args[2]), args.length > 5 ? args[5] : "");
            System.exit(0);
        } else {
            throw new IllegalArgumentException(
                    "prepare URL MATCHES, or throw BASE MATCHES SPECTATORS SECONDS [COMMAND]");
        }
    }

    private static String name(int player) {
        return "P" + (1000 + player);
    }

    private static String token(int player) {
        return hash("login of " + player);
    }

    private static String hash(String text) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void prepare(String url, int matches) throws IOException, InterruptedException {
        int players = 2 * matches;
        String yesterday =
                OffsetDateTime.now(ZoneOffset.UTC).minusDays(1).toLocalDate().toString();
        for (int first = 0; first < players; first += A_SEASON) {
            Path names = Files.createTempFile("names", ".txt");
            for (int i = first; i < Math.min(players, first + A_SEASON); i++) {
                Files.writeString(names, name(i) + "\n", java.nio.file.StandardOpenOption.APPEND);
            }
            int status = new ProcessBuilder(
                            "./boardside",
                            "season",
                            "new",
                            "S" + first,
                            names.toString(),
                            "--starts",
                            yesterday,
                            "--zone",
                            "UTC",
                            "--games",
                            "1",
                            "--rounds",
                            String.valueOf(ROUNDS),
                            "--public",
                            "--quiet",
                            "--data",
                            url)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .redirectError(ProcessBuilder.Redirect.INHERIT)
                    .start()
                    .waitFor();
            Files.delete(names);
            if (status != 0) {
                throw new IllegalStateException("season new ended with status " + status);
            }
        }
        long now = System.currentTimeMillis();
        for (int i = 0; i < players; i++) {
            System.out.printf(
                    "insert into account (id, name, sign_in, role, password, made_ms) values ('a%1$d', '%2$s', '%3$s',"
                            + " 'player', 'none', %4$d);%n"
                            + "insert into player (id, name, called, account, created_at)"
                            + " values (%5$d, '%2$s', '%2$s', 'a%1$d', '%6$s');%n"
                            + "insert into login (id, account, token_hash, device, made_ms, seen_ms) values ('l%1$d',"
                            + " 'a%1$d', '%7$s', 'bench', %4$d, %4$d);%n"
                            + "update season_entrant set player = %5$d where name = '%2$s';%n",
                    i,
                    name(i),
                    name(i).toLowerCase(java.util.Locale.ROOT),
                    now,
                    i + 1,
                    OffsetDateTime.now(ZoneOffset.UTC),
                    hash(token(i)));
        }
        System.out.printf("update player_number set last = %d;%n", players);
    }

    /** A player at the boards. */
    private final class Thrower {
        private final int player;
        private final String season;
        private final String matchId;
        private final Match match;
        private final String run = UUID.randomUUID().toString();
        private long ops;
        private int rounds;

        Thrower(int player, String season, String matchId, Match match) {
            this.player = player;
            this.season = season;
            this.matchId = matchId;
            this.match = match;
        }

        private String op() {
            return String.format("01900000-0000-7000-8000-%06d%06d", player, ++ops);
        }

        private String now() {
            return OffsetDateTime.now(ZoneOffset.UTC)
                    .truncatedTo(ChronoUnit.SECONDS)
                    .toString();
        }

        void begin() {
            post("""
                    [{"type":"run","op":"%s","run":"%s","session":"s%d","drill":"fixture","startedAt":"%s",\
                    "warmUp":false,"opponent":"","game":1,"setup":{"bags":[],"board":"regulation","setting":"league",\
                    "rounds":%d,"exact":false,"bagByBag":false,"onlyIn":false,"bagsPerSet":4}},\
                    {"type":"match","op":"%s","season":"%s","match":"%s","game":1,"run":"%s"}]""".formatted(op(), run, player, now(), ROUNDS, op(), season, matchId, run), false);
        }

        void throwRound() {
            int in = random.nextInt(5);
            int on = random.nextInt(5 - in);
            match.sending(System.nanoTime());
            post("""
                    [{"type":"round","run":"%s","round":{"number":%d,"side":"me","op":"%s","thrown":[],"lines":[\
                    {"bag":"","board":"regulation","setting":"league","thrown":4,"in":%d,"on":%d,"off":%d,"misses":{},\
                    "at":"%s","note":""}]}}]""".formatted(run, ++rounds, op(), in, on, 4 - in - on, now()), true);
        }

        private void post(String operations, boolean counted) {
            underWay.incrementAndGet();
            send(
                    HttpRequest.newBuilder(URI.create(base + "/api/outbox"))
                            .timeout(Duration.ofSeconds(10))
                            .header("Content-Type", "application/json")
                            .header("Cookie", LOGIN + "=" + token(player))
                            .header("X-Boardside-Token", hash("form " + token(player)))
                            .POST(HttpRequest.BodyPublishers.ofString("{\"player\":" + (player + 1) + ",\"operations\":"
                                    + operations + ",\"sentAt\":" + System.currentTimeMillis() + "}"))
                            .build(),
                    counted,
                    System.nanoTime());
        }
    }

    /** Sends until it is acknowledged. */
    private void send(HttpRequest request, boolean counted, long since) {
        CompletableFuture<HttpResponse<String>> answer = http.sendAsync(request, HttpResponse.BodyHandlers.ofString());
        var unused = answer.whenComplete((response, fault) -> {
            if (fault == null && response.statusCode() == 200) {
                if (response.body().contains("refused")) {
                    throw new IllegalStateException(response.body());
                }
                underWay.decrementAndGet();
                if (counted) {
                    stored.add(System.nanoTime() - since);
                    acknowledged.incrementAndGet();
                }
            } else {
                if (fault == null && response.statusCode() < 500) {
                    System.out.println(response.statusCode() + " " + response.body());
                }
                again.incrementAndGet();
                var later = timer.schedule(() -> send(request, counted, since), 1, TimeUnit.SECONDS);
            }
        });
    }

    private void settle() throws InterruptedException {
        while (underWay.get() > 0) {
            Thread.sleep(20);
        }
    }

    private String get(String path, int player) throws IOException, InterruptedException {
        return http.send(
                        HttpRequest.newBuilder(URI.create(base + path))
                                .header("Cookie", LOGIN + "=" + token(player))
                                .build(),
                        HttpResponse.BodyHandlers.ofString())
                .body();
    }

    private void run(int number, String command) throws IOException, InterruptedException {
        List<String> seen = new ArrayList<>();
        for (int player = 0; player < 2 * number; player++) {
            var found = java.util.regex.Pattern.compile("/seasons/([0-9a-f-]+)/mine/([0-9a-f-]+)\" class=\"mine\"")
                    .matcher(get("/seasons/mine", player));
            if (!found.find()) {
                continue;
            }
            String season = found.group(1);
            String match = found.group(2);
            if (!seen.contains(match)) {
                seen.add(match);
                matches.add(new Match("/seasons/" + season + "/matches/" + match + "/live", 2 * ROUNDS, reached));
            }
            throwers.add(new Thrower(player, season, match, matches.get(seen.indexOf(match))));
        }
        System.out.println(matches.size() + " matches, " + throwers.size() + " players, " + spectators + " spectators");
        for (Thrower one : throwers) {
            one.begin();
            if (underWay.get() > 20) {
                settle();
            }
        }
        settle();
        Spectators watching = new Spectators(base, matches, spectators);
        Thread thread = new Thread(watching, "spectators");
        thread.setDaemon(true);
        thread.start();
        for (int i = 0; i < 600 && watching.connected() < spectators; i++) {
            Thread.sleep(100);
        }
        System.out.println("connected: " + watching.connected());
        steady(seconds / 2);
        told("a round every " + EVERY_SECONDS + " s");
        for (Thrower one : throwers) {
            var burst = timer.schedule(one::throwRound, random.nextInt(1000), TimeUnit.MILLISECONDS);
        }
        Thread.sleep(1500);
        settle();
        Thread.sleep(3000);
        told("all within a second");
        if (!command.isEmpty()) {
            Process process =
                    new ProcessBuilder("bash", "-c", command).inheritIO().start();
            steady(seconds / 2);
            process.waitFor();
            told("with: " + command);
            System.out.println("sent again: " + again.get() + ", connections lost: " + watching.lost()
                    + ", connected now: " + watching.connected());
        }
        int there = 0;
        for (Match match : matches) {
            there += get(match.path() + ".json", 0).split("\"round\":", -1).length - 1;
        }
        System.out.println("rounds acknowledged: " + acknowledged.get() + ", in the matches: " + there);
        watching.close();
    }

    private void steady(int duration) throws InterruptedException {
        for (Thrower one : throwers) {
            int offset = random.nextInt(EVERY_SECONDS * 1000);
            for (int at = offset; at < duration * 1000; at += EVERY_SECONDS * 1000) {
                var round = timer.schedule(one::throwRound, at, TimeUnit.MILLISECONDS);
            }
        }
        Thread.sleep(duration * 1000L);
        settle();
        Thread.sleep(3000);
    }

    private void told(String when) {
        System.out.println(when);
        System.out.println(stored.told("  stored: sent until acknowledged"));
        System.out.println(reached.told("  seen: sent until a spectator has it"));
    }
}
