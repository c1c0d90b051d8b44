package boardside.app.web;

import boardside.app.practice.Player;
import boardside.app.report.DataTable;
import boardside.app.report.Picture;
import boardside.app.report.Pictures;
import boardside.app.report.SkillPictures;
import boardside.engine.skill.ComparisonAnswer;
import boardside.engine.skill.ComparisonAnswer.Comparison;
import boardside.engine.skill.ComparisonAnswer.Group;
import boardside.engine.skill.Interval;
import boardside.engine.skill.NarrowAnswer.Narrow;
import boardside.engine.skill.Skill;
import boardside.engine.skill.StakesAnswer.Stakes;
import boardside.engine.skill.Trait;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Which of the player's ways to throw is better, and how sure that is. */
public final class ComparePage {
    /** What can be asked, by its word in the address. */
    private static final List<String> QUESTIONS =
            List.of("bag", "approach", "bag,approach", "face", "board", "setting", "conditions");

    private static final int MOST_GRID_COLUMNS = 3;

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
        return new View(
                choices,
                said.get(0),
                said.subList(1, said.size()),
                answer instanceof Comparison comparison ? picture(comparison) : null,
                answer instanceof Comparison comparison ? ways(comparison) : List.of());
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

    private List<Way> ways(Comparison comparison) {
        if (comparison.groups().size() < 2) {
            return List.of();
        }
        return comparison.groups().stream()
                .map(group -> new Way(name(comparison, group), says(group)))
                .toList();
    }

    private String says(Group group) {
        Texts texts = web.texts();
        String settle = group.roundsToSettle() == 0
                ? texts.of("compare.settled")
                : group.roundsToSettle() > 1000
                        ? texts.of("compare.settle.many")
                        : texts.of("compare.settle", group.roundsToSettle());
        return texts.of(
                        "compare.way",
                        Numbers.one(group.pointsPerRound().estimate()),
                        Numbers.one(group.pointsPerRound().low()),
                        Numbers.one(group.pointsPerRound().high()),
                        group.throwsCounted(),
                        Numbers.inHundred(group.probabilityBest()),
                        Numbers.two(group.expectedLoss()))
                + " " + settle;
    }

    private String name(Comparison comparison, Group group) {
        List<String> words = new ArrayList<>();
        for (int i = 0; i < comparison.by().size(); i++) {
            words.add(word(comparison.by().get(i), group.key().get(i)));
        }
        return String.join(", ", words);
    }

    private String word(Trait trait, String word) {
        return trait == Trait.BAG ? word : web.texts().of(trait.word() + "." + word);
    }

    private Picture picture(Comparison comparison) {
        Texts texts = web.texts();
        List<List<String>> rows = comparison.groups().stream()
                .map(group -> List.of(
                        name(comparison, group),
                        String.valueOf(group.throwsCounted()),
                        Numbers.one(group.pointsPerRound().estimate()),
                        Numbers.range(group.pointsPerRound()),
                        Numbers.inHundred(group.probabilityBest()),
                        Numbers.two(group.expectedLoss())))
                .toList();
        DataTable data = new DataTable(
                List.of(
                        texts.of("compare.table.way"),
                        texts.of("form.table.bags"),
                        texts.of("form.table.ppr"),
                        texts.of("form.table.range"),
                        texts.of("compare.table.best"),
                        texts.of("compare.table.loss")),
                rows);
        List<String> columns = comparison.by().size() == 2 ? keys(comparison, 1) : List.of();
        if (!columns.isEmpty() && columns.size() <= MOST_GRID_COLUMNS) {
            List<String> first = keys(comparison, 0);
            List<List<@Nullable Interval>> cells = new ArrayList<>();
            for (String row : first) {
                List<@Nullable Interval> line = new ArrayList<>();
                for (String column : columns) {
                    line.add(comparison.groups().stream()
                            .filter(group -> group.key().equals(List.of(row, column)))
                            .map(Group::pointsPerRound)
                            .findFirst()
                            .orElse(null));
                }
                cells.add(line);
            }
            return SkillPictures.grid(
                    texts.of("compare.grid"),
                    texts.of(
                            "compare.grid.about",
                            name(comparison, comparison.groups().get(0))),
                    data,
                    columns.stream()
                            .map(column -> word(comparison.by().get(1), column))
                            .toList(),
                    first,
                    cells);
        }
        return Pictures.ranges(
                texts.of("compare.picture"),
                texts.of("compare.picture.about", comparison.groups().size()),
                data,
                comparison.groups().stream()
                        .map(group -> new Pictures.Named(name(comparison, group), group.pointsPerRound()))
                        .toList());
    }

    private static List<String> keys(Comparison comparison, int at) {
        return List.copyOf(comparison.groups().stream()
                .map(group -> group.key().get(at))
                .collect(Collectors.toCollection(LinkedHashSet::new)));
    }
}
