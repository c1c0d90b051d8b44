package boardside.app.report;

import boardside.app.report.Shape.Anchor;
import boardside.app.report.Shape.Disc;
import boardside.app.report.Shape.Label;
import boardside.app.report.Shape.Path;
import boardside.app.report.Shape.Point;
import boardside.engine.physics.Board;
import boardside.engine.physics.ThrowModel;
import java.util.ArrayList;
import java.util.List;

/** A throw seen from above the board. Words come from the caller. */
public final class ThrowPictures {
    private static final double PER_INCH = 5.2;
    private static final double MIDDLE = Picture.WIDTH / 2.0;
    private static final double BEYOND = 9;
    private static final int CORNERS = 48;

    /** Half-axes, in standard deviations, of the ellipse that holds half of a normal plane, and nine in ten: sqrt(-2 ln(1-p)). */
    private static final double HALF = 1.1774;

    private static final double NINE_IN_TEN = 2.1460;

    private ThrowPictures() {}

    /**
     * Where bags would stop if the board had no hole: an ellipse that holds half of them, one that holds nine in ten, and
     * their middle, over a regulation board.
     */
    public static Picture spread(String title, String description, DataTable data, String front, ThrowModel model) {
        double half = Board.REGULATION_WIDTH / 2;
        List<Shape> shapes = new ArrayList<>();
        shapes.add(ellipse(Paint.BAND, model, NINE_IN_TEN));
        shapes.add(outline(
                List.of(at(-half, 0), at(half, 0), at(half, Board.LENGTH), at(-half, Board.LENGTH), at(-half, 0))));
        shapes.add(ring(Paint.WHISKER, 0, Board.HOLE_Y, Board.HOLE_RADIUS, Board.HOLE_RADIUS));
        shapes.add(ellipse(Paint.LINE, model, HALF));
        Point middle = at(model.x(), model.reach());
        shapes.add(new Disc(Paint.MARK, middle.x(), middle.y(), 4));
        Point below = at(0, -4);
        shapes.add(new Label(Paint.SOFT, below.x(), below.y(), Anchor.MIDDLE, Picture.TEXT, front));
        return new Picture(title, description, at(0, -BEYOND - 1).y(), shapes, data);
    }

    private static Shape outline(List<Point> corners) {
        return new Path(Paint.AXIS, corners, false);
    }

    private static Shape ellipse(Paint paint, ThrowModel model, double deviations) {
        return ring(paint, model.x(), model.reach(), deviations * model.spreadX(), deviations * model.spreadAlong());
    }

    private static Shape ring(Paint paint, double x, double y, double across, double along) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i <= CORNERS; i++) {
            double angle = 2 * Math.PI * i / CORNERS;
            points.add(at(x + across * Math.cos(angle), y + along * Math.sin(angle)));
        }
        return new Path(paint, points, paint == Paint.BAND);
    }

    private static Point at(double x, double y) {
        return new Point(
                Math.min(Picture.WIDTH, Math.max(0, MIDDLE + PER_INCH * x)),
                Math.max(0, PER_INCH * (Board.LENGTH + BEYOND - Math.max(-BEYOND - 1, y))));
    }
}
