package boardside.app.cli;

import boardside.engine.league.season.Season;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Who has still to throw. */
@Command(
        name = "waiting",
        description = "Who has games to throw in matches that have opened by now, as a reminder for the chat.")
final class SeasonWaitingCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(paramLabel = "SEASON", description = "Name of the season.")
    private String name = "";

    SeasonWaitingCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Season season = SeasonCommand.named(context, name);
        Instant now = context.surroundings().clock().instant();
        List<Map<String, Object>> answer =
                season.waiting(now).stream().map(one -> json(season, one, now)).toList();
        context.answer(answer, SeasonCommand.words().reminder(season, now));
        return answer.isEmpty() ? Cli.NO : Cli.DONE;
    }

    private static Map<String, Object> json(Season season, Season.Waiting waiting, Instant now) {
        Map<String, Object> one = new LinkedHashMap<>();
        one.put("player", waiting.entrant().name());
        one.put("against", season.name(waiting.match().against(waiting.entrant().id())));
        one.put("stage", waiting.match().stage().word());
        one.put("week", waiting.match().week());
        one.put("thrown", waiting.thrown());
        one.put("left", season.rules().games() - waiting.thrown());
        one.put("closes", waiting.window().closes().toString());
        one.put("over", waiting.window().over(now));
        return one;
    }
}
