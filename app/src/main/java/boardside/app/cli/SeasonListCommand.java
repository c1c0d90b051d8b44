package boardside.app.cli;

import boardside.app.season.SeasonSettings;
import boardside.engine.league.season.Season;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** The seasons that are run here. */
@Command(name = "list", description = "The seasons run here, and how many players have still to throw in each.")
final class SeasonListCommand implements Callable<Integer> {
    private final Context context;

    SeasonListCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Instant now = context.surroundings().clock().instant();
        List<Map<String, Object>> answer = new ArrayList<>();
        List<String> words = new ArrayList<>();
        for (SeasonSettings settings : context.records().seasons().all()) {
            Season season = context.records().seasons().find(settings.id()).orElseThrow();
            int waiting = season.waiting(now).size();
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("season", season.name());
            one.put("id", season.id());
            one.put("players", season.entrants().size());
            one.put("week", season.weeks().at(now));
            one.put("weeks", season.length());
            one.put("waiting", waiting);
            one.put("public", season.open());
            answer.add(one);
            words.add(season.name() + ": " + Words.count(season.entrants().size(), "player") + ", week "
                    + season.weeks().at(now) + " of " + season.length() + ", still to throw by now: " + waiting);
        }
        context.answer(answer, String.join("\n", words));
        return answer.isEmpty() ? Cli.NO : Cli.DONE;
    }
}
