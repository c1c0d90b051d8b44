package boardside.app.web;

import boardside.app.json.Json;
import boardside.app.practice.BagOrder;
import boardside.app.practice.Exercise;
import boardside.app.practice.Operation;
import boardside.app.practice.Role;
import boardside.app.practice.TrialPlan;
import boardside.app.record.SharedTrial;
import boardside.engine.plan.Energy;
import boardside.engine.plan.Goal;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.FirstThrow;
import boardside.engine.rules.Setting;
import boardside.engine.tactics.Shot;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The interface described for programs, by the OpenAPI Specification 3.1.0 (spec.openapis.org/oas/v3.1.0). What stands beside the
 * access table is read from {@code interface.txt}, which tests hold against it; bodies of JSON come from the very records that
 * are read and written; what is the same everywhere (signing in, the form token, refusals) is added here.
 */
public final class OpenApi {
    private static final String TABLE = "/boardside/interface.txt";
    private static final String SCHEMAS = "/boardside/interface.json";
    private static final Pattern PART = Pattern.compile("\\{([^}]*)}");
    private static final String HTML = "text/html";
    private static final String JSON = "application/json";
    private static final String LOGIN = "login";
    private static final String DEVICE = "device";
    private static final String TOKEN = "token";

    /** Bodies that are records. */
    private static final Map<String, Class<?>> RECORDS = Map.of(
            "Upload", RunPage.Upload.class,
            "Answer", RunPage.Answer.class,
            "SharedTrial", SharedTrial.class,
            "SharedSituation", SituationsPage.Shared.class);

    private static final Map<String, Class<?>> WORDS = Map.ofEntries(
            Map.entry("Approach", Approach.class),
            Map.entry("BagOrder", BagOrder.class),
            Map.entry("BoardKind", BoardKind.class),
            Map.entry("Call", Exercise.Call.class),
            Map.entry("Conditions", Conditions.class),
            Map.entry("Drill", Drill.class),
            Map.entry("Energy", Energy.class),
            Map.entry("Face", Face.class),
            Map.entry("FirstThrow", FirstThrow.class),
            Map.entry("Goal", Goal.Kind.class),
            Map.entry("Report", Reports.Kind.class),
            Map.entry("Role", Role.class),
            Map.entry("Setting", Setting.class),
            Map.entry("Shot", Shot.class),
            Map.entry("TrialState", TrialPlan.State.class));

    /**
     * A line of the table.
     *
     * @param fields as they stand there
     */
    record Line(String method, String path, Access access, List<String> fields, String answer, String does) {}

    private record Field(String kind, String says) {}

    private final boolean hosted;
    private final Map<String, Map<String, Field>> fields = new TreeMap<>();
    private final List<Line> lines = new ArrayList<>();
    private final RecordSchemas records =
            new RecordSchemas(Map.of(Operation.class, new LinkedHashMap<>(OperationJson.kinds())));

    private OpenApi(boolean hosted) {
        this.hosted = hosted;
        String section = "";
        for (String line : resource(TABLE).lines().toList()) {
            if (line.startsWith("## ")) {
                section = line.substring(3);
            } else if (!line.isBlank() && !line.startsWith("#")) {
                String[] columns = line.split("\\s{2,}");
                switch (section) {
                    case "paths", "fields" ->
                        fields.computeIfAbsent(section, made -> new TreeMap<>())
                                .put(columns[0], new Field(columns[1], columns[2]));
                    case "household" -> add(!hosted, columns);
                    case "hosted" -> add(hosted, columns);
                    default -> add(true, columns);
                }
            }
        }
    }

    private void add(boolean here, String[] columns) {
        if (here) {
            String[] route = columns[0].split(" ");
            lines.add(new Line(
                    route[0],
                    route[1],
                    Access.valueOf(columns[1].toUpperCase(Locale.ROOT)),
                    columns[2].equals("-") ? List.of() : Arrays.asList(columns[2].split(" ")),
                    columns[3],
                    columns[4]));
        }
    }

