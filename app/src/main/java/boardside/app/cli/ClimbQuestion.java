package boardside.app.cli;

import boardside.engine.odds.Climb;
import boardside.engine.odds.Level;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.rules.GameRules;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Where races up and down the ghost ladder settle. */
@Command(name = "climb", description = "Where races up and down the ghost ladder settle.")
final class ClimbQuestion implements Callable<Integer> {
    private final Context context;

    @Mixin
    private final OddsInputs.Mine mine = new OddsInputs.Mine();

    @Mixin
    private final OddsInputs.Variants variants = new OddsInputs.Variants();

    @Option(names = "--lowest", paramLabel = "POINTS", description = "Ghost of the lowest rung; 0 unless said.")
    private int lowest = 0;

    @Option(names = "--highest", paramLabel = "POINTS", description = "Ghost of the highest rung; 12 unless said.")
    private int highest = RoundDistribution.MOST;

    ClimbQuestion(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        RoundDistribution me = mine.round();
        GameRules rules = variants.rules();
        Climb climb = OddsInputs.checked("--lowest, --highest", () -> Climb.of(rules, me, lowest, highest));
        double level = Level.of(rules, me).value();
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("level", level);
        json.put("stationary", climb.stationary());
        json.put("mean", climb.mean());
        json.put("mode", climb.mode());
        context.answer(json, words(climb, level));
        return Cli.DONE;
    }

    private String words(Climb climb, double level) {
        String words = "If these chances hold, you would be even with a ghost of " + OddsWords.number(level)
                + "; the climb settles around ghost " + OddsWords.number(climb.mean()) + " and meets ghost "
                + climb.mode()
                + " most often.\n";
        double first = climb.gamesToFirstLoss();
        words += first < 1e6
                ? "From ghost " + lowest + " the first loss comes after " + OddsWords.number(first)
                        + " games on average."
                : "From ghost " + lowest + " no loss is in sight.";
        OptionalInt pin = climb.gamesToPin(level, 1, 0.9);
        return pin.isEmpty()
                ? words
                : words + "\nThe mean ghost of the next " + pin.getAsInt()
                        + " games lies within one of your level nine times in ten.";
    }
}
