package boardside.engine.trial;

import java.util.List;

/** How a trial stands. */
public sealed interface Ending {
    /** Neither decided nor at its end. */
    record UnderWay() implements Ending {}

    /** One candidate makes more points than all others. */
    record Winner(int candidate) implements Ending {}

    /**
     * Those still in play are as good as equal: within the margin of each other.
     *
     * @param candidates two or more, by number
     */
    record AsGoodAsEqual(List<Integer> candidates) implements Ending {
        /** List copied. */
        public AsGoodAsEqual {
            candidates = List.copyOf(candidates);
        }
    }

    /** At its length, and neither of these. */
    record NotSettled() implements Ending {}
}
