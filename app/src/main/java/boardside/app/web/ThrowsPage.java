package boardside.app.web;

import boardside.app.practice.Player;
import boardside.app.record.SlideText;
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
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Face;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;

/** How the player throws: the speed sheet, the spread over the board, and what would bring more points. */
public final class ThrowsPage {
    /** A narrower range than this share of what was believed before is told by the records. */
    private static final double TOLD = 0.3;

    /** More of a gain than this, points a bag, is worth aiming elsewhere for. */
    private static final double WORTH = 0.02;

    private final Web web;
    private final Remembered<Known> remembered;
    private final Remembered<ThrowAdvice> advised;

    ThrowsPage(Web web) {
        this.web = web;
        remembered = web.remembered();
        advised = web.remembered();
    }

    private record Known(Throws all, List<SpeedSheet.Sheet> sheets) {
        static Known of(Throws all) {
            return new Known(all, all.sheet());
        }
    }

    /** A bag to choose. */
    public record Choice(int index, String name, boolean chosen) {}

    /** A bag's line of the speed sheet. */
    public record Sheet(String name, String slide, String landing, String harder, String slower, String faster) {}

    /**
     * What the page shows.
     *
     * @param said from what it is told, in a sentence
     * @param worth what a throw brings and what would bring more, in sentences
     * @param open what the records cannot tell, in sentences
     */
    public record View(
            List<Choice> choices,
            String said,
            List<String> worth,
            List<String> open,
            Picture picture,
            String unit,
            List<Sheet> sheets) {}

    /**
     * The slide test.
     *
     * @param slides as typed or tapped
     * @param conditions as chosen, or empty
     * @param faults what is wrong with the slides, a sentence each
     * @param answers what they say, in sentences; empty before any
     */
    public record TestView(
            List<Choice> choices, String slides, String conditions, List<String> faults, List<String> answers) {}

    /** Measures today's boards from a few slides; the answer is in the address and kept nowhere. */
    void test(Context ctx) {
        Player player = web.player(ctx);
        Look look = web.look(ctx);
        Throws all = known(player).value().all();
        int index = index(ctx, all);
        String text = Objects.requireNonNullElse(ctx.queryParam("slides"), "").strip();
        String said = Objects.requireNonNullElse(ctx.queryParam("conditions"), "");
        Conditions conditions = Arrays.stream(Conditions.values())
                .filter(each -> each.word().equals(said))
                .findFirst()
                .orElse(null);
        List<String> faults = new ArrayList<>();
        List<Throws.Slid> slides = SlideText.read(text, faults);
        List<String> answers = faults.isEmpty() && !slides.isEmpty()
                ? answers(look, Throws.test(all.groups().get(index), conditions, slides))
                : List.of();
        List<Choice> choices = new ArrayList<>();
        for (int i = 0; i < all.groups().size(); i++) {
            choices.add(new Choice(i, name(all.groups().get(i)), i == index));
        }
        ctx.status(faults.isEmpty() ? 200 : 422);
        web.show(
                ctx,
                "slides",
                web.texts().of("slides.title"),
                Map.of(
                        "view",
                        new TestView(choices, text, conditions == null ? "" : conditions.word(), faults, answers)));
    }

    private List<String> answers(Look look, ThrowFit.Day day) {
        double percent = 100 * (day.factor().estimate() - 1);
        boolean slower = day.probabilitySlower() > 0.5;
        double sure = slower ? day.probabilitySlower() : 1 - day.probabilitySlower();
        return List.of(
                web.texts().of("slides.length", day.slides(), length(look, day.slide()), unit(look)),
                web.texts()
                        .of(
                                slower ? "slides.slower" : "slides.faster",
                                Numbers.one(Math.abs(percent)),
                                Numbers.percent(sure)),
                web.texts()
                        .of(
                                "slides.friction",
                                hundredths(day.friction().estimate()),
                                hundredths(day.friction().low()),
                                hundredths(day.friction().high())));
    }

    private static String hundredths(double number) {
        return String.format(Locale.ROOT, "%.2f", number);
    }

