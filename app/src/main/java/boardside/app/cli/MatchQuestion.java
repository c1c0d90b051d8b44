package boardside.app.cli;

import boardside.engine.odds.LeaguePoints;
import boardside.engine.odds.Match;
import boardside.engine.odds.RoundDistribution;
import java.util.LinkedHashMap;
import java.util.Map;
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
        RoundDistribution me = mine.round();
        RoundDistribution other = versus.round();
        LeaguePoints points = OddsInputs.checked("--win, --tie, --loss", () -> new LeaguePoints(win, tie, loss));
        Match match = OddsInputs.checked("--rounds, --games", () -> Match.of(me, other, rounds, games, points));
        Map<String, Double> game = new LinkedHashMap<>();
        game.put("win", match.win());
        game.put("tie", match.tie());
        game.put("loss", match.loss());
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("game", game);
        json.put("expectedPoints", match.expectedPoints());
        json.put("points", match.byPoints());
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
        context.answer(json, words.toString());
        return Cli.DONE;
    }
}
