package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.json.Json;
import boardside.app.record.Records;
import boardside.app.record.Refusals;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PlanCommandTest {
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
        return Json.MAPPER.readTree(ran.out());
    }

    private void practise() {
        for (int day = 1; day <= 6; day++) {
            run(
                    "record",
                    "total",
                    "--bag",
                    "Blue",
                    "--started-at",
                    "2026-05-2" + day + "T18:00:00+02:00",
                    "3-1-0",
                    "2-1-1",
                    "1-2-1",
                    "2-2-0",
                    "4-0-0",
                    "0-3-1",
                    "2-0-2",
                    "1-1-2",
                    "3-0-1",
                    "2-2-0");
        }
    }

    @Test
    void anEmptyStoreGivesAPlanToo() throws Exception {
        JsonNode plan = json("plan", "--minutes", "8");
        assertThat(plan.get("minutes").asInt()).isEqualTo(8);
        assertThat(plan.get("blocks")).hasSize(1);
        assertThat(plan.get("blocks").get(0).get("reason").asText()).contains("0 of your bags");
    }

    /** The keys of design 5.4, all there in every block. */
    @Test
    void blocksHaveTheKeysOthersRelyOn() throws Exception {
        practise();
        JsonNode plan =
                json("plan", "--minutes", "60", "--energy", "high", "--boards", "regulation,narrow", "--company");
        assertThat(plan.get("minutes").asInt()).isBetween(55, 60);
        int sum = 0;
        for (JsonNode block : plan.get("blocks")) {
            for (String key :
                    List.of("drill", "minutes", "throws", "bag", "approach", "board", "ghost", "target", "reason")) {
                assertThat(block.has(key)).as(key).isTrue();
            }
            assertThat(block.get("reason").asText()).matches("(?s).*[0-9.].*\\.");
            sum += block.get("minutes").asInt();
        }
        assertThat(sum).isEqualTo(plan.get("minutes").asInt());
        assertThat(plan.get("blocks").get(0).get("drill").asText()).isEqualTo("warm-up");
    }

    @Test
    void reasonsNameTheNumberWithItsRange() {
        practise();
        Ran ran = run("plan", "--minutes", "8", "--as-of", "2026-05-27");
        assertThat(ran.status()).isZero();
        assertThat(ran.out())
                .containsPattern("wins [0-9.]+ \\([0-9.]+–[0-9.]+\\) more games in a hundred against ghost");
        assertThat(ran.out()).contains("Pain means stop");
    }

    /** The playbook's worth of a shot is what the plan goes by, and says; without tries there is no block that asks for it. */
    @Test
    void aShotIsPlannedForWhatItIsWorthByThePlaybook() throws Exception {
        practise();
        String[] eightMinutes = {"plan", "--minutes", "8", "--as-of", "2026-05-27"};
        try (Records records = Records.open(folder.resolve("s.db").toString())) {
            Refusals.of(
                    records,
                    records.firstPlayer().id(),
                    LocalDate.of(2026, 5, 26),
                    "volume",
                    "total:aggressive",
                    "total:conservative",
                    "race",
                    "slide",
                    "placement:2-middle");
        }
        assertThat(run(eightMinutes).out()).doesNotContain("by your playbook");
        List<String> tries = new ArrayList<>(
                List.of("record", "situation", "--situation", "gate", "--started-at", "2026-05-24T19:00:00+02:00"));
        for (int i = 0; i < 12; i++) {
            tries.addAll(List.of("slide:yes", "slide:no"));
        }
        assertThat(run(tries.toArray(String[]::new)).status()).isZero();
        JsonNode plan = json(eightMinutes);
        List<String> reasons = new ArrayList<>();
        plan.get("blocks").forEach(block -> reasons.add(block.get("reason").asText()));
        assertThat(reasons)
                .anyMatch(
                        reason -> reason.matches(
                                "Your slide works \\d+ % \\(\\d+–\\d+\\) of the time\\. Ten times more in a"
                                        + " hundred would win \\d+\\.\\d \\(\\d+\\.\\d–\\d+\\.\\d\\) more of 100 games, by your playbook\\."));
    }

    @Test
    void aTrialUnderWayIsInThePlanUnlessItsBagsAreNotAtHandOrItIsLaidAside() throws Exception {
        practise();
        run("record", "total", "--bag", "Red", "3-1-0");
        assertThat(run("trial", "new", "Colours", "--candidate", "Blue", "--candidate", "Red")
                        .status())
                .isZero();
        List<JsonNode> trials = trials("2");
        assertThat(trials).hasSize(1);
        assertThat(trials.get(0).get("reason").asText()).contains("Colours");
        assertThat(trials.get(0).get("bag").asText()).isIn("Blue", "Red");
        // Whole blocks: two rounds of four with either.
        assertThat(trials.get(0).get("throws").asInt() % 16).isZero();
        assertThat(trials("1")).isEmpty();
        assertThat(run("trial", "pause", "Colours").status()).isZero();
        assertThat(trials("2")).isEmpty();
    }

    private List<JsonNode> trials(String bagSets) throws Exception {
        List<JsonNode> trials = new ArrayList<>();
        for (JsonNode block :
                json("plan", "--minutes", "60", "--bag-sets", bagSets).get("blocks")) {
            if (block.get("drill").asText().equals("trial")) {
                trials.add(block);
            }
        }
        return trials;
    }

    @Test
    void badInputIsRefusedEachFaultOnItsLine() {
        assertThat(run("plan").status()).isEqualTo(2);
        Ran ran = run("plan", "--minutes", "3", "--bag-sets", "0");
        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.out()).isEmpty();
        assertThat(ran.err().lines())
                .containsExactly(
                        "--minutes: a session takes 5 to 240 minutes, not 3",
                        "--bag-sets: at hand are 1 to 25 bag sets, not 0");
        assertThat(run("plan", "--minutes", "30", "--energy", "much", "--boards", "wide")
                        .err()
                        .lines())
                .containsExactly(
                        "--energy: \"much\" is none of low, normal, high; use one of these",
                        "--boards: \"wide\" is none of regulation, narrow; use one of these");
        assertThat(run("plan", "--minutes", "soon").status()).isEqualTo(2);
    }
}
