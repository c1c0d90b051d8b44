package boardside.app.cli;

import boardside.app.cli.OddsChances.Answers;
import boardside.engine.odds.LeaguePoints;
import boardside.engine.odds.Match;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.skill.Interval;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** A league match: games of a number of rounds, the higher total wins. */
@Command(name = "match", description = "A league match: games of a number of rounds, the higher total wins.")
final class MatchQuestion implements Callable<Integer> {
    private final Context context;

    @Mixin
    private final OddsInputs.Mine mine = new OddsInputs.Mine();

    @Mixin
    private final OddsInputs.Versus versus = new OddsInputs.Versus();

    @Option(names = "--games", paramLabel = "N", description = "Games of the match; 3 unless said.")
    private int games = 3;

    @Option(names = "--rounds", paramLabel = "N", description = "Rounds of a game; 10 unless said.")
    private int rounds = 10;

    @Option(names = "--win", paramLabel = "POINTS", description = "League points for a win; 2 unless said.")
    private int win = LeaguePoints.STANDARD.win();

    @Option(names = "--tie", paramLabel = "POINTS", description = "League points for a tie; 1 unless said.")
    private int tie = LeaguePoints.STANDARD.tie();

    @Option(names = "--loss", paramLabel = "POINTS", description = "League points for a loss; 0 unless said.")
    private int loss = LeaguePoints.STANDARD.loss();

    MatchQuestion(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        LeaguePoints points = OddsInputs.checked("--win, --tie, --loss", () -> new LeaguePoints(win, tie, loss));
        OddsInputs.Opponent opponent = versus.opponent(context, mine);
        OddsChances chances = mine.chances(context, versus.fromRecords());
        Answers<Match> matches = OddsInputs.checked(
                "--rounds, --games",
                () -> chances.ask(
                        bag -> Match.of(RoundDistribution.of(bag), opponent.rounds(), rounds, games, points)));
        Match match = matches.likely();
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("game", game(match.win(), match.tie(), match.loss()));
        json.put("expectedPoints", match.expectedPoints());
        json.put("points", match.byPoints());
        if (!(chances instanceof OddsChances.Found found)) {
            context.answer(json, words(match));
            return Cli.DONE;
        }
        Answers<SortedMap<Integer, Double>> byPoints =
                new Answers<>(matches.all().stream().map(Match::byPoints).toList());
        Map<Integer, Interval> sums = new LinkedHashMap<>();
        for (int sum : match.byPoints().keySet()) {
            sums.put(sum, byPoints.range(each -> Objects.requireNonNullElse(each.get(sum), 0.0)));
        }
        Interval won = matches.range(Match::win);
        Interval tied = matches.range(Match::tie);
        Interval expected = matches.range(Match::expectedPoints);
        Map<String, Object> ranges = new LinkedHashMap<>();
        ranges.put("game", game(won, tied, matches.range(Match::loss)));
        ranges.put("expectedPoints", expected);
        ranges.put("points", sums);
        found.tell(json, ranges);
        context.answer(
                json,
                "Against " + opponent.name() + " you win " + OddsWords.percent(won) + " of games and tie "
                        + OddsWords.percent(tied) + ".\nThe match gives you " + OddsWords.number(expected)
                        + " league points on average.");
        return Cli.DONE;
    }

    private static <T> Map<String, T> game(T win, T tie, T loss) {
        Map<String, T> game = new LinkedHashMap<>();
        game.put("win", win);
        game.put("tie", tie);
        game.put("loss", loss);
        return game;
    }

    private static String words(Match match) {
        StringBuilder words = new StringBuilder("If these chances hold, you win a game with a chance of "
                + OddsWords.percent(match.win()) + ", tie it with " + OddsWords.percent(match.tie())
                + " and lose it with "
                + OddsWords.percent(match.loss()) + ".\nThe match gives you " + OddsWords.number(match.expectedPoints())
                + " league points on average:");
        match.byPoints()
                .forEach((sum, chance) -> words.append("\n  ")
                        .append(sum)
                        .append(sum == 1 ? " point: " : " points: ")
                        .append(OddsWords.percent(chance)));
        return words.toString();
    }
}
