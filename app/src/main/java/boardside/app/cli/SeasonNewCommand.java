package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.record.NewSeason;
import boardside.app.transfer.PastedPlayers;
import boardside.app.transfer.SeasonResults;
import boardside.app.web.Texts;
import boardside.engine.league.Schedule.Meetings;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonRules;
import boardside.engine.league.season.Weeks;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A new season with its schedule. */
@Command(
        name = "new",
        description = {
            "Make a season: every pair of a division meets, a match a week each.",
            "The file has a name a line; a line that ends with a colon begins a division."
        })
final class SeasonNewCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(index = "0", paramLabel = "NAME", description = "What it is called.")
    private String name = "";

    @Parameters(index = "1", paramLabel = "FILE", description = "Who plays: a text file, or - for standard input.")
    private String file = "";

    @Option(
            names = "--starts",
            paramLabel = "DATE",
            required = true,
            description = "When the first week begins, such as 2026-11-30 or 2026-11-30T18:00.")
    private String starts = "";

    @Option(
            names = "--zone",
            paramLabel = "ZONE",
            description = "Time zone of its deadlines, such as America/Chicago; the one here unless said.")
    private @Nullable String zone;

    @Option(names = "--double", description = "Every pair meets twice.")
    private boolean twice;

    @Option(names = "--public", description = "Anyone with the address may see tables, results and calendars.")
    private boolean open;

    @Option(names = "--note", paramLabel = "TEXT", description = "For everybody who sees the season.")
    private String note = "";

    @Mixin
    private final SeasonRulesOptions rules = new SeasonRulesOptions();

    SeasonNewCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        SeasonRules checked = rules.from(SeasonRules.USUAL, twice ? Meetings.DOUBLE : Meetings.SINGLE);
        Season season = context.records()
                .seasons()
                .add(new NewSeason(
                        name,
                        checked,
                        new Weeks(SeasonCommand.time("--starts", starts), zone(context, zone)),
                        PastedPlayers.read(
                                LeaguePostCommand.text(context, file),
                                Texts.in("en").of("hosted.division.one")),
                        open,
                        note));
        context.answer(
                SeasonResults.whole(season),
                "New season: " + season.name() + ", "
                        + Words.count(season.entrants().size(), "player") + ", "
                        + Words.count(season.length(), "week") + ", "
                        + Words.count(season.matches().size(), "match", "matches"));
        return Cli.DONE;
    }

    static ZoneId zone(Context context, @Nullable String name) {
        try {
            return name == null ? context.surroundings().clock().getZone() : ZoneId.of(name);
        } catch (DateTimeException e) {
            throw new Failure.BadInput(
                    "--zone: there is no time zone \"" + name + "\"; write it like Europe/Berlin or America/Chicago");
        }
    }
}
