package boardside.app.report;

import org.jspecify.annotations.Nullable;

/**
 * What a shape is for; how it looks follows from that. On a page a shape carries the CSS class, and the colours come from
 * the theme's custom properties; in print the colours are written out.
 */
public enum Paint {
    INK("p-ink", "ink", null, 0),
    SOFT("p-soft", "ink-soft", null, 0),
    PAPER("p-paper", "surface", null, 0),
    GRID("p-grid", null, "grid", 1),
    AXIS("p-axis", null, "line", 1),
    BAND("p-band", "band", null, 0),
    LINE("p-line", null, "mark", 2),
    WHISKER("p-whisker", null, "ink-soft", 1.5),
    MARK("p-mark", "mark", null, 0),
    IN("p-in", "in", null, 0),
    ON("p-on", null, "on", 2.4),
    OFF("p-off", null, "off", 2.4);

    private final String css;
    private final @Nullable String fill;
    private final @Nullable String stroke;
    private final double width;

    Paint(String css, @Nullable String fill, @Nullable String stroke, double width) {
        this.css = css;
        this.fill = fill;
        this.stroke = stroke;
        this.width = width;
    }

    /** Attributes for a page. */
    String themed() {
        return " class=\"" + css + "\"";
    }

    /** Attributes for print. */
    String printed(Palette palette) {
        return " fill=\"" + (fill == null ? "none" : palette.colour(fill)) + "\""
                + (stroke == null
                        ? ""
                        : " stroke=\"" + palette.colour(stroke) + "\" stroke-width=\"" + Picture.number(width) + "\"");
    }

    /** The rules of the style sheet for all paints, with the theme's custom properties. */
    public static String styles() {
        StringBuilder css = new StringBuilder();
        for (Paint paint : values()) {
            css.append('.')
                    .append(paint.css)
                    .append(" { fill: ")
                    .append(paint.fill == null ? "none" : "var(--" + paint.fill + ")");
            if (paint.stroke != null) {
                css.append("; stroke: var(--")
                        .append(paint.stroke)
                        .append("); stroke-width: ")
                        .append(Picture.number(paint.width));
            }
            css.append("; }\n");
        }
        return css.toString();
    }
}
