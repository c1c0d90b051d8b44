package boardside.engine.skill;

import java.time.LocalDate;

/** What the narrow board costs, and whether practice on it shows on the regulation board. */
public sealed interface NarrowAnswer {
    /** Plain words, with a number where there is one, and whether it is signal or luck. */
    String sentence();

    /** One of the two boards was never thrown at. */
    record OneBoard(String sentence) implements NarrowAnswer {}

    /**
     * Both boards.
     *
     * @param throwsCounted bags thrown at the narrow board, 1 or more
     * @param cost points per round on the regulation board less those on the narrow one, -12..12
     * @param probabilityCost the chance that the cost is above 0
     * @param verdict how sure its sign is
     * @param training before and after
     * @param sentence what the screen says of the cost; training has its own
     */
    record Narrow(
            long throwsCounted,
            Interval cost,
            double probabilityCost,
            Verdict verdict,
            Training training,
            String sentence)
            implements NarrowAnswer {}

    /** Whether training on the narrow board has helped: a question that records alone can rarely answer. */
    sealed interface Training {
        /** Plain words. */
        String sentence();
    }

    /** Too little before the first narrow round, or since. */
    record TooEarly(String sentence) implements Training {}

    /**
     * How skill on the regulation board changed before the first narrow round, and since, over equally long times. A
     * difference is not proof: other things changed as well.
     *
     * @param from day of the first narrow round
     * @param days length of either time
     * @param before change of points per round before
     * @param after change since
     * @param difference the latter less the former
     * @param probabilityFaster the chance that the difference is above 0
     * @param verdict how sure its sign is
     */
    record BeforeAndAfter(
            LocalDate from,
            int days,
            Interval before,
            Interval after,
            Interval difference,
            double probabilityFaster,
            Verdict verdict,
            String sentence)
            implements Training {}
}
