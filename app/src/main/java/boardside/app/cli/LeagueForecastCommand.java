package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import boardside.app.record.LeagueSeason;
import boardside.app.record.LeagueState;
import boardside.engine.league.SeasonForecast;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** How a league's season may end. */
@Command(
        name = "forecast",
        description = {
            "How the season may end: the chance of each place for each player.",
            "Your games by your records, everybody else's by the totals they posted."
        })
final class LeagueForecastCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(paramLabel = "LEAGUE", description = "Name of the league.")
    private String league = "";

    LeagueForecastCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Player player = context.player();
        LeagueState state = LeagueCommand.named(context, player.id(), league);
        LeagueSeason season = LeagueSeason.of(
                        context.records(),
                        player.id(),
                        state,
                        LocalDate.now(context.surroundings().clock()))
                .orElseThrow(() -> new Failure.NotFound(
                        "there are no counted rounds of " + player.name() + " to take chances from; record some"));
        SeasonForecast forecast = season.forecast();
        List<Map<String, Object>> players = new ArrayList<>();
        List<String> words = new ArrayList<>();
        for (String name : forecast.order()) {
            Map<String, Object> one = new LinkedHashMap<>();
            int low = forecast.quantile(name, 0.05);
            int high = forecast.quantile(name, 0.95);
            one.put("player", name);
            one.put("likeliest", forecast.likeliest(name));
            one.put("places", List.of(low, high));
            one.put("chances", forecast.places(name));
            players.add(one);
            words.add(name + ": most likely place " + forecast.likeliest(name) + ", nine times in ten "
                    + (low == high ? "place " + low : "places " + low + " to " + high) + "; first in "
                    + Math.round(100 * forecast.among(name, 1)) + " of 100 seasons");
        }
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("league", state.league().name());
        answer.put("open", season.open());
        answer.put("seasons", forecast.seasons());
        answer.put("players", players);
        context.answer(
                answer, "With " + Words.count(season.open(), "game") + " still to throw:\n" + String.join("\n", words));
        return Cli.DONE;
    }
}
