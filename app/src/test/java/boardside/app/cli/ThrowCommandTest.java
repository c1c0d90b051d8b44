package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.app.json.Json;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ThrowCommandTest {
    private static String[] args(String line) {
        // Places of bags are one argument, written here with + for the space between.
        return Arrays.stream(("throw " + line).split(" "))
                .map(arg -> arg.replace('+', ' '))
                .toArray(String[]::new);
    }

    private static JsonNode json(String line) {
        Ran ran = Ran.of(args("--json " + line));
        assertThat(ran.err()).isEmpty();
        assertThat(ran.status()).isZero();
        return Json.read(ran.out(), JsonNode.class);
    }

    /** Textbook incline (reference 11, board-3in): 0.38386237 m from 2 m/s at a friction of 0.35. */
    @Test
    void slidesAsFarAsTheTextbookSays() {
        JsonNode thrown = json("--x 1 --y 5 --speed 2 --friction 0.35 --slope 10.806923");
        assertThat(thrown.get("outcome").asText()).isEqualTo("on");
        assertThat(thrown.get("rest").get("x").asDouble()).isEqualTo(1);
        assertThat(thrown.get("rest").get("y").asDouble()).isEqualTo(5 + 0.38386237 / 0.0254, within(1e-6));
        assertThat(thrown.get("bags").size()).isZero();
        // The same slope from the height of the front edge.
        assertThat(json("--x 1 --y 5 --speed 2 --friction 0.35 --front 3")
                        .get("rest")
                        .get("y")
                        .asDouble())
                .isEqualTo(5 + 0.38386237 / 0.0254, within(1e-5));
    }

    @Test
    void saysHowEveryBagEnds() {
        JsonNode thrown = json("--x 0 --y 14 --speed 2.9 --friction 0.35 --bags 0,33+-8,20");
        assertThat(thrown.get("bags").get(0)).hasToString("{\"outcome\":\"in\",\"rest\":null}");
        assertThat(thrown.get("bags").get(1)).hasToString("{\"outcome\":\"on\",\"rest\":{\"x\":-8.0,\"y\":20.0}}");
        assertThat(json("--x 0 --y 14 --speed 9 --friction 0.35"))
                .hasToString("{\"outcome\":\"off\",\"rest\":null,\"bags\":[]}");
        assertThat(json("--x 4 --y 10 --speed 2 --heading 30 --friction 0.3 --board narrow")
                        .get("outcome")
                        .asText())
                .isEqualTo("off");
        assertThat(Ran.of(args("--x 0 --y 10 --speed 1 --friction 0.4 --bags 3.5,20"))
                        .out())
                .isEqualTo(
                        "The thrown bag rests on the board, on the centre line and 13.5 in up from the front edge.\n"
                                + "Bag 1 rests on the board, 3.5 in right of the centre line and 20.0 in up from the front edge.\n");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--x 13 --y 5 --speed 1 --friction 0.3 | --x, --y: (13.0, 5.0) is not on the board",
                "--x 7 --y 5 --speed 1 --friction 0.3 --board narrow | -6.0 to 6.0 in across",
                "--x 0 --y 5 --speed 1 --friction -0.3 | --friction: friction is 0 to 5.0, usually 0.2 to 0.6, not -0.3",
                "--x 0 --y 5 --speed 1 --friction NaN | --friction: friction is 0",
                "--x 0 --y 5 --speed -1 --friction 0.3 | a speed is 0 to 100.0 m/s, not -1.0",
                "--x 0 --y 5 --speed 1 --friction 0.3 --heading 200 | a heading is -180 to 180 degrees, not 200.0",
                "--x 0 --y 5 --speed 1 --friction 0.3 --slope 50 | a board's slope is 0 to below 45.0 degrees",
                "--x 0 --y 5 --speed 1 --friction 0.3 --slope 9 --front 3 | leave one out",
                "--x 0 --y 5 --speed 1 --friction 0.3 --board wide | \"wide\" is none of regulation, narrow",
                "--x 0 --y 5 --speed 1 --friction 0.3 --bags 0,20+0,24 | bag 1 at (0.0, 20.0) and bag 2 at (0.0, 24.0) overlap",
                "--x 0 --y 5 --speed 1 --friction 0.3 --bags 0,20+0,50 | bag 2 at (0.0, 50.0) is not on the board",
                "--x 0 --y 5 --speed 1 --friction 0.3 --bags 0,8 | the thrown bag at (0.0, 5.0) and bag 1 at (0.0, 8.0) overlap",
                "--x 0 --y 5 --speed 1 --friction 0.3 --bags 0;20 | --bags: \"0;20\" is no place; write x,y in inches",
                "--x 0 --y 5 --speed fast --friction 0.3 | --speed",
                "--x 0 --y 5 --friction 0.3 | --speed",
                "--x 0 --y 5 --speed 1 --friction 0.3 --bags"
                        + " 0,12+6,12+-6,12+0,18+6,18+-6,18+0,24+6,24+-6,24 | at most 8 bags lie on a board, not 9",
            })
    void saysWhatIsWrong(String line, String fault) {
        Ran ran = Ran.of(args(line));
        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.out()).isEmpty();
        assertThat(ran.err()).contains(fault);
    }

    @Test
    void namesEveryFault() {
        assertThat(Ran.of(args("--x 20 --y 5 --speed -1 --friction -1 --bags a,b"))
                        .err()
                        .lines())
                .hasSize(3);
    }
}
