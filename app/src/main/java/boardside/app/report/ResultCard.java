package boardside.app.report;

import boardside.app.report.Shape.Anchor;
import boardside.app.report.Shape.Box;
import boardside.app.report.Shape.Disc;
import boardside.app.report.Shape.Label;
import boardside.app.report.Shape.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A result as a picture to hand on: a board's outline with the hole above it, the result, and the rounds as bags. */
public final class ResultCard {
    private static final double MIDDLE = Picture.WIDTH / 2.0;
    private static final double TEXT_WIDTH = 0.6;
    private static final int LINE = 36;
    private static final double LINE_SIZE = 13;

    private ResultCard() {}

    /**
     * A card.
     *
     * @param description the whole card in words
     * @param data the numbers behind it
     * @param who whose it is
     * @param when the day
     * @param what a few words on what was thrown
     * @param result the result, the largest text
     * @param lines further lines, short ones
     * @param rounds rounds of four in the order thrown, at most 40; empty where they are not shown
     * @param mark the program's name
     */
    public static Picture of(
            String description,
            DataTable data,
            String who,
            String when,
            String what,
            String result,
            List<String> lines,
            List<Pictures.@Nullable Bags> rounds,
            String mark) {
        List<Shape> drawn = new ArrayList<>();
        double y = 104;
        drawn.add(middle(Paint.INK, y, 20, who));
        y += 22;
        drawn.add(middle(Paint.SOFT, y, 13, when));
        y += 44;
        drawn.add(middle(Paint.MARK, y, 32, result));
        y += 26;
        drawn.add(middle(Paint.INK, y, 14, what));
        y += 14;
        if (!rounds.isEmpty()) {
            Picture strip = Pictures.strip("", "", data, rounds);
            double top = y + 6;
            strip.shapes().forEach(shape -> drawn.add(moved(shape, top)));
            y += strip.height() + 6;
        }
        for (String line : lines) {
            for (String part : wrapped(line)) {
                y += 19;
                drawn.add(middle(Paint.INK, y, LINE_SIZE, part));
            }
            y += 5;
        }
        y += 34;
        drawn.add(middle(Paint.SOFT, y, Picture.TEXT, mark));
        double height = y + 20;
        List<Shape> shapes = new ArrayList<>();
        shapes.add(new Box(Paint.PAPER, 0, 0, Picture.WIDTH, height));
        shapes.add(new Box(Paint.LINE, 2, 2, Picture.WIDTH - 4.0, height - 4));
        shapes.add(new Disc(Paint.BAND, MIDDLE, 48, 24));
        shapes.add(new Disc(Paint.IN, MIDDLE, 48, 17));
        shapes.addAll(drawn);
        return new Picture(who + ": " + result, description, height, shapes, data);
    }

    /** A text in the middle of the card: as large as wanted where it fits, smaller or shortened where it does not. */
    private static Label middle(Paint paint, double y, double wanted, String text) {
        double room = (Picture.WIDTH - 40) / TEXT_WIDTH;
        int most = (int) (room / Picture.TEXT);
        String shown = text.codePointCount(0, text.length()) <= most
                ? text
                : text.substring(0, text.offsetByCodePoints(0, most - 1)) + "\u2026";
        double size = Math.max(Picture.TEXT, Math.min(wanted, room / Math.max(1, shown.length())));
        return new Label(paint, MIDDLE, y, Anchor.MIDDLE, size, shown);
    }

    private static List<String> wrapped(String line) {
        List<String> parts = new ArrayList<>();
        StringBuilder part = new StringBuilder();
        for (String word : line.split(" ")) {
            if (part.length() > 0 && part.length() + 1 + word.length() > LINE) {
                parts.add(part.toString());
                part.setLength(0);
            }
            part.append(part.length() == 0 ? "" : " ").append(word);
        }
        parts.add(part.toString());
        return parts;
    }

    private static Shape moved(Shape shape, double by) {
        if (shape instanceof Box box) {
            return new Box(box.paint(), box.x(), box.y() + by, box.width(), box.height());
        } else if (shape instanceof Disc disc) {
            return new Disc(disc.paint(), disc.x(), disc.y() + by, disc.radius());
        } else if (shape instanceof Label label) {
            return new Label(label.paint(), label.x(), label.y() + by, label.anchor(), label.size(), label.text());
        }
        Path path = (Path) shape;
        return new Path(
                path.paint(),
                path.points().stream()
                        .map(point -> new Shape.Point(point.x(), point.y() + by))
                        .toList(),
                path.closed());
    }
}
