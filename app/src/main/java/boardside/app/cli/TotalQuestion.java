package boardside.app.cli;

import boardside.engine.odds.RoundDistribution;
import boardside.engine.odds.Total;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What a number of rounds gives, and how unusual a total is. */
@Command(name = "total", description = "What a number of rounds gives, and how unusual a total is.")
final class TotalQuestion implements Callable<Integer> {
    private static final double[] QUANTILES = {0.05, 0.25, 0.5, 0.75, 0.95};

    private final Context context;

    @Mixin
    private final OddsInputs.Mine mine = new OddsInputs.Mine();

    @Option(names = "--rounds", paramLabel = "N", description = "Rounds of four; 10 unless said.")
    private int rounds = 10;

    @Option(names = "--at-least", paramLabel = "POINTS", description = "How often so many points or more come up.")
    private @Nullable Integer atLeast;

    TotalQuestion(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        RoundDistribution round = mine.round();
        Total total = OddsInputs.checked("--rounds", () -> Total.of(round, rounds));
        Map<String, Integer> quantiles = new LinkedHashMap<>();
        for (double q : QUANTILES) {
            quantiles.put(Double.toString(q), total.quantile(q));
        }
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("mean", total.mean());
        json.put("standardDeviation", total.standardDeviation());
        json.put("quantiles", quantiles);
        String words = "If these chances hold, " + (rounds == 1 ? "1 round gives " : rounds + " rounds give ")
                + OddsWords.number(total.mean()) + " points on average, give or take "
                + OddsWords.number(total.standardDeviation())
                + ".\nHalf the time it is " + total.quantile(0.25) + " to " + total.quantile(0.75)
                + ", nine times in ten " + total.quantile(0.05) + " to " + total.quantile(0.95) + ".";
        Integer points = atLeast;
        if (points != null) {
            double chance = total.atLeast(points);
            Map<String, Object> answer = new LinkedHashMap<>();
            answer.put("points", points);
            answer.put("probability", chance);
            json.put("atLeast", answer);
            words += "\n" + points + " or more comes up with a chance of " + OddsWords.percent(chance) + ".";
        }
        context.answer(json, words);
        return Cli.DONE;
    }
}
