package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.record.HostedSeasons;
import boardside.app.transfer.SeasonResults;
import boardside.engine.league.MatchResult.Award;
import boardside.engine.league.season.GameScore;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.league.season.Voice;
import boardside.engine.rules.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What a match came to. */
@Command(
        name = "result",
        description = {
            "Tell the totals of a match by game, those of FIRST first: 88-92 75-? ?-?; or settle it otherwise.",
            "Complete totals are settled at once, unless --by says that a player tells them."
        })
final class SeasonResultCommand implements Callable<Integer> {
    private static final Pattern GAME = Pattern.compile("(\\d{1,4}|\\?)[-\u2013](\\d{1,4}|\\?)");

    private final Context context;

    @Mixin
    private final SeasonCommand.Which which = new SeasonCommand.Which();

    @Parameters(index = "3..*", paramLabel = "GAME", description = "Totals of a game, ? where not thrown yet.")
    private List<String> games = new ArrayList<>();

    @Option(
            names = "--by",
            paramLabel = "WHO",
            description = "Who says so: organiser (unless said), or the player FIRST or SECOND, whom the other has to"
                    + " confirm: first, second.")
    private String by = Voice.ORGANISER.word();

    @ArgGroup
    private @Nullable Otherwise otherwise;

    /** What else can be said of a match. */
    static final class Otherwise {
        @Option(names = "--confirm", description = "The totals told are right.")
        private boolean confirm;

        @Option(names = "--dispute", paramLabel = "WHY", description = "The totals told are wrong.")
        private @Nullable String dispute;

        @Option(
                names = "--forfeit-to",
                paramLabel = "WHO",
                description = "The games not thrown by both go to this player, or to: neither.")
        private @Nullable String forfeit;

        @Option(names = "--reopen", description = "The match is open again; its totals stay.")
        private boolean reopen;
    }

    SeasonResultCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Season season = which.season(context);
        SeasonMatch match = which.match(season);
        boolean straight = which.straight(season, match);
        Season after = said(season, match, straight);
        SeasonMatch now = after.match(match.id()).orElseThrow();
        context.answer(
                SeasonResults.match(after, now),
                SeasonCommand.words().match(after, now) + ": "
                        + SeasonCommand.words().result(after, now));
        return Cli.DONE;
    }

    private Season said(Season season, SeasonMatch match, boolean straight) {
        HostedSeasons seasons = context.records().seasons();
        Otherwise other = otherwise;
        if (other == null) {
            return seasons.tell(season.id(), match.id(), totals(straight), voice(straight));
        }
        if (!games.isEmpty()) {
            throw new Failure.BadInput("give totals, or say what else becomes of the match, not both");
        }
        if (other.confirm) {
            return seasons.confirm(season.id(), match.id(), voice(straight));
        }
        if (other.dispute != null) {
            return seasons.dispute(season.id(), match.id(), other.dispute);
        }
        if (other.forfeit != null) {
            return seasons.forfeit(season.id(), match.id(), award(season, match, other.forfeit));
        }
        return seasons.reopen(season.id(), match.id());
    }

    private Voice voice(boolean straight) {
        Voice said = OddsInputs.checked("--by", () -> Word.of(Voice.class, by));
        return switch (said) {
            case ORGANISER -> said;
            case FIRST -> straight ? said : Voice.SECOND;
            case SECOND -> straight ? said : Voice.FIRST;
        };
    }

    private List<GameScore> totals(boolean straight) {
        if (games.isEmpty()) {
            throw new Failure.BadInput("give the totals of the games, such as 88-92 75-80; or --forfeit-to, --confirm,"
                    + " --dispute, --reopen");
        }
        List<GameScore> totals = new ArrayList<>();
        for (String game : games) {
            Matcher both = GAME.matcher(game);
            if (!both.matches()) {
                throw new Failure.BadInput(
                        "\"" + game + "\" is no game; write both totals with a dash between, such as 88-92 or 75-?");
            }
            Integer one = total(both.group(1));
            Integer other = total(both.group(2));
            totals.add(straight ? new GameScore(one, other) : new GameScore(other, one));
        }
        return totals;
    }

    private static @Nullable Integer total(String text) {
        return text.equals("?") ? null : (Integer) Integer.parseInt(text);
    }

    private static Award award(Season season, SeasonMatch match, String to) {
        if (to.equals(Award.NEITHER.word())) {
            return Award.NEITHER;
        }
        String winner = SeasonCommand.entrant(season, to).id();
        if (!match.has(winner)) {
            throw new Failure.BadInput(to + " is not in this match");
        }
        return match.first().equals(winner) ? Award.FIRST : Award.SECOND;
    }
}
