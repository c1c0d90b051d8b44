package boardside.app.web;

import boardside.app.practice.DayBags;
import boardside.app.practice.Player;
import boardside.app.record.Load;
import io.javalin.http.Context;
import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** When and how much was thrown, a month at a time; days without are just days. */
public final class CalendarPage {
    /** Bags from which a day is marked with two and with three marks. */
    private static final int MANY = 60;

    private static final int VERY_MANY = 150;

    private final Web web;

    CalendarPage(Web web) {
        this.web = web;
    }

    /**
     * A month.
     *
     * @param weeks rows of seven cells
     * @param next the month after as yyyy-mm, or null where it lies ahead
     * @param load bags of the last days in words; a caution is null where there is none
     */
    public record View(
            String month,
            List<String> weekdays,
            List<List<Cell>> weeks,
            String before,
            @Nullable String next,
            String sum,
            String load,
            @Nullable String caution) {}

    /**
     * A day.
     *
     * @param day yyyy-mm-dd, or empty outside the month
     * @param marks one to three, by how much was thrown, 0 for nothing
     */
    public record Cell(String day, int number, int bags, int marks, boolean today, String says) {}

    void show(Context ctx) {
        Player player = web.player(ctx);
        LocalDate today = web.today();
        YearMonth month = month(ctx.queryParam("month"), YearMonth.from(today));
        Map<String, DayBags> days =
                web.records().deeds().days(player.id(), month.atDay(1), month.atEndOfMonth()).stream()
                        .collect(Collectors.toMap(DayBags::day, Function.identity()));
        List<List<Cell>> weeks = new ArrayList<>();
        LocalDate day = month.atDay(1).with(DayOfWeek.MONDAY);
        while (!day.isAfter(month.atEndOfMonth())) {
            List<Cell> week = new ArrayList<>();
            for (int i = 0; i < 7; i++) {
                week.add(cell(day, month, today, days.get(day.toString())));
                day = day.plusDays(1);
            }
            weeks.add(week);
        }
        int bags = days.values().stream().mapToInt(DayBags::bags).sum();
        Load load = web.records().deeds().load(player.id(), today);
        View view = new View(
                web.texts().month(month),
                Stream.of(DayOfWeek.values())
                        .map(one -> one.getDisplayName(
                                TextStyle.SHORT,
                                Locale.forLanguageTag(web.texts().language())))
                        .toList(),
                weeks,
                month.minusMonths(1).toString(),
                month.isBefore(YearMonth.from(today)) ? month.plusMonths(1).toString() : null,
                bags == 0
                        ? web.texts().of("calendar.sum.none")
                        : web.texts().of(days.size() == 1 ? "calendar.sum.one" : "calendar.sum", bags, days.size()),
                says(web.texts(), load),
                caution(web.texts(), load));
        web.show(ctx, "calendar", web.texts().of("calendar.title"), Map.of("view", view));
    }

    private static YearMonth month(@Nullable String text, YearMonth now) {
        if (text == null) {
            return now;
        }
        try {
            YearMonth month = YearMonth.parse(text);
            return month.isAfter(now) || month.getYear() < 1900 ? now : month;
        } catch (DateTimeException e) {
            return now;
        }
    }

    private Cell cell(LocalDate day, YearMonth month, LocalDate today, @Nullable DayBags thrown) {
        if (!YearMonth.from(day).equals(month)) {
            return new Cell("", 0, 0, 0, false, "");
        }
        int bags = thrown == null ? 0 : thrown.bags();
        int marks = bags == 0 ? 0 : bags < MANY ? 1 : bags < VERY_MANY ? 2 : 3;
        String says = thrown == null
                ? ""
                : web.texts()
                        .of(
                                thrown.runs() == 1 ? "calendar.day.one" : "calendar.day",
                                web.texts().day(day),
                                bags,
                                thrown.runs());
        return new Cell(day.toString(), day.getDayOfMonth(), bags, marks, day.equals(today), says);
    }

    /** Bags of the last days. */
    public static String says(Texts texts, Load load) {
        return texts.of("load.says", load.today(), load.week(), Math.round(load.usual()));
    }

    /** General advice where a week rises sharply, or null. */
    public static @Nullable String caution(Texts texts, Load load) {
        if (load.sharp()) {
            return texts.of("load.sharp", load.week(), Math.round(load.usual()));
        }
        return load.comeback() ? texts.of("load.comeback", load.week()) : null;
    }
}
