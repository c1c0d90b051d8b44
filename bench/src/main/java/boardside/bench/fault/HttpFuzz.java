package boardside.bench.fault;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.SocketTimeoutException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Requests that are sound, nearly sound and wild, against a server of its own. What to ask for is learned from its description
 * (OpenAPI), by following the links of its pages and by reading their forms; then paths, fields, bodies, headers and cookies are
 * changed at random. Every described route is asked in each of the three ways first; from then on, what takes long is asked the
 * more rarely. After each {@value #PER_STORE} requests it begins anew with a fresh store, as one that is full of what was sent
 * takes ever longer. From the project's folder, after {@code ./boardside --version} has built the program:
 *
 * <pre>mvn -q -B -ntp -pl bench -am -DskipTests package
 * java -cp bench/target/bench.jar boardside.bench.fault.HttpFuzz local|hosted [requests] [most seconds] [seed]</pre>
 *
 * <p>It prints how often each status came, and ends with status 1 if there was a 5xx but 503, a request without an answer for ten
 * seconds, a word of one account in an answer to another, or a store that is not sound afterwards.
 */
public final class HttpFuzz {
    private static final int THREADS = 4;
    private static final int MOST_PAGES = 300;

    /** Pages of one route that are looked at for links and forms. */
    private static final int MOST_VISITS = 4;

    static final long PER_STORE = 200_000;

    /** What takes no longer is asked as often as anything, milliseconds; what takes longer as much more rarely. */
    private static final double SHORT = 2;

    /** Yet even that is not left out. */
    private static final double RAREST = 0.001;

    /** What stands for the time of an answer that is worked out beside the requests, whoever waits for it, milliseconds. */
    private static final double BESIDE = 1000;

    private static final Pattern LINK = Pattern.compile("href=\"(/[^\"#]*)");
    private static final Pattern FORM = Pattern.compile("(?s)<form\\b([^>]*)>(.*?)</form>");
    private static final Pattern FIELD =
            Pattern.compile("<(?:input|select|textarea|button)\\b[^>]*?\\bname=\"([^\"]+)\"[^>]*");
    private static final Pattern VALUE = Pattern.compile("\\bvalue=\"([^\"]*)\"");
    private static final Pattern ACTION = Pattern.compile("action=\"([^\"]*)\"");
    private static final Pattern TOKEN = Pattern.compile("name=\"token\" value=\"([0-9a-f]+)\"");

    /** What would end the login that asks, or costs a password's work; asked for without a token only. */
    private static final Pattern ENDS = Pattern.compile(
            "sign-out|/account/delete|/account/password|/accounts/.+|/logins/|^/sign-in|^/invitation|^/reset|^/pair");

    private static final List<String> METHODS =
            List.of("GET", "HEAD", "POST", "PUT", "DELETE", "OPTIONS", "PATCH", "TRACE", "CONNECT", "BREW");

    private static final List<String> WILD = List.of(
            "",
            " ",
            "-1",
            "0",
            "12",
            "21",
            "999",
            "100000",
            "2147483648",
            "99999999999999999999",
            "1.5",
            "1,5",
            "NaN",
            "1e400",
            "0x10",
            "\u0663",
            "null",
            "true",
            "[]",
            "{}",
            "../../etc/passwd",
            "%2e%2e%2f",
            "\u0000",
            "\u202e\u0301x",
            "\ud83c\udfaf",
            "<script>alert(1)</script>",
            "'; drop table run; --",
            "${jndi:x}",
            "2026-02-30",
            "2026-06-01",
            "0000-00-00",
            "+999999999-12-31",
            "-999999999-01-01",
            "2026-13",
            "2026-05",
            "2026-06-01T25:61",
            "2026-06-01T18:00",
            "24:00",
            "Europe/Nowhere",
            "total",
            "ghost-13",
            "player-1",
            "month-9999-99",
            "Ash v Bea 88-92\nCy v Di",
            "x".repeat(300),
            "y".repeat(5000),
            "1-1 ".repeat(1000));

    /** Bytes that stand for themselves in an address; also such as are no UTF-8. */
    private static final List<String> WILD_PARTS = List.of(
            "%00",
            "%ff",
            "%c3%28",
            "%ed%a0%80",
            "..",
            "%2e%2e",
            "%2f",
            "%",
            "%zz",
            ";x=1",
            "a%0d%0ab",
            "nothing",
            "1",
            "x".repeat(4000));

    /** A kind of request learned from a page, and the described route that it takes. */
    private record Learned(String method, String path, Map<String, List<String>> fields, String route) {}

    /** How far a request is from what is described. */
    private enum Manner {
        SOUND,
        NEARLY,
        WILD
    }

    /** Somebody who asks. */
    private static final class Asker {
        private final String name;
        private final String cookies;
        private String token = "";
        private final List<Learned> learned = new ArrayList<>();

        Asker(String name, String cookies) {
            this.name = name;
            this.cookies = cookies;
        }
    }

    /** What came of a run. */
    record Result(Map<Integer, Long> statuses, long requests, Map<String, Long> routes, List<String> faults) {}

    private final Program program;
    private final boolean hosted;
    private final long seed;
    private final List<String> documents;
    private final Map<Integer, AtomicLong> statuses = Collections.synchronizedMap(new TreeMap<>());
    private final List<String> faults = Collections.synchronizedList(new ArrayList<>());
    private final AtomicLong asked = new AtomicLong();
    private final AtomicLong unanswered = new AtomicLong();
    private int port;
    private Described described = Described.NOTHING;
    private final List<Pattern> patterns = new ArrayList<>();

    /** Routes whose answers are worked out beside the requests. */
    private final Set<String> beside = new HashSet<>();

    /** Parts of paths that exist, by the name the description gives them; of all. */
    private final Map<String, Set<String>> parts = new TreeMap<>();

    private final List<String> anyPart = new ArrayList<>();
    private final Map<String, AtomicLong> routes = new ConcurrentHashMap<>();

    /** How long a route takes, milliseconds, mostly lately. */
    private final Map<String, Double> takes = new ConcurrentHashMap<>();

    /** @param documents JSON such as phones send, to start from */
    HttpFuzz(Program program, boolean hosted, long seed, List<String> documents) {
        this.program = program;
        this.hosted = hosted;
        this.seed = seed;
        this.documents = documents;
    }

    /** See the class. */
    public static void main(String[] args) throws Exception {
        Path folder = Files.createTempDirectory("boardside-http");
        long requests = args.length > 1 ? Long.parseLong(args[1]) : 1_000_000;
        long seconds = args.length > 2 ? Long.parseLong(args[2]) : 3600;
        long seed = args.length > 3 ? Long.parseLong(args[3]) : 1;
        long start = System.nanoTime();
        Result result = new Result(Map.of(), 0, Map.of(), List.of());
        for (int round = 0; result.faults().isEmpty() && result.requests() < requests; round++) {
            long left = seconds - (System.nanoTime() - start) / 1_000_000_000L;
            if (left <= 0) {
                break;
            }
            Program program = new Program(
                    List.of("./boardside"),
                    folder.resolve("fuzz-" + round + ".db").toString(),
                    folder.resolve("log"));
            HttpFuzz fuzz = new HttpFuzz(program, args[0].equals("hosted"), seed + round, documents(Path.of("app")));
            result =
                    together(result, fuzz.run(Path.of("app"), Math.min(PER_STORE, requests - result.requests()), left));
            System.out.printf(
                    Locale.ROOT,
                    "%,d requests, %.0f a second%n",
                    result.requests(),
                    result.requests() * 1e9 / (System.nanoTime() - start));
        }
        System.out.printf(Locale.ROOT, "%,d requests, by status: %s%n", result.requests(), result.statuses());
        System.out.println(result.routes().size() + " routes, least often asked: "
                + result.routes().entrySet().stream()
                        .sorted(Map.Entry.comparingByValue())
                        .limit(5)
                        .toList());
        System.out.println(
                result.faults().isEmpty()
                        ? "no faults, the store is sound"
                        : result.faults().size() + " faults:\n" + String.join("\n", result.faults()));
        System.out.println("store and log are in " + folder);
        System.exit(result.faults().isEmpty() ? 0 : 1);
    }

    private static Result together(Result one, Result other) {
        Map<Integer, Long> statuses = new TreeMap<>(one.statuses());
        other.statuses().forEach((status, count) -> statuses.merge(status, count, Long::sum));
        Map<String, Long> routes = new TreeMap<>(one.routes());
        other.routes().forEach((route, count) -> routes.merge(route, count, Long::sum));
        List<String> faults = new ArrayList<>(one.faults());
        faults.addAll(other.faults());
        return new Result(statuses, one.requests() + other.requests(), routes, faults);
    }

    /** What phones send, as kept for the fuzzing of its parser. */
    static List<String> documents(Path app) throws IOException {
        List<String> all = new ArrayList<>();
        try (Stream<Path> files = Files.list(app.resolve("src/test/fuzz/boardside.app.web.OutboxFuzz"))) {
            for (Path file : files.sorted().toList()) {
                all.add(Files.readString(file));
            }
        }
        return all;
    }

    /** Fills a store, serves it, asks, and looks at what is left. */
    Result run(Path app, long requests, long seconds) throws Exception {
        done(program.run(
                "restore", app.resolve("src/test/resources/stores/v11.jsonl").toString()));
        port = Program.freePort();
        List<String> links = new ArrayList<>();
        if (hosted) {
            for (String role : List.of("player", "player", "organiser", "host")) {
                links.add(done(program.run("account", "invite", "--role", role)).strip());
            }
        }
        Process process = hosted ? program.serve(port, Map.of(), "--hosted") : program.serve(port, Map.of());
        try {
            List<Asker> askers = askers(links);
            readDescription();
            for (Asker asker : askers) {
                learn(asker);
            }
            ask(askers, requests, System.nanoTime() + seconds * 1_000_000_000L);
            Wire last = new Wire(port);
            if (last.send(request("GET", "/health", "", "", List.of())).status() != 200) {
                faults.add("the server does not answer any more");
            }
            last.close();
        } finally {
            process.destroy();
            process.waitFor();
        }
        Program.Ran check = program.run("check");
        if (check.status() != 0) {
            faults.add("check ended with " + check.status() + " (more in the log): "
                    + check.out().strip());
        }
        Map<Integer, Long> counts = new TreeMap<>();
        statuses.forEach((status, count) -> counts.put(status, count.get()));
        counts.put(0, unanswered.get());
        Map<String, Long> asks = new TreeMap<>();
        routes.forEach((route, count) -> asks.put(route, count.get()));
        return new Result(counts, asked.get(), asks, List.copyOf(faults));
    }

    /** The routes that the server describes. */
    List<String> described() {
        return described.operations().stream().map(Described.Operation::route).toList();
    }

    private void readDescription() throws IOException {
        Wire wire = new Wire(port);
        described = new Described(
                wire.send(request("GET", "/openapi.json", "", "", List.of())).body());
        wire.close();
        for (Described.Operation operation : described.operations()) {
            patterns.add(operation.pattern());
            if (operation.beside()) {
                beside.add(operation.route());
            }
        }
    }

    /** The described route that an address takes, or another word where there is none; its parts are kept. */
    private String route(String method, String path) {
        int best = -1;
        for (int i = 0; i < patterns.size(); i++) {
            Described.Operation one = described.operations().get(i);
            if (one.method().equals(method)
                    && patterns.get(i).matcher(path).matches()
                    && (best < 0 || !one.path().contains("{"))) {
                best = i;
            }
        }
        if (best < 0) {
            return "none";
        }
        Described.Operation operation = described.operations().get(best);
        String[] names = operation.path().split("/");
        String[] values = path.split("/");
        for (int i = 0; i < names.length; i++) {
            if (names[i].startsWith("{")) {
                parts.computeIfAbsent(names[i], made -> new TreeSet<>()).add(values[i]);
                anyPart.add(values[i]);
            }
        }
        return operation.route();
    }

    private static String done(Program.Ran ran) {
        if (ran.status() != 0) {
            throw new IllegalStateException("ended with " + ran.status() + ": " + ran.out());
        }
        return ran.out();
    }

    private List<Asker> askers(List<String> links) throws Exception {
        List<Asker> askers = new ArrayList<>();
        askers.add(new Asker("a stranger", ""));
        if (!hosted) {
            askers.set(0, new Asker("this machine", "boardside-visit=" + "v".repeat(43)));
            return askers;
        }
        for (int i = 0; i < links.size(); i++) {
            Wire wire = new Wire(port);
            String path = links.get(i).replaceFirst("^https?://[^/]+", "");
            String visit = "boardside-visit=" + "v".repeat(43);
            Wire.Answer page = wire.send(request("GET", path, "", visit, List.of()));
            String form = "token=" + token(page.body()) + "&name=asker" + i + "&player=Asker" + i
                    + "&password=correct+horse+battery&again=correct+horse+battery";
            Wire.Answer taken = wire.send(request("POST", path, form, visit, List.of()));
            String login = taken.cookie("boardside-login");
            if (login.isEmpty()) {
                throw new IllegalStateException("no account by " + path + ": " + taken.status() + " " + taken.body());
            }
            wire.close();
            askers.add(new Asker("account " + i, login));
        }
        // The first account's players have names that nobody else may ever see.
        done(program.run("account", "give", "\u00c4sa", "asker0"));
        return askers;
    }

    private static String token(String page) {
        Matcher token = TOKEN.matcher(page);
        return token.find() ? token.group(1) : "";
    }

    /** Follows links and reads forms. */
    private void learn(Asker asker) throws IOException {
        Wire wire = new Wire(port);
        Deque<String> next =
                new ArrayDeque<>(List.of("/", "/more", "/journal", "/metrics", "/health", "/ready", "/api/token"));
        Set<String> seen = new HashSet<>(next);
        Set<String> forms = new HashSet<>();
        Map<String, Integer> visits = new TreeMap<>();
        while (!next.isEmpty() && seen.size() < MOST_PAGES) {
            String path = next.remove();
            String bare = path.replaceFirst("\\?.*", "");
            String route = route("GET", bare);
            asker.learned.add(new Learned("GET", bare, query(path), route));
            if (visits.merge(route, 1, Integer::sum) > (beside.contains(route) ? 1 : MOST_VISITS)) {
                continue;
            }
            Wire.Answer answer = wire.send(request("GET", path, "", asker.cookies, List.of()));
            count(asker, "GET " + path, route, answer, 0);
            if (!answer.type().startsWith("text/html")) {
                continue;
            }
            if (asker.token.isEmpty()) {
                asker.token = token(answer.body());
            }
            Matcher link = LINK.matcher(answer.body());
            while (link.find()) {
                String to = link.group(1).replace("&amp;", "&");
                if (!to.startsWith("/static") && seen.size() < MOST_PAGES && seen.add(to)) {
                    next.add(to);
                }
            }
            Matcher form = FORM.matcher(answer.body());
            while (form.find()) {
                Matcher action = ACTION.matcher(form.group(1));
                String to = action.find() && !action.group(1).isEmpty() ? action.group(1) : path;
                String method = form.group(1).contains("post") ? "POST" : "GET";
                if (forms.add(method + " " + to)) {
                    String bareTo = to.replaceFirst("[?#].*", "");
                    asker.learned.add(new Learned(method, bareTo, fields(form.group(2)), route(method, bareTo)));
                }
            }
        }
        wire.close();
    }

    private static Map<String, List<String>> query(String path) {
        Map<String, List<String>> fields = new LinkedHashMap<>();
        int start = path.indexOf('?');
        if (start >= 0) {
            for (String pair : path.substring(start + 1).split("&")) {
                String[] both = pair.split("=", 2);
                fields.computeIfAbsent(both[0], name -> new ArrayList<>()).add(both.length > 1 ? both[1] : "");
            }
        }
        return fields;
    }

    private static Map<String, List<String>> fields(String form) {
        Map<String, List<String>> fields = new LinkedHashMap<>();
        Matcher field = FIELD.matcher(form);
        while (field.find()) {
            List<String> values = fields.computeIfAbsent(field.group(1), name -> new ArrayList<>());
            Matcher value = VALUE.matcher(field.group());
            values.add(value.find() ? value.group(1) : "");
            if (field.group().startsWith("<select")) {
                int end = form.indexOf("</select>", field.end());
                Matcher option = VALUE.matcher(form.substring(field.end(), Math.max(field.end(), end)));
                while (option.find()) {
                    values.add(option.group(1));
                }
            }
        }
        return fields;
    }

    private void ask(List<Asker> askers, long requests, long until) throws Exception {
        askForAll(askers.get(askers.size() - 1));
        ExecutorService threads = Executors.newFixedThreadPool(THREADS);
        List<Future<?>> running = new ArrayList<>();
        long before = asked.get();
        for (int i = 0; i < THREADS; i++) {
            SplittableRandom random = new SplittableRandom(seed * 31 + i);
            running.add(threads.submit(() -> {
                Wire wire = new Wire(port);
                while (asked.get() - before < requests && System.nanoTime() < until && faults.size() < 100) {
                    Asker asker = askers.get(random.nextInt(askers.size()));
                    send(wire, compose(asker, random));
                }
                wire.close();
                return null;
            }));
        }
        threads.shutdown();
        for (Future<?> one : running) {
            one.get();
        }
    }

    /** Every described route in each manner; what changes something comes last, so that answers are worked out once. */
    private void askForAll(Asker asker) throws IOException {
        SplittableRandom random = new SplittableRandom(seed);
        Wire wire = new Wire(port);
        for (boolean get : new boolean[] {true, false}) {
            for (Described.Operation operation : described.operations()) {
                for (Manner manner : Manner.values()) {
                    if (operation.method().equals("GET") == get) {
                        send(wire, compose(asker, operation, manner, random));
                    }
                }
            }
        }
        wire.close();
    }

    private void send(Wire wire, Composed composed) throws IOException {
        long start = System.nanoTime();
        try {
            Wire.Answer answer = wire.send(composed.bytes());
            count(composed.asker(), composed.said(), composed.route(), answer, (System.nanoTime() - start) / 1e6);
        } catch (SocketTimeoutException e) {
            faults.add("no answer for 10 s: " + composed.said());
            wire.close();
        } catch (IOException e) {
            // Such as a request cut short; the server may close.
            asked.incrementAndGet();
            unanswered.incrementAndGet();
            wire.close();
        }
        if (composed.last()) {
            wire.close();
        }
    }

    private void count(Asker asker, String said, String route, Wire.Answer answer, double millis) {
        asked.incrementAndGet();
        routes.computeIfAbsent(route, made -> new AtomicLong()).incrementAndGet();
        takes.merge(route, millis, (before, now) -> 0.9 * before + 0.1 * now);
        statuses.computeIfAbsent(answer.status(), made -> new AtomicLong()).incrementAndGet();
        if (answer.status() >= 500 && answer.status() != 503 && answer.status() != 501 && answer.status() != 505) {
            faults.add(answer.status() + " to " + asker.name + ": " + said);
        }
        if (hosted && !asker.name.equals("account 0") && answer.body().contains("Blue, broken in")) {
            faults.add("what is another's, to " + asker.name + ": " + said);
        }
    }

    /** A request in bytes, in words for people, and whether the connection is of no use after it. */
    private record Composed(Asker asker, String route, byte[] bytes, String said, boolean last) {}

    /** Whether a route is asked for now: the more rarely, the longer it takes. */
    private boolean turn(String route, SplittableRandom random) {
        double millis = takes.getOrDefault(route, 0.0) + (beside.contains(route) ? BESIDE : 0);
        return millis <= SHORT || random.nextDouble() < Math.max(RAREST, SHORT / millis);
    }

    private Composed compose(Asker asker, SplittableRandom random) {
        if (random.nextInt(14) == 0) {
            return compose(
                    asker, new Learned("POST", "/api/outbox", Map.of(), "POST /api/outbox"), document(random), random);
        }
        while (true) {
            if (random.nextBoolean() || asker.learned.isEmpty()) {
                Described.Operation operation = described
                        .operations()
                        .get(random.nextInt(described.operations().size()));
                if (turn(operation.route(), random)) {
                    return compose(asker, operation, Manner.values()[random.nextInt(3)], random);
                }
            } else {
                Learned learned = asker.learned.get(random.nextInt(asker.learned.size()));
                if (turn(learned.route(), random)) {
                    return compose(asker, learned, form(learned.fields(), random), random);
                }
            }
        }
    }

    /** A request for something described. */
    private Composed compose(Asker asker, Described.Operation operation, Manner manner, SplittableRandom random) {
        StringBuilder path = new StringBuilder();
        for (String part : operation.path().substring(1).split("/", -1)) {
            path.append('/').append(part.startsWith("{") ? part(part, manner, random) : part);
        }
        Map<String, List<String>> none = Map.of();
        Learned asking = new Learned(operation.method(), path.toString(), none, operation.route());
        if (!operation.body().isMissingNode()) {
            double share = manner == Manner.SOUND ? 0 : manner == Manner.NEARLY ? 0.01 : 0.1;
            return compose(asker, asking, described.json(operation.body(), random, share, texts(random)), random);
        }
        List<String> pairs = new ArrayList<>();
        operation.fields().forEach((name, kind) -> {
            int times = random.nextInt(5) == 0 ? random.nextInt(manner == Manner.SOUND ? 2 : 4) : 1;
            String whole = name.endsWith("-") ? name + (1 + random.nextInt(4)) : name;
            for (int i = 0; i < times; i++) {
                String value = manner == Manner.WILD && random.nextInt(3) > 0 ? null : described.field(kind, random);
                if (value == null) {
                    List<String> texts = manner == Manner.WILD ? WILD : texts(random);
                    value = texts.get(random.nextInt(texts.size()));
                }
                pairs.add(whole + "=" + URLEncoder.encode(value, StandardCharsets.UTF_8));
            }
        });
        return compose(asker, asking, String.join("&", pairs), random);
    }

    private String part(String name, Manner manner, SplittableRandom random) {
        List<String> known = List.copyOf(parts.getOrDefault(name, Set.of()));
        if (manner == Manner.WILD && random.nextBoolean()) {
            return random.nextBoolean()
                    ? WILD_PARTS.get(random.nextInt(WILD_PARTS.size()))
                    : URLEncoder.encode(WILD.get(random.nextInt(WILD.size())), StandardCharsets.UTF_8);
        }
        if (known.isEmpty() || (manner == Manner.NEARLY && random.nextBoolean())) {
            return anyPart.isEmpty() ? "1" : anyPart.get(random.nextInt(anyPart.size()));
        }
        return known.get(random.nextInt(known.size()));
    }

    /** What stands for a text: something that exists, something that could, or nothing. */
    private List<String> texts(SplittableRandom random) {
        return List.of(
                anyPart.isEmpty() ? "" : anyPart.get(random.nextInt(anyPart.size())),
                "2026-06-01T19:00:00+02:00",
                "Ash",
                "2-left",
                "2-1-1 0-0-4",
                "0,14>1,33 1,20>in",
                String.format(Locale.ROOT, "01900000-0000-7000-8000-%012x", random.nextInt(40)),
                "");
    }

    private Composed compose(Asker asker, Learned learned, String form, SplittableRandom random) {
        boolean ends = ENDS.matcher(learned.path()).find();
        String method = random.nextInt(30) == 0 ? METHODS.get(random.nextInt(METHODS.size())) : learned.method();
        String path = random.nextInt(5) == 0 ? otherPath(learned.path(), random) : learned.path();
        List<String> headers = new ArrayList<>();
        boolean token = !ends && random.nextInt(10) > 0;
        String body = "";
        String type = "application/x-www-form-urlencoded";
        boolean json = learned.path().startsWith("/api/outbox");
        if (json && method.equals("POST")) {
            body = form;
            type = "application/json";
        } else if (method.equals("GET") || method.equals("HEAD")) {
            path += form.isEmpty() ? "" : "?" + form;
        } else {
            body = form + (token ? "&token=" + asker.token : "");
        }
        if (token && (json || random.nextInt(4) == 0)) {
            headers.add("X-Boardside-Token: " + asker.token);
        }
        if (random.nextInt(20) == 0) {
            type = List.of(
                            "text/plain",
                            "multipart/form-data; boundary=x",
                            "multipart/form-data",
                            "application/json; charset=utf-99",
                            "x",
                            "")
                    .get(random.nextInt(6));
        }
        if (random.nextInt(25) == 0) {
            headers.add(List.of(
                            "Accept: application/json",
                            "Accept: text/event-stream-not",
                            "Accept-Encoding: gzip, x;q=9",
                            "Accept-Language: " + "de,".repeat(300),
                            "Origin: http://evil.example",
                            "X-Forwarded-For: 1.2.3.4, ]",
                            "X-Forwarded-Proto: \u00ff",
                            "Range: bytes=9-1",
                            "If-None-Match: \"",
                            "If-Modified-Since: yesterday",
                            "Expect: 200-maybe",
                            "Cookie: boardside-player=" + WILD.get(random.nextInt(5)),
                            "Cookie: boardside-look={; boardside-visit=\"",
                            "X: " + "z".repeat(9000))
                    .get(random.nextInt(14)));
        }
        boolean last = false;
        int length = body.getBytes(StandardCharsets.UTF_8).length;
        if (random.nextInt(100) == 0) {
            length += random.nextInt(2) == 0 ? -Math.min(length, 3) : 0;
            last = true;
        }
        String cookies = random.nextInt(40) == 0 ? "boardside-login=" + "0".repeat(40) : asker.cookies;
        String request = method + " " + path + " HTTP/1.1\r\nHost: "
                + (random.nextInt(200) == 0 ? "[::" : "127.0.0.1:" + port) + "\r\n"
                + (cookies.isEmpty() ? "" : "Cookie: " + cookies + "\r\n")
                + (body.isEmpty() && method.equals("GET")
                        ? ""
                        : "Content-Type: " + type + "\r\nContent-Length: " + length + "\r\n")
                + String.join(
                        "", headers.stream().map(header -> header + "\r\n").toList()) + "\r\n" + body;
        boolean head = method.equals("HEAD");
        String said = method + " " + shortened(path) + " " + shortened(body);
        return new Composed(
                asker,
                learned.route(),
                request.getBytes(StandardCharsets.UTF_8),
                said,
                last || head || method.equals("CONNECT"));
    }

    private static String shortened(String text) {
        return text.length() <= 400 ? text : text.substring(0, 400) + "\u2026";
    }

    private static String otherPath(String path, SplittableRandom random) {
        String[] parts = path.split("/", -1);
        int which = parts.length < 2 ? 0 : 1 + random.nextInt(parts.length - 1);
        parts[which] = random.nextBoolean()
                ? WILD_PARTS.get(random.nextInt(WILD_PARTS.size()))
                : URLEncoder.encode(WILD.get(random.nextInt(WILD.size())), StandardCharsets.UTF_8);
        String other = String.join("/", parts);
        return other.startsWith("/") ? other : "/" + other;
    }

    private static String form(Map<String, List<String>> fields, SplittableRandom random) {
        List<String> pairs = new ArrayList<>();
        boolean sound = random.nextInt(4) == 0;
        fields.forEach((name, values) -> {
            int times = sound || random.nextInt(8) > 0 ? 1 : random.nextInt(4);
            for (int i = 0; i < times && !name.equals("token"); i++) {
                String value = sound || random.nextInt(3) > 0
                        ? values.get(random.nextInt(values.size()))
                        : WILD.get(random.nextInt(WILD.size()));
                pairs.add(name + "="
                        + (random.nextInt(60) == 0 ? "%ff%fe" : URLEncoder.encode(value, StandardCharsets.UTF_8)));
            }
        });
        return String.join("&", pairs);
    }

    private static final Pattern ATOM = Pattern.compile("\"[^\"]*\"|-?\\d+(?:\\.\\d+)?|true|false|null");

    /** A document with some of its values changed, left out or doubled; sometimes one that is large or deep. */
    private String document(SplittableRandom random) {
        int kind = random.nextInt(60);
        if (kind == 0) {
            return "[".repeat(100_000);
        }
        if (kind == 1) {
            return "{\"player\":1,\"operations\":[" + "{},".repeat(200_000) + "{}]}";
        }
        String document = documents.get(random.nextInt(documents.size()));
        if (random.nextInt(6) == 0) {
            return document.substring(0, random.nextInt(document.length() + 1));
        }
        double share = random.nextInt(3) == 0 ? 0.2 : 0.02;
        return ATOM.matcher(document)
                .replaceAll(found -> Matcher.quoteReplacement(
                        random.nextDouble() >= share
                                ? found.group()
                                : switch (random.nextInt(6)) {
                                    case 0 -> "null";
                                    case 1 -> String.valueOf(random.nextInt());
                                    case 2 -> "1e400";
                                    case 3 -> "[]";
                                    case 4 -> "{}";
                                    default ->
                                        "\""
                                                + WILD.get(random.nextInt(WILD.size()))
                                                        .replaceAll("[\"\\\\\\x00-\\x1f]", "")
                                                + "\"";
                                }));
    }

    private byte[] request(String method, String path, String body, String cookies, List<String> headers) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes((method + " " + path + " HTTP/1.1\r\nHost: 127.0.0.1:" + port + "\r\n"
                        + (cookies.isEmpty() ? "" : "Cookie: " + cookies + "\r\n")
                        + String.join(
                                "",
                                headers.stream().map(header -> header + "\r\n").toList())
                        + (body.isEmpty()
                                ? ""
                                : "Content-Type: application/x-www-form-urlencoded\r\nContent-Length: "
                                        + body.getBytes(StandardCharsets.UTF_8).length + "\r\n")
                        + "\r\n" + body)
                .getBytes(StandardCharsets.UTF_8));
        return out.toByteArray();
    }
}
