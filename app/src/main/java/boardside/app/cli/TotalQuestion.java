package boardside.app.cli;

import boardside.app.cli.OddsChances.Answers;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.odds.Total;
import boardside.engine.skill.Interval;
import boardside.engine.skill.TotalForecast;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.function.DoubleFunction;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What a number of rounds gives, and how unusual a total is. */
@Command(
        name = "total",
        description = {
            "What a number of rounds gives, and how unusual a total is.",
            "With --in and --on only luck makes totals differ; from your records, good and bad days and what is not"
                    + " known of you are in it too, so it spreads wider."
        })
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
        OddsChances chances = mine.chances(context);
        Answers<Total> totals =
                OddsInputs.checked("--rounds", () -> chances.ask(bag -> Total.of(RoundDistribution.of(bag), rounds)));
        Map<String, Object> json = new LinkedHashMap<>();
        if (!(chances instanceof OddsChances.Found found)) {
            context.answer(json, given(totals.likely(), json));
            return Cli.DONE;
        }
        TotalForecast forecast = found.skill().total(rounds).orElseThrow();
        context.answer(json, found(found, forecast, totals, json));
        return Cli.DONE;
    }

    private String given(Total total, Map<String, Object> json) {
        figures(json, total.mean(), total.standardDeviation(), total::quantile, total::atLeast);
        String words = "If these chances hold, " + gives()
                + OddsWords.number(total.mean()) + " points on average, give or take "
                + OddsWords.number(total.standardDeviation())
                + ".\nHalf the time it is " + total.quantile(0.25) + " to " + total.quantile(0.75)
                + ", nine times in ten " + total.quantile(0.05) + " to " + total.quantile(0.95) + ".";
        return atLeast == null
                ? words
                : words + "\n" + atLeast + " or more comes up with a chance of "
                        + OddsWords.percent(total.atLeast(atLeast)) + ".";
    }

    private String found(
            OddsChances.Found found, TotalForecast forecast, Answers<Total> totals, Map<String, Object> json) {
        figures(json, forecast.mean(), forecast.standardDeviation(), forecast::quantile, forecast::atLeast);
        Interval mean = around(forecast.mean(), totals.range(Total::mean));
        Map<String, Object> ranges = new LinkedHashMap<>();
        ranges.put("mean", mean);
        String words = gives() + OddsWords.number(mean) + " points on average; nine times in ten it is "
                + forecast.quantile(0.05) + " to " + forecast.quantile(0.95)
                + ", good and bad days included.";
        Integer points = atLeast;
        if (points != null) {
            Interval chance = around(forecast.atLeast(points), totals.range(total -> total.atLeast(points)));
            ranges.put("atLeast", Map.of("probability", chance));
            words += "\n" + points + " or more comes up in " + OddsWords.percent(chance) + " of such totals.";
        }
        found.tell(json, ranges);
        return words;
    }

    /** What is not known of the player, around a forecast that has good and bad days in it. */
    private static Interval around(double forecast, Interval known) {
        return new Interval(forecast, Math.min(forecast, known.low()), Math.max(forecast, known.high()));
    }

    private String gives() {
        return rounds == 1 ? "1 round gives " : rounds + " rounds give ";
    }

    private void figures(
            Map<String, Object> json,
            double mean,
            double standardDeviation,
            DoubleFunction<Integer> quantile,
            IntToDoubleFunction chance) {
        Map<String, Integer> quantiles = new LinkedHashMap<>();
        for (double q : QUANTILES) {
            quantiles.put(Double.toString(q), quantile.apply(q));
        }
        json.put("mean", mean);
        json.put("standardDeviation", standardDeviation);
        json.put("quantiles", quantiles);
        Integer points = atLeast;
        if (points != null) {
            Map<String, Object> answer = new LinkedHashMap<>();
            answer.put("points", points);
            answer.put("probability", chance.applyAsDouble(points));
            json.put("atLeast", answer);
        }
    }
}