    void show(Context ctx) {
        Player player = web.player(ctx);
        Remembered.Found<Known> found = known(player);
        Throws all = found.value().all();
        int index = index(ctx, all);
        Throws.Group group = all.groups().get(index);
        ThrowAdvice advice = advised.get(player, web.today(), String.valueOf(index), () -> Throws.advice(group))
                .value();
        web.show(
                ctx,
                "throws",
                web.texts().of("throws.title"),
                Map.of("view", view(web.look(ctx), found.value(), index, advice), "behind", found.behind()));
    }

    private Remembered.Found<Known> known(Player player) {
        return remembered.get(
                player, web.today(), "", () -> Known.of(Throws.of(web.records(), player.id(), web.today())));
    }

    private static int index(Context ctx, Throws all) {
        String asked = Objects.requireNonNullElse(ctx.queryParam("bag"), "");
        for (int i = 0; i < all.groups().size(); i++) {
            if (asked.equals(String.valueOf(i))) {
                return i;
            }
        }
        return 0;
    }

    private View view(Look look, Known known, int chosen, ThrowAdvice advice) {
        Throws all = known.all();
        Throws.Group group = all.groups().get(chosen);
        List<Choice> choices = new ArrayList<>();
        List<Sheet> sheets = new ArrayList<>();
        for (int i = 0; i < all.groups().size(); i++) {
            choices.add(new Choice(i, name(all.groups().get(i)), i == chosen));
            sheets.add(sheet(look, all.groups().get(i), known.sheets().get(i)));
        }
        int bags = group.fit().records().bags();
        return new View(
                choices,
                bags == 0
                        ? web.texts().of("throws.believed")
                        : web.texts().of("throws.from", bags, group.narrow(), group.told()),
                worth(look, advice),
                open(look, group),
                picture(look, group),
                unit(look),
                sheets);
    }

    private String name(Throws.Group group) {
        String name = group.name().isEmpty() ? web.texts().of("throws.unnamed") : group.name();
        Face face = group.key().face();
        return face == null ? name : web.texts().of("throws.name." + face.word(), name);
    }

    private String unit(Look look) {
        return web.texts().of("throws.unit." + look.units());
    }

    private static String length(Look look, Range inches) {
        double per = Units.perInch(look);
        return Math.round(per * inches.estimate()) + " (" + Math.round(per * inches.low()) + "\u2013"
                + Math.round(per * inches.high()) + ")";
    }

    private static String tenths(Look look, Range inches) {
        double per = Units.perInch(look);
        return Numbers.one(per * inches.estimate()) + " (" + Numbers.one(per * inches.low()) + "\u2013"
                + Numbers.one(per * inches.high()) + ")";
    }

    private static String percent(Range chance) {
        return Numbers.percent(chance.estimate()) + " (" + Math.round(100 * chance.low()) + "\u2013"
                + Math.round(100 * chance.high()) + ")";
    }

    private Sheet sheet(Look look, Throws.Group group, SpeedSheet.Sheet sheet) {
        Range harder = sheet.usual().harder();
        double percent = 100 * harder.estimate();
        String than = Math.abs(percent) < 0.05
                ? web.texts().of("throws.usual")
                : web.texts()
                        .of(
                                percent > 0 ? "throws.harder" : "throws.softer",
                                Numbers.one(Math.abs(percent)),
                                Numbers.one(100 * Math.min(Math.abs(harder.low()), Math.abs(harder.high()))),
                                Numbers.one(100 * Math.max(Math.abs(harder.low()), Math.abs(harder.high()))));
        if (harder.low() < 0 && harder.high() > 0 && Math.abs(percent) >= 0.05) {
            than = web.texts().of("throws.about", Numbers.one(-100 * harder.low()), Numbers.one(100 * harder.high()));
        }
        return new Sheet(
                name(group),
                length(look, sheet.usual().slide()),
                landing(look, sheet.usual().landing()),
                than,
                length(look, sheet.slower().slide()),
                length(look, sheet.faster().slide()));
    }

    private String landing(Look look, Range landing) {
        return landing.estimate() < 0
                ? web.texts().of("throws.sheet.steeper")
                : web.texts().of("throws.sheet.landing", length(look, landing), unit(look));
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
