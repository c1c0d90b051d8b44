package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.record.Skills;
import boardside.engine.rules.Word;
import boardside.engine.skill.ComparisonAnswer;
import boardside.engine.skill.ComparisonAnswer.Comparison;
import boardside.engine.skill.ComparisonAnswer.Group;
import boardside.engine.skill.Trait;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Ways to throw, side by side. */
@Command(name = "compare", description = "Compare bag sets, faces, approaches and whatever else you throw with.")
final class CompareCommand implements Callable<Integer> {
    private final Context context;

    @Option(
            names = "--by",
            paramLabel = "WHAT",
            required = true,
            split = ",",
            description = "bag, face, approach, board, setting or conditions; several with commas between.")
    private List<String> by = List.of();

    @Option(names = "--as-of", paramLabel = "DATE", description = "The day that is today, such as 2026-05-31.")
    private @Nullable LocalDate asOf;

    CompareCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        LocalDate today = Objects.requireNonNullElseGet(
                asOf, () -> LocalDate.now(context.surroundings().clock()));
        ComparisonAnswer answer = compare(today, traits());
        if (!(answer instanceof Comparison comparison)) {
            context.surroundings().err().println(answer.sentence());
            return Cli.NO;
        }
        context.answer(json(comparison), words(comparison));
        return Cli.DONE;
    }

    private ComparisonAnswer compare(LocalDate today, List<Trait> traits) {
        return Skills.of(context.records(), context.player().id(), today).compare(traits);
    }

    private List<Trait> traits() {
        List<Trait> traits = new ArrayList<>();
        for (String word : by) {
            try {
                Trait trait = Word.of(Trait.class, word.strip());
                if (traits.contains(trait)) {
                    throw new Failure.BadInput("--by: " + trait.word() + " is given twice; once is enough");
                }
                traits.add(trait);
            } catch (IllegalArgumentException e) {
                throw new Failure.BadInput("--by: " + e.getMessage());
            }
        }
        return traits;
    }

    private static Map<String, Object> json(Comparison comparison) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("by", comparison.by());
        json.put(
                "groups",
                comparison.groups().stream()
                        .map(group -> json(comparison.by(), group))
                        .toList());
        json.put("lead", comparison.lead());
        json.put("probabilityAhead", comparison.probabilityAhead());
        json.put("verdict", comparison.verdict());
        json.put("sentence", comparison.sentence());
        return json;
    }

    private static Map<String, Object> json(List<Trait> by, Group group) {
        Map<String, Object> json = new LinkedHashMap<>();
        for (int i = 0; i < by.size(); i++) {
            json.put(by.get(i).word(), group.key().get(i));
        }
        json.put("throws", group.throwsCounted());
        json.put("inHole", group.inHole());
        json.put("onBoard", group.onBoard());
        json.put("offBoard", group.offBoard());
        json.put("pointsPerRound", group.pointsPerRound());
        json.put("probabilityBest", group.probabilityBest());
        json.put("expectedLoss", group.expectedLoss());
        json.put("roundsToSettle", group.roundsToSettle());
        return json;
    }

    private static String words(Comparison comparison) {
        List<String> lines = new ArrayList<>(List.of(comparison.sentence(), ""));
        for (Group group : comparison.groups()) {
            lines.add(FormCommand.line(String.join(", ", group.key()), group.pointsPerRound(), 1, " points a round")
                    + String.format(
                            Locale.ROOT,
                            "; chance of being best %.0f in 100 (%s)",
                            100 * group.probabilityBest(),
                            group.throwsCounted() == 1 ? "1 bag" : group.throwsCounted() + " bags"));
        }
        return String.join("\n", lines);
    }
}
