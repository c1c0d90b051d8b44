package boardside.app.cli;

import boardside.engine.odds.HeadStart;
import boardside.engine.odds.Race;
import boardside.engine.rules.Side;
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
        HeadStart start = HeadStart.of(Race.solve(variants.rules(), mine.round(), versus.round()));
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("headStart", start.points());
        json.put("to", start.to().word());
        json.put("winProbability", start.winProbability());
        String chance = "you win with a chance of " + OddsWords.percent(start.winProbability()) + ".";
        context.answer(
                json,
                start.points() == 0
                        ? "If these chances hold, no head start comes nearer to even than none: " + chance
                        : "If these chances hold, " + start.points() + (start.points() == 1 ? " point" : " points")
                                + " for " + (start.to() == Side.ME ? "you" : "the other side")
                                + " from the start come nearest to even: " + chance);
        return Cli.DONE;
    }
}
