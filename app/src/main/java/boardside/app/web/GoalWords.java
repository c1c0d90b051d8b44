package boardside.app.web;

import boardside.engine.plan.Goal;
import boardside.engine.plan.GoalAnswer;
import boardside.engine.plan.GoalAnswer.Standing;
import boardside.engine.skill.Interval;
import java.util.ArrayList;
import java.util.List;

/** Goals in words, for pages and the terminal. */
public final class GoalWords {
    private final Texts texts;

    /** In the language of the texts. */
    public GoalWords(Texts texts) {
        this.texts = texts;
    }

    /** What is to be reached, and by when. */
    public String name(Goal goal) {
        return texts.of("goals." + goal.kind().word(), Numbers.half(goal.value()), texts.day(goal.by()));
    }

    /** Where it stands, where it goes, and what would have to change. */
    public List<String> says(Goal goal, GoalAnswer answer) {
        if (!(answer instanceof Standing standing)) {
            return List.of(texts.of("goals.none"));
        }
        String kind = goal.kind().word();
        List<String> says = new ArrayList<>();
        says.add(texts.of("goals.now." + kind, range(standing.now())));
        if (goal.kind() == Goal.Kind.TOTAL) {
            says.add(texts.of("goals.go", Numbers.percent(standing.chanceNow())));
        }
        if (standing.months() > 0) {
            says.add(texts.of(
                    "goals.then",
                    texts.day(goal.by()),
                    range(standing.then()),
                    Numbers.percent(standing.chanceThen())));
            if (standing.needed() > 0) {
                says.add(texts.of("goals.pace." + kind, signed(standing.needed()), signed(standing.pace())));
            }
        }
        says.add(texts.of(
                standing.months() > 0
                        ? "goals.verdict." + standing.verdict().word()
                        : standing.verdict() == GoalAnswer.Verdict.REACHED
                                ? "goals.verdict.reached"
                                : "goals.verdict.over"));
        return says;
    }

    private static String range(Interval interval) {
        return Numbers.one(interval.estimate()) + " (" + Numbers.range(interval) + ")";
    }

    private static String signed(double value) {
        // No minus before a nought.
        return String.format(java.util.Locale.ROOT, "%+.1f", Math.abs(value) < 0.05 ? 0 : value);
    }

    private static String signed(Interval interval) {
        return signed(interval.estimate()) + " (" + signed(interval.low()) + " to " + signed(interval.high()) + ")";
    }
}
