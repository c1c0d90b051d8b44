package boardside.app.web;

import boardside.app.practice.Player;
import boardside.app.record.Throws;
import boardside.app.report.DataTable;
import boardside.app.report.Picture;
import boardside.app.report.ThrowPictures;
import boardside.engine.physics.Board;
import boardside.engine.physics.Range;
import boardside.engine.physics.SpeedSheet;
import boardside.engine.physics.ThrowAdvice;
import boardside.engine.physics.ThrowFit;
import boardside.engine.physics.ThrowFit.Parameter;
import boardside.engine.rules.Face;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.StringJoiner;
import org.jspecify.annotations.Nullable;

/** How the player throws: the speed sheet, the spread over the board, and what would bring more points. */
public final class ThrowsPage {
    /** A narrower range than this share of what was believed before is told by the records. */
    private static final double TOLD = 0.3;

    /** A throw harder by less than this is as hard, in hundredths. */
    private static final double SAME = 0.05;

    /** More of a gain than this, points a bag, is worth aiming elsewhere for. */
    private static final double WORTH = 0.02;

    private final Web web;
    private final Remembered<View> remembered;

    ThrowsPage(Web web) {
        this.web = web;
        remembered = web.remembered();
    }

    /** A bag to choose. */
    public record Choice(int index, String name, boolean chosen) {}

    /** A bag on the speed sheet: a sentence or two for each kind of boards. */
    public record Sheet(String name, List<String> lines) {}

    /**
     * What the page shows.
     *
     * @param said from what it is told, in a sentence
     * @param worth what a throw brings and what would bring more, in sentences
     * @param open what the records cannot tell, in sentences
     * @param watch address of a throw that moves
     */
    public record View(
            List<Choice> choices,
            String said,
            List<String> worth,
            List<String> open,
            Picture picture,
            String unit,
            List<Sheet> sheets,
            String watch) {}

    void show(Context ctx) {
        Player player = web.player(ctx);
        Look look = web.look(ctx);
        int asked = index(ctx);
        web.showFound(
                ctx,
                "throws",
                web.texts().of("throws.title"),
                remembered.soon(
                        player,
                        web.today(),
                        asked + " " + look.units(),
                        () -> view(look, Throws.of(web.records(), player.id(), web.today()), asked)),
                "working.throws");
    }

    private static int index(Context ctx) {
        String asked = Objects.requireNonNullElse(ctx.queryParam("bag"), "");
        return asked.matches("\\d{1,3}") ? Integer.parseInt(asked) : 0;
    }

    private View view(Look look, Throws all, int asked) {
        int chosen = asked < all.groups().size() ? asked : 0;
        Throws.Group group = all.groups().get(chosen);
        Optional<ThrowFit.Day> today = all.today();
        List<Choice> choices = new ArrayList<>();
        List<Sheet> sheets = new ArrayList<>();
        for (int i = 0; i < all.groups().size(); i++) {
            choices.add(new Choice(i, name(web.texts(), all.groups().get(i)), i == chosen));
            sheets.add(sheet(look, all.groups().get(i), today));
        }
        return new View(
                choices,
                from(group),
                worth(look, group.advice()),
                open(look, group),
                picture(look, group),
                unit(look),
                sheets,
                WatchPage.path(chosen, 0, 0));
    }

    /** What the answers rest on: how many bags, and what is known of them beside how they ended. */
    private String from(Throws.Group group) {
        if (group.bags() == 0) {
            return web.texts().of("throws.believed");
        }
        StringJoiner said = new StringJoiner(" ");
        said.add(web.texts().of("throws.from", group.bags()));
        for (Map.Entry<String, Integer> more : List.of(
                Map.entry("throws.from.narrow", group.narrow()),
                Map.entry("throws.from.told", group.told()),
                Map.entry("throws.from.tapped", group.tapped()))) {
            if (more.getValue() > 0) {
                said.add(web.texts().of(more.getKey(), more.getValue()));
            }
        }
        return said.toString();
    }

    /** What a bag's face is called. */
    static String name(Texts texts, Throws.Group group) {
        return name(texts, group.name(), group.key().face());
    }

    static String name(Texts texts, String bag, @Nullable Face face) {
        String name = bag.isEmpty() ? texts.of("throws.unnamed") : bag;
        return face == null ? name : texts.of("throws.name." + face.word(), name);
    }

    private String unit(Look look) {
        return unit(web.texts(), look);
    }

    static String unit(Texts texts, Look look) {
        return texts.of("throws.unit." + look.units());
    }

    /** A length with its range, in whole units. */
    static String length(Look look, Range inches) {
        double per = Units.perInch(look);
        return Math.round(per * inches.estimate()) + " (" + Math.round(per * inches.low()) + "\u2013"
                + Math.round(per * inches.high()) + ")";
    }

    /** A length with its range, in tenths of units. */
    static String tenths(Look look, Range inches) {
        double per = Units.perInch(look);
        return Numbers.one(per * inches.estimate()) + " (" + Numbers.one(per * inches.low()) + "\u2013"
                + Numbers.one(per * inches.high()) + ")";
    }

    /** A chance with its range, in hundredths. */
    static String percent(Range chance) {
        return Numbers.percent(chance.estimate()) + " (" + Math.round(100 * chance.low()) + "\u2013"
                + Math.round(100 * chance.high()) + ")";
    }

