package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.season.Arrangement;
import boardside.app.season.MatchEdit;
import boardside.app.season.MatchNight;
import boardside.app.season.MatchRound;
import boardside.app.season.MatchSide;
import boardside.app.transfer.MatchRounds;
import boardside.app.transfer.SeasonResults;
import boardside.app.web.SeasonWords;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.league.season.TotalsSoFar;
import boardside.engine.rules.Finish;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** A match of a season, and what may be arranged about it. */
@Command(
        name = "match",
        description =
                "A match: when it is to be thrown, what it came to round by round; put it off, name substitutes, give a"
                        + " head start, set a round right.")
final class SeasonMatchCommand implements Callable<Integer> {
    private static final Pattern ROUND = Pattern.compile("(\\d{1,2})\\.(\\d{1,3})=((\\d)-(\\d)-(\\d)|)");

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

    @Option(
            names = "--round",
            paramLabel = "GAME.ROUND=BAGS",
            description = "Set a round of FIRST right, such as 1.4=3-1-0; without bags, take it out. It is logged.")
    private @Nullable String firstRound;

    @Option(names = "--other-round", paramLabel = "GAME.ROUND=BAGS", description = "The same for SECOND.")
    private @Nullable String secondRound;

    SeasonMatchCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Season season = which.season(context);
        SeasonMatch match = which.match(season);
        boolean straight = which.straight(season, match);
        if (firstRound != null) {
            correct(season, match, straight ? MatchSide.FIRST : MatchSide.SECOND, "--round", firstRound);
        }
        if (secondRound != null) {
            correct(season, match, straight ? MatchSide.SECOND : MatchSide.FIRST, "--other-round", secondRound);
        }
        Season after = arranged(context.records().seasons().find(season.id()).orElseThrow(), match, straight);
        SeasonMatch now = after.match(match.id()).orElseThrow();
        SeasonWords words = SeasonCommand.words();
        int fair = TotalsSoFar.of(after).headStart(after.name(now.first()), after.name(now.second()));
        Map<String, Object> answer = SeasonResults.match(after, now);
        answer.put("fairHeadStart", fair);
        MatchNight night =
                context.records().matchNights().find(season.id(), match.id()).orElseThrow();
        Map<String, Object> thrown = MatchRounds.of(night);
        answer.put("live", thrown.get("games"));
        answer.put("edits", thrown.get("edits"));
        answer.put("streams", thrown.get("streams"));
        context.answer(
                answer,
                words.throwers(after, now) + ", " + words.week(after, now) + ": " + words.result(after, now) + " (from "
                        + words.opens(after, after.window(now)) + " until " + words.closes(after, after.window(now))
                        + ")" + (fair == 0 ? "" : "; fair: " + words.headStart(after, now, fair))
                        + thrown(night));
        return Cli.DONE;
    }

    private void correct(Season season, SeasonMatch match, MatchSide side, String option, String text) {
        Matcher round = ROUND.matcher(text);
        Finish finish = null;
        if (round.matches() && !round.group(3).isEmpty()) {
            finish = OddsInputs.checked(
                    option,
                    () -> new Finish(
                            Integer.parseInt(round.group(4)),
                            Integer.parseInt(round.group(5)),
                            Integer.parseInt(round.group(6))));
        } else if (!round.matches()) {
            throw new Failure.BadInput(option + ": \"" + text + "\" is no round; write game, round and bags in-on-off"
                    + " like 1.4=3-1-0, or 1.4= to take it out");
        }
        context.records()
                .matchNights()
                .correct(
                        season.id(),
                        match.id(),
                        Integer.parseInt(round.group(1)),
                        side,
                        Integer.parseInt(round.group(2)),
                        finish);
    }

    /** Rounds by game, each side's points with marks, and what was changed later. */
    private static String thrown(MatchNight night) {
        StringBuilder lines = new StringBuilder();
        for (int game = 1; game <= night.head().games(); game++) {
            for (MatchSide side : MatchSide.values()) {
                List<MatchRound> rounds = night.rounds(game, side);
                if (!rounds.isEmpty()) {
                    int of = game;
                    lines.append("\ngame ")
                            .append(game)
                            .append(", ")
                            .append(
                                    side == MatchSide.FIRST
                                            ? night.head().first()
                                            : night.head().second())
                            .append(": ")
                            .append(rounds.stream()
                                    .map(round -> round.number() + ": " + round.counts() + mark(night, of, side, round))
                                    .collect(Collectors.joining(", ")))
                            .append(" = ")
                            .append(night.points(game, side));
                }
            }
        }
        for (MatchEdit edit : night.edits()) {
            lines.append("\nchanged ")
                    .append(edit.at())
                    .append(" by ")
                    .append(
                            switch (edit.by()) {
                                case FIRST -> night.head().first();
                                case SECOND -> night.head().second();
                                case ORGANISER -> "the organiser";
                            })
                    .append(": game ")
                    .append(edit.game())
                    .append(", ")
                    .append(
                            edit.side() == MatchSide.FIRST
                                    ? night.head().first()
                                    : night.head().second())
                    .append(", round ")
                    .append(edit.round())
                    .append(": ")
                    .append(edit.earlier().isEmpty() ? "nothing" : edit.earlier())
                    .append(" became ")
                    .append(edit.later().isEmpty() ? "nothing" : edit.later());
        }
        return lines.toString();
    }

    private static String mark(MatchNight night, int game, MatchSide side, MatchRound round) {
        String way = switch (round.way()) {
            case LIVE -> "";
            case LATE -> " (sent late)";
            case TYPED -> " (typed in)";
        };
        return way + (night.edited(game, side, round.number()) ? " (changed later)" : "");
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
