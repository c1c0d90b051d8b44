package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.json.Json;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AdviseCommandTest {
    private static final String GATE =
            "{\"bags\":[{\"x\":0,\"y\":33,\"side\":\"versus\"}],\"in\":{\"me\":0,\"versus\":1},"
                    + "\"left\":{\"me\":2,\"versus\":1},\"next\":\"me\",\"score\":{\"me\":12,\"versus\":15},"
                    + "\"me\":{\"in\":0.4,\"on\":0.45},\"versus\":{\"in\":0.3,\"on\":0.4},\"approach\":\"aggressive\"}";

    @TempDir
    Path folder;

    private Ran advise(String position, String... more) throws IOException {
        Path file = folder.resolve("position.json");
        Files.writeString(file, position);
        List<String> args = new ArrayList<>(List.of(
                "--data",
                folder.resolve("store.db").toString(),
                "advise",
                "--position",
                file.toString(),
                "--samples",
                "2000"));
        args.addAll(List.of(more));
        return Ran.of(args.toArray(new String[0]));
    }

    @Test
    void answersWithTheContractsKeys() throws IOException {
        Ran ran = advise(GATE, "--json");
        assertThat(ran.err()).isEmpty();
        assertThat(ran.status()).isZero();
        JsonNode json = Json.read(ran.out(), JsonNode.class);
        assertThat(json.get("milliseconds").asDouble()).isPositive();
        JsonNode shots = json.get("shots");
        assertThat(shots.size()).isGreaterThan(5);
        for (JsonNode shot : shots) {
            assertThat(shot.get("shot").asText()).isNotEmpty();
            assertThat(shot.get("aim").get("x").isNumber()).isTrue();
            assertThat(shot.get("aim").get("y").isNumber()).isTrue();
            for (String range : List.of("winProbability", "netPoints")) {
                JsonNode node = shot.get(range);
                assertThat(node.get("low").asDouble())
                        .isLessThanOrEqualTo(node.get("estimate").asDouble());
                assertThat(node.get("high").asDouble())
                        .isGreaterThanOrEqualTo(node.get("estimate").asDouble());
            }
            assertThat(shot.get("simulationError").asDouble()).isPositive();
            assertThat(shot.has("breakEven")).isTrue();
        }
        Ran again = advise(GATE, "--json");
        assertThat(Json.read(again.out(), JsonNode.class).get("shots")).isEqualTo(shots);
    }

    /** Where they go over what bars the way, the best block is worth less against the slide than where they run into it. */
    @Test
    void heedsWhatTheyDoAboutABlock() throws IOException {
        String open = "{\"left\":{\"me\":3,\"versus\":3},\"next\":\"me\",\"me\":{\"in\":0.5,\"on\":0.4},"
                + "\"versus\":{\"in\":0.6,\"on\":0.35},\"theirApproach\":\"conservative\"}";
        double careful = blockOverSlide(advise(open, "--json"));
        double bold = blockOverSlide(advise(open.replace("conservative", "aggressive"), "--json"));
        assertThat(bold).isLessThan(careful);
        assertThat(blockOverSlide(advise(open.replace(",\"theirApproach\":\"conservative\"", ""), "--json")))
                .isEqualTo(careful);
    }

    private static double blockOverSlide(Ran ran) {
        assertThat(ran.err()).isEmpty();
        double block = Double.NEGATIVE_INFINITY;
        double slide = Double.NEGATIVE_INFINITY;
        for (JsonNode shot : Json.read(ran.out(), JsonNode.class).get("shots")) {
            double win = shot.get("winProbability").get("estimate").asDouble();
            if (shot.get("shot").asText().equals("block")) {
                block = Math.max(block, win);
            } else if (shot.get("shot").asText().equals("slide")) {
                slide = Math.max(slide, win);
            }
        }
        return block - slide;
    }

    @Test
    void saysItInWords() throws IOException {
        Ran ran = advise(GATE);
        assertThat(ran.status()).isZero();
        assertThat(ran.out()).startsWith("Throw the ").contains("you make").contains("By the chances given");
        assertThat(advise(GATE.replace("\"me\":{\"in\":0.4,\"on\":0.45},", "")).out())
                .contains("what is believed of any player");
    }

    private void refused(String position, String... faults) throws IOException {
        Ran ran = advise(position);
        assertThat(ran.status()).isEqualTo(Cli.WRONG);
        assertThat(ran.out()).isEmpty();
        assertThat(ran.err()).contains(faults);
    }

    @Test
    void namesWhatIsWrong() throws IOException {
        refused(
                GATE.replace("[{", "[{\"x\":2,\"y\":30,\"side\":\"me\"},{"),
                "bags, numbers 1 at (2.0, 30.0) and 2 at (0.0, 33.0): they lie over each other");
        refused(
                GATE.replace("\"versus\":1},\"left", "\"versus\":3},\"left"),
                "a side has four bags, but versus has 1 on the board, 3 in and 1 left; take 1 away");
        refused(
                GATE.replace("\"me\":0,\"versus\":1},\"left", "\"me\":4,\"versus\":4},\"left"),
                "a side has four bags, but me has 0 on the board, 4 in and 2 left; take 2 away",
                "a side has four bags, but versus has 1 on the board, 4 in and 1 left; take 2 away");
        refused(GATE.replace("[{", "[{},{"), "bags, number 1: x and y in inches and a side");
        refused(GATE.replace("\"next\":\"me\"", "\"next\":\"a\""), "next: advice is for your own throw");
        refused(GATE.replace("\"left\":{\"me\":2", "\"left\":{\"me\":0"), "left.me: you have no bag left to throw");
        refused(GATE.replace("\"versus\":15", "\"versus\":21"), "score.versus: 0 to 20, not 21; a game is over at 21");
        refused(GATE.replace("\"me\":12", "\"me\":-1"), "score.me: 0 to 20, not -1");
        refused(GATE.replace("\"y\":33", "\"y\":50"), "bags, number 1: a bag rests on the board");
        refused(GATE.replace("\"y\":33", "\"y\":39"), "has fallen in");
        refused(GATE.replace("\"left\":{\"me\":2", "\"left\":{\"me\":4"), "left: sides throw in turn");
        refused(GATE.replace("\"in\":0.4", "\"in\":0.7"), "me: the chances of in and on add up to");
        refused(GATE.replace("\"score\"", "\"scores\""), "\"scores\" is no part of a position");
        refused(GATE.replace("aggressive", "wild"), "approach: ");
        refused(GATE.replace("\"approach\"", "\"theirApproach\"").replace("aggressive", "wild"), "theirApproach: ");
        refused("[]", "a position is a JSON object");
        refused("{", "the position is not JSON");
    }

    @Test
    void aMissingFileIsNamed() {
        Ran ran = Ran.of("advise", "--position", folder.resolve("none.json").toString());
        assertThat(ran.status()).isEqualTo(Cli.WRONG);
        assertThat(ran.err()).contains("there is no file");
    }
}
