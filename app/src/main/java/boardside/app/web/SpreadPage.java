package boardside.app.web;

import boardside.app.practice.Player;
import boardside.app.record.Spreads;
import boardside.app.record.Spreads.Spread;
import boardside.app.report.DataTable;
import boardside.app.report.Picture;
import boardside.app.report.Shape;
import boardside.app.report.SkillPictures;
import boardside.engine.skill.BivariateNormal;
import boardside.engine.skill.Dispersion;
import boardside.engine.skill.Interval;
import boardside.engine.skill.Marks;
import boardside.engine.skill.Marks.Place;
import boardside.engine.skill.Verdict;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Where the player's bags go, drawn on a board. */
public final class SpreadPage {
    /** Of a normal law in two directions, half lies within so many deviations of the middle: sqrt(2 ln 2). */
    private static final double HALF = Math.sqrt(2 * Math.log(2));

    private final Web web;
    private final Remembered<View> remembered;

    SpreadPage(Web web) {
        this.web = web;
        this.remembered = web.remembered();
    }

    /** What the page shows, a part for each kind of throw. */
    public record View(List<Part> parts) {}

    /** One kind of throw: what it says, a sentence each, and a drawing where there are enough taps. */
    public record Part(
            String title, List<String> says, @Nullable Picture picture) {}

    void show(Context ctx) {
        Player player = web.player(ctx);
        Look look = web.look(ctx);
        web.showFound(
                ctx,
                "spread",
                web.texts().of("spread.title"),
                remembered.soon(player, web.today(), look.units(), () -> view(player, look)));
    }

    private View view(Player player, Look look) {
        return new View(Spreads.of(web.records(), player.id(), web.today()).stream()
                .map(spread -> part(spread, look))
                .toList());
    }

    private Part part(Spread spread, Look look) {
        Texts texts = web.texts();
        Marks marks = spread.marks();
        String title = texts.of(
                "spread.part",
                texts.of("spread." + marks.flight().name().toLowerCase(Locale.ROOT)),
                texts.of("board." + spread.board().word()));
        List<String> says = new ArrayList<>();
        int missed = count(marks, Place.LEFT)
                + count(marks, Place.RIGHT)
                + count(marks, Place.SHORT)
                + count(marks, Place.LONG);
        if (missed > 0) {
            says.add(texts.of(
                    "spread.misses",
                    missed,
                    count(marks, Place.LEFT),
                    count(marks, Place.RIGHT),
                    count(marks, Place.SHORT),
                    count(marks, Place.LONG)));
        }
        if (spread.found().isEmpty()) {
            says.add(texts.of("spread.few", marks.points().size(), Dispersion.LEAST_POINTS));
            return new Part(title, says, null);
        }
        Dispersion found = spread.found().get();
        String unit = texts.of("spread.unit." + look.units());
        says.add(0, texts.of("spread.rests", found.bags(), found.points()));
        says.add(
                1,
                side("across", found.across(), found.x(), look, unit) + " "
                        + side("along", found.along(), found.y(), look, unit));
        says.add(2, texts.of("spread.half", length(look, found.half()), unit));
        found.hole()
                .ifPresent(hole -> says.add(texts.of(
                        "spread.hole",
                        Numbers.inHundred(hole.estimate()),
                        Numbers.inHundred(hole.low()),
                        Numbers.inHundred(hole.high()))));
        return new Part(title, says, picture(title, marks, found, look, unit));
    }

    private static int count(Marks marks, Place place) {
        return marks.others().getOrDefault(place, 0);
    }

    /** Where the centre lies on one axis, and how sure that is. */
    private String side(String axis, Verdict verdict, Interval offset, Look look, String unit) {
        String way = offset.estimate() > 0 ? "more" : "less";
        String key = "spread." + axis + "." + (verdict == Verdict.OPEN ? "open" : way);
        return web.texts().of(key, length(look, Math.abs(offset.estimate())), unit, range(look, offset)) + " "
                + web.texts().of("spread.verdict." + verdict.word());
    }

    private static String length(Look look, double inches) {
        return Numbers.one(inches * Units.perInch(look));
    }

    private static String range(Look look, Interval interval) {
        return signed(interval.low() * Units.perInch(look)) + " to " + signed(interval.high() * Units.perInch(look));
    }

    private static String signed(double value) {
        String text = String.format(Locale.ROOT, "%+.1f", value).replace('-', '\u2212');
        return text.substring(1).equals("0.0") ? "0.0" : text;
    }

    private Picture picture(String title, Marks marks, Dispersion found, Look look, String unit) {
        Texts texts = web.texts();
        BivariateNormal law = new BivariateNormal(
                found.x().estimate(),
                found.spreadX().estimate(),
                39 + found.y().estimate(),
                found.spreadY().estimate());
        List<List<String>> rows = List.of(
                row("spread.table.across", found.x(), look),
                row("spread.table.along", found.y(), look),
                row("spread.table.spread-across", found.spreadX(), look),
                row("spread.table.spread-along", found.spreadY(), look));
        return SkillPictures.board(
                title,
                texts.of("spread.picture.about", found.points()),
                new DataTable(
                        List.of(
                                texts.of("spread.table.what", unit),
                                texts.of("spread.table.estimate"),
                                texts.of("form.table.range")),
                        rows),
                marks.width(),
                marks.points().stream()
                        .map(point -> new Shape.Point(point.x(), point.y()))
                        .toList(),
                new Shape.Point(law.meanX(), law.meanY()),
                new Shape.Point(HALF * law.deviationX(), HALF * law.deviationY()));
    }

    private List<String> row(String key, Interval interval, Look look) {
        return List.of(web.texts().of(key), signed(interval.estimate() * Units.perInch(look)), range(look, interval));
    }
}
