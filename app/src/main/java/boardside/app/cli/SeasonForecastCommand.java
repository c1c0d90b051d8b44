package boardside.app.cli;

import boardside.app.record.HostedSeasons;
import boardside.engine.league.SeasonForecast;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonOutlook;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** How a season may end. */
@Command(
        name = "forecast",
        description = {
            "How the season may end: the chance of each place, and of the play-off, for each player.",
            "By the totals thrown in the season alone."
        })
final class SeasonForecastCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(paramLabel = "SEASON", description = "Name of the season.")
    private String name = "";

    SeasonForecastCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Season season = SeasonCommand.named(context, name);
        List<Map<String, Object>> divisions = new ArrayList<>();
        List<String> words = new ArrayList<>();
        for (int division = 0; division < season.divisions().size(); division++) {
            SeasonOutlook outlook = SeasonOutlook.of(season, division, HostedSeasons.SEED);
            SeasonForecast forecast = outlook.forecast();
            words.add((season.divisions().size() > 1 ? season.divisions().get(division) + ", with " : "With ")
                    + Words.count(outlook.open(), "game") + " still to throw:");
            List<Map<String, Object>> players = new ArrayList<>();
            for (String player : forecast.order()) {
                int low = forecast.quantile(player, 0.05);
                int high = forecast.quantile(player, 0.95);
                Map<String, Object> one = new LinkedHashMap<>();
                one.put("player", player);
                one.put("likeliest", forecast.likeliest(player));
                one.put("places", List.of(low, high));
                one.put("chances", forecast.places(player));
                one.put("playOff", outlook.playOff(player));
                players.add(one);
                words.add(player + ": most likely place " + forecast.likeliest(player) + ", nine times in ten "
                        + (low == high ? "place " + low : "places " + low + " to " + high) + "; first in "
                        + Math.round(100 * forecast.among(player, 1)) + " of 100 seasons"
                        + (outlook.qualifiers() == 0
                                ? ""
                                : ", in the play-off in " + Math.round(100 * outlook.playOff(player))));
            }
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("division", season.divisions().get(division));
            one.put("open", outlook.open());
            one.put("totals", outlook.totals());
            one.put("seasons", forecast.seasons());
            one.put("players", players);
            divisions.add(one);
        }
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("season", season.name());
        answer.put("divisions", divisions);
        context.answer(answer, String.join("\n", words));
        return Cli.DONE;
    }
}
