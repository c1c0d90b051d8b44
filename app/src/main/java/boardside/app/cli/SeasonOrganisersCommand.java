package boardside.app.cli;

import boardside.app.record.HostedSeasons;
import boardside.app.season.Organiser;
import boardside.engine.league.season.Season;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Who may run a season in hosted mode. */
@Command(
        name = "organisers",
        description =
                "In hosted mode, who runs a season beside hosts: its owner and whom they let; let somebody in or out.")
final class SeasonOrganisersCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(paramLabel = "SEASON", description = "Name of the season.")
    private String name = "";

    @ArgGroup
    private @Nullable What what;

    /** What happens to whom. */
    static final class What {
        @Option(names = "--add", paramLabel = "ACCOUNT", description = "An organiser's account may run it.")
        private @Nullable String add;

        @Option(names = "--remove", paramLabel = "ACCOUNT", description = "An account may run it no more.")
        private @Nullable String remove;

        @Option(names = "--owner", paramLabel = "ACCOUNT", description = "The season is this account's.")
        private @Nullable String owner;
    }

    SeasonOrganisersCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Season season = SeasonCommand.named(context, name);
        HostedSeasons seasons = context.records().seasons();
        What asked = what;
        if (asked != null && asked.add != null) {
            seasons.letRun(season.id(), asked.add, true);
        } else if (asked != null && asked.remove != null) {
            seasons.letRun(season.id(), asked.remove, false);
        } else if (asked != null && asked.owner != null) {
            seasons.give(season.id(), asked.owner);
        }
        List<Organiser> all = seasons.organisers(season.id());
        context.answer(
                Map.of(
                        "organisers",
                        all.stream()
                                .map(one -> Map.of("account", one.name(), "owner", one.owner()))
                                .toList()),
                all.isEmpty()
                        ? "Only hosts run " + season.name()
                        : all.stream()
                                .map(one -> one.name() + (one.owner() ? " (owner)" : ""))
                                .collect(Collectors.joining(", ")));
        return Cli.DONE;
    }
}
