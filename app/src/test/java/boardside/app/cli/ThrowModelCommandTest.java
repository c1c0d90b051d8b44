package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.json.Json;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ThrowModelCommandTest {
    @TempDir
    Path folder;

    private String store = "";

    @BeforeEach
    void store() {
        store = folder.resolve("store.db").toString();
    }

    private void record(String bag, String board, int rounds, String round) {
        List<String> args = new ArrayList<>(List.of(
                "--quiet",
                "--data",
                store,
                "record",
                "total",
                "--started-at",
                "2026-05-30T18:00:00+02:00",
                "--bag",
                bag,
                "--board",
                board));
        for (int i = 0; i < rounds; i++) {
            args.add(round);
        }
        assertThat(Ran.of(args.toArray(new String[0])).status()).isZero();
    }

    private JsonNode json(String... args) {
        List<String> all = new ArrayList<>(List.of("--data", store, "--json"));
        all.addAll(List.of(args));
        Ran ran = Ran.of(all.toArray(new String[0]));
        assertThat(ran.err()).isEmpty();
        assertThat(ran.status()).isZero();
        return Json.read(ran.out(), JsonNode.class);
    }

    private static double width(JsonNode range) {
        return range.get("high").asDouble() - range.get("low").asDouble();
    }

    @Test
    void withoutRecordsItAnswersWithWhatIsBelieved() {
        Ran ran = Ran.of("--data", store, "throw-model");
        assertThat(ran.status()).isZero();
        assertThat(ran.out()).contains("what is believed of any player");
        assertThat(Ran.of("--data", store, "slide").out()).contains("what is believed of any player");
    }

    @Test
    void recordsNarrowWhatIsBelieved() {
        JsonNode before = json("throw-model");
        record("Barley", "regulation", 40, "1-2-1");
        JsonNode after = json("throw-model");
        assertThat(after.get("bags").asInt()).isEqualTo(160);
        assertThat(after.get("bag").asText()).isEqualTo("Barley");
        assertThat(width(after.get("inHole"))).isLessThan(0.5 * width(before.get("inHole")));
        assertThat(after.get("inHole").get("estimate").asDouble()).isBetween(0.2, 0.3);
        assertThat(after.get("offBoard").get("estimate").asDouble()).isBetween(0.2, 0.3);
        record("Barley", "narrow", 40, "1-2-1");
        JsonNode narrow = json("throw-model", "--bag", "barley");
        assertThat(narrow.get("narrowBags").asInt()).isEqualTo(160);
        assertThat(width(narrow.get("spreadX"))).isLessThan(width(after.get("spreadX")));
    }

    @Test
    void aSlideTestMeasuresTodaysBoards() {
        record("Barley", "regulation", 20, "1-2-1");
        JsonNode slow = json("slide", "--test", "0,20>0,30 1,22>1,31 -3,19>-3,30 2,21>2,31 4,20>5,31 -2,18>-2,28");
        JsonNode fast = json("slide", "--test", "6,5>6,36 5,6>5,38 -5,4>-5,34 5,7>5,40 -6,5>-6,37 7,6>7,36");
        assertThat(slow.get("today").get("slides").asInt()).isEqualTo(6);
        assertThat(slow.get("today").get("slide").get("high").asDouble())
                .isLessThan(fast.get("today").get("slide").get("low").asDouble());
        assertThat(slow.get("today").get("friction").get("estimate").asDouble())
                .isGreaterThan(fast.get("today").get("friction").get("estimate").asDouble());
        assertThat(slow.get("bags")
                        .get(0)
                        .get("slower")
                        .get("slide")
                        .get("estimate")
                        .asDouble())
                .isLessThan(slow.get("bags").get(0).get("slide").get("estimate").asDouble());
    }

    @Test
    void saysWhatIsWrong() {
        Ran wrong = Ran.of("--data", store, "slide", "--test", "0,20 30,2>1,1");
        assertThat(wrong.status()).isEqualTo(2);
        assertThat(wrong.err()).contains("\"0,20\" is no slide").contains("(30.0, 2.0) is not on the board");
        Ran none = Ran.of("--data", store, "throw-model", "--bag", "Nobody");
        assertThat(none.status()).isEqualTo(1);
        assertThat(none.err()).contains("No throws of \"Nobody\"");
        assertThat(Ran.of("--data", store, "slide", "--face", "sideways").status())
                .isEqualTo(2);
    }
}
