package boardside.app.cli;

import boardside.app.practice.Board;
import boardside.app.practice.Exercise;
import boardside.app.practice.KeptSituation;
import boardside.app.record.Chains;
import boardside.app.record.NamedPosition;
import boardside.app.record.Records;
import boardside.app.record.TryRates;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Word;
import boardside.engine.tactics.Target;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** How often placement and situation tries work. */
@Command(name = "rates", description = "How often what was tried works: by target, or by situation and shot.")
final class RatesCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(paramLabel = "DRILL", description = "placement or situation.")
    private String drill = "";

    @Option(
            names = "--by",
            paramLabel = "WHAT",
            split = ",",
            description = "Tell apart by bag, face, approach or by-hand; several with commas between.")
    private List<String> by = List.of();

    @Option(names = "--as-of", paramLabel = "DATE", description = "The last day that counts, such as 2026-05-31.")
    private @Nullable LocalDate asOf;

    @Spec
    private picocli.CommandLine.Model.@Nullable CommandSpec spec;

    RatesCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Drill asked = asked();
        LocalDate day = Objects.requireNonNullElseGet(
                asOf, () -> LocalDate.now(context.surroundings().clock()));
        Records records = context.records();
        int player = context.player().id();
        TryRates.Answer answer = TryRates.of(records, player, asked, day, traits());
        if (answer.rows().isEmpty()) {
            context.surroundings().err().println("nothing was tried yet; throw a " + asked.word() + " run first");
            return Cli.NO;
        }
        TryJson wording = new TryJson(records, player);
        List<Map<String, Object>> rates =
                answer.rows().stream().map(row -> wording.rate(asked, row)).toList();
        List<Map<String, Object>> preferences =
                answer.preferences().stream().map(TryJson::preference).toList();
        List<Map<String, Object>> chains = asked == Drill.SITUATION
                ? Chains.of(records, player, day).stream()
                        .map(row -> json(row, wording.kept()))
                        .toList()
                : List.of();
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("rates", rates);
        json.put("preferences", preferences);
        json.put("chains", chains);
        context.answer(json, words(answer, rates));
        return Cli.DONE;
    }

    private Drill asked() {
        if (drill.equals(Drill.PLACEMENT.word())) {
            return Drill.PLACEMENT;
        }
        if (drill.equals(Drill.SITUATION.word())) {
            return Drill.SITUATION;
        }
        throw wrong("rates are of placement or situation, not \"" + drill + "\"");
    }

    private Set<TryRates.By> traits() {
        Set<TryRates.By> traits = EnumSet.noneOf(TryRates.By.class);
        for (String word : by) {
            try {
                traits.add(Word.of(TryRates.By.class, word));
            } catch (IllegalArgumentException e) {
                throw wrong("--by: " + e.getMessage());
            }
        }
        return traits;
    }

    private ParameterException wrong(String message) {
        return new ParameterException(Objects.requireNonNull(spec).commandLine(), message);
    }

    private static Map<String, Object> json(Chains.Row row, List<KeptSituation> kept) {
        List<Map<String, Object>> shots = new ArrayList<>();
        for (int i = 0; i < row.shots().size(); i++) {
            Exercise.Step step = row.shots().get(i);
            Target target = step.target();
            Map<String, Object> json = new LinkedHashMap<>();
            json.put("shot", step.shot());
            if (target != null) {
                json.put("target", target.text());
            }
            json.put(
                    "situation",
                    NamedPosition.of(step.position(), Board.usualWidth(BoardKind.REGULATION), kept)
                            .words());
            json.put("tries", row.steps().get(i).tries());
            json.put("worked", row.steps().get(i).worked());
            json.put("rate", row.steps().get(i).rate());
            shots.add(json);
        }
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("shots", shots);
        json.put("tries", row.goes());
        json.put("worked", row.worked());
        json.put("rate", row.rate());
        return json;
    }

    private static String words(TryRates.Answer answer, List<Map<String, Object>> rates) {
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < rates.size(); i++) {
            TryRates.Row row = answer.rows().get(i);
            lines.add(TryJson.name(rates.get(i)) + ": " + TryJson.percent(row.rate()) + "; " + row.worked() + " of "
                    + row.tries() + " worked");
        }
        for (TryRates.Preference preference : answer.preferences()) {
            lines.add(TryJson.sentence(rates.get(preference.better()), rates.get(preference.worse()), preference));
        }
        return String.join("\n", lines);
    }
}
