package boardside.app.report;

import boardside.app.report.Shape.Anchor;
import boardside.app.report.Shape.Box;
import boardside.app.report.Shape.Label;
import boardside.app.report.Shape.Path;
import java.util.ArrayList;
import java.util.List;

/** Pictures of a season. Words come from the caller. */
public final class SeasonPictures {
    private static final double RIGHT = Picture.WIDTH - 6;
    private static final double LEFT = 114;
    private static final double TOP = 40;
    private static final double ROW = 26;
    private static final int LETTERS = 14;

    private SeasonPictures() {}

    /**
     * A player and where they may end.
     *
     * @param chances of first to last place, each within 0..1, one for each player of the picture
     * @param likeliest place, 1 the first
     */
    public record Ending(String name, List<Double> chances, int likeliest) {
        /** List copied. */
        public Ending {
            chances = List.copyOf(chances);
        }
    }

    /**
     * Who may end where: a row for each player, a column for each place, and in it a box whose area is the chance; the
     * likeliest place is filled strongly.
     *
     * @param endings in the order of the rows, at least one
     * @param place what stands along the top
     */
    public static Picture endings(
            String title, String description, DataTable data, List<Ending> endings, String place) {
        int places = endings.stream()
                .mapToInt(ending -> ending.chances().size())
                .max()
                .orElseThrow(() -> new IllegalArgumentException("a season has at least one player"));
        double step = Math.min((RIGHT - LEFT) / places, 40);
        double most = Math.min(step - 1, ROW - 4);
        List<Shape> shapes = new ArrayList<>();
        shapes.add(new Label(Paint.INK, LEFT, 14, Anchor.START, 13, place + " \u2192"));
        int every = step >= 18 ? 1 : 5;
        for (int p = 1; p <= places; p++) {
            if (p == 1 || p % every == 0) {
                shapes.add(new Label(
                        Paint.SOFT, LEFT + (p - 0.5) * step, TOP - 8, Anchor.MIDDLE, Picture.TEXT, String.valueOf(p)));
            }
        }
        for (int r = 0; r < endings.size(); r++) {
            Ending ending = endings.get(r);
            double middle = TOP + (r + 0.5) * ROW;
            shapes.add(Path.line(Paint.GRID, 6, middle + ROW / 2, LEFT + places * step, middle + ROW / 2));
            shapes.add(new Label(
                    Paint.INK,
                    LEFT - 8,
                    middle + 5,
                    Anchor.END,
                    Picture.TEXT,
                    Pictures.shortened(ending.name(), LETTERS)));
            for (int p = 0; p < ending.chances().size(); p++) {
                double chance = ending.chances().get(p);
                // What happens less than once in two hundred seasons is left white rather than drawn as dust.
                if (chance >= 0.005) {
                    double side = most * Math.sqrt(Math.min(chance, 1));
                    shapes.add(new Box(
                            p + 1 == ending.likeliest() ? Paint.MARK : Paint.BAND,
                            LEFT + (p + 0.5) * step - side / 2,
                            middle - side / 2,
                            side,
                            side));
                }
            }
        }
        return new Picture(title, description, TOP + endings.size() * ROW + 4, shapes, data);
    }
}
