package boardside.app.web;

import boardside.app.report.DataTable;
import boardside.app.report.Picture;
import boardside.app.report.Pictures;
import boardside.engine.skill.DayForm;
import boardside.engine.skill.Interval;
import boardside.engine.skill.Skill;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Form over time as a picture: days as thrown, and the band of what is known of the player. */
final class FormOverTime {
    private static final int MOST_DAYS_DRAWN = 60;
    private static final int MOST_POINTS = 120;
    private static final int BAND_POINTS = 40;

    private final Texts texts;

    FormOverTime(Texts texts) {
        this.texts = texts;
    }

    /**
     * Points a round over time.
     *
     * @param days how far back, up to today; 0 for all there is
     * @return null where nothing was thrown
     */
    @Nullable
    Picture of(Skill skill, LocalDate today, int days) {
        LocalDate from = days == 0 ? LocalDate.MIN : today.minusDays(days - 1L);
        int each = 1;
        while (skill.stretches(each, from) > (each == 1 ? MOST_DAYS_DRAWN : MOST_POINTS)) {
            each = each == 1 ? 7 : 2 * each;
        }
        List<DayForm> history = skill.history(each, from);
        if (history.isEmpty()) {
            return null;
        }
        LocalDate first = history.get(0).from();
        long span = today.toEpochDay() - first.toEpochDay();
        List<LocalDate> dates = new ArrayList<>();
        for (int i = 0; i <= BAND_POINTS; i++) {
            LocalDate date = first.plusDays(Math.round(span * (double) i / BAND_POINTS));
            if (dates.isEmpty() || !date.equals(dates.get(dates.size() - 1))) {
                dates.add(date);
            }
        }
        Map<LocalDate, Interval> band = skill.band(dates);
        boolean single = each == 1;
        List<List<String>> rows = new ArrayList<>();
        for (DayForm day : history) {
            rows.add(
                    0,
                    List.of(
                            single ? texts.day(day.to()) : texts.day(day.from()) + " \u2013 " + texts.day(day.to()),
                            String.valueOf(day.throwsCounted()),
                            Numbers.one(day.pointsPerRound().estimate()),
                            Numbers.range(day.pointsPerRound())));
        }
        String description = texts.of(
                single ? "form.picture.days" : "form.picture.stretches",
                history.size(),
                each,
                texts.day(first),
                texts.day(history.get(history.size() - 1).to()));
        return Pictures.overTime(
                texts.of("form.picture"),
                description,
                new DataTable(
                        List.of(
                                texts.of(single ? "form.table.day" : "form.table.days"),
                                texts.of("form.table.bags"),
                                texts.of("form.table.ppr"),
                                texts.of("form.table.range")),
                        rows),
                history.stream()
                        .map(day -> new Pictures.Dated(middle(day), day.pointsPerRound()))
                        .toList(),
                band,
                texts.dates());
    }

    private static LocalDate middle(DayForm day) {
        return LocalDate.ofEpochDay((day.from().toEpochDay() + day.to().toEpochDay()) / 2);
    }
}