    private Sheet sheet(Look look, Throws.Group group, Optional<ThrowFit.Day> today) {
        SpeedSheet.Sheet sheet = group.sheet();
        List<String> lines = new ArrayList<>();
        today.ifPresent(day -> lines.add(row(look, "throws.sheet.today", group.today(day.factor()))));
        lines.add(row(look, "throws.sheet.usual", sheet.usual()));
        lines.add(row(look, "throws.sheet.slower", sheet.slower()));
        lines.add(row(look, "throws.sheet.faster", sheet.faster()));
        return new Sheet(name(web.texts(), group), lines);
    }

    /** How a bag is thrown on some boards: how far it slides, where to land it, and how hard to throw it. */
    private String row(Look look, String boards, SpeedSheet.Row row) {
        String landing = row.landing().estimate() < 0
                ? web.texts().of("throws.sheet.steeper")
                : web.texts().of("throws.sheet.landing", length(look, row.landing()), unit(look));
        return web.texts().of(boards, length(look, row.slide()), unit(look)) + " " + landing + " "
                + harder(row.harder());
    }

    private String harder(Range harder) {
        double percent = 100 * harder.estimate();
        if (Math.abs(percent) < SAME && harder.width() < SAME / 100) {
            return web.texts().of("throws.usual");
        }
        if (harder.low() < 0 && harder.high() > 0) {
            return web.texts().of("throws.about", Numbers.one(-100 * harder.low()), Numbers.one(100 * harder.high()));
        }
        return web.texts()
                .of(
                        percent > 0 ? "throws.harder" : "throws.softer",
                        Numbers.one(Math.abs(percent)),
                        Numbers.one(100 * Math.min(Math.abs(harder.low()), Math.abs(harder.high()))),
                        Numbers.one(100 * Math.max(Math.abs(harder.low()), Math.abs(harder.high()))));
    }

    private List<String> worth(Look look, ThrowAdvice advice) {
        List<String> worth = new ArrayList<>();
        worth.add(web.texts().of("throws.in", percent(advice.in()), percent(advice.on()), percent(advice.off())));
        worth.add(web.texts().of("throws.half.across", percent(advice.halfAcross())));
        worth.add(web.texts().of("throws.half.along", percent(advice.halfAlong())));
        worth.add(web.texts().of("throws.narrow", percent(advice.narrowKept()), percent(advice.kept())));
        double beyond = advice.best().estimate() - Board.HOLE_Y;
        String place = web.texts()
                .of(
                        beyond < 0 ? "throws.aim.short" : "throws.aim.long",
                        Numbers.one(Math.abs(beyond) * Units.perInch(look)),
                        unit(look));
        worth.add(
                advice.gain().estimate() < WORTH
                        ? web.texts().of("throws.aim.kept", place)
                        : web.texts()
                                .of(
                                        "throws.aim.better",
                                        place,
                                        Numbers.one(4 * advice.gain().estimate()),
                                        Numbers.one(4 * advice.gain().low()),
                                        Numbers.one(4 * advice.gain().high())));
        return worth;
    }

    private List<String> open(Look look, Throws.Group group) {
        ThrowFit fit = group.fit();
        List<String> open = new ArrayList<>();
        open.add(web.texts()
                .of(
                        "throws.spread",
                        tenths(look, fit.range(Parameter.SPREAD_X)),
                        tenths(look, fit.range(Parameter.SPREAD_ALONG)),
                        unit(look)));
        open.add(web.texts()
                .of(
                        "throws.told",
                        Math.round(100 * fit.told(Parameter.SPREAD_X)),
                        Math.round(100 * fit.told(Parameter.SPREAD_ALONG))));
        if (fit.range(Parameter.X).low() < 0 && fit.range(Parameter.X).high() > 0) {
            open.add(web.texts().of("throws.open.side"));
        }
        if (group.narrow() == 0) {
            open.add(web.texts().of("throws.open.narrow"));
        }
        if (group.told() == 0) {
            open.add(web.texts().of("throws.open.misses"));
        }
        if (fit.told(Parameter.FRICTION) < TOLD) {
            open.add(web.texts().of("throws.open.friction"));
        }
        return open;
    }

    private Picture picture(Look look, Throws.Group group) {
        ThrowFit fit = group.fit();
        List<List<String>> rows = List.of(
                row("throws.data.x", tenths(look, fit.range(Parameter.X)), look),
                row("throws.data.reach", tenths(look, fit.range(Parameter.REACH)), look),
                row("throws.data.across", tenths(look, fit.range(Parameter.SPREAD_X)), look),
                row("throws.data.along", tenths(look, fit.range(Parameter.SPREAD_ALONG)), look));
        return ThrowPictures.spread(
                web.texts().of("throws.picture"),
                web.texts().of("throws.picture.about"),
                new DataTable(
                        List.of(web.texts().of("throws.data.what"), web.texts().of("throws.data.value")), rows),
                web.texts().of("throws.picture.front"),
                fit.mean());
    }

    private List<String> row(String key, String value, Look look) {
        return List.of(web.texts().of(key), value + " " + unit(look));
    }
}
