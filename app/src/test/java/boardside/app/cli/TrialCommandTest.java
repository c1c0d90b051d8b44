package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.json.Json;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TrialCommandTest {
    @TempDir
    Path folder;

    private Ran run(String... args) {
        List<String> all =
                new ArrayList<>(List.of("--data", folder.resolve("s.db").toString()));
        all.addAll(List.of(args));
        return Ran.of(all.toArray(String[]::new));
    }

    private JsonNode json(String... args) throws Exception {
        List<String> all = new ArrayList<>(List.of("--json"));
        all.addAll(List.of(args));
        Ran ran = run(all.toArray(String[]::new));
        assertThat(ran.err()).isEmpty();
        assertThat(ran.status()).isZero();
        return Json.MAPPER.readTree(ran.out());
    }

    private void made() {
        assertThat(run(
                                "trial",
                                "new",
                                "Faces",
                                "--candidate",
                                "Blue,slow",
                                "--candidate",
                                "Blue,fast",
                                "--blocks",
                                "25")
                        .out())
                .isEqualTo("New trial: Faces\n  slow face\n  fast face\n");
    }

    @Test
    void aTrialIsThrownInItsOrderToItsEnd() throws Exception {
        made();
        int blocks = 0;
        JsonNode status = json("trial", "status");
        while (status.get("ending").asText().equals("under-way")) {
            JsonNode next = json("trial", "next", "Faces");
            assertThat(next.get("block").asInt()).isEqualTo(blocks + 1);
            List<String> rounds = new ArrayList<>(List.of("record", "trial"));
            next.get("order")
                    .forEach(name -> rounds.addAll(
                            name.asText().equals("slow face") ? List.of("3-1-0", "2-2-0") : List.of("1-1-2", "1-0-3")));
            assertThat(run(rounds.toArray(String[]::new)).status()).isZero();
            blocks++;
            status = json("trial", "status");
            assertThat(status.get("blocks").asInt()).isEqualTo(blocks);
        }
        assertThat(status.get("ending").asText()).isEqualTo("winner");
        assertThat(status.get("standings").get(0).get("candidate").asText()).isEqualTo("slow face");
        assertThat(status.get("sentence").asText())
                .startsWith("Throw slow face.")
                .contains("the face, not luck");
        assertThat(run("trial", "next", "Faces").status()).isEqualTo(1);
        Ran after = run("record", "trial", "3-1-0");
        assertThat(after.status()).isEqualTo(2);
        assertThat(after.err()).contains("the trial is decided");
        String log = run("export").out();
        assertThat(log.lines().skip(1))
                .hasSize(4 * blocks)
                .allSatisfy(
                        line -> assertThat(line).contains(",trial,", ",Blue,").endsWith(id()));
    }

    private String id() {
        return Json.read(run("--json", "trial", "list").out(), JsonNode.class)
                .get("trials")
                .get(0)
                .get("id")
                .asText();
    }

    /** What is left unfinished does not count and is thrown anew. */
    @Test
    void aBlockCutShortIsThrownAnew() throws Exception {
        made();
        JsonNode before = json("trial", "next");
        run("record", "trial", "3-1-0", "2-2-0", "1-1-2");
        assertThat(json("trial", "next")).isEqualTo(before);
        JsonNode status = json("trial", "status");
        assertThat(status.get("blocks").asInt()).isZero();
        assertThat(status.get("ending").asText()).isEqualTo("under-way");
    }

    @Test
    void theOutlookIsToldBeforehand() throws Exception {
        JsonNode outlook = json("trial", "outlook", "--candidates", "2", "--blocks", "50");
        assertThat(outlook.get("rounds").asInt()).isZero();
        assertThat(outlook.get("minutesPerRound").asDouble()).isEqualTo(0.7);
        assertThat(outlook.get("differences")).hasSize(3);
        assertThat(outlook.get("differences").get(0).get("roundsEach").asInt()).isGreaterThan(2000);
        assertThat(outlook.get("sentence").asText()).contains("thousands");
        made();
        assertThat(json("trial", "outlook", "Faces").get("longest").asInt()).isEqualTo(25);
    }

    @Test
    void aSetUpIsSharedAndLaidAside() throws Exception {
        made();
        Path file = folder.resolve("faces.json");
        Files.writeString(file, run("trial", "share", "Faces").out());
        assertThat(run("trial", "new", "Again", "--from", file.toString()).status())
                .isZero();
        assertThat(json("trial", "list").get("trials")).hasSize(2);
        Ran several = run("trial", "status");
        assertThat(several.err()).contains("name one of Again, Faces");
        assertThat(run("trial", "pause", "Again").out()).isEqualTo("Paused: Again\n");
        assertThat(run("record", "trial", "--trial", "Again", "3-1-0").err()).contains("is paused; resume it first");
        assertThat(run("trial", "resume", "Again").status()).isZero();
        assertThat(run("trial", "stop", "Again").status()).isZero();
        assertThat(run("trial", "status").out()).startsWith("Nothing to say yet");
    }

    @Test
    void aTrialIsRenamedDeletedAndBroughtBack() throws Exception {
        made();
        assertThat(run("record", "trial", "3-1-0", "2-2-0").status()).isZero();
        assertThat(run("trial", "rename", "Faces", "  Which face ").out())
                .isEqualTo("Renamed: Faces is now Which face\n");
        JsonNode renamed = json("trial", "list").get("trials").get(0);
        assertThat(renamed.get("name").asText()).isEqualTo("Which face");
        assertThat(run("trial", "status", "Faces").err()).contains("there is no trial \"Faces\"; there are Which face");
        made();
        Ran taken = run("trial", "rename", "Which face", "Faces");
        assertThat(taken.status()).isEqualTo(2);
        assertThat(taken.err()).contains("the name \"Faces\" is taken");
        assertThat(run("trial", "rename", "Which face", " ").err()).contains("a trial needs a name");
        assertThat(run("trial", "rename", "Which face", "x".repeat(61)).err()).contains("at most 60 characters");
        // Its own name is no fault.
        assertThat(run("trial", "rename", "Faces", "Faces").status()).isZero();

        assertThat(run("trial", "delete", "Faces").out())
                .isEqualTo("Deleted: Faces; bring it back with: boardside trial restore \"Faces\"\n");
        assertThat(json("trial", "list").get("trials")).hasSize(1);
        assertThat(run("trial", "delete", "Faces").status()).isEqualTo(1);
        // Another has taken the name in the meantime.
        made();
        assertThat(run("trial", "restore", "Faces").out())
                .isEqualTo("Back: Faces is now Faces 2, as another trial has its name\n");
        assertThat(json("trial", "list").get("trials")).hasSize(3);
        Ran none = run("trial", "restore", "Faces");
        assertThat(none.status()).isEqualTo(1);
        assertThat(none.err()).contains("there is no deleted trial \"Faces\"");
        assertThat(json("trial", "delete", "Which face").get("id").asText())
                .isEqualTo(renamed.get("id").asText());
        assertThat(json("trial", "restore", "Which face").get("name").asText()).isEqualTo("Which face");
    }

    @Test
    void faultsSayWhatToDo() {
        assertThat(run("trial", "status").err()).contains("boardside trial new");
        assertThat(run("trial", "new", "X", "--candidate", "A").err()).contains("2 to 8 candidates, not 1");
        assertThat(run("trial", "new", "X", "--candidate", "A", "--candidate", "A,sideways")
                        .err())
                .contains("sideways");
        assertThat(run("trial", "new", "X", "--candidate", "A", "--candidate", "B", "--blocks", "30")
                        .err())
                .contains("25, 50, 100 or 200");
        assertThat(run("trial", "list").status()).isEqualTo(1);
        made();
        assertThat(run("record", "trial", "--bag", "Blue", "3-1-0").err()).contains("was fixed when it began");
        assertThat(run("record", "total", "--trial", "Faces", "3-1-0").err()).contains("leave it out");
    }
}
