package boardside.bench.fault;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** What a server says of its interface (OpenAPI 3.1), as far as one needs it to ask for everything that is described. */
final class Described {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final int DEEPEST = 12;

    /** Before anything was said. */
    static final Described NOTHING = new Described(JSON.createObjectNode());

    private final JsonNode document;
    private final List<Operation> operations = new ArrayList<>();

    /**
     * Something that can be asked for.
     *
     * @param path with parameters in braces
     * @param fields of the address or the form, by name; a name that ends in - stands for all that begin so
     * @param body what the JSON it takes is to be, or missing
     * @param beside whether its answer may be worked out beside the requests (202)
     */
    record Operation(String method, String path, Map<String, JsonNode> fields, JsonNode body, boolean beside) {
        /** Method and path, as people write them. */
        String route() {
            return method + " " + path;
        }

        /** Matches addresses that lead here. */
        Pattern pattern() {
            return Pattern.compile(path.replaceAll("\\{[^}]*}", "([^/]+)"));
        }
    }

    /** @param text what the server answers with */
    Described(String text) throws JsonProcessingException {
        this(JSON.readTree(text));
    }

    private Described(JsonNode document) {
        this.document = document;
        document.path("paths")
                .properties()
                .forEach(path -> path.getValue().properties().forEach(method -> {
                    JsonNode operation = method.getValue();
                    Map<String, JsonNode> fields = new LinkedHashMap<>();
                    for (JsonNode one : operation.path("parameters")) {
                        if (one.path("in").asText().equals("query")) {
                            fields.put(one.path("name").asText(), one.path("schema"));
                        }
                    }
                    JsonNode content = operation.path("requestBody").path("content");
                    JsonNode form =
                            content.path("application/x-www-form-urlencoded").path("schema");
                    form.path("properties").properties().forEach(one -> fields.put(one.getKey(), one.getValue()));
                    form.path("patternProperties")
                            .properties()
                            .forEach(one -> fields.put(one.getKey().substring(1), one.getValue()));
                    fields.remove("token");
                    operations.add(new Operation(
                            method.getKey().toUpperCase(Locale.ROOT),
                            path.getKey(),
                            fields,
                            content.path("application/json").path("schema"),
                            operation.path("responses").has("202")));
                }));
    }

    List<Operation> operations() {
        return operations;
    }

    private JsonNode followed(JsonNode schema) {
        String reference = schema.path("$ref").asText();
        return reference.isEmpty() ? schema : document.at(reference.substring(1));
    }

    /** A value of a field as text: mostly sound, sometimes just out of bounds; null where anything would do. */
    @Nullable
    String field(JsonNode described, SplittableRandom random) {
        JsonNode schema = followed(described);
        if (schema.has("items")) {
            schema = followed(schema.path("items"));
        }
        if (schema.has("enum")) {
            JsonNode words = schema.path("enum");
            return words.get(random.nextInt(words.size())).asText();
        }
        if (schema.has("minimum")) {
            long least = schema.path("minimum").asLong();
            long most = schema.path("maximum").asLong();
            return switch (random.nextInt(8)) {
                case 0 -> String.valueOf(least);
                case 1 -> String.valueOf(most);
                case 2 -> String.valueOf(least - 1);
                case 3 -> String.valueOf(most + 1);
                case 4 -> least + ".5";
                default -> String.valueOf(random.nextLong(least, Math.min(most, least + 40) + 1));
            };
        }
        if (schema.path("format").asText().equals("date")) {
            return String.format(
                    Locale.ROOT, "%d-%02d-%02d", 2025 + random.nextInt(3), random.nextInt(14), random.nextInt(33));
        }
        String pattern = schema.path("pattern").asText();
        if (!pattern.isEmpty()) {
            return pattern.contains(":")
                    ? String.format(Locale.ROOT, "%02d:%02d", random.nextInt(26), random.nextInt(62))
                    : String.format(Locale.ROOT, "2026-%02d", random.nextInt(14));
        }
        return null;
    }

    /**
     * JSON by a schema, in which a share of the parts is left out or of another kind.
     *
     * @param texts what stands for texts
     */
    String json(JsonNode schema, SplittableRandom random, double share, List<String> texts) {
        StringBuilder out = new StringBuilder();
        write(schema, random, share, texts, out, 0);
        return out.toString();
    }

    private void write(
            JsonNode described,
            SplittableRandom random,
            double share,
            List<String> texts,
            StringBuilder out,
            int depth) {
        JsonNode schema = followed(described);
        if (random.nextDouble() < share || depth > DEEPEST) {
            out.append(List.of("null", "[]", "{}", "-1", "1e99", "\"x\"", "true", "99999999999")
                    .get(random.nextInt(8)));
            return;
        }
        for (String several : List.of("oneOf", "anyOf")) {
            if (schema.has(several)) {
                JsonNode ways = schema.path(several);
                write(ways.get(random.nextInt(ways.size())), random, share, texts, out, depth);
                return;
            }
        }
        if (schema.has("const")) {
            out.append(schema.path("const"));
        } else if (schema.has("enum")) {
            out.append(
                    schema.path("enum").get(random.nextInt(schema.path("enum").size())));
        } else {
            switch (schema.path("type").asText()) {
                case "object" -> object(schema, random, share, texts, out, depth);
                case "array" -> {
                    out.append('[');
                    int size = random.nextInt(5);
                    for (int i = 0; i < size; i++) {
                        out.append(i == 0 ? "" : ",");
                        write(schema.path("items"), random, share, texts, out, depth + 1);
                    }
                    out.append(']');
                }
                case "boolean" -> out.append(random.nextBoolean());
                case "integer" -> out.append(random.nextInt(20) == 0 ? random.nextInt() : random.nextInt(13));
                case "number" -> out.append(random.nextInt(-20, 60)).append(random.nextBoolean() ? "" : ".25");
                case "null" -> out.append("null");
                default -> out.append(JSON.getNodeFactory().textNode(texts.get(random.nextInt(texts.size()))));
            }
        }
    }

    private void object(
            JsonNode schema, SplittableRandom random, double share, List<String> texts, StringBuilder out, int depth) {
        out.append('{');
        boolean[] first = {true};
        schema.path("properties").properties().forEach(part -> {
            if (random.nextDouble() >= share) {
                out.append(first[0] ? "" : ",");
                first[0] = false;
                out.append('"').append(part.getKey()).append("\":");
                write(part.getValue(), random, share, texts, out, depth + 1);
            }
        });
        out.append('}');
    }
}
