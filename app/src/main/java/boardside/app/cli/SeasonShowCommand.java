package boardside.app.cli;

import boardside.app.transfer.SeasonResults;
import boardside.app.web.SeasonWords;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.league.season.SeasonMatch.Stage;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A season's matches. */
@Command(name = "show", description = "A season: its rules, and its matches by week with what they came to.")
final class SeasonShowCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(paramLabel = "SEASON", description = "Name of the season.")
    private String name = "";

    @Option(names = "--week", paramLabel = "N", description = "Of one week alone.")
    private @Nullable Integer week;

    SeasonShowCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Season season = SeasonCommand.named(context, name);
        SeasonWords words = SeasonCommand.words();
        List<String> lines = new ArrayList<>();
        if (week == null) {
            lines.add(words.rules(season));
        }
        for (Stage stage : Stage.values()) {
            String head = "";
            for (SeasonMatch match : season.matches(stage)) {
                if (week != null && match.week() != week) {
                    continue;
                }
                String here = words.week(season, match)
                        + (stage == Stage.LEAGUE && season.divisions().size() > 1
                                ? ", " + season.divisions().get(match.division())
                                : "");
                if (!here.equals(head)) {
                    lines.add(here + ":");
                    head = here;
                }
                lines.add("  " + words.throwers(season, match) + ": " + words.result(season, match) + " (until "
                        + words.closes(season, season.window(match)) + ")");
            }
        }
        context.answer(
                week == null
                        ? SeasonResults.whole(season)
                        : season.matches().stream()
                                .filter(match -> match.week() == week)
                                .map(match -> SeasonResults.match(season, match))
                                .toList(),
                String.join("\n", lines));
        return Cli.DONE;
    }
}
