package boardside.app.report;

import java.util.List;
import java.util.Locale;

/**
 * A picture: shapes in a view box, with words for those who do not see it and the data behind it. A width of
 * {@value #WIDTH} is a phone's, so that text of size 12 is 12 px there.
 *
 * @param title what it is a picture of
 * @param description what it shows, in a sentence
 * @param height of the view box
 * @param shapes in the order painted
 * @param data the numbers
 */
public record Picture(String title, String description, double height, List<Shape> shapes, DataTable data) {
    /** Width of every view box. */
    public static final int WIDTH = 328;

    /** The smallest text. */
    static final double TEXT = 12;

    /** List copied. */
    public Picture {
        shapes = List.copyOf(shapes);
    }

    /**
     * For a page, coloured by its style sheet.
     *
     * @param id unique on the page, letters, digits and hyphens
     */
    public String toPage(String id) {
        if (!id.matches("[A-Za-z][A-Za-z0-9-]*")) {
            throw new IllegalArgumentException("an id is letters, digits and hyphens, not \"" + id + "\"");
        }
        StringBuilder out = new StringBuilder()
                .append("<svg class=\"picture\" role=\"img\" aria-labelledby=\"")
                .append(id)
                .append("-t ")
                .append(id)
                .append("-d\" viewBox=\"0 0 ")
                .append(WIDTH)
                .append(' ')
                .append(number(height))
                .append("\"><title id=\"")
                .append(id)
                .append("-t\">")
                .append(escape(title))
                .append("</title><desc id=\"")
                .append(id)
                .append("-d\">")
                .append(escape(description))
                .append("</desc>");
        for (Shape shape : shapes) {
            draw(out, shape, shape.paint().themed());
        }
        return out.append("</svg>").toString();
    }

    /** A document of its own with its colours written out, for print. */
    public String toPrint(Palette palette) {
        return toPrint(palette, WIDTH, "sans-serif");
    }

    /**
     * The same in another size and font.
     *
     * @param width pixels of 1/96 inch
     * @param family of the font
     */
    String toPrint(Palette palette, int width, String family) {
        long boxHeight = (long) Math.ceil(height);
        StringBuilder out = new StringBuilder()
                .append("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"")
                .append(width)
                .append("\" height=\"")
                .append((boxHeight * width + WIDTH - 1) / WIDTH)
                .append("\" viewBox=\"0 0 ")
                .append(WIDTH)
                .append(' ')
                .append(boxHeight)
                .append("\" font-family=\"")
                .append(escape(family))
                .append("\"><title>")
                .append(escape(title))
                .append("</title><desc>")
                .append(escape(description))
                .append("</desc>");
        for (Shape shape : shapes) {
            draw(out, shape, shape.paint().printed(palette));
        }
        return out.append("</svg>").toString();
    }

    private static void draw(StringBuilder out, Shape shape, String look) {
        if (shape instanceof Shape.Path path) {
            out.append("<path").append(look).append(" d=\"");
            char command = 'M';
            for (Shape.Point point : path.points()) {
                out.append(command).append(number(point.x())).append(' ').append(number(point.y()));
                command = 'L';
            }
            out.append(path.closed() ? "Z\"/>" : "\"/>");
        } else if (shape instanceof Shape.Box box) {
            out.append("<rect").append(look);
            attribute(out, "x", box.x());
            attribute(out, "y", box.y());
            attribute(out, "width", box.width());
            attribute(out, "height", box.height());
            out.append("/>");
        } else if (shape instanceof Shape.Disc disc) {
            out.append("<circle").append(look);
            attribute(out, "cx", disc.x());
            attribute(out, "cy", disc.y());
            attribute(out, "r", disc.radius());
            out.append("/>");
        } else {
            Shape.Label label = (Shape.Label) shape;
            out.append("<text").append(look);
            attribute(out, "x", label.x());
            attribute(out, "y", label.y());
            attribute(out, "font-size", label.size());
            if (label.anchor() != Shape.Anchor.START) {
                out.append(" text-anchor=\"")
                        .append(label.anchor().name().toLowerCase(Locale.ROOT))
                        .append('"');
            }
            out.append('>').append(escape(label.text())).append("</text>");
        }
    }

    private static void attribute(StringBuilder out, String name, double value) {
        out.append(' ').append(name).append("=\"").append(number(value)).append('"');
    }

    /**
     * A coordinate with at most two decimals.
     *
     * @throws IllegalArgumentException if it is not a finite number
     */
    static String number(double value) {
        if (!(Math.abs(value) < 1e6)) {
            throw new IllegalArgumentException("a coordinate is a finite number, not " + value);
        }
        long hundredths = Math.round(value * 100);
        if (hundredths % 100 == 0) {
            return String.valueOf(hundredths / 100);
        }
        String text = String.format(Locale.ROOT, "%.2f", hundredths / 100.0);
        return text.endsWith("0") ? text.substring(0, text.length() - 1) : text;
    }

    static String escape(String text) {
        StringBuilder out = new StringBuilder(text.length() + 16);
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                case '\'' -> out.append("&#39;");
                default -> out.append(Character.isISOControl(c) ? ' ' : c);
            }
        }
        return out.toString();
    }
}
