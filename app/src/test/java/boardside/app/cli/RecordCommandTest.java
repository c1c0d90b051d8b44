package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.json.Json;
import boardside.app.practice.BagSet;
import boardside.app.record.Records;
import boardside.app.record.RunDetail;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RecordCommandTest {
    @TempDir
    Path folder;

    private String data = "";

    @BeforeEach
    void place() {
        data = folder.resolve("new").resolve("store.db").toString();
    }

    @Test
    void totalIsRecordedWithANewBagSet() {
        Ran ran = Ran.of("record", "total", "--bag", "Blue", "--face", "fast", "3-1-0", "2-2-0", "--data", data);
        assertThat(ran).isEqualTo(new Ran(0, "total: 2 rounds, 18 points\n", ""));
        try (Records records = Records.open(data)) {
            int me = records.firstPlayer().id();
            assertThat(records.bags(me)).extracting(BagSet::name).containsExactly("Blue");
            RunDetail run =
                    records.run(me, records.openRun(me).orElseThrow().id()).orElseThrow();
            assertThat(run.run().startedAt()).isEqualTo("2026-06-01T20:00+02:00");
            assertThat(run.rounds()).hasSize(2);
            assertThat(run.rounds().get(0).lines().get(0).bag())
                    .isEqualTo(records.bags(me).get(0).id());
        }
        assertThat(Ran.of("--data", data, "record", "total", "--bag", "Blue", "4-0-0")
                        .status())
                .isZero();
        try (Records records = Records.open(data)) {
            assertThat(records.bags(records.firstPlayer().id())).hasSize(1);
        }
    }

    @Test
    void tenRoundsFinishATotal() {
        String[] args = new String[14];
        args[0] = "--data";
        args[1] = data;
        args[2] = "record";
        args[3] = "total";
        java.util.Arrays.fill(args, 4, 14, "4-0-0");
        assertThat(Ran.of(args).out()).isEqualTo("total: 10 rounds, 120 points\n");
        try (Records records = Records.open(data)) {
            assertThat(records.openRun(1)).isEmpty();
        }
    }

    @Test
    void answersInJsonAlone() {
        Ran ran = Ran.of("--json", "--data", data, "record", "race", "--ghost", "3", "4-0-0", "4-0-0", "4-0-0");
        JsonNode answer = Json.read(ran.out(), JsonNode.class);
        assertThat(ran.err()).isEmpty();
        assertThat(answer.get("points").asInt()).isEqualTo(36);
        assertThat(answer.get("score")).hasToString("[27,0]");
        assertThat(answer.get("result").asText()).isEqualTo("won");
        assertThat(answer.get("finished").asBoolean()).isTrue();
    }

    @Test
    void bagsInAloneMayBeCounted() {
        assertThat(Ran.of("--data", data, "record", "volume", "13/20", "11/20").out())
                .isEqualTo("volume: 2 rounds, 24 of 40 bags in\n");
    }

    @Test
    void climbsGoOnWhereTheLadderStands() {
        assertThat(Ran.of("--data", data, "record", "climb", "4-0-0", "4-0-0", "4-0-0")
                        .out())
                .as("nothing is known yet: ghost 3")
                .isEqualTo("climb: 3 rounds, 36 points, 27-0, won\n");
        JsonNode second = Json.read(
                Ran.of(
                                "--json", "--data", data, "record", "climb", "0-0-4", "0-0-4", "0-0-4", "0-0-4",
                                "0-0-4", "0-0-4")
                        .out(),
                JsonNode.class);
        assertThat(second.get("ghost").asInt()).isEqualTo(4);
        assertThat(second.get("result").asText()).isEqualTo("lost");
        JsonNode climb = Json.read(Ran.of("--json", "--data", data, "climb").out(), JsonNode.class);
        assertThat(climb.get("next").asInt()).isEqualTo(3);
        assertThat(climb.get("from").asText()).isEqualTo("ladder");
        assertThat(climb.get("races")).hasSize(2);
        assertThat(Ran.of("--data", data, "climb").out())
                .startsWith("Next: ghost 3, after ghost 4 was lost on 2026-06-01.\n")
                .endsWith("Latest races: 4 lost, 3 won.\n");
    }

    @Test
    void anEmptyStoreProposesWhereToStart() {
        assertThat(Ran.of("--data", data, "climb")).isEqualTo(new Ran(0, "Next: ghost 3, to begin with.\n", ""));
    }

    @Test
    void aDuelHasBothSides() {
        Ran ran = Ran.of(
                "--data",
                data,
                "record",
                "duel",
                "--bag",
                "Blue",
                "--other-bag",
                "Red",
                "--other-approach",
                "aggressive",
                "4-0-0:1-0-3",
                "2-0-2:2-1-1",
                "4-0-0:0-0-4");
        assertThat(ran).isEqualTo(new Ran(0, "duel: 6 rounds, 40 points, 21-1, won\n", ""));
        String log = Ran.of("--data", data, "export").out();
        assertThat(log).contains(",duel,1,a,Blue,", ",duel,1,b,Red,,aggressive,");
    }

    @Test
    void aGameMayLackTheirsAndHaveItsScoreTold() {
        assertThat(Ran.of("--data", data, "record", "game", "--opponent", "Kim", "3-1-0:1-0-3", "2-2-0", "4-0-0")
                        .out())
                .isEqualTo("game: 3 rounds, 30 points, score not known, not over yet\n");
        Ran told = Ran.of(
                "--json", "--data", data, "record", "game", "--setting", "tournament", "--score", "17-21", "2-2-0");
        JsonNode answer = Json.read(told.out(), JsonNode.class);
        assertThat(answer.get("score")).hasToString("[17,21]");
        assertThat(answer.get("result").asText()).isEqualTo("lost");
        assertThat(answer.get("finished").asBoolean()).isTrue();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "record totl 3-1-0 | DRILL: \"totl\" is none of volume, total, race, game, climb, duel, placement,"
                        + " situation, trial, fixture, casual; use one of these",
                "record total 3-1 | round \"3-1\": write it as bags in, on and off, such as 3-1-0",
                "record total 3-2-0 | round 1 has 5 bags of one side; a round of total has at most 4",
                "record total 5/4 | round 1, 5/4: bags in lie between 0 and the 4 thrown, not 5",
                "record race 3-1-0 | a race is thrown against a ghost; add --ghost with its points a round, 0 to 12",
                "record race --ghost 13 3-1-0 | --ghost: a ghost scores 0 to 12 a round, not 13",
                "record race --ghost 3 4-0-0 4-0-0 4-0-0 0-0-4 | the game ends 27-0 after round 3, so round 4 cannot be"
                        + " thrown; start another run for it",
                "record duel 3-1-0 | round \"3-1-0\": write both sides of a duel, such as 3-1-0:1-2-1",
                "record total 3-1-0:1-2-1 | round \"3-1-0:1-2-1\": a total has one side; write it such as 3-1-0",
                "record duel --score 21-3 4-0-0:0-0-4 | --score: a final score is told of a game; leave it out",
                "record game --score 9-9 4-0-0 | --score: one side has won a game, so 9-9 is no final score",
                "record total --board wide 3-1-0 | --board: \"wide\" is none of regulation, narrow; use one of these",
                "record total --started-at 2026-06-01T10:00:00 3-1-0 | --started-at: \"2026-06-01T10:00:00\" is no date"
                        + " and time with an offset; write it like 2026-05-31T18:30:00+02:00 or 2026-05-31T16:30:00Z",
            })
    void refusesWhatCannotBeThrown(String command, String fault) {
        Ran ran = Ran.of(("--data " + data + " " + command).split(" "));
        assertThat(ran).isEqualTo(new Ran(2, "", fault + "\n"));
        try (Records records = Records.open(data)) {
            assertThat(records.lastRun(records.firstPlayer().id(), null)).isEmpty();
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--help | 0",
                "record --help | 0",
                "--version | 0",
                "record --version | 0",
                "'' | 2",
                "nonsense | 2",
                "record | 2",
                "record total | 2",
                "record total 3-1-0 --nonsense | 2",
                "record race 3-1-0 --ghost many | 2",
            })
    void statusTellsRightFromWrongUsage(String command, int status) {
        Ran ran = Ran.of(command.isEmpty() ? new String[0] : command.split(" "));
        assertThat(ran.status()).isEqualTo(status);
        assertThat(status == 0 ? ran.err() : ran.out()).isEmpty();
        assertThat(status == 0 ? ran.out() : ran.err()).isNotEmpty().doesNotContain("Exception");
    }

    @Test
    void versionIsTheBuilds() {
        assertThat(Ran.of("--version").out()).matches("boardside \\d+\\.\\d+\\.\\d+\n");
    }

    @Test
    void severalPlayersMustBeNamed() {
        Ran first = Ran.of("--data", data, "--player", "Kim", "record", "total", "4-0-0");
        assertThat(first).isEqualTo(new Ran(0, "total: 1 round, 12 points\n", "New player: Kim\n"));
        assertThat(Ran.of("--data", data, "--player", "Lou", "--quiet", "record", "total", "4-0-0")
                        .err())
                .isEmpty();
        Ran nobody = Ran.of("--data", data, "record", "total", "4-0-0");
        assertThat(nobody)
                .isEqualTo(new Ran(2, "", "the store holds several players; add --player with one of Kim, Lou\n"));
    }

    @Test
    void saysWhatIsWrongWithAStore() throws Exception {
        Path text = Files.writeString(folder.resolve("notes.txt"), "these are notes, and quite long ones at that\n");
        Ran ran = Ran.of("--data", text.toString(), "record", "total", "4-0-0");
        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.err())
                .contains("notes.txt")
                .contains("is no SQLite database")
                .hasLineCount(1);
        assertThat(text).hasContent("these are notes, and quite long ones at that\n");
        for (String wrong : List.of("jdbc:mysql://x", folder.toString())) {
            assertThat(Ran.of("--data", wrong, "record", "total", "4-0-0").status())
                    .isEqualTo(2);
        }
    }
}
