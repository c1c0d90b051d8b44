package boardside.bench.live;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Queue;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Pattern;

/**
 * A league night of many matches at once, thrown and watched, against servers in hosted mode over PostgreSQL.
 *
 * <pre>java -cp bench/target/bench.jar boardside.bench.live.LiveBench prepare jdbc:postgresql://… matches
 * java -cp bench/target/bench.jar boardside.bench.live.LiveBench throw http://127.0.0.1:8027 matches spectators seconds [command [seconds]]</pre>
 *
 * <p>{@code prepare} makes seasons of forty players with {@code ./boardside season new} and prints SQL, to be run with
 * {@code psql}, that makes an account with a player and a login for each of them: a thousand passwords would take minutes.
 * {@code throw} has each player throw a round every thirty seconds for half of that time, then three times all of them one in
 * the same second, then as at first while a command is run, such as one that restarts the database or ends an instance; the last seconds
 * say for how long, where that is not the other half. A round that is not acknowledged is sent again, as a phone does; where
 * several addresses are given, with commas between, to the next of them, as a proxy would. At the end all matches are asked for:
 * every round that was acknowledged has to be there once, as it was thrown, nothing else, and every spectator has to have all of
 * them. The status is 1 where that is not so.
 */
public final class LiveBench {
    private static final int A_SEASON = 40;
    private static final int EVERY_SECONDS = 30;
    private static final int LONGEST_SECONDS = 180;
    private static final int BURSTS = 3;
    private static final int ROUNDS = 100;
    private static final String LOGIN = "boardside-login";
    private static final Pattern MINE = Pattern.compile("/seasons/([0-9a-f-]+)/mine/([0-9a-f-]+)\" class=\"mine\"");
    private static final Pattern ROUND =
            Pattern.compile("\\{\"round\":(\\d+),\"in\":(\\d+),\"on\":(\\d+),\"off\":(\\d+)");

    private final List<String> bases;
    private final int spectators;
    private final int every;
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
    private final Queue<String> faults = new ConcurrentLinkedQueue<>();

    /**
     * @param bases addresses of instances over one database, or of a proxy before them
     * @param every seconds between a player's rounds
     */
    LiveBench(List<String> bases, int spectators, int every) {
        this.bases = List.copyOf(bases);
        this.spectators = spectators;
        this.every = every;
        this.http = HttpClient.newBuilder()
                .version(HttpClient.Version.HTTP_1_1)
                .connectTimeout(Duration.ofSeconds(5))
                .executor(Executors.newFixedThreadPool(2))
                .build();
    }

