package boardside.app.web;

import boardside.app.practice.Player;
import boardside.app.report.Picture;
import boardside.engine.skill.ComparisonAnswer;
import boardside.engine.skill.ComparisonAnswer.Comparison;
import boardside.engine.skill.NarrowAnswer.Narrow;
import boardside.engine.skill.Skill;
import boardside.engine.skill.StakesAnswer.Stakes;
import boardside.engine.skill.Trait;
import io.javalin.http.Context;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Which of the player's ways to throw is better, and how sure that is. */
public final class ComparePage {
    /** What can be asked, by its word in the address. */
    private static final List<String> QUESTIONS =
            List.of("bag", "approach", "bag,approach", "face", "board", "setting", "conditions");

    private final Web web;
    private final Remembered<View> remembered;

    ComparePage(Web web) {
        this.web = web;
        this.remembered = web.remembered();
    }

    /** A question to choose. */
    public record Choice(String by, String name, boolean chosen) {}

    /**
     * What the page shows.
     *
     * @param sentence the answer in words
     * @param more what else is known: whether training on the narrow board has helped
     * @param picture ranges or a grid, or null with nothing to compare
     * @param groups each way to throw in words, the best first
     */
    public record View(
            List<Choice> choices,
            String sentence,
            List<String> more,
            @Nullable Picture picture,
            List<Way> groups) {}

    /** A way to throw: its name, and how likely it is the best. */
    public record Way(String name, String says) {}

    void show(Context ctx) {
        Player player = web.player(ctx);
        String asked = Objects.requireNonNullElse(ctx.queryParam("by"), "bag");
        if (!QUESTIONS.contains(asked)) {
            throw new Refusal(404, web.texts().of("compare.unknown", String.join("; ", QUESTIONS)));
        }
        web.showFound(
                ctx,
                "compare",
                web.texts().of("compare.title"),
                remembered.soon(player, web.today(), asked, () -> view(player, asked)));
    }

    private View view(Player player, String asked) {
        Skill skill = web.skills().skill(player.id(), web.today());
        List<Trait> by = Arrays.stream(asked.split(","))
                .map(word -> Trait.valueOf(word.toUpperCase(Locale.ROOT)))
                .toList();
        ComparisonAnswer answer = skill.compare(by);
        List<Choice> choices = QUESTIONS.stream()
                .map(each ->
                        new Choice(each, web.texts().of("compare.by." + each.replace(",", "-")), each.equals(asked)))
                .toList();
        List<String> said = said(skill, by, answer);
        CompareWords words = new CompareWords(web.texts());
        return new View(
                choices,
                said.get(0),
                said.subList(1, said.size()),
                answer instanceof Comparison comparison ? words.picture(comparison) : null,
                answer instanceof Comparison comparison ? words.ways(comparison) : List.of());
    }

    /** The answer and what else is known; stakes and boards have answers of their own. */
    private static List<String> said(Skill skill, List<Trait> by, ComparisonAnswer answer) {
        if (by.equals(List.of(Trait.SETTING)) && skill.stakes() instanceof Stakes stakes) {
            return List.of(stakes.sentence());
        }
        if (by.equals(List.of(Trait.BOARD)) && skill.narrow() instanceof Narrow narrow) {
            return List.of(narrow.sentence(), narrow.training().sentence());
        }
        return List.of(answer.sentence());
    }
}
