package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.engine.league.season.Season;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Deletes a season, or brings it back. */
@Command(name = "delete", description = "Delete a season; it can be brought back with --restore and the id told then.")
final class SeasonDeleteCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(paramLabel = "SEASON", description = "Name of the season; with --restore, its id.")
    private String name = "";

    @Option(names = "--restore", description = "Bring it back.")
    private boolean restore;

    SeasonDeleteCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        if (restore) {
            Season back = context.records()
                    .seasons()
                    .restore(name)
                    .orElseThrow(() -> new Failure.NotFound("there is no deleted season with the id " + name));
            context.answer(Map.of("season", back.name(), "id", back.id()), "Back again: " + back.name());
            return Cli.DONE;
        }
        Season season = SeasonCommand.named(context, name);
        context.records().seasons().delete(season.id());
        context.answer(
                Map.of("season", season.name(), "id", season.id()),
                "Deleted: " + season.name() + ". Bring it back with: boardside season delete --restore " + season.id());
        return Cli.DONE;
    }
}
