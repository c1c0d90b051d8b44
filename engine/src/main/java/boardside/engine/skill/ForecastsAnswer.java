package boardside.engine.skill;

import java.time.LocalDate;
import java.util.List;

/** How good the tool's own forecasts of past totals were. */
public sealed interface ForecastsAnswer {
    /** Plain words, with numbers where there are some. */
    String sentence();

    /** Too few totals to score. */
    record NothingForecast(String sentence) implements ForecastsAnswer {}

    /**
     * Forecasts of ten-round totals, each made from the records before its run alone (how much the player varies is taken
     * from all records).
     *
     * @param scored each total with its forecast, the earliest first
     * @param bins stated chances against what happened, the lowest first; without empty ones
     * @param within share of totals inside their 90 % range, 0..1
     * @param score mean of the forecasts' ranked probability scores, in points; 0 is perfect
     * @param sentence what the screen says
     */
    record Forecasts(List<Scored> scored, List<Bin> bins, double within, double score, String sentence)
            implements ForecastsAnswer {
        /** Lists copied. */
        public Forecasts {
            scored = List.copyOf(scored);
            bins = List.copyOf(bins);
        }
    }

    /**
     * One forecast and what came.
     *
     * @param day when it was thrown
     * @param run the run's id
     * @param total points
     * @param mean mean of the forecast
     * @param low its 5 % quantile
     * @param high its 95 % quantile
     * @param place the chance of fewer points, plus half that of just as many, 0..1
     */
    record Scored(LocalDate day, String run, int total, double mean, int low, int high, double place) {}

    /**
     * Statements of about the same chance, such as "at least 60 points".
     *
     * @param stated mean of the chances stated, 0..1
     * @param happened share that came true, with its range
     * @param statements how many
     */
    record Bin(double stated, Interval happened, long statements) {}
}
