package boardside.app.report;

import boardside.app.report.Shape.Anchor;
import boardside.app.report.Shape.Box;
import boardside.app.report.Shape.Disc;
import boardside.app.report.Shape.Label;
import boardside.app.report.Shape.Path;
import boardside.app.report.Shape.Point;
import boardside.engine.skill.Interval;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Pictures of what the skill model says. Words come from the caller. */
public final class SkillPictures {
    private static final double RIGHT = Picture.WIDTH - 6;

    private SkillPictures() {}

    /**
     * A value for each pair of two things: a row of boxes under the name of each of the first, the best one framed.
     *
     * @param columns names of the second thing, 1 to 3
     * @param rows names of the first thing
     * @param cells by row, then column; null where that pair was never thrown
     */
    public static Picture grid(
            String title,
            String description,
            DataTable data,
            List<String> columns,
            List<String> rows,
            List<List<@Nullable Interval>> cells) {
        double width = (RIGHT - 6) / columns.size();
        double best = cells.stream()
                .flatMap(List::stream)
                .mapToDouble(cell -> cell == null ? -1 : cell.estimate())
                .max()
                .orElse(-1);
        List<Shape> shapes = new ArrayList<>();
        for (int c = 0; c < columns.size(); c++) {
            shapes.add(new Label(Paint.INK, 6 + c * width + width / 2, 16, Anchor.MIDDLE, 14, columns.get(c)));
        }
        double row = 66;
        for (int r = 0; r < rows.size(); r++) {
            double top = 24 + r * row;
            shapes.add(new Label(Paint.SOFT, 6, top + 14, Anchor.START, 13, rows.get(r)));
            for (int c = 0; c < columns.size(); c++) {
                Interval cell = cells.get(r).get(c);
                double left = 6 + c * width;
                double centre = left + width / 2;
                if (cell == null) {
                    shapes.add(new Label(Paint.SOFT, centre, top + 42, Anchor.MIDDLE, 14, "\u2013"));
                    continue;
                }
                shapes.add(new Box(Paint.BAND, left, top + 20, width - 6, 40));
                if (cell.estimate() == best) {
                    shapes.add(Path.frame(Paint.LINE, left, top + 20, width - 6, 40));
                }
                shapes.add(new Label(Paint.INK, centre - 3, top + 37, Anchor.MIDDLE, 15, one(cell.estimate())));
                shapes.add(new Label(
                        Paint.INK,
                        centre - 3,
                        top + 54,
                        Anchor.MIDDLE,
                        Picture.TEXT,
                        one(cell.low()) + "\u2013" + one(cell.high())));
            }
        }
        return new Picture(title, description, 24 + rows.size() * row, shapes, data);
    }

    /** Chances of about the same size, and how often what they were of came true. */
    public record Kept(double stated, Interval happened) {}

    /** What was said against what happened: on the straight line, both agree. */
    public static Picture reliability(
            String title, String description, DataTable data, List<Kept> bins, String across, String up) {
        double top = 24;
        double bottom = 264;
        Scale x = new Scale(0, 1, 40, RIGHT - 12);
        Scale y = new Scale(0, 1, bottom, top);
        List<Shape> shapes = new ArrayList<>();
        shapes.add(new Label(Paint.INK, 4, 14, Anchor.START, 13, up + " \u2191"));
        for (int tick = 0; tick <= 100; tick += 25) {
            double share = tick / 100.0;
            shapes.add(Path.line(Paint.GRID, x.at(0), y.at(share), x.at(1), y.at(share)));
            shapes.add(new Label(
                    Paint.SOFT, x.at(0) - 6, y.at(share) + 4, Anchor.END, Picture.TEXT, String.valueOf(tick)));
            shapes.add(
                    new Label(Paint.SOFT, x.at(share), bottom + 18, Anchor.MIDDLE, Picture.TEXT, String.valueOf(tick)));
        }
        shapes.add(Path.line(Paint.AXIS, x.at(0), y.at(0), x.at(1), y.at(1)));
        for (Kept bin : bins) {
            double at = x.at(bin.stated());
            shapes.add(Path.line(
                    Paint.WHISKER,
                    at,
                    y.at(bin.happened().low()),
                    at,
                    y.at(bin.happened().high())));
            shapes.add(new Disc(Paint.MARK, at, y.at(bin.happened().estimate()), 4));
        }
        shapes.add(new Label(Paint.INK, RIGHT, bottom + 38, Anchor.END, 13, across + " \u2192"));
        return new Picture(title, description, bottom + 44, shapes, data);
    }

    /**
     * A board from above with points on it, and the ellipse that holds half of what is expected.
     *
     * @param width of the board, inches
     * @param points where bags lay, inches from the middle and from the front edge
     * @param centre of the ellipse, in the same way
     * @param radii half axes of the ellipse across and along, inches
     */
    public static Picture board(
            String title,
            String description,
            DataTable data,
            double width,
            List<Point> points,
            Point centre,
            Point radii) {
        // 7 px an inch: the board is 168 wide and 336 high.
        double scale = 7;
        double middle = Picture.WIDTH / 2.0;
        double top = 6;
        double bottom = top + 48 * scale;
        double half = width / 2 * scale;
        List<Shape> shapes = new ArrayList<>();
        shapes.add(outline(middle, top + 24 * scale, half, 24 * scale, Paint.AXIS, true));
        shapes.add(new Disc(Paint.BAND, middle, bottom - 39 * scale, 3 * scale));
        shapes.add(outline(middle, bottom - 39 * scale, 3 * scale, 3 * scale, Paint.AXIS, false));
        for (Point point : points) {
            shapes.add(new Disc(Paint.SOFT, middle + point.x() * scale, bottom - point.y() * scale, 2.5));
        }
        double x = middle + centre.x() * scale;
        double y = bottom - centre.y() * scale;
        shapes.add(outline(x, y, radii.x() * scale, radii.y() * scale, Paint.LINE, false));
        shapes.add(new Disc(Paint.MARK, x, y, 4));
        return new Picture(title, description, bottom + 6, shapes, data);
    }

    /** A rectangle or an ellipse by its centre and half axes, kept within the picture. */
    private static Path outline(double x, double y, double across, double along, Paint paint, boolean square) {
        List<Point> points = new ArrayList<>();
        int corners = square ? 4 : 60;
        for (int i = 0; i < corners; i++) {
            double turn = 2 * Math.PI * (i + (square ? 0.5 : 0)) / corners;
            double cos = square ? Math.signum(Math.cos(turn)) : Math.cos(turn);
            double sin = square ? Math.signum(Math.sin(turn)) : Math.sin(turn);
            points.add(new Point(
                    Math.min(Math.max(x + across * cos, 1), Picture.WIDTH - 1.0), Math.max(y + along * sin, 1)));
        }
        return new Path(paint, points, true);
    }

    private static String one(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
