package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.json.Json;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The whole book from the terminal; worked out twice, which takes seconds. */
class PlaybookCommandTest {
    @TempDir
    Path folder;

    private Ran run(String... args) {
        String[] all = new String[args.length + 2];
        all[0] = "--data";
        all[1] = folder.resolve("s.db").toString();
        System.arraycopy(args, 0, all, 2, args.length);
        return Ran.of(all);
    }

    private static void duel(StringBuilder log, String run, String bag, boolean boldWins) {
        for (int round = 1; round <= 7; round++) {
            for (String side : new String[] {"a", "b"}) {
                boolean bold = side.equals("b");
                log.append(String.join(
                                ",",
                                "s",
                                run,
                                "2026-05-30T18:00:00Z",
                                "duel",
                                String.valueOf(round),
                                side,
                                bag,
                                "slow",
                                bold ? "aggressive" : "conservative",
                                "regulation",
                                "practice",
                                "",
                                bold == boldWins ? "2,1,1" : "1,1,2"))
                        .append('\n');
            }
        }
    }

    /** Simulated games and recorded duels stand side by side for each bag set, and each shot has what it is worth. */
    @Test
    void holdsSituationsWorthsAndApproachesBesideRecordedDuels() throws Exception {
        StringBuilder log = new StringBuilder(
                "session,run,started_at,drill,round,side,bag,face,approach,board,setting,ghost,in,on,off\n");
        duel(log, "d1", "Blue", false);
        duel(log, "d2", "Blue", false);
        duel(log, "d3", "Red", true);
        Path file = folder.resolve("log.csv");
        Files.writeString(file, log);
        assertThat(run("import", file.toString()).status()).isZero();

        Ran ran = run("--json", "playbook");
        assertThat(ran.err()).isEmpty();
        JsonNode book = Json.MAPPER.readTree(ran.out());
        assertThat(book.get("situations")).hasSize(33);
        JsonNode worth = book.get("worth").get(0);
        for (String range : new String[] {"gain", "perGame"}) {
            assertThat(worth.get(range).get("low").asDouble())
                    .isLessThanOrEqualTo(worth.get(range).get("estimate").asDouble());
        }
        assertThat(worth.get("perGame").get("estimate").asDouble()).isBetween(0.0, 0.5);
        JsonNode approaches = book.get("approaches");
        assertThat(approaches).hasSize(2);
        JsonNode blue = approaches.get(0);
        assertThat(blue.get("bag").asText()).isEqualTo("Blue");
        assertThat(blue.get("duelsConservative").asInt()).isEqualTo(2);
        assertThat(blue.get("duelsAggressive").asInt()).isZero();
        for (String approach : new String[] {"conservative", "aggressive"}) {
            assertThat(blue.get(approach).get("low").asDouble())
                    .isLessThan(blue.get(approach).get("high").asDouble());
        }
        assertThat(approaches.get(1).get("duelsAggressive").asInt()).isEqualTo(1);

        assertThat(run("playbook").out())
                .contains(
                        "bags of the last year",
                        "gate",
                        "practise the",
                        "duels of the two: 2-0.",
                        "duels of the two: 0-1.")
                .containsPattern("slide +\\d+\\.\\d\\d in a hundred .*, \\d+\\.\\d games \\(");
    }
}
