package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.demo.Demo;
import boardside.app.json.Json;
import boardside.app.record.Records;
import boardside.app.record.Skills;
import boardside.engine.skill.Interval;
import boardside.engine.skill.NarrowAnswer.Narrow;
import boardside.engine.skill.Skill;
import boardside.engine.skill.StakesAnswer.Stakes;
import boardside.engine.skill.SwingAnswer.Swing;
import boardside.engine.skill.UsualAnswer.Unusual;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** The questions of {@code boardside skill} against the engine's own answers, of the invented player of the demo. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SkillCommandTest {
    private static final LocalDate DAY = LocalDate.of(2026, 5, 31);

    private Path folder = Path.of("");
    private String store = "";
    private Skill skill = Skill.of(List.of(), DAY);

    @BeforeAll
    void fill(@TempDir Path made) {
        folder = made;
        store = folder.resolve("store.db").toString();
        try (Records records = Records.open(store)) {
            skill = Skills.of(records, Demo.fill(records, DAY).id(), DAY);
        }
    }

    private JsonNode ask(String... question) {
        String[] args = new String[question.length + 6];
        String[] head = {"--data", store, "--json", "skill"};
        System.arraycopy(head, 0, args, 0, head.length);
        System.arraycopy(question, 0, args, head.length, question.length);
        args[args.length - 2] = "--as-of";
        args[args.length - 1] = DAY.toString();
        Ran ran = Ran.of(args);
        assertThat(ran.err()).isEmpty();
        assertThat(ran.status()).isZero();
        return Json.read(ran.out(), JsonNode.class);
    }

    private static void same(JsonNode json, Interval interval) {
        assertThat(json.get("estimate").asDouble()).isEqualTo(interval.estimate());
        assertThat(json.get("low").asDouble()).isEqualTo(interval.low());
        assertThat(json.get("high").asDouble()).isEqualTo(interval.high());
    }

    @Test
    void usualAndHowUnusual() {
        JsonNode usual = ask("usual");
        assertThat(usual.get("total").get("low").asInt())
                .isEqualTo(skill.total(10).orElseThrow().quantile(0.05));
        assertThat(usual.get("sentence").asText()).isEqualTo(skill.usual(10).sentence());
        Unusual unusual = (Unusual) skill.unusual(100, 10);
        JsonNode high = ask("usual", "--total", "100");
        assertThat(high.get("atLeast").asDouble()).isEqualTo(unusual.atLeast());
        assertThat(high.get("sentence").asText()).startsWith(unusual.sentence());
    }

    @Test
    void swingStakesAndTheNarrowBoard() {
        Swing swing = (Swing) skill.swing();
        JsonNode luck = ask("swing");
        same(luck.get("luck"), swing.luck());
        same(luck.get("standardDeviation"), swing.deviation());
        Stakes stakes = (Stakes) skill.stakes();
        JsonNode league = ask("stakes").get("settings").get(0);
        assertThat(league.get("setting").asText()).isEqualTo("league");
        same(league.get("difference"), stakes.settings().get(0).difference());
        Narrow narrow = (Narrow) skill.narrow();
        JsonNode cost = ask("narrow");
        same(cost.get("cost"), narrow.cost());
        assertThat(cost.get("verdict").asText()).isEqualTo(narrow.verdict().word());
        assertThat(cost.get("training").get("sentence").asText())
                .isEqualTo(narrow.training().sentence());
    }

    @Test
    void whereBagsGo() {
        JsonNode parts = ask("spread").get("parts");
        assertThat(parts).hasSize(3);
        JsonNode slides = parts.get(0);
        assertThat(slides.get("flight").asText()).isEqualTo("slide");
        assertThat(slides.get("taps").asInt()).isBetween(40, 160);
        assertThat(slides.get("right").get("high").asDouble()).isNegative();
        assertThat(parts.get(1).get("hole").get("estimate").asDouble()).isBetween(0.1, 0.8);
        Ran words = Ran.of("--data", store, "skill", "spread", "--as-of", DAY.toString());
        assertThat(words.out()).contains("right of the hole", "airmails, regulation board");
    }

    @Test
    void badQuestionsSayWhatToDo() {
        assertThat(Ran.of("skill").err()).contains("say which question: one of forecasts, narrow, ");
        Ran much = Ran.of("--data", store, "skill", "usual", "--total", "121");
        assertThat(much.status()).isEqualTo(2);
        assertThat(much.err()).contains("--total: 10 rounds make 0 to 120 points, not 121");
        String empty = folder.resolve("empty.db").toString();
        for (String question : new String[] {"usual", "swing", "stakes", "narrow", "forecasts", "spread"}) {
            Ran none = Ran.of("--data", empty, "skill", question);
            assertThat(none.status()).as(question).isEqualTo(1);
            assertThat(none.out()).as(question).isEmpty();
            assertThat(none.err()).as(question).isNotEmpty();
        }
    }
}