    private static String resource(String name) {
        try (InputStream in = OpenApi.class.getResourceAsStream(name)) {
            return new String(Objects.requireNonNull(in, name).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What the table says of each route. */
    static List<Line> lines(boolean hosted) {
        return List.copyOf(new OpenApi(hosted).lines);
    }

    /** The description, as values for JSON. */
    public static Map<String, Object> document(boolean hosted) {
        return new OpenApi(hosted).document();
    }

    private Map<String, Object> document() {
        Map<String, Object> paths = new LinkedHashMap<>();
        for (Line line : lines) {
            @SuppressWarnings("unchecked")
            Map<String, Object> path = (Map<String, Object>)
                    paths.computeIfAbsent(line.path(), made -> new LinkedHashMap<String, Object>());
            path.put(line.method().toLowerCase(Locale.ROOT), operation(line));
        }
        Map<String, Object> schemas = new TreeMap<>();
        Json.read(resource(SCHEMAS), Map.class).forEach((name, schema) -> schemas.put((String) name, schema));
        RECORDS.forEach(records::named);
        schemas.putAll(records.all());
        Map<String, Object> document = new LinkedHashMap<>();
        document.put("openapi", "3.1.0");
        document.put(
                "info",
                ordered(
                        "title",
                        "Boardside",
                        "version",
                        Version.number(),
                        "description",
                        "Every route this server answers" + (hosted ? ", in hosted mode" : ", in a household")
                                + ". An empty field counts as one that was not sent; fields that are not named here are"
                                + " ignored. Pages also take \"said\", which words what was just done."));
        document.put("servers", List.of(Map.of("url", "/")));
        document.put("paths", paths);
        document.put("components", ordered("schemas", schemas, "securitySchemes", securitySchemes()));
        return document;
    }

    private Map<String, Object> securitySchemes() {
        Map<String, Object> schemes = new LinkedHashMap<>();
        schemes.put(
                hosted ? LOGIN : DEVICE,
                ordered(
                        "type",
                        "apiKey",
                        "in",
                        "cookie",
                        "name",
                        hosted ? Guard.LOGIN : Guard.DEVICE,
                        "description",
                        hosted
                                ? "Set by signing in; over HTTPS its name begins with __Host-."
                                : "Set by pairing. The machine that serves needs none."));
        schemes.put(
                TOKEN,
                ordered(
                        "type",
                        "apiKey",
                        "in",
                        "header",
                        "name",
                        Guard.TOKEN_HEADER,
                        "description",
                        "The form token, from /api/token or any form of ours; forms send it as the field \""
                                + Guard.TOKEN_FIELD + "\" instead. It goes with the cookie "
                                + (hosted ? "that signs in, before with " : "") + Guard.VISIT + "."));
        return schemes;
    }

    private Map<String, Object> operation(Line line) {
        Map<String, Object> operation = new LinkedHashMap<>();
        operation.put("summary", line.does());
        boolean get = line.method().equals("GET");
        List<Object> parameters = new ArrayList<>();
        Matcher part = PART.matcher(line.path());
        while (part.find()) {
            parameters.add(parameter("path", part.group(1), field("paths", part.group(1)), false));
        }
        boolean json = line.fields().size() > 1 && line.fields().get(0).equals("json");
        if (get) {
            for (String written : line.fields()) {
                parameters.add(
                        parameter("query", name(written), field("fields", described(written)), written.endsWith("*")));
            }
        } else if (json) {
            operation.put(
                    "requestBody",
                    ordered(
                            "required",
                            true,
                            "content",
                            Map.of(JSON, schema(reference(line.fields().get(1))))));
        } else {
            operation.put("requestBody", form(line));
        }
        if (!parameters.isEmpty()) {
            operation.put("parameters", parameters);
        }
        operation.put("security", security(line.access(), get));
        operation.put("responses", responses(line, get));
        return operation;
    }

    private static String name(String written) {
        return written.replaceFirst("[:*].*", "");
    }

    private static String described(String written) {
        return written.replaceFirst("\\*$", "").replaceFirst("^.*:", "");
    }

    private Field field(String section, String name) {
        Field field = fields.getOrDefault(section, Map.of()).get(name);
        if (field == null) {
            throw new IllegalStateException(TABLE + " does not say what " + name + " is");
        }
        return field;
    }

    private Map<String, Object> parameter(String in, String name, Field field, boolean many) {
        Map<String, Object> parameter = ordered("name", name, "in", in, "description", field.says());
        if (in.equals("path")) {
            parameter.put("required", true);
        }
        if (field.kind().startsWith("json ")) {
            parameter.put("content", Map.of(JSON, schema(reference(field.kind().substring(5)))));
        } else {
            parameter.put("schema", many ? Map.of("type", "array", "items", kind(field.kind())) : kind(field.kind()));
        }
        return parameter;
    }

    private Map<String, Object> form(Line line) {
        Map<String, Object> named = new LinkedHashMap<>();
        Map<String, Object> begun = new LinkedHashMap<>();
        boolean file = false;
        for (String written : line.fields()) {
            Field field = field("fields", described(written));
            Map<String, Object> one = new LinkedHashMap<>(kind(field.kind()));
            if (written.endsWith("*")) {
                one = ordered("type", "array", "items", one);
            }
            one.put("description", field.says());
            file |= field.kind().equals("file");
            if (name(written).endsWith("-")) {
                begun.put("^" + name(written), one);
            } else {
                named.put(name(written), one);
            }
        }
        named.put(
                Guard.TOKEN_FIELD, ordered("type", "string", "description", "The form token, where no header has it."));
        Map<String, Object> form = ordered("type", "object", "properties", named);
        if (!begun.isEmpty()) {
            form.put("patternProperties", begun);
        }
        Map<String, Object> content = ordered("application/x-www-form-urlencoded", schema(form));
        if (file) {
            content.put("multipart/form-data", schema(form));
        }
        return ordered("content", content);
    }

    private Map<String, Object> kind(String written) {
        String[] parts = written.split(" ", 2);
        return switch (parts[0]) {
            case "text" -> Map.of("type", "string");
            case "id" -> Map.of("type", "string", "description", "As this server gave it, usually a UUID.");
            case "date" -> Map.of("type", "string", "format", "date");
            case "month" -> Map.of("type", "string", "pattern", "^\\d{4}-\\d{2}$");
            case "time" -> Map.of("type", "string", "pattern", "^\\d{2}:\\d{2}$");
            case "file" -> Map.of("type", "string", "contentMediaType", "application/octet-stream");
            case "whole", "number" -> {
                String[] bounds = parts[1].split("\\.\\.");
                yield ordered(
                        "type", parts[0].equals("whole") ? "integer" : "number",
                        "minimum", Long.valueOf(bounds[0]),
                        "maximum", Long.valueOf(bounds[1]));
            }
            case "words" -> records.named(parts[1], Objects.requireNonNull(WORDS.get(parts[1]), parts[1]));
            case "one" ->
                Map.of("type", "string", "enum", List.of(parts[1].substring(3).split(", ")));
            default -> throw new IllegalStateException(TABLE + ": there is no kind " + written);
        };
    }

    private static Map<String, Object> reference(String name) {
        return Map.of("$ref", "#/components/schemas/" + name);
    }

    private static Map<String, Object> schema(Map<String, Object> schema) {
        return Map.of("schema", schema);
    }

    private List<Object> security(Access access, boolean get) {
        Map<String, Object> needs = new LinkedHashMap<>();
        switch (access) {
            case DEVICE, ORGANISER, HOST -> needs.put(hosted ? LOGIN : DEVICE, List.of());
            case EVERYONE, PROBE, MONITOR, LOCAL -> {}
        }
        if (!get) {
            needs.put(TOKEN, List.of());
        }
        List<Object> ways = new ArrayList<>(List.of(needs));
        if (!hosted && needs.containsKey(DEVICE)) {
            Map<String, Object> here = new LinkedHashMap<>(needs);
            here.remove(DEVICE);
            ways.add(here);
        }
        return ways;
    }

    private static Map<String, Object> responses(Line line, boolean get) {
        Map<String, Object> responses = new TreeMap<>();
        String[] answer = line.answer().split(" ");
        switch (answer[0]) {
            case "page" -> responses.put("200", answer("The page.", HTML));
            case "found" -> {
                responses.put("200", answer("The page.", HTML));
                responses.put("202", answer("A page that asks again: the answer is being worked out.", HTML));
            }
            case "part" -> {
                responses.put("200", answer("A part of a page.", HTML));
                responses.put("202", Map.of("description", "Being worked out: ask again."));
            }
            case "see", "form" -> {}
            case "json" ->
                responses.put(
                        "200",
                        ordered("description", "The answer.", "content", Map.of(JSON, schema(reference(answer[1])))));
            case "csv" -> responses.put("200", answer("A file.", "text/csv"));
            case "lines" -> responses.put("200", answer("A file.", "application/jsonl"));
            case "ics" -> responses.put("200", answer("A calendar (RFC 5545).", "text/calendar"));
            case "pdf" -> responses.put("200", answer("The paper.", "application/pdf"));
            case "svg" -> responses.put("200", answer("The picture.", "image/svg+xml"));
            case "events" -> responses.put("200", answer("Events as long as one listens.", "text/event-stream"));
            case "text" -> responses.put("200", answer("Text.", "text/plain"));
            case "script" -> responses.put("200", answer("The script.", "text/javascript"));
            case "file" -> responses.put("200", answer("The file.", "*/*"));
            default -> throw new IllegalStateException(TABLE + ": there is no answer " + line.answer());
        }
        if (answer[0].equals("file")) {
            responses.put("304", Map.of("description", "Unchanged."));
        }
        // Also who is not let in is sent on, to where they can be; and plain HTTP to HTTPS, where that is on.
        responses.put("302", Map.of("description", "See the address in Location."));
        responses.put("308", Map.of("description", "Over HTTPS, please."));
        if (!get) {
            responses.put("413", fault("More than 4 MB."));
            responses.put("403", fault("Without the form token, from another site, or not for who asks."));
        }
        if (line.access() == Access.EVERYONE && !get || line.answer().equals("events")) {
            responses.put("429", fault("Too many tries: wait."));
        }
        switch (line.access()) {
            case DEVICE -> responses.put("401", fault("Not let in, or not signed in."));
            case ORGANISER, HOST -> {
                responses.put("401", fault("Not let in, or not signed in."));
                responses.put("403", fault("Not for who asks."));
            }
            case LOCAL, MONITOR -> responses.put("403", fault("Only from the machine that serves."));
            case EVERYONE, PROBE -> {}
        }
        responses.put("400", fault("The request cannot be read, or is none."));
        responses.put("404", fault("There is no such thing, or none that who asks may see."));
        responses.put("421", fault("Asked under a name that is not this server's."));
        responses.put("422", fault("What was sent does not do; the page says why."));
        responses.put(
                "503",
                line.path().equals("/ready")
                        ? ordered("description", "Not ready.", "content", Map.of(JSON, schema(reference("Ready"))))
                        : fault("The store cannot be read or written just now, or too many ask."));
        return responses;
    }

    private static Map<String, Object> answer(String says, String type) {
        return ordered("description", says, "content", Map.of(type, schema(Map.of("type", "string"))));
    }

    /** Refusals are pages, and JSON to whoever accepts only that, and under /api/. */
    private static Map<String, Object> fault(String says) {
        return ordered(
                "description",
                says,
                "content",
                ordered(HTML, schema(Map.of("type", "string")), JSON, schema(reference("Fault"))));
    }

    private static Map<String, Object> ordered(Object... pairs) {
        Map<String, Object> ordered = new LinkedHashMap<>();
        for (int i = 0; i < pairs.length; i += 2) {
            ordered.put((String) pairs[i], pairs[i + 1]);
        }
        return ordered;
    }
}
