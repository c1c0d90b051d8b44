package boardside.app.web;

import boardside.app.practice.Player;
import boardside.app.report.DataTable;
import boardside.app.report.Picture;
import boardside.app.report.Pictures;
import boardside.engine.skill.DayForm;
import boardside.engine.skill.FormAnswer;
import boardside.engine.skill.FormAnswer.Form;
import boardside.engine.skill.Interval;
import boardside.engine.skill.Skill;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** How the player throws today, and how that came about. */
public final class FormPage {
    private static final int TREND_DAYS = 30;
    private static final int MOST_DAYS_DRAWN = 60;
    private static final int MOST_POINTS = 120;
    private static final int BAND_POINTS = 40;
    private static final int FIRST_DAYS = 90;
    private static final List<Integer> DAYS = List.of(90, 365, 0);

    private final Web web;
    private final Remembered<View> remembered;

    FormPage(Web web) {
        this.web = web;
        this.remembered = web.remembered();
    }

    /**
     * What the page shows.
     *
     * @param sentence the answer in words
     * @param facts numbers with their ranges; empty without records
     * @param windows how far back the picture can reach
     * @param picture points a round over time, or null without any
     */
    public record View(
            String sentence,
            List<Fact> facts,
            List<Window> windows,
            @Nullable Picture picture) {}

    /** A number in words. */
    public record Fact(String name, String value, String says) {}

    /** A choice of how far back to look; 0 days is all there is. */
    public record Window(int days, String name, boolean chosen) {}

    void show(Context ctx) {
        Player player = web.player(ctx);
        int days = days(ctx.queryParam("days"));
        Remembered.Found<View> found =
                remembered.get(player, web.today(), String.valueOf(days), () -> view(player, days));
        web.show(ctx, "form", web.texts().of("form.title"), Map.of("view", found.value(), "behind", found.behind()));
    }

    private static int days(@Nullable String asked) {
        return DAYS.stream()
                .filter(days -> String.valueOf(days).equals(asked))
                .findFirst()
                .orElse(FIRST_DAYS);
    }

    private View view(Player player, int days) {
        Skill skill = web.skills().skill(player.id(), web.today());
        FormAnswer answer = skill.form(TREND_DAYS);
        List<Window> windows = DAYS.stream()
                .map(each -> new Window(each, web.texts().of("form.window." + each), each == days))
                .toList();
        return new View(
                answer.sentence(),
                answer instanceof Form form ? facts(form) : List.of(),
                windows,
                picture(skill, days));
    }

    private List<Fact> facts(Form form) {
        return List.of(
                fact("ppr", form.pointsPerRound(), 1),
                fact("level", form.level(), 1),
                fact("in", form.inHole(), 100),
                fact("on", form.onBoard(), 100),
                fact("four", form.fourBaggers(), 100));
    }

    private Fact fact(String key, Interval interval, double scale) {
        Interval scaled = new Interval(scale * interval.estimate(), scale * interval.low(), scale * interval.high());
        return new Fact(
                web.texts().of("form.fact." + key),
                web.texts().of("form.range", Numbers.one(scaled.low()), Numbers.one(scaled.high())),
                web.texts().of("form.fact." + key + ".about", Numbers.one(scaled.estimate())));
    }

    private @Nullable Picture picture(Skill skill, int days) {
        LocalDate from = days == 0 ? LocalDate.MIN : web.today().minusDays(days - 1L);
        int each = 1;
        while (skill.stretches(each, from) > (each == 1 ? MOST_DAYS_DRAWN : MOST_POINTS)) {
            each = each == 1 ? 7 : 2 * each;
        }
        List<DayForm> history = skill.history(each, from);
        if (history.isEmpty()) {
            return null;
        }
        LocalDate first = history.get(0).from();
        long span = web.today().toEpochDay() - first.toEpochDay();
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
                            single
                                    ? Numbers.day(day.to())
                                    : Numbers.day(day.from()) + " \u2013 " + Numbers.day(day.to()),
                            String.valueOf(day.throwsCounted()),
                            Numbers.one(day.pointsPerRound().estimate()),
                            Numbers.range(day.pointsPerRound())));
        }
        String description = web.texts()
                .of(
                        single ? "form.picture.days" : "form.picture.stretches",
                        history.size(),
                        each,
                        Numbers.day(first),
                        Numbers.day(history.get(history.size() - 1).to()));
        return Pictures.overTime(
                web.texts().of("form.picture"),
                description,
                new DataTable(
                        List.of(
                                web.texts().of(single ? "form.table.day" : "form.table.days"),
                                web.texts().of("form.table.bags"),
                                web.texts().of("form.table.ppr"),
                                web.texts().of("form.table.range")),
                        rows),
                history.stream()
                        .map(day -> new Pictures.Dated(middle(day), day.pointsPerRound()))
                        .toList(),
                band);
    }

    private static LocalDate middle(DayForm day) {
        return LocalDate.ofEpochDay((day.from().toEpochDay() + day.to().toEpochDay()) / 2);
    }
}
