package boardside.engine.skill;

import java.util.List;

/** Which of several ways to throw is better. */
public sealed interface ComparisonAnswer {
    /** Plain words, with a number where there is one, and whether it is signal or luck. */
    String sentence();

    /** Nothing counted up to that day, or no record says how it was thrown. */
    record NothingToCompare(String sentence) implements ComparisonAnswer {}

    /**
     * The groups side by side.
     *
     * @param by what tells groups apart
     * @param groups most points per round first, at least one
     * @param leftOut bags whose records do not say which group they belong to
     * @param lead points per round that the first makes more than the second; 0 for a lone group
     * @param probabilityAhead the chance that the lead is above 0; one half for a lone group
     * @param verdict how sure it is that the first beats the second
     * @param sentence what the screen says
     */
    record Comparison(
            List<Trait> by,
            List<Group> groups,
            long leftOut,
            Interval lead,
            double probabilityAhead,
            Verdict verdict,
            String sentence)
            implements ComparisonAnswer {
        /** Lists copied. */
        public Comparison {
            by = List.copyOf(by);
            groups = List.copyOf(groups);
        }
    }

    /**
     * One way to throw: what it makes at today's skill, at the same mix of everything else as the others, averaged over
     * good and bad days.
     *
     * @param key one word per trait, in the order asked
     * @param throwsCounted bags thrown so, 1 or more
     * @param inHole share of bags in, 0..1
     * @param onBoard share of bags on, 0..1
     * @param offBoard share of bags off, 0..1
     * @param pointsPerRound points per round of four, 0..12
     * @param probabilityBest the chance that this group has the most points per round
     * @param expectedLoss points per round given away, on average over what is not known, by choosing this group
     * @param roundsToSettle further rounds of four of each of this group and the best (for the best: the runner-up) that
     *     would probably settle which is better, if the difference is what it looks like; 0 where there is nothing to
     *     settle, at most {@value Skill#MOST_ROUNDS}, which also stands for more
     */
    record Group(
            List<String> key,
            long throwsCounted,
            Interval inHole,
            Interval onBoard,
            Interval offBoard,
            Interval pointsPerRound,
            double probabilityBest,
            double expectedLoss,
            long roundsToSettle) {
        /** List copied. */
        public Group {
            key = List.copyOf(key);
        }
    }
}
