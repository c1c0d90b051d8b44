package boardside.app.web;

import boardside.app.report.BoardPictures;
import boardside.app.report.DataTable;
import boardside.app.report.Picture;
import boardside.app.report.Pictures;
import boardside.app.report.SeasonPictures;
import boardside.engine.physics.Board;
import boardside.engine.rules.Side;
import boardside.engine.skill.Interval;
import boardside.engine.tactics.Lying;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;

/** The visual language in one page, drawn by the styles it shows; only with the example's records, for whoever works on pages. */
final class StylePage {
    private static final List<String> COLOURS = List.of(
            "paper",
            "surface",
            "ink",
            "ink-soft",
            "line",
            "accent",
            "accent-ink",
            "accent-wash",
            "in",
            "on",
            "off",
            "warn",
            "warn-wash",
            "band",
            "mark",
            "grid");

    private static final List<String> SIZES = List.of("text-s", "text", "text-l", "text-xl", "text-huge");
    private static final List<String> SPACES = List.of("space-1", "space-2", "space-3", "space-4", "space-5");

    private final Web web;

    StylePage(Web web) {
        this.web = web;
    }

    void show(Context ctx) {
        if (!web.options().demo()) {
            throw new Refusal(404, web.texts().of("fault.nothing"));
        }
        web.show(
                ctx,
                "style",
                web.texts().of("style.title"),
                Map.of(
                        "themes", Look.THEMES.subList(1, Look.THEMES.size()),
                        "colours", COLOURS,
                        "sizes", SIZES,
                        "spaces", SPACES,
                        "pictures", pictures()));
    }

    /** One of each kind, of made-up values. */
    private List<Picture> pictures() {
        Texts texts = web.texts();
        DataTable none = new DataTable(List.of(texts.of("style.pictures")), List.of());
        String about = texts.of("style.pictures.about");
        LocalDate day = LocalDate.of(2026, 1, 5);
        List<Pictures.Named> named = List.of(
                new Pictures.Named("a", new Interval(42, 30, 55)), new Pictures.Named("b", new Interval(71, 60, 80)));
        return List.of(
                Pictures.strip(
                        texts.of("style.shapes"),
                        about,
                        none,
                        List.of(new Pictures.Bags(2, 1, 1), new Pictures.Bags(4, 0, 0), new Pictures.Bags(0, 3, 1))),
                Pictures.overTime(
                        texts.of("form.picture"),
                        about,
                        none,
                        List.of(
                                new Pictures.Dated(day, new Interval(5.5, 4.5, 6.5)),
                                new Pictures.Dated(day.plusDays(20), new Interval(6.5, 6, 7))),
                        Map.of(day, new Interval(5.8, 5, 6.5), day.plusDays(20), new Interval(6.2, 5.8, 6.7)),
                        texts.dates()),
                BoardPictures.situations(
                        texts.of("rates.situations"),
                        about,
                        none,
                        List.of(new BoardPictures.Asked(
                                texts.of("situation.gate"),
                                List.of(new Lying(0, 31, Side.VERSUS), new Lying(-4, 24, Side.ME)),
                                Board.REGULATION_WIDTH,
                                named))),
                SeasonPictures.endings(
                        texts.of("season.picture"),
                        about,
                        none,
                        List.of(
                                new SeasonPictures.Ending("a", List.of(0.7, 0.3), 1),
                                new SeasonPictures.Ending("b", List.of(0.3, 0.7), 2)),
                        texts.of("season.picture.place")));
    }
}
