package boardside.app.cli;

import boardside.app.transfer.SeasonResults;
import boardside.app.web.SeasonWords;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.league.season.SeasonMatch.Stage;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Fair head starts for a week. */
@Command(
        name = "head-starts",
        description =
                "Set the fair head start, by the totals so far, in a week's matches of which nothing is told yet.")
final class SeasonHeadStartsCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(paramLabel = "SEASON", description = "Name of the season.")
    private String name = "";

    @Option(names = "--week", paramLabel = "N", required = true, description = "Which week, or round of the play-off.")
    private int week;

    SeasonHeadStartsCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Season before = SeasonCommand.named(context, name);
        Stage stage = before.playOffStarts() == null ? Stage.LEAGUE : Stage.PLAY_OFF;
        Season season = context.records().seasons().fairHeadStarts(before.id(), stage, week);
        SeasonWords words = SeasonCommand.words();
        List<SeasonMatch> matches = season.matches(stage).stream()
                .filter(match -> match.week() == week)
                .toList();
        context.answer(
                matches.stream()
                        .map(match -> SeasonResults.match(season, match))
                        .toList(),
                matches.stream()
                        .map(match -> words.match(season, match) + ": "
                                + (match.headStart() == 0
                                        ? "no head start"
                                        : words.headStart(season, match, match.headStart())))
                        .collect(Collectors.joining("\n")));
        return matches.isEmpty() ? Cli.NO : Cli.DONE;
    }
}
