package boardside.app.cli;

import boardside.app.record.Pushes;
import boardside.app.record.Throws;
import boardside.engine.physics.Board;
import boardside.engine.physics.Range;
import boardside.engine.physics.ThrowAdvice;
import boardside.engine.physics.ThrowFit;
import boardside.engine.physics.ThrowFit.Parameter;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Where a player's bags go, how far they spread, and what would bring more points. */
@Command(
        name = "throw-model",
        description = "Say where your bags go, how far they spread, and where to aim for most points.",
        footerHeading = "%n",
        footer = {
            "Learned from the records of the last year; docs/physics.md says how, and what counts alone cannot tell.",
            "",
            "Exit status: 0 done, 1 the answer is no or nothing was found, 2 wrong usage or bad input."
        })
final class ThrowModelCommand implements Callable<Integer> {
    /** Blocks deeper than this are hardly ever taken in. */
    private static final int SHOWN = 4;

    private final Context context;

    @Option(names = "--bag", paramLabel = "NAME", description = "Which bag set; the one you throw most unless said.")
    private @Nullable String bag;

    @Option(names = "--face", paramLabel = "FACE", description = "slow or fast.")
    private @Nullable String face;

    ThrowModelCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Throws all = Throws.of(
                context.records(),
                context.player().id(),
                LocalDate.now(context.surroundings().clock()));
        Throws.Group group = SlideCommand.group(context, all, bag, face);
        if (group == null) {
            return Cli.NO;
        }
        ThrowAdvice advice = group.advice();
        context.answer(json(group, advice), words(group, advice));
        return Cli.DONE;
    }

    private static Map<String, Object> json(Throws.Group group, ThrowAdvice advice) {
        ThrowFit fit = group.fit();
        Map<String, Object> json = SlideCommand.named(group);
        json.put("bags", fit.records().bags());
        json.put("narrowBags", group.narrow());
        json.put("missesTold", group.told());
        json.put("bagsTapped", group.tapped());
        Map<String, Object> told = new LinkedHashMap<>();
        for (Parameter parameter : Parameter.values()) {
            json.put(SlideCommand.key(parameter), fit.range(parameter));
            told.put(SlideCommand.key(parameter), fit.told(parameter));
        }
        json.put("told", told);
        json.put("inHole", advice.in());
        json.put("onBoard", advice.on());
        json.put("offBoard", advice.off());
        json.put("pointsPerBag", advice.points());
        json.put("kept", advice.kept());
        json.put("narrowKept", advice.narrowKept());
        json.put("inHoleWithHalfAcross", advice.halfAcross());
        json.put("inHoleWithHalfAlong", advice.halfAlong());
        Map<String, Object> aim = new LinkedHashMap<>();
        aim.put("reach", advice.best());
        aim.put("pointsPerBag", advice.bestPoints());
        aim.put("gain", advice.gain());
        aim.put("pointsPerBagAtTheHole", advice.centred());
        json.put("aim", aim);
        Map<String, Object> pushes = new LinkedHashMap<>();
        for (int depth = 1; depth <= Pushes.DEEPEST; depth++) {
            pushes.put(String.valueOf(depth), Pushes.collected(fit, depth));
        }
        json.put("pushTakesBlockIn", pushes);
        return json;
    }

    private static String words(Throws.Group group, ThrowAdvice advice) {
        ThrowFit fit = group.fit();
        return String.join(
                "\n",
                fit.records().bags() == 0
                        ? "No counted throws of this bag in the last year: this is what is believed of any player."
                        : SlideCommand.name(group) + ", from " + fit.records().bags() + " bags of the last year.",
                "",
                line("to the right", fit.range(Parameter.X), 1, " in of the hole (left is negative)"),
                line("spread across", fit.range(Parameter.SPREAD_X), 1, " in"),
                line("spread along", fit.range(Parameter.SPREAD_ALONG), 1, " in"),
                line("reach", fit.range(Parameter.REACH), 1, " in up the board (the hole is at " + Board.HOLE_Y + ")"),
                line("slide", fit.range(Parameter.SLIDE), 1, " in"),
                String.format(
                        Locale.ROOT,
                        "The records tell %.0f %% of the spread across and %.0f %% of that along; belief fills in the rest.",
                        100 * fit.told(Parameter.SPREAD_X),
                        100 * fit.told(Parameter.SPREAD_ALONG)),
                "",
                line("in the hole", advice.in(), 100, " %"),
                line(" half across", advice.halfAcross(), 100, " % with half the spread across"),
                line(" half along", advice.halfAlong(), 100, " % with half the spread along"),
                line("points a bag", advice.points(), 1, ""),
                line("best reach", advice.best(), 1, " in up the board, straight at the hole"),
                line(" points there", advice.bestPoints(), 1, ""),
                "",
                IntStream.rangeClosed(1, SHOWN)
                        .mapToObj(depth -> line(
                                "push, depth " + depth,
                                Pushes.collected(fit, depth),
                                100,
                                " % of blocks at that depth go in"))
                        .collect(Collectors.joining("\n")));
    }

    private static String line(String what, Range range, double scale, String unit) {
        return String.format(
                Locale.ROOT,
                "%-15s %5.1f, most likely %.1f to %.1f%s",
                what,
                scale * range.estimate(),
                scale * range.low(),
                scale * range.high(),
                unit);
    }
}
