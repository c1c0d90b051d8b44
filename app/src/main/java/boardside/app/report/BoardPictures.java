package boardside.app.report;

import boardside.app.report.Shape.Anchor;
import boardside.app.report.Shape.Box;
import boardside.app.report.Shape.Disc;
import boardside.app.report.Shape.Label;
import boardside.app.report.Shape.Path;
import boardside.engine.rules.Side;
import boardside.engine.skill.Interval;
import boardside.engine.tactics.Lying;
import boardside.engine.tactics.Spot;
import java.util.ArrayList;
import java.util.List;

/** Pictures of a board seen from above, the thrower below. */
public final class BoardPictures {
    private static final double INCH = 6;
    private static final double TOP = 26;
    private static final double MIDDLE = Picture.WIDTH / 2.0;
    private static final double BOTTOM = TOP + Spot.LENGTH * INCH;

    private static final double SMALL_INCH = 1.5;
    private static final double TEXT_LEFT = 52;
    private static final double SHOT = 18;
    private static final int NAME_LETTERS = 34;
    private static final int SHOT_LETTERS = 18;

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

    /**
     * What lies on the board, and what was tried there.
     *
     * @param name in words
     * @param bags that lie there
     * @param width of the board, inches
     * @param shots how often each works, 0 to 100, in the order of the rows
     */
    public record Asked(String name, List<Lying> bags, double width, List<Pictures.Named> shots) {
        /** Lists copied. */
        public Asked {
            bags = List.copyOf(bags);
            shots = List.copyOf(shots);
        }
    }

    /**
     * Situations one below the other: the board as it lies, and beside it how often each shot works there, with its range.
     * The other side's bags are filled, one's own are outlined.
     *
     * @param asked at least one
     */
    public static Picture situations(String title, String description, DataTable data, List<Asked> asked) {
        Scale scale = new Scale(0, 100, 196, Picture.WIDTH - 12.0);
        List<Shape> shapes = new ArrayList<>();
        double top = 24;
        double bottom = top + asked.stream().mapToDouble(BoardPictures::height).sum();
        for (int tick = 0; tick <= 100; tick += 50) {
            double x = scale.at(tick);
            shapes.add(new Label(Paint.SOFT, x, 14, Anchor.MIDDLE, Picture.TEXT, String.valueOf(tick)));
            shapes.add(Path.line(Paint.GRID, x, 20, x, bottom));
        }
        for (Asked one : asked) {
            small(shapes, one, 6, top + 4);
            shapes.add(new Label(
                    Paint.INK, TEXT_LEFT, top + 14, Anchor.START, 13, Pictures.shortened(one.name(), NAME_LETTERS)));
            double y = top + 26;
            for (Pictures.Named shot : one.shots()) {
                Interval range = shot.value();
                shapes.add(new Label(
                        Paint.SOFT,
                        TEXT_LEFT,
                        y + 10,
                        Anchor.START,
                        Picture.TEXT,
                        Pictures.shortened(shot.name(), SHOT_LETTERS)));
                shapes.add(Path.line(Paint.WHISKER, scale.at(range.low()), y + 6, scale.at(range.high()), y + 6));
                shapes.add(new Disc(Paint.MARK, scale.at(range.estimate()), y + 6, 4));
                y += SHOT;
            }
            top += height(one);
        }
        return new Picture(title, description, bottom, shapes, data);
    }

    private static double height(Asked asked) {
        return Math.max(SMALL_INCH * Spot.LENGTH + 14, 30 + SHOT * asked.shots().size() + 8);
    }

    private static void small(List<Shape> shapes, Asked asked, double left, double top) {
        double width = asked.width() * SMALL_INCH;
        double middle = left + width / 2;
        double length = Spot.LENGTH * SMALL_INCH;
        shapes.add(Path.frame(Paint.AXIS, left, top, width, length));
        shapes.add(new Disc(
                Paint.BAND, middle, top + (Spot.LENGTH - Spot.HOLE.y()) * SMALL_INCH, Spot.RADIUS * SMALL_INCH));
        double side = 8;
        for (Lying bag : asked.bags()) {
            double x = middle + bag.x() * SMALL_INCH - side / 2;
            double y = top + (Spot.LENGTH - bag.y()) * SMALL_INCH - side / 2;
            if (bag.side() == Side.VERSUS) {
                shapes.add(new Box(Paint.INK, x, y, side, side));
            } else {
                shapes.add(Path.frame(Paint.LINE, x, y, side, side));
            }
        }
    }

    private static double y(double inches) {
        return TOP + (Spot.LENGTH - inches) * INCH;
    }

    private static Shape count(double x, double y, Anchor anchor, int number) {
        return new Label(number == 0 ? Paint.SOFT : Paint.INK, x, y, anchor, 16, String.valueOf(number));
    }
}
