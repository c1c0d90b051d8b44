package boardside.app.cli;

import boardside.app.transfer.SeasonResults;
import boardside.app.web.SeasonWords;
import boardside.engine.league.Bracket;
import boardside.engine.league.season.Entrant;
import boardside.engine.league.season.PlayOff;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.league.season.SeasonMatch.Stage;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The play-off of a season. */
@Command(
        name = "play-off",
        description = "The play-off: who would be in it as things stand, or its matches once it is started.")
final class SeasonPlayOffCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(paramLabel = "SEASON", description = "Name of the season.")
    private String name = "";

    @Option(names = "--start", description = "Start it, seeded by the tables; all matches have to be settled.")
    private boolean start;

    @Option(
            names = "--from",
            paramLabel = "TIME",
            description = "When its first round begins, such as 2026-12-14; when the last week ends unless said.")
    private @Nullable String from;

    SeasonPlayOffCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Season season = SeasonCommand.named(context, name);
        if (start) {
            season = context.records()
                    .seasons()
                    .playOff(season.id(), from == null ? null : SeasonCommand.time("--from", from));
        }
        Season now = season;
        Optional<Bracket> bracket = PlayOff.bracket(now);
        List<Entrant> seeds = bracket.isPresent()
                ? now.entrants().stream()
                        .filter(one -> one.seed() > 0)
                        .sorted((one, other) -> Integer.compare(one.seed(), other.seed()))
                        .toList()
                : PlayOff.seeds(now);
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("started", bracket.isPresent());
        answer.put("seeds", seeds.stream().map(Entrant::name).toList());
        List<SeasonMatch> matches = now.matches(Stage.PLAY_OFF);
        answer.put(
                "matches",
                matches.stream().map(match -> SeasonResults.match(now, match)).toList());
        List<String> lines = new ArrayList<>();
        for (int seed = 1; seed <= seeds.size(); seed++) {
            lines.add(seed + ". " + seeds.get(seed - 1).name());
        }
        SeasonWords words = SeasonCommand.words();
        matches.forEach(match -> lines.add(words.week(now, match) + ": " + words.throwers(now, match) + ": "
                + words.result(now, match) + " (until " + words.closes(now, now.window(match)) + ")"));
        bracket.flatMap(Bracket::champion).ifPresent(seed -> {
            answer.put("champion", seeds.get(seed - 1).name());
            lines.add("Champion: " + seeds.get(seed - 1).name());
        });
        context.answer(answer, String.join("\n", lines));
        return Cli.DONE;
    }
}
