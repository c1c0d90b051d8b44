package boardside.app.report;

import java.util.Map;

/** Colours by the names of the theme's custom properties, for where no style sheet reaches. */
public record Palette(Map<String, String> colours) {
    /** Dark on white, as paper wants it; the colours of the light theme in tokens.css. */
    public static final Palette PAPER = new Palette(Map.of(
            "ink", "#1c2826",
            "ink-soft", "#4b5956",
            "surface", "#fffdf8",
            "line", "#8a8270",
            "grid", "#d9d2c2",
            "band", "#b9d6d0",
            "mark", "#0a5a58",
            "in", "#0a5a58",
            "on", "#8f4d00",
            "off", "#5c5c5c"));

    /** Copied. */
    public Palette {
        colours = Map.copyOf(colours);
    }

    String colour(String name) {
        String colour = colours.get(name);
        if (colour == null) {
            throw new IllegalArgumentException("the palette has no colour \"" + name + "\"; add it");
        }
        return colour;
    }
}
