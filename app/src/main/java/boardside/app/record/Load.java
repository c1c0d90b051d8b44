package boardside.app.record;

import boardside.app.practice.DayBags;
import java.time.LocalDate;
import java.util.List;

/**
 * How many bags a player throws, and whether that rises sharply. A caution is general advice (common practice, no source),
 * never a diagnosis: the last seven days held against the usual week, the mean of the four weeks before them.
 *
 * @param today bags thrown today
 * @param week bags of the last seven days, today included
 * @param usual bags a week over the 28 days before those
 * @param daysBefore days with bags among those 28
 */
public record Load(int today, int week, double usual, int daysBefore) {
    /** Days that are looked at. */
    public static final int DAYS = 35;

    private static final int WEEK = 7;

    /** A week that is this many times the usual one has risen sharply (common practice, no source). */
    public static final double SHARP = 1.5;

    /** Fewer bags in seven days than this are no load to speak of (common practice, no source). */
    public static final int LITTLE = 200;

    /** A usual week is known from at least so many days with bags. */
    private static final int FEWEST_DAYS = 4;

    /** From days with bags; others than the {@value #DAYS} up to today do not matter. */
    public static Load of(List<DayBags> days, LocalDate today) {
        int now = 0;
        int week = 0;
        int before = 0;
        int number = 0;
        for (DayBags each : days) {
            long ago = today.toEpochDay() - LocalDate.parse(each.day()).toEpochDay();
            if (ago < 0 || ago >= DAYS) {
                continue;
            }
            now += ago == 0 ? each.bags() : 0;
            if (ago < WEEK) {
                week += each.bags();
            } else {
                before += each.bags();
                number++;
            }
        }
        return new Load(now, week, before * (double) WEEK / (DAYS - WEEK), number);
    }

    /** Whether the week has risen sharply over the usual one. */
    public boolean sharp() {
        return week >= LITTLE && daysBefore >= FEWEST_DAYS && week >= SHARP * usual;
    }

    /** Whether much is thrown again after weeks of little or nothing, which is a sharp rise too. */
    public boolean comeback() {
        return week >= LITTLE && daysBefore < FEWEST_DAYS;
    }

    /**
     * Bags that a week still holds before it has risen sharply, 0 or more; in any week, up to twice as many
     * as are no load to speak of.
     */
    public double left() {
        double rise = daysBefore < FEWEST_DAYS ? 0 : SHARP * usual;
        return Math.max(0, Math.max(2 * LITTLE, rise) - week);
    }
}
