package boardside.app.cli;

import boardside.app.cli.OddsChances.Answers;
import boardside.engine.odds.Climb;
import boardside.engine.odds.Level;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.rules.GameRules;
import boardside.engine.skill.Interval;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Where races up and down the ghost ladder settle. */
@Command(name = "climb", description = "Where races up and down the ghost ladder settle.")
final class ClimbQuestion implements Callable<Integer> {
    /** Games that nobody plays. */
    private static final double MANY = 1e6;

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
        GameRules rules = variants.rules();
        OddsChances chances = mine.chances(context);
        Answers<Climb> climbs = OddsInputs.checked(
                "--lowest, --highest",
                () -> chances.ask(bag -> Climb.of(rules, RoundDistribution.of(bag), lowest, highest)));
        Answers<Double> levels =
                chances.ask(bag -> Level.of(rules, RoundDistribution.of(bag)).value());
        Climb climb = climbs.likely();
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("level", levels.likely());
        json.put("stationary", climb.stationary());
        json.put("mean", climb.mean());
        json.put("mode", climb.mode());
        if (!(chances instanceof OddsChances.Found found)) {
            context.answer(json, words(climb, levels.likely()));
            return Cli.DONE;
        }
        Interval level = levels.range(value -> value);
        Interval mean = climbs.range(Climb::mean);
        Answers<double[]> stationary =
                new Answers<>(climbs.all().stream().map(Climb::stationary).toList());
        Map<String, Object> ranges = new LinkedHashMap<>();
        ranges.put("level", level);
        ranges.put(
                "stationary",
                IntStream.rangeClosed(0, highest - lowest)
                        .mapToObj(rung -> stationary.range(shares -> shares[rung]))
                        .toList());
        ranges.put("mean", mean);
        ranges.put("mode", climbs.range(Climb::mode));
        found.tell(json, ranges);
        context.answer(
                json,
                "You would be even with a ghost of " + OddsWords.number(level)
                        + "; the climb settles around ghost " + OddsWords.number(mean) + ".\n"
                        + firstLoss(climbs.range(Climb::gamesToFirstLoss)));
        return Cli.DONE;
    }

    private String firstLoss(Interval games) {
        return "From ghost " + lowest
                + (games.high() < MANY
                        ? " the first loss comes after " + OddsWords.number(games) + " games on average."
                        : " no loss is in sight.");
    }

    private String words(Climb climb, double level) {
        String words = "If these chances hold, you would be even with a ghost of " + OddsWords.number(level)
                + "; the climb settles around ghost " + OddsWords.number(climb.mean()) + " and meets ghost "
                + climb.mode()
                + " most often.\n";
        double first = climb.gamesToFirstLoss();
        words += first < MANY
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
