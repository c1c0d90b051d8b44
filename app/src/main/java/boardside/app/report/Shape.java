package boardside.app.report;

import java.util.List;

/** One thing drawn; units are those of the picture's view box, y downward. */
public sealed interface Shape {
    /** What it is for. */
    Paint paint();

    /** A line through points, or (closed) the area within. */
    record Path(Paint paint, List<Point> points, boolean closed) implements Shape {
        /** List copied. */
        public Path {
            points = List.copyOf(points);
        }

        static Path line(Paint paint, double x1, double y1, double x2, double y2) {
            return new Path(paint, List.of(new Point(x1, y1), new Point(x2, y2)), false);
        }

        /** A rectangle by its top left corner. */
        static Path frame(Paint paint, double x, double y, double width, double height) {
            return new Path(
                    paint,
                    List.of(
                            new Point(x, y),
                            new Point(x + width, y),
                            new Point(x + width, y + height),
                            new Point(x, y + height)),
                    true);
        }
    }

    /** A rectangle by its top left corner. */
    record Box(Paint paint, double x, double y, double width, double height) implements Shape {}

    /** A disc. */
    record Disc(Paint paint, double x, double y, double radius) implements Shape {}

    /** A text on its base line. */
    record Label(Paint paint, double x, double y, Anchor anchor, double size, String text) implements Shape {}

    /** A point. */
    record Point(double x, double y) {}

    /** Which end of a text its x is. */
    enum Anchor {
        START,
        MIDDLE,
        END
    }
}
