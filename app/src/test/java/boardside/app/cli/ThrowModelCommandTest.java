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
    void aSlideTestIsKeptListedDeletedAndBroughtBack() {
        record("Barley", "regulation", 20, "1-2-1");
        JsonNode before = json("throw-model");
        String slides = "0,14>1,33 -2,11>-2,29 1,20>in 2,13>off";
        JsonNode asked = json("slide", "--test", slides);
        assertThat(json("throw-model")).as("asked only, it is not kept").isEqualTo(before);
        JsonNode kept = json("slide", "--test", slides, "--conditions", "normal", "--keep");
        assertThat(kept.get("today").get("factor")).isEqualTo(asked.get("today").get("factor"));
        JsonNode tests = json("slide", "--tests").get("tests");
        assertThat(tests).hasSize(1);
        assertThat(tests.get(0).get("slides").asText()).isEqualTo(slides);
        assertThat(tests.get(0).get("at").asText()).isEqualTo("2026-06-01T20:00:00+02:00");
        JsonNode after = json("throw-model");
        assertThat(after.get("bagsTapped").asInt()).isEqualTo(4);
        assertThat(width(after.get("slide"))).isLessThan(width(before.get("slide")));
        String all = Ran.of("--data", store, "export", "--all").out();
        assertThat(all).contains("\"kind\":\"slide-test\"").contains("\"conditions\":\"normal\"");

        String id = tests.get(0).get("id").asText();
        assertThat(Ran.of("--data", store, "slide", "--delete", id).status()).isZero();
        assertThat(Ran.of("--data", store, "slide", "--tests").status()).isEqualTo(1);
        assertThat(json("throw-model")).isEqualTo(before);
        assertThat(Ran.of("--data", store, "export", "--all").out()).doesNotContain("slide-test");
        assertThat(Ran.of("--data", store, "slide", "--restore", id).status()).isZero();
        assertThat(json("throw-model")).isEqualTo(after);
        assertThat(Ran.of("--data", store, "slide", "--restore", id).status()).isEqualTo(1);
        assertThat(Ran.of("--data", store, "check").status()).isZero();
    }

    /** Common practice, no source: a push takes a near block in often, deeper ones ever more rarely. */
    @Test
    void pushesReachNearBlocksMoreOften() {
        record("Barley", "regulation", 40, "2-2-0");
        JsonNode pushes = json("throw-model").get("pushTakesBlockIn");
        double[] shares = new double[7];
        for (int depth = 1; depth <= 6; depth++) {
            shares[depth] = pushes.get(String.valueOf(depth)).get("estimate").asDouble();
        }
        assertThat(shares[1]).as("often").isGreaterThan(0.25).isGreaterThan(1.5 * shares[2]);
        assertThat(shares[2]).as("sometimes").isGreaterThan(shares[3]);
        for (int depth = 4; depth <= 6; depth++) {
            assertThat(shares[depth]).as("hardly ever").isLessThan(0.05);
        }
        assertThat(width(pushes.get("1"))).isPositive();
    }

    @Test
    void saysWhatIsWrong() {
        Ran wrong = Ran.of("--data", store, "slide", "--test", "0,20 30,2>1,1");
        assertThat(wrong.status()).isEqualTo(2);
        assertThat(wrong.err()).contains("\"0,20\" is no slide");
        Ran off = Ran.of("--data", store, "slide", "--test", "30,2>1,1");
        assertThat(off.status()).isEqualTo(2);
        assertThat(off.err()).contains("(30.0, 2.0) is not on the board");
        Ran empty = Ran.of("--data", store, "slide", "--keep");
        assertThat(empty.status()).isEqualTo(2);
        assertThat(empty.err()).contains("there is no test to keep");
        assertThat(Ran.of("--data", store, "slide", "--delete", "nothing").status())
                .isEqualTo(1);
        Ran none = Ran.of("--data", store, "throw-model", "--bag", "Nobody");
        assertThat(none.status()).isEqualTo(1);
        assertThat(none.err()).contains("No throws of \"Nobody\"");
        assertThat(Ran.of("--data", store, "slide", "--face", "sideways").status())
                .isEqualTo(2);
    }
}
