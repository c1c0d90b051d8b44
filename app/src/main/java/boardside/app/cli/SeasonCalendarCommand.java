package boardside.app.cli;

import boardside.app.record.HostedSeasons;
import boardside.app.transfer.ICalendar;
import boardside.app.web.SeasonWords;
import boardside.engine.league.season.Entrant;
import boardside.engine.league.season.Season;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A season's matches for calendar programs. */
@Command(
        name = "calendar",
        description = "The matches as a calendar (iCalendar, RFC 5545); with --json the events as values.")
final class SeasonCalendarCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(paramLabel = "SEASON", description = "Name of the season.")
    private String name = "";

    @Option(names = "--of", paramLabel = "NAME", description = "Those of one player alone.")
    private @Nullable String of;

    SeasonCalendarCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Season season = SeasonCommand.named(context, name);
        Optional<Entrant> entrant = Optional.ofNullable(of).map(one -> SeasonCommand.entrant(season, one));
        HostedSeasons.Version version = context.records().seasons().version(season.id());
        SeasonWords words = SeasonCommand.words();
        List<ICalendar.Event> events = words.events(season, entrant, version.count(), version.last());
        if (context.json()) {
            context.answer(
                    events.stream()
                            .map(event -> Map.of(
                                    "uid", event.uid(),
                                    "summary", event.summary(),
                                    "description", event.description(),
                                    "opens", event.opens().toString(),
                                    "closes", event.closes().toString(),
                                    "cancelled", event.cancelled()))
                            .toList(),
                    "");
        } else {
            context.out().print(ICalendar.of(words.calendar(season, entrant), events));
        }
        return Cli.DONE;
    }
}
