package boardside.app.cli;

import boardside.app.cli.OddsChances.Answers;
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
        GameRules rules = variants.rules();
        Matcher score = SCORE.matcher(from);
        if (!score.matches()) {
            throw new Failure.BadInput("--from: write the score as mine-theirs, such as 14-9, not \"" + from + "\"");
        }
        int my = Integer.parseInt(score.group(1));
        int their = Integer.parseInt(score.group(2));
        OddsInputs.Opponent opponent = versus.opponent(context, mine);
        OddsChances chances = mine.chances(context, versus.fromRecords());
        Answers<RaceAnswer.Ends> race =
                chances.ask(bag -> ends(Race.solve(rules, RoundDistribution.of(bag), opponent.rounds()), my, their));
        Answers<Double> level =
                chances.ask(bag -> Level.of(rules, RoundDistribution.of(bag)).value());
        Answers<Double> points = chances.ask(BagChances::pointsPerRound);
        RaceAnswer.Ends ends = race.likely();
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("winProbability", ends.winProbability());
        json.put("expectedRounds", ends.expectedRounds());
        json.put("pointsPerRound", points.likely());
        json.put("level", level.likely());
        if (!(chances instanceof OddsChances.Found found)) {
            context.answer(
                    json,
                    "If these chances hold, you win this race with a chance of "
                            + OddsWords.percent(ends.winProbability())
                            + "; it takes " + OddsWords.number(ends.expectedRounds()) + " more rounds on average.\n"
                            + "You make " + OddsWords.number(points.likely())
                            + " points a round; you would be even with a ghost of "
                            + OddsWords.number(level.likely()) + ".");
            return Cli.DONE;
        }
        Map<String, Object> ranges = new LinkedHashMap<>();
        ranges.put("winProbability", race.range(RaceAnswer.Ends::winProbability));
        ranges.put("expectedRounds", race.range(RaceAnswer.Ends::expectedRounds));
        ranges.put("pointsPerRound", points.range(value -> value));
        ranges.put("level", level.range(value -> value));
        found.tell(json, ranges);
        context.answer(
                json,
                "Against " + opponent.name() + (my + their == 0 ? "" : ", from " + my + "-" + their + ",")
                        + " you win " + OddsWords.percent(race.range(RaceAnswer.Ends::winProbability))
                        + " of races.\nYou make " + OddsWords.number(points.range(value -> value))
                        + " points a round; you would be even with a ghost of "
                        + OddsWords.number(level.range(value -> value)) + ".");
        return Cli.DONE;
    }

    private static RaceAnswer.Ends ends(Race race, int my, int their) {
        RaceAnswer answer = OddsInputs.checked("--from", () -> race.from(my, their, true));
        if (answer instanceof RaceAnswer.Endless endless) {
            throw new Failure.BadInput("this race may never end: " + endless.reason()
                    + "; ask with other chances, another opponent or other rules");
        }
        return (RaceAnswer.Ends) answer;
    }
}
