package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.json.Json;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class GoalAndCoachCommandsTest {
    @TempDir
    Path folder;

    private Ran run(String... args) {
        List<String> all =
                new ArrayList<>(List.of("--data", folder.resolve("s.db").toString()));
        all.addAll(List.of(args));
        return Ran.of(all.toArray(String[]::new));
    }

    private void practise(String player) {
        for (int day = 1; day <= 4; day++) {
            run(
                    "record",
                    "total",
                    "--player",
                    player,
                    "--started-at",
                    "2026-05-2" + day + "T18:00:00+02:00",
                    "3-1-0",
                    "2-1-1",
                    "1-2-1",
                    "2-2-0",
                    "4-0-0");
        }
    }

    @Test
    void aGoalIsSetToldAndDropped() throws Exception {
        practise("Ana");
        assertThat(run("goal").status()).isEqualTo(1);
        assertThat(run("goal", "set", "in", "70", "--by", "2026-12-31").status())
                .isZero();
        JsonNode goal =
                Json.MAPPER.readTree(run("--json", "goal").out()).get("goals").get(0);
        assertThat(goal.get("kind").asText()).isEqualTo("in");
        assertThat(goal.get("now").get("low").asDouble())
                .isLessThan(goal.get("now").get("high").asDouble());
        assertThat(goal.get("serves").get(0).asText()).isEqualTo("finish");
        assertThat(run("goal").out()).contains("70 of 100 in by 31 Dec 2026").contains("a month");
        assertThat(run("goal", "set", "level", "8", "--by", "2026-12-31").status())
                .isZero();
        assertThat(run("goal", "set", "total", "90", "--by", "2026-12-31").err())
                .isEqualToIgnoringNewLines("there are 2 goals already; put one away first");
        assertThat(run("goal", "drop", "1").status()).isZero();
        assertThat(run("goal", "drop", "2").status()).isEqualTo(1);
    }

    @Test
    void goalsThatMakeNoSenseAreRefused() {
        assertThat(run("goal", "set", "luck", "7", "--by", "2026-12-31").err())
                .contains("\"luck\" is none of in, level, season, total");
        assertThat(run("goal", "set", "level", "13", "--by", "2020-01-01").err().lines())
                .containsExactly("a level is 1 to 12, not 13", "a goal is for a day to come, not 2020-01-01");
        assertThat(run("goal", "set", "level", "8").status()).isEqualTo(2);
    }

    @Test
    void onlyWhoIsLetSeesAndOnlyAsLong() {
        practise("Ana");
        practise("Ben");
        assertThat(run("coach", "see", "Ana", "--player", "Ben").status()).isEqualTo(1);
        assertThat(run("coach", "see", "Ana", "--player", "Ben").err())
                .isEqualTo(run("coach", "see", "Nobody", "--player", "Ben").err());
        assertThat(run("coach", "grant", "Ben", "--player", "Ana").status()).isZero();
        assertThat(run("coach", "see", "Ana", "--player", "Ben").out()).contains("points");
        // Not the other way round.
        assertThat(run("coach", "see", "Ben", "--player", "Ana").status()).isEqualTo(1);
        assertThat(run("coach", "grant", "Ana", "--player", "Ana").status()).isEqualTo(2);
        assertThat(run("coach", "revoke", "Ben", "--player", "Ana").status()).isZero();
        assertThat(run("coach", "see", "Ana", "--player", "Ben").status()).isEqualTo(1);
        assertThat(run("coach", "revoke", "Ben", "--player", "Ana").status()).isEqualTo(1);
    }
}
