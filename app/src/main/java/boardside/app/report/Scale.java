package boardside.app.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * A straight map from values to coordinates.
 *
 * @param low value at {@code from}
 * @param high value at {@code to}, above {@code low}
 * @param from coordinate
 * @param to coordinate; may lie before {@code from}
 */
record Scale(double low, double high, double from, double to) {
    Scale {
        if (!(low < high && from != to)) {
            throw new IllegalArgumentException("a scale runs over a range, not " + low + ".." + high);
        }
    }

    /** The coordinate of a value; values beyond the ends are moved to them. */
    double at(double value) {
        double share = (Math.min(Math.max(value, low), high) - low) / (high - low);
        return from + share * (to - from);
    }

    /** Values with a mark: steps of 1, 2 or 5 times a power of ten, at most so many, all within the range. */
    List<Double> ticks(int most) {
        double rough = (high - low) / most;
        double power = Math.pow(10, Math.floor(Math.log10(rough)));
        double step = power;
        for (double factor : new double[] {1, 2, 5, 10}) {
            step = factor * power;
            if (step >= rough * (1 - 1e-9)) {
                break;
            }
        }
        List<Double> ticks = new ArrayList<>();
        for (double k = Math.ceil(low / step - 1e-9); k * step <= high + 1e-9 * step; k++) {
            ticks.add(k * step);
        }
        return ticks;
    }

    /** A day with a mark, and what stands there. */
    record DateTick(LocalDate day, String label) {}

    /**
     * Days with a mark: months where the dates span some, else single days; at most so many.
     *
     * @param from first day
     * @param to last day, not before the first
     * @param words how they are written
     */
    static List<DateTick> dates(LocalDate from, LocalDate to, int most, DateWords words) {
        long days = to.toEpochDay() - from.toEpochDay();
        List<DateTick> ticks = new ArrayList<>();
        if (days < 62) {
            long step = Math.max(1, (days + most - 1) / most);
            for (LocalDate day = from; !day.isAfter(to); day = day.plusDays(step)) {
                ticks.add(new DateTick(day, words.day(day)));
            }
            return ticks.size() > most ? ticks.subList(0, most) : ticks;
        }
        long months = days / 30 + 1;
        for (int step : new int[] {1, 2, 3, 6, 12, 24, 60, 120, 600, 1200}) {
            if (months / step < most) {
                LocalDate day = from.withDayOfMonth(1);
                while (day.isBefore(from) || (day.getMonthValue() - 1) % Math.min(step, 12) != 0) {
                    day = day.plusMonths(1);
                }
                for (; !day.isAfter(to) && ticks.size() < most; day = day.plusMonths(step)) {
                    boolean whole = ticks.isEmpty() || day.getMonthValue() == 1 || step >= 12;
                    ticks.add(new DateTick(day, whole ? words.year(day) : words.month(day)));
                }
                break;
            }
        }
        return ticks;
    }
}
