package boardside.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.json.Json;
import boardside.app.practice.Role;
import boardside.app.record.Records;
import boardside.app.transfer.Backups;
import boardside.app.transfer.LogFiles;
import io.javalin.http.HandlerType;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * That the description names every field handlers ask for and every field that pages send, and every status and kind of answer
 * they get: the links of all pages are followed and their forms sent as they stand, with an ear at the handlers.
 */
class OpenApiFieldsTest {
    private static final Pattern LINK = Pattern.compile("href=\"(/[^\"#]*)");
    private static final Pattern FORM = Pattern.compile("(?s)<form\\b([^>]*)>(.*?)</form>");
    private static final Pattern FIELD =
            Pattern.compile("(?s)<(input|select|textarea|button)\\b[^>]*?\\bname=\"([^\"]+)\"[^>]*");
    private static final Pattern VALUE = Pattern.compile("\\bvalue=\"([^\"]*)\"");
    private static final Pattern ACTION = Pattern.compile("\\baction=\"([^\"]*)\"");

    /** No page links to them, or what they ask for takes long; forms of other pages lead to what is like them. */
    private static final List<String> ALSO = List.of(
            "/advise/shots?bags=[]&step=0",
            "/throws/watch?bag=0&block=0&throw=0",
            "/slides",
            "/trials/new?bag=b1",
            "/api/token");

    /** Worked out for long. */
    private static final Set<String> SLOW = Set.of("GET /playbook");

    /** Longer than a request waits for an answer. */
    private static final int LATE_MILLIS = 200;

    @TempDir
    private Path folder;

    /** What was not described, each once. */
    private final Set<String> undescribed = new TreeSet<>();

    private final Set<String> reached = new TreeSet<>();

    /** Routes that have answered with what asks again. */
    private final Set<String> waited = new TreeSet<>();

    private Map<String, Map<?, ?>> described = Map.of();

    private record Sending(String path, String form) {}

    @Test
    void householdsAreWhollyDescribed() {
        try (Records records = records();
                Listened listened = new Listened(records, ServerOptions.local(0))) {
            described = described(false);
            String cookie = Wire.get(Wire.HERE, listened.port(), "/start/total").cookie(Guard.VISIT);
            crawl(listened, cookie);
            heard(listened);
        }
        assertThat(undescribed).isEmpty();
        assertThat(reached.size()).as("routes tried: " + reached).isGreaterThan(110);
    }

    @Test
    void pagesThatAreNotReadyInTimeAreDescribed() {
        try (Records records = records();
                Listened listened = new Listened(records, ServerOptions.local(0), LATE_MILLIS)) {
            described = described(false);
            String cookie = Wire.get(Wire.HERE, listened.port(), "/start/total").cookie(Guard.VISIT);
            crawl(listened, cookie);
        }
        assertThat(undescribed).isEmpty();
        // Any one of them may be ready all the same, where the machine stalls just then.
        assertThat(waited).hasSizeGreaterThan(3);
    }

    @Test
    void hostedModeIsWhollyDescribed() {
        try (Records records = records();
                Listened listened = new Listened(records, Club.options(new Hosting(List.of(), false)))) {
            described = described(true);
            String login = records.signIns()
                    .signIn(Club.account(records, "host", Role.HOST), "Test")
                    .orElseThrow();
            records.accounts().invite(Role.PLAYER, "");
            Wire stranger = Wire.get(Wire.HERE, listened.port(), "/sign-in");
            Wire.post(
                    Wire.HERE,
                    listened.port(),
                    "/sign-in",
                    "name=nobody&password=" + "x".repeat(12) + "&token=" + stranger.token(),
                    "Cookie: " + stranger.cookie(Guard.VISIT));
            crawl(listened, Guard.LOGIN + "=" + login);
            heard(listened);
        }
        assertThat(undescribed).isEmpty();
        assertThat(reached).contains("POST /accounts/invite", "GET /account/players/{player}/log.csv");
    }

    private Records records() {
        Records records = Records.open(folder.resolve("store.db").toString());
        Backups.restore(records, Path.of("src/test/resources/stores/v11.jsonl"), true, LogFiles.Progress.NONE);
        return records;
    }

    /** Operations of the description by route. */
    private static Map<String, Map<?, ?>> described(boolean hosted) {
        Map<String, Map<?, ?>> operations = new HashMap<>();
        Map<?, ?> paths = (Map<?, ?>) Objects.requireNonNull(
                Json.read(Json.write(OpenApi.document(hosted)), Map.class).get("paths"));
        paths.forEach((path, methods) -> ((Map<?, ?>) methods)
                .forEach((method, operation) -> operations.put(
                        method.toString().toUpperCase(Locale.ROOT) + " " + path, (Map<?, ?>) operation)));
        return operations;
    }

