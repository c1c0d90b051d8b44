package boardside.engine.skill;

import java.time.LocalDate;

/** How a player throws today. */
public sealed interface FormAnswer {
    /** Plain words, with a number where there is one, and whether it is signal or luck. */
    String sentence();

    /** Nothing counted up to that day. */
    record NoRecords(String sentence) implements FormAnswer {}

    /**
     * Today's skill.
     *
     * @param throwsCounted bags it rests on, 1 or more
     * @param rounds recorded rounds it rests on
     * @param from first day of the records used
     * @param recent whether they are those of the last 90 days; else there are none and all were used
     * @param inHole share of bags in, 0..1
     * @param onBoard share of bags on, 0..1
     * @param offBoard share of bags off, 0..1
     * @param pointsPerRound points per round of four, 0..12
     * @param fourBaggers share of rounds of four with all in, 0..1
     * @param level ghost score beaten exactly half the time, 0..12
     * @param trend what has changed
     * @param sentence what the screen says
     */
    record Form(
            long throwsCounted,
            long rounds,
            LocalDate from,
            boolean recent,
            Interval inHole,
            Interval onBoard,
            Interval offBoard,
            Interval pointsPerRound,
            Interval fourBaggers,
            Interval level,
            Trend trend,
            String sentence)
            implements FormAnswer {}

    /**
     * A change of points per round.
     *
     * @param days over how many days, 1 or more
     * @param change today's minus then's, -12..12
     * @param probabilityBetter the chance that it is above 0
     * @param verdict how sure the sign is
     */
    record Trend(int days, Interval change, double probabilityBetter, Verdict verdict) {}
}
