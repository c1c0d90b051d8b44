package boardside.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.json.Json;
import boardside.app.practice.Player;
import boardside.app.record.Records;
import boardside.app.transfer.Backups;
import boardside.app.transfer.LogFiles;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import io.swagger.v3.parser.OpenAPIV3Parser;
import io.swagger.v3.parser.core.models.SwaggerParseResult;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * That the description of the interface describes it: every route and no other, sound to a parser that is not ours, and answers
 * as the schemas say, to a validator that is not ours (com.networknt:json-schema-validator, JSON Schema 2020-12).
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class OpenApiTest {
    private static final Path SENT = Path.of("src/test/fuzz/boardside.app.web.OutboxFuzz");

    private Records records;
    private Server server;
    private String cookie = "";
    private String token = "";

    /** Operations that the schema refuses. */
    private int refused;

    @BeforeAll
    void serve(@TempDir Path folder) {
        records = Records.open(folder.resolve("store.db").toString());
        Backups.restore(records, Path.of("src/test/resources/stores/v11.jsonl"), true, LogFiles.Progress.NONE);
        server = Server.start(records, ServerOptions.local(0), Clock.systemDefaultZone());
        Wire first = Wire.get(Wire.HERE, server.port(), "/api/token");
        cookie = first.cookie(Guard.VISIT);
        token = Json.read(first.body(), JsonNode.class).path("token").asText();
    }

    @AfterAll
    void stop() {
        server.close();
        records.close();
    }

    private Wire get(String path) {
        return Wire.get(Wire.HERE, server.port(), path, "Cookie: " + cookie);
    }

    private static JsonNode document(boolean hosted) {
        return Json.read(Json.write(OpenApi.document(hosted)), JsonNode.class);
    }

    /** The schema of that name, with all others in reach. */
    private static JsonSchema schema(String name) {
        ObjectNode schema = Json.MAPPER.createObjectNode();
        schema.put("$ref", "#/components/schemas/" + name);
        schema.set("components", document(false).path("components"));
        return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(schema);
    }

    private static void assertFits(String name, String json) {
        assertThat(schema(name).validate(Json.read(json, JsonNode.class)))
                .as(name + ": " + json)
                .isEmpty();
    }

    private static void assertDescribed(List<Route> routes, boolean hosted) {
        Map<String, Access> served = new TreeMap<>();
        routes.forEach(
                route -> served.put(route.method() + " " + route.path().replace("<file>", "{file}"), route.access()));
        Map<String, Access> described = new TreeMap<>();
        OpenApi.lines(hosted).forEach(line -> described.put(line.method() + " " + line.path(), line.access()));
        assertThat(described).isEqualTo(served);
        assertThat(OpenApi.lines(hosted)).as("each once").hasSize(served.size());
    }

    @Test
    void everyRouteIsDescribedAndNothingElse(@TempDir Path folder) {
        assertDescribed(server.routes(), false);
        try (Records club = Records.open(folder.resolve("club.db").toString());
                Server hosted = Club.serve(club)) {
            assertDescribed(hosted.routes(), true);
        }
    }

    @Test
    void theServerAnswersWithIt() {
        Wire answer = Wire.get(Wire.HERE, server.port(), "/openapi.json");
        assertThat(answer.status()).isEqualTo(200);
        assertThat(answer.header("content-type")).startsWith("application/json");
        assertThat(Json.read(answer.body(), JsonNode.class)).isEqualTo(document(false));
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void aParserThatIsNotOursFindsNoFault(boolean hosted) {
        SwaggerParseResult result =
                new OpenAPIV3Parser().readContents(Json.write(OpenApi.document(hosted)), null, null);
        assertThat(result.getMessages()).isEmpty();
        Set<String> operations = result.getOpenAPI().getPaths().entrySet().stream()
                .flatMap(path -> path.getValue().readOperationsMap().keySet().stream()
                        .map(method -> method + " " + path.getKey()))
                .collect(Collectors.toSet());
        assertThat(operations)
                .hasSameElementsAs(OpenApi.lines(hosted).stream()
                        .map(line -> line.method() + " " + line.path())
                        .toList());
    }

    /** Every reference leads somewhere, and every schema is one by the schema of schemas. */
    @Test
    void schemasAreSchemas() {
        JsonNode document = document(true);
        for (JsonNode reference : document.findValues("$ref")) {
            assertThat(document.at(reference.asText().substring(1)).isMissingNode())
                    .as(reference.asText())
                    .isFalse();
        }
        JsonSchema meta = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                .getSchema(URI.create("https://json-schema.org/draft/2020-12/schema"));
        document.path("components")
                .path("schemas")
                .properties()
                .forEach(one -> assertThat(meta.validate(one.getValue()))
                        .as(one.getKey())
                        .isEmpty());
    }

    @Test
    void answersAreAsDescribed() {
        assertFits("Health", get("/health").body());
        assertFits("Ready", get("/ready").body());
        assertFits("Token", get("/api/token").body());
        assertFits("OpenApi", get("/openapi.json").body());
        String none = Wire.get(Wire.HERE, server.port(), "/runs/none", "Accept: application/json", "Cookie: " + cookie)
                .body();
        assertFits("Fault", none);
        int matches = 0;
        for (var season : records.seasons().all()) {
            String body = get("/seasons/" + season.id() + "/results.json").body();
            assertFits("Season", body);
            for (JsonNode match : Json.read(body, JsonNode.class).path("matches")) {
                assertFits(
                        "Match",
                        get("/seasons/" + season.id() + "/matches/"
                                        + match.path("id").asText() + "/live.json")
                                .body());
                matches++;
            }
        }
        assertThat(matches).isGreaterThan(3);
        Player player = records.firstPlayer();
        assertThat(records.trials().all(player.id())).isNotEmpty();
        for (var trial : records.trials().all(player.id())) {
            assertFits(
                    "SharedTrial", get("/trials/" + trial.plan().id() + "/file").body());
        }
        assertThat(records.situations(player.id())).isNotEmpty();
        for (var kept : records.situations(player.id())) {
            assertFits(
                    "SharedSituation", get("/situations/" + kept.id() + "/file").body());
        }
    }

    private Wire send(String json) {
        return Wire.post(
                Wire.HERE, server.port(), "/api/outbox", json, "Cookie: " + cookie, Guard.TOKEN_HEADER + ": " + token);
    }

    /** What phones send, and what becomes of it where a required part is missing or another kind of value stands there. */
    @Test
    void theOutboxTakesWhatIsDescribedAndNothingElse() throws IOException {
        JsonSchema upload = schema("Upload");
        List<String> kinds = new ArrayList<>();
        for (String name : List.of("duel", "race", "total", "tries")) {
            String text = Files.readString(SENT.resolve(name + ".json"));
            assertFits("Upload", text);
            Wire answer = send(text);
            assertThat(answer.status()).as(name).isEqualTo(200);
            assertFits("Answer", answer.body());
            JsonNode sent = Json.read(text, JsonNode.class);
            for (int i = 0; i < sent.path("operations").size(); i++) {
                ObjectNode operation = (ObjectNode) sent.path("operations").get(i);
                if (kinds.contains(operation.path("type").asText())) {
                    continue;
                }
                kinds.add(operation.path("type").asText());
                for (String at : objects(operation, "")) {
                    for (String part : names(operation.at(at))) {
                        ObjectNode without = operation.deepCopy();
                        ((ObjectNode) without.at(at)).remove(part);
                        assertAlike(upload, sent, without);
                        for (String other : List.of("null", "\"?\"")) {
                            ObjectNode changed = operation.deepCopy();
                            ((ObjectNode) changed.at(at))
                                    .set(
                                            part,
                                            Json.read("[" + other + "]", JsonNode.class)
                                                    .get(0));
                            assertAlike(upload, sent, changed);
                        }
                    }
                }
            }
        }
        assertThat(kinds).contains("run", "round", "try", "finish");
        assertThat(refused).isGreaterThan(50);
    }

    /** Where the objects within a value are, as JSON pointers. */
    private static List<String> objects(JsonNode value, String at) {
        List<String> all = new ArrayList<>();
        if (value.isObject()) {
            all.add(at);
            names(value).forEach(name -> all.addAll(objects(value.path(name), at + "/" + name)));
        }
        for (int i = 0; value.isArray() && i < value.size(); i++) {
            all.addAll(objects(value.path(i), at + "/" + i));
        }
        return all;
    }

    private static List<String> names(JsonNode object) {
        List<String> names = new ArrayList<>();
        object.fieldNames().forEachRemaining(names::add);
        return names;
    }

    /** What the schema refuses is refused with 400; what it does not is not refused as missing or of the wrong kind. */
    private void assertAlike(JsonSchema upload, JsonNode sent, ObjectNode operation) {
        ObjectNode whole = sent.deepCopy();
        ((ArrayNode) whole.path("operations")).removeAll().add(operation);
        Wire answer = send(whole.toString());
        if (upload.validate(whole).isEmpty()) {
            assertThat(answer.status()).as(operation.toString()).isIn(200, 400);
            assertThat(answer.body()).as(operation.toString()).doesNotContain("is missing or not what belongs there");
        } else {
            assertThat(answer.status()).as(operation.toString()).isEqualTo(400);
            refused++;
        }
    }
}
