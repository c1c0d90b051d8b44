package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.app.json.Json;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code challenge}, {@code bests} and {@code load}. */
class ReasonsCommandsTest {
    private static final String YESTERDAY = "2026-05-31";

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

    @BeforeEach
    void practise() {
        for (int day = 1; day <= 6; day++) {
            run(
                    "record",
                    "total",
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

    /** Each deal's chance is what {@code odds} says of the same question, or a binomial tail at its bag's chances. */
    @Test
    void challengesAreAboutEvenAsTheOddsSay() throws Exception {
        JsonNode chances =
                json("odds", "race", "--ghost", "5", "--as-of", YESTERDAY).get("chances");
        double in = chances.get("in").asDouble();
        double off = 1 - in - chances.get("on").asDouble();
        Set<String> kinds = new HashSet<>();
        for (int deal = 0; deal < 12; deal++) {
            JsonNode dealt = json("challenge", "--deal", String.valueOf(deal));
            JsonNode chance = dealt.get("chance");
            double estimate = chance.get("estimate").asDouble();
            assertThat(estimate).isBetween(0.33, 0.67);
            assertThat(chance.get("low").asDouble()).isLessThanOrEqualTo(estimate);
            assertThat(chance.get("high").asDouble()).isGreaterThanOrEqualTo(estimate);
            assertThat(json("challenge", "--deal", String.valueOf(deal))).isEqualTo(dealt);
            String kind = dealt.get("kind").asText();
            kinds.add(kind);
            int need = dealt.get("need").asInt();
            int rounds = dealt.path("rounds").asInt();
            double expected = switch (kind) {
                case "points" ->
                    json("odds", "total", "--rounds", rounds + "", "--at-least", need + "", "--as-of", YESTERDAY)
                            .get("atLeast")
                            .get("probability")
                            .asDouble();
                case "race" ->
                    json("odds", "race", "--ghost", dealt.get("ghost").asText(), "--as-of", YESTERDAY)
                            .get("winProbability")
                            .asDouble();
                case "bags-in" -> BinomialDistribution.of(4 * rounds, in).survivalProbability(need - 1);
                case "few-off" -> BinomialDistribution.of(4 * rounds, off).cumulativeProbability(need);
                case "four-baggers" ->
                    BinomialDistribution.of(rounds, Math.pow(in, 4)).survivalProbability(need - 1);
                default -> Double.NaN;
            };
            assertThat(estimate).as(dealt.toString()).isCloseTo(expected, within(1e-9));
        }
        assertThat(kinds).contains("points", "race", "bags-in");
    }

    @Test
    void bestsAndLoad() throws Exception {
        JsonNode bests = json("bests");
        assertThat(bests.get("bests").get(0).get("what").asText()).isEqualTo("Total of 10 rounds");
        assertThat(bests.get("bests").get(0).get("value").asInt()).isEqualTo(72);
        assertThat(bests.get("bests").get(0).get("day").asText()).isEqualTo("2026-05-21");
        assertThat(bests.get("bags").asInt()).isEqualTo(240);
        JsonNode load = json("load");
        assertThat(load.get("week").asInt()).isEqualTo(40);
        assertThat(load.get("usualWeek").asDouble()).isEqualTo(50);
        assertThat(load.has("caution")).isFalse();
        assertThat(run("load").out())
                .isEqualTo("Today 0 bags, in the last seven days 40. Over the four weeks before: 50 a week.\n");
    }

    @Test
    void withoutRecordsTheAnswerIsNo() {
        Ran ran = Ran.of("--data", folder.resolve("empty.db").toString(), "challenge");
        assertThat(ran.status()).isEqualTo(Cli.NO);
        assertThat(ran.err()).contains("record some");
        assertThat(Ran.of("--data", folder.resolve("empty.db").toString(), "bests")
                        .status())
                .isEqualTo(Cli.NO);
    }
}