    private void crawl(Listened listened, String cookies) {
        Deque<String> next = new ArrayDeque<>(List.of("/"));
        next.addAll(ALSO);
        Set<String> seen = new HashSet<>(next);
        Map<String, Integer> visits = new TreeMap<>();
        List<Sending> sendings = new ArrayList<>();
        String token = "";
        while (!next.isEmpty()) {
            String path = next.remove();
            String route = route(listened, HandlerType.GET, path);
            query(path).forEach(name -> named(route, name));
            if (SLOW.contains(route) || visits.merge(route + query(path), 1, Integer::sum) > 1) {
                continue;
            }
            Wire page = Wire.get(Wire.HERE, listened.port(), path, "Cookie: " + cookies);
            answered(route, page);
            if (!page.header("content-type").startsWith("text/html")) {
                continue;
            }
            if (token.isEmpty() && page.token().matches("[0-9a-f]{64}")) {
                token = page.token();
            }
            Matcher link = LINK.matcher(page.body());
            while (link.find()) {
                String to = link.group(1).replace("&amp;", "&");
                if (!to.startsWith("/static") && seen.add(to)) {
                    next.add(to);
                }
            }
            Matcher form = FORM.matcher(page.body());
            while (form.find()) {
                Matcher action = ACTION.matcher(form.group(1));
                String to = action.find() && !action.group(1).isEmpty() ? action.group(1) : path;
                to = to.replaceFirst("[?#].*", "");
                if (form.group(1).contains("method=\"dialog\"")) {
                    // Read by a script, never sent.
                    continue;
                }
                HandlerType method = form.group(1).contains("post") ? HandlerType.POST : HandlerType.GET;
                String target = route(listened, method, to);
                Map<String, String> fields = fields(form.group(2));
                fields.keySet().forEach(name -> named(target, name));
                List<String> pairs = new ArrayList<>();
                fields.forEach(
                        (name, value) -> pairs.add(name + "=" + URLEncoder.encode(value, StandardCharsets.UTF_8)));
                if (method == HandlerType.GET) {
                    if (seen.add(to + "?" + String.join("&", pairs))) {
                        next.add(to + "?" + String.join("&", pairs));
                    }
                } else if (visits.merge(target, 1, Integer::sum) == 1) {
                    sendings.add(new Sending(to, String.join("&", pairs)));
                }
            }
        }
        // What ends the login comes last.
        sendings.sort(Comparator.comparing(sending -> sending.path().startsWith("/account/")));
        for (Sending one : sendings) {
            answered(
                    route(listened, HandlerType.POST, one.path()),
                    Wire.post(
                            Wire.HERE,
                            listened.port(),
                            one.path(),
                            one.form() + "&token=" + token,
                            "Cookie: " + cookies));
        }
    }

    /** What handlers asked for by name. */
    private void heard(Listened listened) {
        listened.read()
                .forEach((route, names) -> names.forEach(name -> {
                    boolean get = route.startsWith("GET ");
                    // "said" is of every page; some read the form and the address alike.
                    if (!name.equals("?said") && (get == name.startsWith("?") || !route.contains("/trials"))) {
                        named(route, name.replace("?", ""));
                    }
                }));
    }

    private void named(String route, String name) {
        if (name.equals("said")) {
            return;
        }
        Map<?, ?> operation = described.get(route);
        if (operation == null) {
            undescribed.add(route);
            return;
        }
        boolean known = names(operation).stream()
                .anyMatch(one -> one.startsWith("^") ? name.startsWith(one.substring(1)) : one.equals(name));
        if (!known) {
            undescribed.add(route + ": " + name);
        }
    }

    /** Names of fields; such as stand for a beginning begin with ^. */
    private static Set<String> names(Map<?, ?> operation) {
        Set<String> names = new TreeSet<>();
        if (operation.get("parameters") instanceof List<?> parameters) {
            parameters.forEach(one -> names.add(String.valueOf(((Map<?, ?>) one).get("name"))));
        }
        if (operation.get("requestBody") instanceof Map<?, ?> body
                && body.get("content") instanceof Map<?, ?> content
                && content.get("application/x-www-form-urlencoded") instanceof Map<?, ?> form
                && form.get("schema") instanceof Map<?, ?> schema) {
            for (String part : List.of("properties", "patternProperties")) {
                if (schema.get(part) instanceof Map<?, ?> properties) {
                    properties.keySet().forEach(name -> names.add(String.valueOf(name)));
                }
            }
        }
        return names;
    }

    private void answered(String route, Wire answer) {
        reached.add(route);
        if (answer.status() == Web.WORKING) {
            waited.add(route);
        }
        Map<?, ?> operation = described.get(route);
        if (operation == null
                || !(operation.get("responses") instanceof Map<?, ?> responses)
                || !(responses.get(String.valueOf(answer.status())) instanceof Map<?, ?> response)) {
            undescribed.add(route + ": answers " + answer.status());
            return;
        }
        String type = answer.header("content-type").replaceFirst(";.*", "");
        if (response.get("content") instanceof Map<?, ?> content
                && !content.containsKey(type)
                && !content.containsKey("*/*")) {
            undescribed.add(route + ": answers " + answer.status() + " " + type);
        }
    }

    private static String route(Listened listened, HandlerType method, String path) {
        String bare = path.replaceFirst("\\?.*", "");
        Optional<Route> route = listened.routes().stream()
                .filter(one -> one.method() == method
                        && bare.matches(one.path().replace("<file>", ".+").replaceAll("\\{[^}]*}", "[^/]+")))
                .min(Comparator.comparing(one -> one.path().contains("{")));
        return route.map(one -> method + " " + one.path().replace("<file>", "{file}"))
                .orElse(method + " " + bare);
    }

    private static Set<String> query(String path) {
        Set<String> names = new TreeSet<>();
        int start = path.indexOf('?');
        for (String pair : start < 0 ? new String[0] : path.substring(start + 1).split("&")) {
            names.add(pair.replaceFirst("=.*", ""));
        }
        return names;
    }

    /** Fields with their first value. */
    private static Map<String, String> fields(String form) {
        Map<String, String> fields = new LinkedHashMap<>();
        Matcher field = FIELD.matcher(form);
        while (field.find()) {
            int end = field.group(1).equals("select") ? form.indexOf("</select>", field.end()) : field.end();
            Matcher value =
                    VALUE.matcher(field.group(1).equals("select") ? form.substring(field.end(), end) : field.group());
            if (!field.group(2).equals("token")) {
                fields.putIfAbsent(field.group(2), value.find() ? value.group(1) : "");
            }
        }
        return fields;
    }
}
