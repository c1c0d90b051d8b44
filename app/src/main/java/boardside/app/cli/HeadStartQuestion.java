package boardside.app.cli;

import boardside.app.cli.OddsChances.Answers;
import boardside.engine.odds.HeadStart;
import boardside.engine.odds.Race;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.rules.GameRules;
import boardside.engine.rules.Side;
import boardside.engine.skill.Interval;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Points for the weaker side that bring a race nearest to even. */
@Command(name = "head-start", description = "Points for the weaker side that bring a race nearest to even.")
final class HeadStartQuestion implements Callable<Integer> {
    private final Context context;

    @Mixin
    private final OddsInputs.Mine mine = new OddsInputs.Mine();

    @Mixin
    private final OddsInputs.Versus versus = new OddsInputs.Versus();

    @Mixin
    private final OddsInputs.Variants variants = new OddsInputs.Variants();

    HeadStartQuestion(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        GameRules rules = variants.rules();
        OddsInputs.Opponent opponent = versus.opponent(context, mine);
        OddsChances chances = mine.chances(context, versus.fromRecords());
        Answers<Race> races = chances.ask(bag -> Race.solve(rules, RoundDistribution.of(bag), opponent.rounds()));
        HeadStart start = HeadStart.of(races.likely());
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("headStart", start.points());
        json.put("to", start.to().word());
        json.put("winProbability", start.winProbability());
        if (!(chances instanceof OddsChances.Found found)) {
            context.answer(json, words(start));
            return Cli.DONE;
        }
        Answers<HeadStart> starts =
                new Answers<>(races.all().stream().map(HeadStart::of).toList());
        Interval points = starts.range(other -> other.to() == start.to() ? other.points() : -other.points());
        int my = start.to() == Side.ME ? start.points() : 0;
        Interval win = races.range(race -> race.winOrHalf(my, start.points() - my, true));
        Map<String, Object> ranges = new LinkedHashMap<>();
        ranges.put("headStart", points);
        ranges.put("winProbability", win);
        found.tell(json, ranges);
        String me = start.to() == Side.ME ? "you" : opponent.name();
        String versusMe = start.to() == Side.ME ? opponent.name() : "you";
        context.answer(
                json,
                (start.points() == 0
                                ? "No head start comes nearer to even against " + opponent.name() + " than none"
                                : "Against " + opponent.name() + ", " + given(start.points(), me, versusMe)
                                        + " from the start " + (start.points() == 1 ? "comes" : "come")
                                        + " nearest to even")
                        + range(points, me, versusMe)
                        + ": you win " + OddsWords.percent(win) + " of races.");
        return Cli.DONE;
    }

    private static String range(Interval points, String to, String other) {
        long low = Math.round(points.low());
        long high = Math.round(points.high());
        if (low == high) {
            return "";
        }
        return low >= 0
                ? " (" + low + "-" + high + ")"
                : " (" + given(low, to, other) + " to " + given(high, to, other) + ")";
    }

    /** So many points for one side, or if less than nothing for the other. */
    private static String given(long points, String to, String other) {
        return points == 0 ? "none" : Words.count(Math.abs(points), "point") + " for " + (points > 0 ? to : other);
    }

    private static String words(HeadStart start) {
        String chance = "you win with a chance of " + OddsWords.percent(start.winProbability()) + ".";
        return start.points() == 0
                ? "If these chances hold, no head start comes nearer to even than none: " + chance
                : "If these chances hold, " + start.points() + (start.points() == 1 ? " point" : " points")
                        + " for " + (start.to() == Side.ME ? "you" : "the other side")
                        + " from the start come nearest to even: " + chance;
    }
}
