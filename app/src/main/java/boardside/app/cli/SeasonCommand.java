package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.season.SeasonSettings;
import boardside.app.web.SeasonWords;
import boardside.app.web.Texts;
import boardside.engine.league.season.Entrant;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Seasons that are run here. */
@Command(
        name = "season",
        synopsisSubcommandLabel = "WHAT",
        description = "Seasons you run: schedule, results, tables, who has still to throw, the play-off.")
final class SeasonCommand extends Family {
    private SeasonCommand() {
        super("say what about seasons");
    }

    /** The command with all it can do. */
    static CommandLine in(Context context) {
        return new SeasonCommand()
                .with(List.of(
                        new SeasonNewCommand(context),
                        new SeasonListCommand(context),
                        new SeasonShowCommand(context),
                        new SeasonTableCommand(context),
                        new SeasonWaitingCommand(context),
                        new SeasonResultCommand(context),
                        new SeasonMatchCommand(context),
                        new SeasonHeadStartsCommand(context),
                        new SeasonPlayersCommand(context),
                        new SeasonPlayOffCommand(context),
                        new SeasonForecastCommand(context),
                        new SeasonResultsCommand(context),
                        new SeasonCalendarCommand(context),
                        new SeasonSettingsCommand(context),
                        new SeasonChangesCommand(context),
                        new SeasonOrganisersCommand(context),
                        new SeasonDeleteCommand(context)));
    }

    /** The season of a name. */
    static Season named(Context context, String name) {
        List<SeasonSettings> all = context.records().seasons().all();
        return all.stream()
                .filter(season -> season.name().equals(name))
                .findFirst()
                .flatMap(season -> context.records().seasons().find(season.id()))
                .orElseThrow(() -> new Failure.NotFound("there is no season \"" + name + "\""
                        + (all.isEmpty()
                                ? "; make one with: boardside season new NAME FILE --starts DATE"
                                : "; there are "
                                        + all.stream().map(SeasonSettings::name).collect(Collectors.joining(", ")))));
    }

    /** The entrant of a name. */
    static Entrant entrant(Season season, String name) {
        return season.named(name)
                .orElseThrow(() -> new Failure.NotFound("there is no player \"" + name + "\" in " + season.name()));
    }

    /** How seasons are worded. */
    static SeasonWords words() {
        return new SeasonWords(Texts.in("en"));
    }

    /** A time of the season's clocks. */
    static LocalDateTime time(String option, String text) {
        try {
            return text.contains("T")
                    ? LocalDateTime.parse(text)
                    : LocalDate.parse(text).atStartOfDay();
        } catch (DateTimeException e) {
            throw new Failure.BadInput(
                    option + ": \"" + text + "\" is no time; write it like 2026-12-08 or 2026-12-08T21:00");
        }
    }

    /** Which match of a season. */
    static final class Which {
        @Parameters(index = "0", paramLabel = "SEASON", description = "Name of the season.")
        private String season = "";

        @Parameters(index = "1", paramLabel = "FIRST", description = "One of the two players.")
        private String first = "";

        @Parameters(index = "2", paramLabel = "SECOND", description = "The other player.")
        private String second = "";

        @Option(
                names = "--week",
                paramLabel = "N",
                description = "In which week, where they meet more than once; the first not settled unless said.")
        private @Nullable Integer week;

        Season season(Context context) {
            return named(context, season);
        }

        /** Whether the first player named is the one the match names first. */
        boolean straight(Season of, SeasonMatch match) {
            return match.first().equals(entrant(of, first).id());
        }

        SeasonMatch match(Season of) {
            String one = entrant(of, first).id();
            String other = entrant(of, second).id();
            List<SeasonMatch> all = of.matches().stream()
                    .filter(match -> match.has(one) && match.has(other) && (week == null || match.week() == week))
                    .toList();
            if (all.isEmpty()) {
                throw new Failure.NotFound("there is no match of " + first + " and " + second
                        + (week == null ? "" : " in week " + week) + " in " + of.name());
            }
            return all.stream().filter(of::pending).findFirst().orElse(all.get(all.size() - 1));
        }
    }
}
