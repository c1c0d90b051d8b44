package boardside.app.web;

import io.javalin.http.Context;
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
                        "spaces", SPACES));
    }
}
