package boardside.app.web;

import boardside.app.record.Advising;
import boardside.engine.physics.Board;
import boardside.engine.physics.Range;
import boardside.engine.rules.Face;
import boardside.engine.tactics.Lying;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Rate;
import boardside.engine.tactics.Spot;
import boardside.engine.tactics.Target;
import boardside.engine.tactics.advice.Advice;
import boardside.engine.tactics.advice.BreakEven;
import boardside.engine.tactics.advice.Call;
import boardside.engine.tactics.advice.ShotAdvice;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** Shots and what is advised of them, in the words of pages. */
public final class ShotWords {
    private static final int MOST_AS_GOOD = 3;

    private final Texts texts;
    private final Position position;
    private final TryWords words;

    /** Words for the shots of one position. */
    ShotWords(Texts texts, Position position) {
        this.texts = texts;
        this.position = position;
        words = new TryWords(texts, List.of(), Map.of());
    }

    /**
     * One shot of a ranking.
     *
     * @param name the shot with where it goes
     * @param win the chance to win with its range, in a sentence
     * @param right from when it is right, and how often it is made
     * @param more net points, risk and the error of sampling
     * @param asGood whether it is as good as the best
     */
    public record Line(String name, String win, String right, String more, boolean asGood) {}

    /** The shot with where it goes, as a part of a sentence. */
    String name(Call call) {
        String shot = texts.of("shot." + call.shot().word()).toLowerCase(Locale.ENGLISH);
        Target target = call.target();
        if (target != null) {
            return texts.of("advise.shot.placed", shot, words.target(target).toLowerCase(Locale.ENGLISH));
        }
        if (call.bag() >= 0) {
            Lying bag = position.bags().get(call.bag());
            return texts.of(
                    "advise.shot.through",
                    shot,
                    texts.of(
                            "situations.bag." + bag.side().word(),
                            words.target(Target.at(bag.spot(), Board.REGULATION_WIDTH))));
        }
        return call.aim().equals(Spot.HOLE)
                ? shot
                : texts.of(call.aim().x() < 0 ? "advise.shot.left" : "advise.shot.right");
    }

    /** The shot alone, as a part of a sentence. */
    String brief(Call call) {
        return call.target() != null || call.bag() >= 0
                ? texts.of("shot." + call.shot().word()).toLowerCase(Locale.ENGLISH)
                : name(call);
    }

    /** How often it is made, with its range. */
    String made(BreakEven breakEven) {
        Rate made = breakEven.made();
        return Numbers.percent(made.estimate()) + " (" + Math.round(100 * made.low()) + "\u2013"
                + Math.round(100 * made.high()) + ")";
    }

    /** From when a shot is right, and how often it is made. */
    String right(BreakEven breakEven) {
        Double needed = breakEven.needed();
        return switch (breakEven.is()) {
            case AT ->
                texts.of(
                        "advise.right.at",
                        Numbers.percent(needed == null ? 0 : needed),
                        made(breakEven),
                        name(breakEven.against()));
            case ALWAYS -> texts.of("advise.right.always", made(breakEven), name(breakEven.against()));
            case NEVER -> texts.of("advise.right.never", made(breakEven), name(breakEven.against()));
        };
    }

    /** The best shot and when it is right; what is as good. */
    String said(Advice advice) {
        List<String> said = new ArrayList<>();
        ShotAdvice best = advice.best();
        said.add(texts.of("advise.best", name(best.call())));
        if (best.breakEven().is() == BreakEven.Case.AT) {
            said.add(texts.of("advise.best.at", Numbers.percent(needed(best)), made(best.breakEven())));
        } else {
            advice.shots().stream()
                    .skip(1)
                    .filter(shot -> shot.breakEven().is() == BreakEven.Case.AT)
                    .findFirst()
                    .ifPresent(shot -> said.add(texts.of(
                            "advise.best.instead",
                            name(shot.call()),
                            Numbers.percent(needed(shot)),
                            made(shot.breakEven()),
                            name(best.call()))));
        }
        List<ShotAdvice> asGood = advice.asGood();
        if (!asGood.isEmpty()) {
            said.add(texts.of(
                    "advise.asgood",
                    asGood.stream()
                            .limit(MOST_AS_GOOD)
                            .map(shot -> name(shot.call()))
                            .collect(Collectors.joining(", "))));
        }
        return String.join(" ", said);
    }

    private static double needed(ShotAdvice shot) {
        Double needed = shot.breakEven().needed();
        return needed == null ? 0 : needed;
    }

    /** All shots. */
    List<Line> lines(Advice advice) {
        return advice.shots().stream().map(this::line).toList();
    }

    private Line line(ShotAdvice shot) {
        Range net = shot.netPoints();
        return new Line(
                capital(name(shot.call())),
                texts.of("advise.win", win(shot.winProbability())),
                right(shot.breakEven()),
                texts.of(
                        "advise.more",
                        signed(net.estimate()),
                        signed(net.low()),
                        signed(net.high()),
                        Numbers.percent(shot.risk()),
                        Numbers.two(100 * shot.simulationError())),
                shot.asGood());
    }

    /** A chance to win with its range. */
    static String win(Range win) {
        return String.format(
                Locale.ROOT, "%.1f %% (%.0f\u2013%.0f)", 100 * win.estimate(), 100 * win.low(), 100 * win.high());
    }

    private static String signed(double points) {
        return String.format(Locale.ROOT, "%+.1f", points).replace('-', '\u2212');
    }

    static String capital(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ENGLISH) + text.substring(1);
    }

    /** Whose numbers an answer comes from. */
    String from(Advising.Asked asked) {
        if (asked.bags() == 0) {
            return texts.of("advise.from.none");
        }
        Face face = asked.face();
        String bag = asked.bag().isEmpty() ? texts.of("advise.bag.none") : asked.bag();
        return texts.of("advise.from", asked.bags(), face == null ? bag : bag + ", " + texts.of("face." + face.word()));
    }
}
