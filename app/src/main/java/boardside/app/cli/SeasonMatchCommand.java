package boardside.app.cli;

import boardside.app.season.Arrangement;
import boardside.app.transfer.SeasonResults;
import boardside.app.web.SeasonWords;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.league.season.TotalsSoFar;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** A match of a season, and what may be arranged about it. */
@Command(
        name = "match",
        description =
                "A match: when it is to be thrown, what it came to; put it off, name substitutes, give a head start.")
final class SeasonMatchCommand implements Callable<Integer> {
    private final Context context;

    @Mixin
    private final SeasonCommand.Which which = new SeasonCommand.Which();

    @Option(
            names = "--until",
            paramLabel = "TIME",
            description =
                    "Put it off until then, such as 2026-12-08T21:00 in the season's time; \"\" for its week's end.")
    private @Nullable String until;

    @Option(names = "--substitute", paramLabel = "NAME", description = "Who throws for FIRST; \"\" for nobody.")
    private @Nullable String firstSubstitute;

    @Option(names = "--other-substitute", paramLabel = "NAME", description = "Who throws for SECOND; \"\" for nobody.")
    private @Nullable String secondSubstitute;

    @Option(
            names = "--head-start",
            paramLabel = "POINTS",
            description = "Points FIRST is given in each game; below 0, SECOND.")
    private @Nullable Integer headStart;

    @Option(names = "--note", paramLabel = "TEXT", description = "What is to be known of it.")
    private @Nullable String note;

    SeasonMatchCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Season season = which.season(context);
        SeasonMatch match = which.match(season);
        boolean straight = which.straight(season, match);
        Season after = arranged(season, match, straight);
        SeasonMatch now = after.match(match.id()).orElseThrow();
        SeasonWords words = SeasonCommand.words();
        int fair = TotalsSoFar.of(after).headStart(after.name(now.first()), after.name(now.second()));
        Map<String, Object> answer = SeasonResults.match(after, now);
        answer.put("fairHeadStart", fair);
        context.answer(
                answer,
                words.throwers(after, now) + ", " + words.week(after, now) + ": " + words.result(after, now) + " (from "
                        + words.opens(after, after.window(now)) + " until " + words.closes(after, after.window(now))
                        + ")" + (fair == 0 ? "" : "; fair: " + words.headStart(after, now, fair)));
        return Cli.DONE;
    }

    private Season arranged(Season season, SeasonMatch match, boolean straight) {
        Arrangement now = Arrangement.of(match);
        String first = straight ? firstSubstitute : secondSubstitute;
        String second = straight ? secondSubstitute : firstSubstitute;
        Arrangement asked = now.substitutes(
                Objects.requireNonNullElse(first, now.firstSubstitute()),
                Objects.requireNonNullElse(second, now.secondSubstitute()));
        if (until != null) {
            asked = asked.until(until.isEmpty() ? null : SeasonCommand.time("--until", until));
        }
        if (headStart != null) {
            asked = asked.headStart(straight ? headStart : -headStart);
        }
        if (note != null) {
            asked = asked.note(note);
        }
        return asked.equals(now) ? season : context.records().seasons().arrange(season.id(), match.id(), asked);
    }
}
