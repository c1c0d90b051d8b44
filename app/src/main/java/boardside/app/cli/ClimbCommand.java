package boardside.app.cli;

import boardside.app.practice.Player;
import boardside.app.record.Climbing;
import boardside.app.record.Ladder;
import boardside.app.record.Skills;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** Where the climb stands and which ghost is next, beside what all bags say of the level. */
@Command(name = "climb", description = "Say which ghost is next on the ladder, and where your level lies.")
final class ClimbCommand implements Callable<Integer> {
    private static final int LATEST = 20;

    private final Context context;

    ClimbCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Player player = context.player();
        LocalDate today = LocalDate.now(context.surroundings().clock());
        Climbing climbing = Climbing.of(
                Ladder.of(context.records(), player.id()), Skills.of(context.records(), player.id(), today));
        context.answer(json(climbing), words(climbing));
        return Cli.DONE;
    }

    private static Map<String, Object> json(Climbing climbing) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("next", climbing.next());
        json.put("from", climbing.proposed() ? "proposal" : "ladder");
        climbing.likely().ifPresent(likely -> {
            json.put("winProbability", likely.win());
            json.put("level", likely.level());
            json.put("mean", likely.mean());
            json.put("stationary", likely.climb().stationary());
            json.put("start", likely.start());
        });
        List<Map<String, Object>> races = new ArrayList<>();
        for (Ladder.Race race : climbing.ladder().races()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("run", race.run());
            one.put("day", race.day());
            one.put("ghost", race.ghost());
            one.put("result", race.result().name().toLowerCase(Locale.ROOT));
            races.add(one);
        }
        json.put("races", races);
        return json;
    }

    private static String words(Climbing climbing) {
        List<String> lines = new ArrayList<>();
        lines.add("Next: ghost " + climbing.next()
                + climbing.ladder()
                        .latest()
                        .map(race -> ", after ghost " + race.ghost() + " was "
                                + race.result().name().toLowerCase(Locale.ROOT) + " on " + race.day() + ".")
                        .orElse(", to begin with."));
        climbing.likely().ifPresent(likely -> {
            lines.add("Going by all your bags you win " + OddsWords.percent(likely.win()) + " of races there.");
            lines.add("Your level is " + OddsWords.number(likely.level())
                    + "; at that form the ladder hovers around ghost " + OddsWords.number(likely.mean()) + ".");
        });
        if (!climbing.ladder().races().isEmpty()) {
            lines.add("Latest races: "
                    + String.join(
                            ", ",
                            climbing.ladder().races().stream()
                                    .limit(LATEST)
                                    .map(race -> race.ghost() + " "
                                            + race.result().name().toLowerCase(Locale.ROOT))
                                    .toList())
                    + ".");
        }
        return String.join("\n", lines);
    }
}
