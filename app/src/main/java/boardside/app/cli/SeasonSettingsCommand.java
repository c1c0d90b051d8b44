package boardside.app.cli;

import boardside.app.transfer.SeasonResults;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.Weeks;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What a season is called and how it is counted. */
@Command(
        name = "settings",
        description = {
            "Change what a season is called and how it is counted; without options, what it is now.",
            "Games, rounds and dates can be changed until something has been thrown."
        })
final class SeasonSettingsCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(paramLabel = "SEASON", description = "Name of the season.")
    private String name = "";

    @Option(names = "--name", paramLabel = "NAME", description = "Another name.")
    private @Nullable String newName;

    @Option(names = "--starts", paramLabel = "DATE", description = "When the first week begins.")
    private @Nullable String starts;

    @Option(names = "--zone", paramLabel = "ZONE", description = "Time zone of its deadlines.")
    private @Nullable String zone;

    @Option(names = "--public", negatable = true, description = "Whether anyone with the address may see it.")
    private @Nullable Boolean open;

    @Option(names = "--note", paramLabel = "TEXT", description = "For everybody who sees the season.")
    private @Nullable String note;

    @Mixin
    private final SeasonRulesOptions rules = new SeasonRulesOptions();

    SeasonSettingsCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Season before = SeasonCommand.named(context, name);
        Weeks weeks = new Weeks(
                starts == null ? before.weeks().starts() : SeasonCommand.time("--starts", starts),
                zone == null ? before.weeks().zone() : SeasonNewCommand.zone(context, zone));
        Season season = context.records()
                .seasons()
                .settings(
                        before.id(),
                        Objects.requireNonNullElse(newName, before.name()),
                        rules.from(before.rules(), before.rules().meetings()),
                        weeks,
                        Objects.requireNonNullElse(open, before.open()),
                        Objects.requireNonNullElse(note, before.note()));
        context.answer(
                SeasonResults.whole(season),
                season.name() + ". " + SeasonCommand.words().rules(season)
                        + (season.open() ? " Open to everybody." : " Not open to everybody."));
        return Cli.DONE;
    }
}
