package boardside.engine.skill;

/** Why totals differ from day to day. */
public sealed interface SwingAnswer {
    /** Plain words, with a number where there is one. */
    String sentence();

    /** Too few runs to tell luck from good and bad days. */
    record TooFewRuns(String sentence) implements SwingAnswer {}

    /**
     * The variance of totals thrown over the last year, by what made it.
     *
     * @param rounds rounds of a total
     * @param deviation standard deviation of totals, in points
     * @param luck share that bags falling this way or that would make alone, 0..1
     * @param days share of good and bad days, and of good and bad runs within them, 0..1
     * @param change share of skill that changed over the year, 0..1
     * @param sentence what the screen says
     */
    record Swing(int rounds, Interval deviation, Interval luck, Interval days, Interval change, String sentence)
            implements SwingAnswer {}
}
