package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.json.Json;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FormCommandTest {
    @TempDir
    Path folder;

    private String store = "";

    @BeforeEach
    void store() {
        store = folder.resolve("store.db").toString();
    }

    private void record(String day, String bag, String... rounds) {
        String[] args = new String[9 + rounds.length];
        String[] head = {
            "--quiet", "--data", store, "record", "total", "--started-at", day + "T18:00:00+02:00", "--bag", bag
        };
        System.arraycopy(head, 0, args, 0, head.length);
        System.arraycopy(rounds, 0, args, head.length, rounds.length);
        assertThat(Ran.of(args).status()).isZero();
    }

    @Test
    void withoutRecordsTheAnswerIsNo() {
        Ran form = Ran.of("--data", store, "form", "--json");
        assertThat(form.status()).isEqualTo(1);
        assertThat(form.out()).isEmpty();
        assertThat(form.err()).contains("No counted throws up to 1 June 2026 yet");
        assertThat(Ran.of("--data", store, "compare", "--by", "bag").status()).isEqualTo(1);
    }

    @Test
    void formHasTheKeysOfTheContract() {
        record("2026-05-30", "Barley", "1-2-1", "2-1-1", "0-3-1");
        Ran ran = Ran.of("--data", store, "form", "--json");
        assertThat(ran.status()).isZero();
        JsonNode json = Json.read(ran.out(), JsonNode.class);
        assertThat(json.get("throws").asInt()).isEqualTo(12);
        assertThat(json.get("rounds").asInt()).isEqualTo(3);
        for (String key : new String[] {"inHole", "onBoard", "offBoard", "pointsPerRound", "fourBaggers", "level"}) {
            JsonNode interval = json.get(key);
            assertThat(interval.get("low").asDouble())
                    .as(key)
                    .isLessThan(interval.get("estimate").asDouble());
            assertThat(interval.get("high").asDouble())
                    .as(key)
                    .isGreaterThan(interval.get("estimate").asDouble());
        }
        assertThat(json.get("trend").get("days").asInt()).isEqualTo(30);
        assertThat(json.get("trend").get("change").get("estimate").isNumber()).isTrue();
        assertThat(json.get("trend").get("probabilityBetter").isNumber()).isTrue();
        assertThat(json.get("trend").get("verdict").asText()).isEqualTo("open");
        assertThat(json.get("sentence").asText()).startsWith("You throw about ");
    }

    @Test
    void aDayIncludesItselfAndNothingLater() {
        record("2026-05-30", "Barley", "1-2-1");
        record("2026-05-31", "Barley", "2-1-1");
        String[] day = {"--data", store, "form", "--json", "--as-of", "2026-05-30"};
        assertThat(Json.read(Ran.of(day).out(), JsonNode.class).get("throws").asInt())
                .isEqualTo(4);
        assertThat(Ran.of("--data", store, "form", "--as-of", "2026-05-29").status())
                .isEqualTo(1);
    }

    @Test
    void comparesGroupsMostPointsFirst() {
        record("2026-05-30", "Barley", "1-2-1", "0-2-2");
        record("2026-05-31", "Ember", "3-1-0", "2-2-0");
        Ran ran = Ran.of("--data", store, "compare", "--by", "bag,face", "--json");
        assertThat(ran.status()).as(ran.err()).isEqualTo(1);
        ran = Ran.of("--data", store, "compare", "--by", "bag", "--json");
        JsonNode json = Json.read(ran.out(), JsonNode.class);
        assertThat(json.get("by").get(0).asText()).isEqualTo("bag");
        assertThat(json.get("verdict").asText()).isEqualTo("open");
        assertThat(json.get("groups").get(0).get("bag").asText()).isEqualTo("Ember");
        assertThat(json.get("groups").get(1).get("bag").asText()).isEqualTo("Barley");
        for (String key : new String[] {"throws", "probabilityBest", "expectedLoss", "roundsToSettle"}) {
            assertThat(json.get("groups").get(0).get(key).isNumber()).as(key).isTrue();
        }
        assertThat(Ran.of("--data", store, "compare", "--by", "bag").out())
                .startsWith("Ember looks")
                .contains("chance of being best");
    }

    @Test
    void wrongUseIsSaid() {
        assertThat(Ran.of("--data", store, "compare", "--by", "shoe"))
                .satisfies(ran -> assertThat(ran.status()).isEqualTo(2))
                .satisfies(ran -> assertThat(ran.err()).contains("\"shoe\" is none of bag, face"));
        assertThat(Ran.of("--data", store, "compare", "--by", "bag,bag").status())
                .isEqualTo(2);
        assertThat(Ran.of("--data", store, "compare").status()).isEqualTo(2);
        assertThat(Ran.of("--data", store, "form", "--days", "0").status()).isEqualTo(2);
        assertThat(Ran.of("--data", store, "form", "--as-of", "yesterday").status())
                .isEqualTo(2);
    }
}
