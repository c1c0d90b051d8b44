package boardside.engine.plan;

import boardside.engine.rules.Word;
import boardside.engine.skill.Interval;

/** How a goal stands. */
public sealed interface GoalAnswer {
    /** Nothing is counted yet. */
    record NoRecords() implements GoalAnswer {}

    /** How it looks. */
    enum Verdict implements Word {
        /** Most likely there already. */
        REACHED,
        /** As likely as not, or nearly, by drift alone. */
        WITHIN_REACH,
        /** It takes more than the present pace most likely gives, though not more than it may. */
        A_STRETCH,
        /** It takes more than the present pace can well give. */
        OUT_OF_REACH
    }

    /**
     * Where it stands and where it goes.
     *
     * @param now what is counted, today
     * @param then what is foretold for the day, by drift alone
     * @param chanceNow that it is reached already; of a total, that one go today reaches it
     * @param chanceThen the same for the day
     * @param months until then, above 0 (0 where the day has come)
     * @param pace how what is counted has changed a month, over the last 90 days
     * @param needed a month from now on; 0 where nothing more is needed
     * @param verdict how it looks
     */
    record Standing(
            Interval now,
            Interval then,
            double chanceNow,
            double chanceThen,
            double months,
            Interval pace,
            double needed,
            Verdict verdict)
            implements GoalAnswer {}
}