    /** See the class. */
    public static void main(String[] args) throws Exception {
        if (args.length == 3 && args[0].equals("prepare")) {
            prepare(List.of("./boardside"), args[1], Integer.parseInt(args[2])).forEach(System.out::println);
        } else if (args.length >= 5 && args.length <= 7 && args[0].equals("throw")) {
            int half = Integer.parseInt(args[4]) / 2;
            List<String> differences;
            try {
                differences = new LiveBench(List.of(args[1].split(",")), Integer.parseInt(args[3]), EVERY_SECONDS)
                        .run(
                                Integer.parseInt(args[2]),
                                half,
                                args.length > 6 ? Integer.parseInt(args[6]) : half,
                                args.length > 5 ? args[5] : "");
            } catch (Exception e) {
                e.printStackTrace();
                differences = List.of("it was not run to its end");
            }
            differences.forEach(System.out::println);
            System.exit(differences.isEmpty() ? 0 : 1);
        } else {
            throw new IllegalArgumentException(
                    "prepare URL MATCHES, or throw BASE[,BASE] MATCHES SPECTATORS SECONDS [COMMAND [SECONDS]]");
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

    /**
     * Makes seasons with that many matches in their first week.
     *
     * @param program the command that starts the program
     * @return SQL that makes their players, each with an account that is signed in
     */
    static List<String> prepare(List<String> program, String url, int matches)
            throws IOException, InterruptedException {
        int players = 2 * matches;
        String yesterday =
                OffsetDateTime.now(ZoneOffset.UTC).minusDays(1).toLocalDate().toString();
        for (int first = 0; first < players; first += A_SEASON) {
            Path names = Files.createTempFile("names", ".txt");
            for (int i = first; i < Math.min(players, first + A_SEASON); i++) {
                Files.writeString(names, name(i) + "\n", StandardOpenOption.APPEND);
            }
            List<String> line = new ArrayList<>(program);
            line.addAll(
                    List.of("season", "new", "S" + first, names.toString(), "--starts", yesterday, "--zone", "UTC"));
            line.addAll(
                    List.of("--games", "1", "--rounds", String.valueOf(ROUNDS), "--public", "--quiet", "--data", url));
            int status = new ProcessBuilder(line)
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
        OffsetDateTime made = OffsetDateTime.now(ZoneOffset.UTC);
        List<String> sql = new ArrayList<>();
        for (int i = 0; i < players; i++) {
            sql.add(String.format(
                    "insert into account (id, name, sign_in, role, password, made_ms) values ('a%1$d', '%2$s', '%3$s',"
                            + " 'player', 'none', %4$d);%n"
                            + "insert into player (id, name, called, account, created_at)"
                            + " values (%5$d, '%2$s', '%2$s', 'a%1$d', '%6$s');%n"
                            + "insert into login (id, account, token_hash, device, made_ms, seen_ms) values ('l%1$d',"
                            + " 'a%1$d', '%7$s', 'bench', %4$d, %4$d);%n"
                            + "update season_entrant set player = %5$d where name = '%2$s';",
                    i, name(i), name(i).toLowerCase(Locale.ROOT), now, i + 1, made, hash(token(i))));
        }
        sql.add("update player_number set last = " + players + ";");
        return sql;
    }

    /** A player at the boards. */
    private final class Thrower {
        private final int player;
        private final String season;
        private final String matchId;
        private final Match match;
        private final String run = UUID.randomUUID().toString();
        private final List<String> thrown = new ArrayList<>();
        private long ops;

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
            thrown.add(in + "-" + on + "-" + (4 - in - on));
            match.sending(System.nanoTime());
            post("""
                    [{"type":"round","run":"%s","round":{"number":%d,"side":"me","op":"%s","thrown":[],"lines":[\
                    {"bag":"","board":"regulation","setting":"league","thrown":4,"in":%d,"on":%d,"off":%d,"misses":{},\
                    "at":"%s","note":""}]}}]""".formatted(run, thrown.size(), op(), in, on, 4 - in - on, now()), true);
        }

        private void post(String operations, boolean counted) {
            underWay.incrementAndGet();
            send(
                    "{\"player\":" + (player + 1) + ",\"operations\":" + operations + ",\"sentAt\":"
                            + System.currentTimeMillis() + "}",
                    counted,
                    System.nanoTime(),
                    player);
        }

        /** Sends until it is acknowledged. */
        private void send(String body, boolean counted, long since, int to) {
            HttpRequest request = HttpRequest.newBuilder(URI.create(bases.get(to % bases.size()) + "/api/outbox"))
                    .timeout(Duration.ofSeconds(10))
                    .header("Content-Type", "application/json")
                    .header("Cookie", LOGIN + "=" + token(player))
                    .header("X-Boardside-Token", hash("form " + token(player)))
                    .POST(HttpRequest.BodyPublishers.ofString(body))
                    .build();
            CompletableFuture<HttpResponse<String>> answer =
                    http.sendAsync(request, HttpResponse.BodyHandlers.ofString());
            var unused = answer.whenComplete((response, fault) -> {
                if (fault == null && response.statusCode() == 200) {
                    if (response.body().contains("refused")) {
                        faults.add("player " + name(player) + " was refused: " + response.body());
                    } else if (counted) {
                        stored.add(System.nanoTime() - since);
                        acknowledged.incrementAndGet();
                    }
                    underWay.decrementAndGet();
                } else {
                    if (fault == null && response.statusCode() < 500) {
                        faults.add(response.statusCode() + " " + response.body());
                    }
                    again.incrementAndGet();
                    var later = timer.schedule(() -> send(body, counted, since, to + 1), 1, TimeUnit.SECONDS);
                }
            });
        }
    }

    private void settle() throws InterruptedException {
        long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(LONGEST_SECONDS);
        while (underWay.get() > 0) {
            if (System.nanoTime() - until > 0) {
                throw new IllegalStateException(
                        underWay.get() + " rounds were not acknowledged in " + LONGEST_SECONDS + " s");
            }
            Thread.sleep(20);
        }
    }

    private String get(String path, int player) throws IOException, InterruptedException {
        IOException last = new IOException("there is no address");
        for (String base : bases) {
            try {
                return http.send(
                                HttpRequest.newBuilder(URI.create(base + path))
                                        .header("Cookie", LOGIN + "=" + token(player))
                                        .build(),
                                HttpResponse.BodyHandlers.ofString())
                        .body();
            } catch (IOException e) {
                last = e;
            }
        }
        throw last;
    }

    /**
     * Throws matches.
     *
     * @param number of matches
     * @param seconds of the first part
     * @param after seconds of the last part, at whose beginning the command is run
     * @param command for bash, or empty for neither
     * @return what is not as it should be: rounds lost, doubled or changed, spectators who do not have them all
     */
    List<String> run(int number, int seconds, int after, String command) throws IOException, InterruptedException {
        List<String> seen = new ArrayList<>();
        for (int player = 0; player < 2 * number; player++) {
            var found = MINE.matcher(get("/seasons/mine", player));
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
        Spectators watching = new Spectators(bases, matches, spectators);
        Thread thread = new Thread(watching, "spectators");
        thread.setDaemon(true);
        thread.start();
        for (int i = 0; i < 600 && watching.connected() < spectators; i++) {
            Thread.sleep(100);
        }
        System.out.println("connected: " + watching.connected());
        steady(seconds);
        told("a round every " + every + " s");
        for (int time = 1; time <= BURSTS; time++) {
            for (Thrower one : throwers) {
                var burst = timer.schedule(one::throwRound, random.nextInt(1000), TimeUnit.MILLISECONDS);
            }
            Thread.sleep(1500);
            settle();
            Thread.sleep(3000);
            told("all within a second, " + time + " of " + BURSTS);
        }
        if (!command.isEmpty()) {
            Process process =
                    new ProcessBuilder("bash", "-c", command).inheritIO().start();
            steady(after);
            process.waitFor();
            told("with: " + command);
            System.out.println("sent again: " + again.get() + ", connections lost: " + watching.lost()
                    + ", connected now: " + watching.connected());
        }
        Map<String, Integer> there = compare();
        int total = there.values().stream().mapToInt(Integer::intValue).sum();
        System.out.println("rounds acknowledged: " + acknowledged.get() + ", in the matches: " + total);
        int behind = watching.behind(there);
        for (int i = 0; i < 400 && behind > 0; i++) {
            Thread.sleep(100);
            behind = watching.behind(there);
        }
        System.out.println("spectators who have all of their match: " + (spectators - behind) + " of " + spectators);
        if (behind > 0) {
            faults.add(behind + " spectators do not have all rounds of their match");
        }
        watching.close();
        timer.shutdownNow();
        return List.copyOf(faults);
    }

    /** Rounds that were acknowledged so far. */
    int acknowledged() {
        return acknowledged.get();
    }

    /** Holds what is in the matches against what was thrown; rounds of each match by its path. */
    private Map<String, Integer> compare() throws IOException, InterruptedException {
        Map<String, Integer> there = new HashMap<>();
        for (Match match : matches) {
            String json = get(match.path() + ".json", 0);
            there.put(match.path(), json.split("\"round\":", -1).length - 1);
            for (Thrower one : throwers) {
                if (one.match == match) {
                    String side = json.contains("\"first\":\"" + name(one.player) + "\"") ? "first" : "second";
                    List<String> found = rounds(json, side);
                    if (!found.equals(one.thrown)) {
                        faults.add(name(one.player) + " threw " + one.thrown + ", and there is " + found);
                    }
                }
            }
        }
        return there;
    }

    /** A side's rounds of the only game in their order, as 3-1-0; one at another place than its own is marked. */
    private static List<String> rounds(String json, String side) {
        int from = json.indexOf("\"" + side + "\":[");
        String part = from < 0 ? "" : json.substring(from, json.indexOf(']', from));
        List<String> found = new ArrayList<>();
        var round = ROUND.matcher(part);
        while (round.find()) {
            String counts = round.group(2) + "-" + round.group(3) + "-" + round.group(4);
            found.add(Integer.parseInt(round.group(1)) == found.size() + 1 ? counts : round.group(1) + ": " + counts);
        }
        return found;
    }

    private void steady(int duration) throws InterruptedException {
        for (Thrower one : throwers) {
            int offset = random.nextInt(every * 1000);
            for (int at = offset; at < duration * 1000; at += every * 1000) {
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
