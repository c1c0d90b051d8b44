package boardside.engine.skill;

/** What is usual for a player, and how unusual a total was. */
public sealed interface UsualAnswer {
    /** Plain words. */
    String sentence();

    /** No record counts points. */
    record NoTotals(String sentence) implements UsualAnswer {}

    /**
     * What nine totals in ten are.
     *
     * @param forecast the whole distribution
     * @param low 5 % quantile, in points
     * @param high 95 % quantile, in points
     */
    record Usual(TotalForecast forecast, int low, int high, String sentence) implements UsualAnswer {}

    /**
     * A total that was thrown, against what was to be expected.
     *
     * @param forecast the whole distribution
     * @param total the total, in points
     * @param atMost the chance of that many points or fewer
     * @param atLeast the chance of that many points or more
     */
    record Unusual(TotalForecast forecast, int total, double atMost, double atLeast, String sentence)
            implements UsualAnswer {}
}
