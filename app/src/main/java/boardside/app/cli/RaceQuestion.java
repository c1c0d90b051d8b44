package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.engine.odds.BagChances;
import boardside.engine.odds.Level;
import boardside.engine.odds.Race;
import boardside.engine.odds.RaceAnswer;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.rules.GameRules;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The chance to win a race, from any score. */
@Command(name = "race", description = "The chance to win a race, from any score.")
final class RaceQuestion implements Callable<Integer> {
    private static final Pattern SCORE = Pattern.compile("(\\d{1,3})-(\\d{1,3})");

    private final Context context;

    @Mixin
    private final OddsInputs.Mine mine = new OddsInputs.Mine();

    @Mixin
    private final OddsInputs.Versus versus = new OddsInputs.Versus();

    @Mixin
    private final OddsInputs.Variants variants = new OddsInputs.Variants();

    @Option(names = "--from", paramLabel = "A-B", description = "The score, mine first; 0-0 unless said.")
    private String from = "0-0";

    RaceQuestion(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        BagChances bag = mine.bag();
        RoundDistribution me = mine.round();
        RoundDistribution other = versus.round();
        GameRules rules = variants.rules();
        Matcher score = SCORE.matcher(from);
        if (!score.matches()) {
            throw new Failure.BadInput("--from: write the score as mine-theirs, such as 14-9, not \"" + from + "\"");
        }
        RaceAnswer answer = OddsInputs.checked(
                "--from",
                () -> Race.solve(rules, me, other)
                        .from(Integer.parseInt(score.group(1)), Integer.parseInt(score.group(2)), true));
        if (answer instanceof RaceAnswer.Endless endless) {
            throw new Failure.BadInput("this race may never end: " + endless.reason()
                    + "; ask with other chances, another opponent or other rules");
        }
        RaceAnswer.Ends ends = (RaceAnswer.Ends) answer;
        double level = Level.of(rules, me).value();
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("winProbability", ends.winProbability());
        json.put("expectedRounds", ends.expectedRounds());
        json.put("pointsPerRound", bag.pointsPerRound());
        json.put("level", level);
        context.answer(
                json,
                "If these chances hold, you win this race with a chance of " + OddsWords.percent(ends.winProbability())
                        + "; it takes " + OddsWords.number(ends.expectedRounds()) + " more rounds on average.\n"
                        + "You make " + OddsWords.number(bag.pointsPerRound())
                        + " points a round; you would be even with a ghost of " + OddsWords.number(level) + ".");
        return Cli.DONE;
    }
}
