package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.json.Json;
import boardside.app.practice.BagSet;
import boardside.app.practice.Try;
import boardside.app.record.Records;
import boardside.app.record.RunDetail;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Outcome;
import boardside.engine.tactics.Situation;
import boardside.engine.tactics.Spot;
import boardside.engine.tactics.Target;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
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

    @Test
    void placementTriesAreOneEachWithWhereTheBagEnded() {
        Ran ran = Ran.of(
                "--data",
                data,
                "record",
                "placement",
                "--bag",
                "Blue",
                "2-left:2-left",
                "2-left:3-left",
                "2-left:yes",
                "back-middle:0,45",
                "back-middle:long",
                "back-middle:in");
        assertThat(ran.status()).isZero();
        assertThat(ran.out())
                .startsWith("placement: 3 of 6 tries worked\n")
                .contains("2-left: 2 of 3; over all tries ");
        try (Records records = Records.open(data)) {
            int me = records.firstPlayer().id();
            var run = records.lastRun(me, Drill.PLACEMENT).orElseThrow();
            assertThat(run.open()).isFalse();
            List<Try.Played> tries = played(records, me, run.id());
            assertThat(tries).extracting(Try.Played::worked).containsExactly(true, false, true, true, false, false);
            assertThat(tries)
                    .extracting(Try.Played::rest)
                    .containsExactly(
                            new Try.Rest(Outcome.ON, "", new Spot(-8, 27)),
                            new Try.Rest(Outcome.ON, "", new Spot(-8, 21)),
                            null,
                            new Try.Rest(Outcome.ON, "", new Spot(0, 45)),
                            new Try.Rest(Outcome.OFF, "long", null),
                            new Try.Rest(Outcome.IN, "", null));
            assertThat(Objects.requireNonNull(run.setup().exercise()).targets())
                    .containsExactly(Target.parse("2-left"), Target.parse("back-middle"));
        }
        // Counts are taken, too, where nobody said what was tried.
        assertThat(Ran.of("--data", data, "record", "placement", "0-4-0").out())
                .isEqualTo("placement: 1 round, 4 points\n");
    }

    private static List<Try.Played> played(Records records, int me, String run) {
        return records.tries(me, run).stream()
                .map(tried -> Objects.requireNonNull(tried.played()))
                .toList();
    }

    @Test
    void situationTriesAnswerWhatTheRatesSay() {
        Ran.of("--data", data, "record", "situation", "--situation", "gate", "cut-left:yes", "cut-left:no:short");
        Ran ran = Ran.of(
                "--json",
                "--data",
                data,
                "record",
                "situation",
                "--situation",
                "gate",
                "cut-left:yes:in",
                "block@1-left:no:2-left",
                "cut-left:yes");
        JsonNode answer = Json.read(ran.out(), JsonNode.class);
        assertThat(answer.get("tries").asInt()).isEqualTo(3);
        assertThat(answer.get("worked").asInt()).isEqualTo(2);
        assertThat(answer.get("finished").asBoolean()).isTrue();
        JsonNode cut = answer.get("rates").get(0);
        assertThat(cut.get("run")).hasToString("{\"tries\":2,\"worked\":2}");
        JsonNode rates =
                Json.read(Ran.of("--json", "--data", data, "rates", "situation").out(), JsonNode.class);
        ((com.fasterxml.jackson.databind.node.ObjectNode) cut).remove("run");
        assertThat(cut).isEqualTo(rates.get("rates").get(0));
        try (Records records = Records.open(data)) {
            int me = records.firstPlayer().id();
            var run = records.lastRun(me, Drill.SITUATION).orElseThrow();
            List<Try.Played> tries = played(records, me, run.id());
            assertThat(tries).allMatch(Try.Played::byHand);
            assertThat(tries.get(0).position()).isEqualTo(Situation.GATE.position());
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "record placement 2-left | try \"2-left\": write the target and where the bag ended, such as"
                        + " 2-left:3-left, or 2-left:yes",
                "record placement 2-left:there | try \"2-left:there\": \"there\" is no place to end; write in, on,"
                        + " off, left, right, short, long, a part of the board such as 3-left, or inches from its centre"
                        + " line and front edge such as -8,27",
                "record placement 2-left:on | try \"2-left:on\": say where on the board it lies, such as 3-left",
                "record placement 2-left:0,39 | try \"2-left:0,39\": a bag there has fallen in; write in",
                "record placement 9-left:yes | try \"9-left:yes\": \"9\" is none of 1, 2, 3, 4, 5, 6, beside, back;"
                        + " use one of these",
                "record situation cut-left:yes | --situation: say what lies on the board; use one of gate, sentry, toll,"
                        + " hedge, shoulder, hanger, backstop, alley, tucked, wall, open",
                "record situation --situation moat cut-left:yes | --situation: there is no situation \"moat\"; use one"
                        + " of gate, sentry, toll, hedge, shoulder, hanger, backstop, alley, tucked, wall, open",
                "record situation --situation gate cut-left | try \"cut-left\": write the shot and whether it worked,"
                        + " such as cut-left:yes, or where the bag ended too, such as cut-left:no:short",
                "record situation --situation gate block:yes | try \"block:yes\": say where the block is to lie, such as"
                        + " block@1-middle",
                "record placement --situation gate 2-left:yes | --situation, --mirrored and --thrown belong to tries in"
                        + " a situation; leave them out",
                "record situation --board narrow --situation alley push:yes | try 1: a bag lies beside the narrow board;"
                        + " take it away or choose the other board",
            })
    void refusesTriesThatCannotBe(String command, String fault) {
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
                .contains("is damaged, or no store of Boardside")
                .hasLineCount(1);
        assertThat(text).hasContent("these are notes, and quite long ones at that\n");
        for (String wrong : List.of("jdbc:mysql://x", folder.toString())) {
            assertThat(Ran.of("--data", wrong, "record", "total", "4-0-0").status())
                    .isEqualTo(2);
        }
    }
}
