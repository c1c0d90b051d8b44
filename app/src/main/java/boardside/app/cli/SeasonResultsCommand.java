package boardside.app.cli;

import boardside.app.transfer.SeasonResults;
import boardside.engine.league.season.Season;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** All results of a season, for other programs. */
@Command(
        name = "results",
        description = "All matches, a row for each game, as CSV; with --json the season with tables and matches.")
final class SeasonResultsCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(paramLabel = "SEASON", description = "Name of the season.")
    private String name = "";

    SeasonResultsCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Season season = SeasonCommand.named(context, name);
        if (context.json()) {
            context.answer(SeasonResults.whole(season), "");
        } else {
            context.out().print(SeasonResults.csv(season));
        }
        return Cli.DONE;
    }
}
