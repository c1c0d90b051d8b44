package boardside.app.cli;

import boardside.app.record.Advising;
import boardside.engine.physics.Range;
import boardside.engine.rules.Face;
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
import org.jspecify.annotations.Nullable;

/** Advice in words for the terminal. */
final class AdviceWords {
    private AdviceWords() {}

    /** What a shot is called, with where it goes. */
    static String name(Call call) {
        String shot = call.shot().word().replace('-', ' ');
        Target target = call.target();
        if (target != null) {
            return shot + " at " + target.text();
        }
        if (call.bag() >= 0) {
            return shot + " through bag " + (call.bag() + 1);
        }
        return call.aim().equals(Spot.HOLE)
                ? shot
                : "bag on the board, " + (call.aim().x() < 0 ? "left" : "right");
    }

    /** What to throw and why, in a sentence or two. */
    static String sentence(Advice advice) {
        ShotAdvice best = advice.best();
        List<String> said = new ArrayList<>();
        said.add("Throw the " + name(best.call()) + ".");
        if (best.breakEven().is() == BreakEven.Case.AT) {
            said.add("It is right if you make it more than "
                    + percent(best.breakEven().needed()) + "; you make " + made(best) + ".");
        } else {
            advice.shots().stream()
                    .skip(1)
                    .filter(shot -> shot.breakEven().is() == BreakEven.Case.AT)
                    .findFirst()
                    .ifPresent(shot -> said.add("The " + name(shot.call()) + " is right if you make it more than "
                            + percent(shot.breakEven().needed()) + "; you make " + made(shot) + "."));
        }
        List<String> asGood = advice.asGood().stream()
                .map(shot -> "the " + name(shot.call()))
                .limit(3)
                .toList();
        if (!asGood.isEmpty()) {
            said.add("As good, as far as can be told: " + String.join(", ", asGood) + ".");
        }
        return String.join(" ", said);
    }

    private static String made(ShotAdvice shot) {
        Rate made = shot.breakEven().made();
        return String.format(
                Locale.ROOT, "%.0f %% (%.0f-%.0f)", 100 * made.estimate(), 100 * made.low(), 100 * made.high());
    }

    private static String percent(@Nullable Double share) {
        return share == null ? "" : String.format(Locale.ROOT, "%.0f %%", 100 * share);
    }

    /** The whole answer. */
    static String words(Advising.Asked asked, Advice advice) {
        List<String> lines = new ArrayList<>();
        lines.add(sentence(advice));
        lines.add("");
        lines.add(String.format(
                Locale.ROOT,
                "%-28s %-18s %-10s %-14s %-7s %s",
                "shot",
                "you win",
                "sampling",
                "net points",
                "costs",
                "right from / you make"));
        for (ShotAdvice shot : advice.shots()) {
            lines.add(line(shot));
        }
        lines.add("");
        Face face = asked.face();
        String bag = (asked.bag().isEmpty() ? "bags without a name" : asked.bag())
                + (face == null ? "" : ", " + face.word() + " face");
        if (asked.given()) {
            lines.add("By the chances given, with " + bag + ".");
        } else {
            lines.add(
                    asked.bags() == 0
                            ? "No counted throws in the last year: this is what is believed of any player."
                            : "By " + asked.bags() + " bags of the last year: " + bag + ".");
        }
        return String.join("\n", lines);
    }

    private static String line(ShotAdvice shot) {
        Range win = shot.winProbability();
        Range net = shot.netPoints();
        String right = switch (shot.breakEven().is()) {
            case AT -> percent(shot.breakEven().needed()) + " / ";
            case ALWAYS -> "always / ";
            case NEVER -> "never / ";
        };
        return String.format(
                Locale.ROOT,
                "%-28s %4.1f %% (%.1f-%.1f)  +-%.2f     %4.1f (%.1f, %.1f)  %3.0f %%  %s%s%s",
                name(shot.call()),
                100 * win.estimate(),
                100 * win.low(),
                100 * win.high(),
                100 * shot.simulationError(),
                net.estimate(),
                net.low(),
                net.high(),
                100 * shot.risk(),
                right,
                made(shot),
                shot.asGood() ? "  as good" : "");
    }
}
