package boardside.app.report;

import boardside.app.report.Shape.Anchor;
import boardside.app.report.Shape.Disc;
import boardside.app.report.Shape.Label;
import boardside.app.report.Shape.Path;
import boardside.engine.tactics.Spot;
import java.util.ArrayList;
import java.util.List;

/** Pictures of a board seen from above, the thrower below. */
public final class BoardPictures {
    private static final double INCH = 6;
    private static final double TOP = 26;
    private static final double MIDDLE = Picture.WIDTH / 2.0;
    private static final double BOTTOM = TOP + Spot.LENGTH * INCH;

    private BoardPictures() {}

    /** Where a bag rests, and whether it did what it was to do. */
    public record Mark(Spot spot, boolean worked) {}

    /**
     * Where bags ended: a disc for one that did what it was to do, a cross for others, and how many left the board where.
     *
     * @param width of the board, inches
     * @param off bags that went off left, right, short and long
     */
    public static Picture rests(
            String title, String description, DataTable data, double width, List<Mark> marks, List<Integer> off) {
        List<Shape> shapes = new ArrayList<>();
        double left = MIDDLE - width / 2 * INCH;
        double right = MIDDLE + width / 2 * INCH;
        for (int row = 1; row < 8; row++) {
            double y = TOP + row * 6 * INCH;
            shapes.add(Path.line(Paint.GRID, left, y, right, y));
        }
        for (double lane : new double[] {-width / 6, width / 6}) {
            shapes.add(Path.line(Paint.GRID, MIDDLE + lane * INCH, TOP, MIDDLE + lane * INCH, BOTTOM));
        }
        for (double[] edge : new double[][] {
            {left, TOP, right, TOP},
            {left, BOTTOM, right, BOTTOM},
            {left, TOP, left, BOTTOM},
            {right, TOP, right, BOTTOM}
        }) {
            shapes.add(Path.line(Paint.AXIS, edge[0], edge[1], edge[2], edge[3]));
        }
        shapes.add(new Disc(Paint.BAND, MIDDLE, y(Spot.HOLE.y()), Spot.RADIUS * INCH));
        for (Mark mark : marks) {
            double x = MIDDLE + mark.spot().x() * INCH;
            double y = y(mark.spot().y());
            if (mark.worked()) {
                shapes.add(new Disc(Paint.IN, x, y, 5));
            } else {
                shapes.add(Path.line(Paint.OFF, x - 4, y - 4, x + 4, y + 4));
                shapes.add(Path.line(Paint.OFF, x + 4, y - 4, x - 4, y + 4));
            }
        }
        double middle = (TOP + BOTTOM) / 2;
        shapes.add(count(left - 8, middle, Anchor.END, off.get(0)));
        shapes.add(count(right + 8, middle, Anchor.START, off.get(1)));
        shapes.add(count(MIDDLE, BOTTOM + 20, Anchor.MIDDLE, off.get(2)));
        shapes.add(count(MIDDLE, TOP - 8, Anchor.MIDDLE, off.get(3)));
        return new Picture(title, description, BOTTOM + 28, shapes, data);
    }

    private static double y(double inches) {
        return TOP + (Spot.LENGTH - inches) * INCH;
    }

    private static Shape count(double x, double y, Anchor anchor, int number) {
        return new Label(number == 0 ? Paint.SOFT : Paint.INK, x, y, anchor, 16, String.valueOf(number));
    }
}
