package boardside.app.report;

import boardside.app.report.Shape.Anchor;
import boardside.app.report.Shape.Box;
import boardside.app.report.Shape.Disc;
import boardside.app.report.Shape.Label;
import boardside.app.report.Shape.Path;
import boardside.app.report.Shape.Point;
import boardside.engine.rules.Finish;
import boardside.engine.skill.Interval;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The kinds of pictures, from values to shapes. Words come from the caller. */
public final class Pictures {
    private static final double LEFT = 26;
    private static final double RIGHT = Picture.WIDTH - 6;
    private static final double SMALL = Picture.TEXT;
    private static final int MOST_VALUE_TICKS = 6;
    private static final int MOST_DATE_TICKS = 5;
    private static final int BAGS_ROUNDS_A_ROW = 10;

    private Pictures() {}

    /** A value with its range on a day. */
    public record Dated(LocalDate day, Interval value) {}

    /** A value with its range under a name. */
    public record Named(String name, Interval value) {}

    /** How often each whole number comes, from {@code first} on. */
    public record Chances(int first, List<Double> chances) {
        /** List copied. */
        public Chances {
            chances = List.copyOf(chances);
        }
    }

    /**
     * Points a round over time: a band, and a dot with its range for each day.
     *
     * @param points oldest first, at least one
     * @param band range by day, oldest first; may be empty
     * @param dates how days stand below
     */
    public static Picture overTime(
            String title,
            String description,
            DataTable data,
            List<Dated> points,
            Map<LocalDate, Interval> band,
            DateWords dates) {
        double top = 8;
        double bottom = 188;
        List<LocalDate> days = new ArrayList<>(band.keySet());
        points.forEach(point -> days.add(point.day()));
        LocalDate first = days.stream().min(LocalDate::compareTo).orElseThrow();
        LocalDate last = days.stream().max(LocalDate::compareTo).orElseThrow();
        double low = 12;
        double high = 0;
        for (Dated point : points) {
            low = Math.min(low, point.value().low());
            high = Math.max(high, point.value().high());
        }
        Scale y = new Scale(Math.max(0, Math.floor(low)), Math.min(12, Math.ceil(high + 0.01)), bottom, top);
        double room = first.equals(last) ? 1 : 0;
        Scale x = new Scale(first.toEpochDay() - room, last.toEpochDay() + room, LEFT + 4, RIGHT - 4);
        List<Shape> shapes = new ArrayList<>();
        for (double tick : y.ticks(MOST_VALUE_TICKS)) {
            shapes.add(Path.line(Paint.GRID, LEFT, y.at(tick), RIGHT, y.at(tick)));
            shapes.add(new Label(Paint.SOFT, LEFT - 4, y.at(tick) + 4, Anchor.END, SMALL, plain(tick)));
        }
        for (Scale.DateTick tick : Scale.dates(first, last, MOST_DATE_TICKS, dates)) {
            double at = x.at(tick.day().toEpochDay());
            shapes.add(Path.line(Paint.AXIS, at, bottom, at, bottom + 4));
            shapes.add(new Label(
                    Paint.SOFT,
                    Math.min(at, Picture.WIDTH - widthOf(tick.label())),
                    bottom + 18,
                    Anchor.START,
                    SMALL,
                    tick.label()));
        }
        if (band.size() > 1) {
            List<Point> outline = new ArrayList<>();
            List<Point> middle = new ArrayList<>();
            band.forEach((day, value) -> {
                outline.add(new Point(x.at(day.toEpochDay()), y.at(value.high())));
                middle.add(new Point(x.at(day.toEpochDay()), y.at(value.estimate())));
            });
            List<LocalDate> backwards = new ArrayList<>(band.keySet());
            Collections.reverse(backwards);
            for (LocalDate day : backwards) {
                Interval value = band.get(day);
                if (value != null) {
                    outline.add(new Point(x.at(day.toEpochDay()), y.at(value.low())));
                }
            }
            shapes.add(new Path(Paint.BAND, outline, true));
            shapes.add(new Path(Paint.LINE, middle, false));
        }
        boolean crowded = points.size() > 60;
        for (Dated point : points) {
            double at = x.at(point.day().toEpochDay());
            if (!crowded) {
                shapes.add(Path.line(
                        Paint.WHISKER,
                        at,
                        y.at(point.value().low()),
                        at,
                        y.at(point.value().high())));
            }
            shapes.add(new Disc(Paint.MARK, at, y.at(point.value().estimate()), crowded ? 1.6 : 3));
        }
        shapes.add(Path.line(Paint.AXIS, LEFT, bottom, RIGHT, bottom));
        return new Picture(title, description, bottom + 26, shapes, data);
    }

    /**
     * Values side by side: a dot with whiskers a row.
     *
     * @param rows at least one
     */
    public static Picture ranges(String title, String description, DataTable data, List<Named> rows) {
        double low = rows.stream().mapToDouble(row -> row.value().low()).min().orElseThrow();
        double high = rows.stream().mapToDouble(row -> row.value().high()).max().orElseThrow();
        double room = Math.max(1e-6, (high - low) * 0.05);
        Scale x = new Scale(low - room, high + room, 12, RIGHT - 6);
        List<Shape> shapes = new ArrayList<>();
        double bottom = rows.size() * 40.0 + 4;
        for (double tick : x.ticks(MOST_VALUE_TICKS)) {
            shapes.add(Path.line(Paint.GRID, x.at(tick), 4, x.at(tick), bottom));
            shapes.add(centred(Paint.SOFT, x.at(tick), bottom + 15, plain(tick)));
        }
        for (int i = 0; i < rows.size(); i++) {
            Named row = rows.get(i);
            double at = i * 40 + 32;
            shapes.add(new Label(Paint.INK, 6, i * 40 + 18, Anchor.START, 14, shortened(row.name(), 40)));
            shapes.add(Path.line(
                    Paint.LINE, x.at(row.value().low()), at, x.at(row.value().high()), at));
            shapes.add(new Disc(Paint.MARK, x.at(row.value().estimate()), at, 5));
        }
        return new Picture(title, description, bottom + 22, shapes, data);
    }

    /**
     * Rounds of up to four bags, one small stack each: a disc in, a square on, a cross off, with its points below.
     *
     * @param rounds in the order thrown; null where not all of a round was counted
     */
    public static Picture strip(String title, String description, DataTable data, List<@Nullable Bags> rounds) {
        int columns = Math.min(BAGS_ROUNDS_A_ROW, Math.max(1, rounds.size()));
        double cell = (Picture.WIDTH - 8.0) / BAGS_ROUNDS_A_ROW;
        double row = 96;
        List<Shape> shapes = new ArrayList<>();
        for (int i = 0; i < rounds.size(); i++) {
            double x = 4 + (i % columns) * cell + cell / 2;
            double y = (i / columns) * row + 10;
            Bags bags = rounds.get(i);
            if (bags == null) {
                shapes.add(new Label(Paint.SOFT, x, y + 76, Anchor.MIDDLE, 14, "?"));
                continue;
            }
            int n = bags.in() + bags.on() + bags.off();
            for (int bag = 0; bag < n; bag++) {
                double at = y + (Finish.BAGS - n + bag) * 17;
                if (bag < bags.in()) {
                    shapes.add(new Disc(Paint.IN, x, at, 6.5));
                } else if (bag < bags.in() + bags.on()) {
                    shapes.add(new Box(Paint.ON, x - 5.3, at - 5.3, 10.6, 10.6));
                } else {
                    shapes.add(Path.line(Paint.OFF, x - 5, at - 5, x + 5, at + 5));
                    shapes.add(Path.line(Paint.OFF, x + 5, at - 5, x - 5, at + 5));
                }
            }
            shapes.add(new Label(Paint.INK, x, y + 76, Anchor.MIDDLE, 14, String.valueOf(3 * bags.in() + bags.on())));
        }
        double rows = Math.max(1, Math.ceil(rounds.size() / (double) columns));
        return new Picture(title, description, rows * row, shapes, data);
    }

    /** Bags of a round, at most four. */
    public record Bags(int in, int on, int off) {
        /**
         * Checks the counts.
         *
         * @throws IllegalArgumentException if a count is negative or there are more than four
         */
        public Bags {
            if (!(in >= 0 && on >= 0 && off >= 0 && in + on + off <= Finish.BAGS)) {
                throw new IllegalArgumentException(
                        "a stack holds at most four bags, not " + in + ", " + on + ", " + off);
            }
        }
    }

    /**
     * How often each number comes, as bars, with one number pointed out.
     *
     * @param chances at least one above 0
     * @param marked the number pointed out, or null
     * @param mark what stands at it
     */
    public static Picture histogram(
            String title, String description, DataTable data, Chances chances, @Nullable Integer marked, String mark) {
        int from = 0;
        int to = chances.chances().size() - 1;
        double most = chances.chances().stream()
                .mapToDouble(Double::doubleValue)
                .max()
                .orElseThrow();
        while (from < to && chances.chances().get(from) < most / 500 && !isMarked(chances, from, marked)) {
            from++;
        }
        while (to > from && chances.chances().get(to) < most / 500 && !isMarked(chances, to, marked)) {
            to--;
        }
        double top = 24;
        double bottom = 124;
        Scale x = new Scale(chances.first() + from - 0.5, chances.first() + to + 0.5, 6, RIGHT);
        Scale y = new Scale(0, most, bottom, top);
        double width = Math.max(0.5, x.at(chances.first() + from + 0.5) - x.at(chances.first() + from - 0.5) - 0.7);
        List<Shape> shapes = new ArrayList<>();
        for (int i = from; i <= to; i++) {
            double at = x.at(chances.first() + i);
            double height = bottom - y.at(chances.chances().get(i));
            Paint paint = isMarked(chances, i, marked) ? Paint.MARK : Paint.BAND;
            shapes.add(new Box(paint, at - width / 2, bottom - height, width, height));
        }
        for (double tick : x.ticks(MOST_VALUE_TICKS)) {
            if (tick == Math.rint(tick)) {
                shapes.add(Path.line(Paint.AXIS, x.at(tick), bottom, x.at(tick), bottom + 4));
                shapes.add(centred(Paint.SOFT, x.at(tick), bottom + 18, plain(tick)));
            }
        }
        shapes.add(Path.line(Paint.AXIS, 6, bottom, RIGHT, bottom));
        if (marked != null) {
            double at = x.at(marked);
            shapes.add(Path.line(Paint.LINE, at, top - 6, at, bottom));
            shapes.add(new Label(
                    Paint.INK,
                    at > Picture.WIDTH / 2.0 ? at - 5 : at + 5,
                    14,
                    at > Picture.WIDTH / 2.0 ? Anchor.END : Anchor.START,
                    13,
                    mark));
        }
        return new Picture(title, description, bottom + 26, shapes, data);
    }

    /**
     * A chance for every score of a game: a square for each, the larger the likelier, filled where it is at least one
     * half. My points run to the right, theirs downward.
     *
     * @param chances by my points, then theirs; a square table, 1 to 99 a side
     * @param mine what stands along the top
     * @param theirs what stands down the side
     */
    public static Picture scoreMap(
            String title, String description, DataTable data, List<List<Double>> chances, String mine, String theirs) {
        int size = chances.size();
        double left = 46;
        double top = 42;
        double step = (RIGHT - left) / size;
        List<Shape> shapes = new ArrayList<>();
        shapes.add(new Label(Paint.INK, left, 14, Anchor.START, 13, mine + " \u2192"));
        shapes.add(new Label(Paint.INK, 0, top - 8, Anchor.START, 13, theirs + " \u2193"));
        for (int i = 0; i < size; i++) {
            double centre = (i + 0.5) * step;
            if (i % 5 == 0) {
                shapes.add(centred(Paint.SOFT, left + centre, top - 8, String.valueOf(i)));
                shapes.add(new Label(Paint.SOFT, left - 6, top + centre + 4, Anchor.END, SMALL, String.valueOf(i)));
            }
            for (int j = 0; j < size; j++) {
                double chance = chances.get(i).get(j);
                double side = Math.max(1, (step - 1) * Math.sqrt(chance));
                double x = left + centre - side / 2;
                double y = top + (j + 0.5) * step - side / 2;
                shapes.add(new Box(chance >= 0.5 ? Paint.MARK : Paint.BAND, x, y, side, side));
            }
        }
        return new Picture(title, description, top + size * step + 4, shapes, data);
    }

    /** One race of a climb: the ghost's points, and whether it was won. */
    public record Rung(int ghost, boolean won) {}

    /**
     * Races up and down the ghost ladder: a disc won, a cross lost; a band where the level lies; on the right how often
     * each rung is met in the long run.
     *
     * @param rungs the oldest first, at least one
     * @param level the level, or null where nothing is known of it
     * @param shares of the rungs 0, 1, ... in the long run; empty where nothing is known
     */
    public static Picture ladder(
            String title,
            String description,
            DataTable data,
            List<Rung> rungs,
            @Nullable Interval level,
            List<Double> shares) {
        int low = rungs.stream().mapToInt(Rung::ghost).min().orElseThrow();
        int high = rungs.stream().mapToInt(Rung::ghost).max().orElseThrow();
        for (int rung = 0; rung < shares.size(); rung++) {
            if (shares.get(rung) > 0.02) {
                low = Math.min(low, rung);
                high = Math.max(high, rung);
            }
        }
        double step = 20;
        double bottom = 12 + step * (high - low + 1);
        Scale y = new Scale(low - 0.5, high + 0.5, bottom, 12);
        double right = shares.isEmpty() ? RIGHT : 232;
        List<Shape> shapes = new ArrayList<>();
        if (level != null) {
            double top = y.at(Math.min(high + 0.5, level.high()));
            double base = y.at(Math.max(low - 0.5, level.low()));
            shapes.add(new Box(Paint.BAND, LEFT, Math.min(top, base), right - LEFT, Math.max(1, base - top)));
        }
        for (int rung = low; rung <= high; rung++) {
            shapes.add(Path.line(Paint.GRID, LEFT, y.at(rung), RIGHT, y.at(rung)));
            shapes.add(new Label(Paint.SOFT, LEFT - 6, y.at(rung) + 4, Anchor.END, SMALL, String.valueOf(rung)));
        }
        double each = Math.min(22, (right - LEFT - 12) / Math.max(1, rungs.size()));
        List<Point> way = new ArrayList<>();
        for (int i = 0; i < rungs.size(); i++) {
            way.add(new Point(LEFT + 10 + i * each, y.at(rungs.get(i).ghost())));
        }
        shapes.add(new Path(Paint.WHISKER, way, false));
        for (int i = 0; i < rungs.size(); i++) {
            double x = way.get(i).x();
            double at = way.get(i).y();
            if (rungs.get(i).won()) {
                shapes.add(new Disc(Paint.MARK, x, at, 4));
            } else {
                shapes.add(Path.line(Paint.OFF, x - 4, at - 4, x + 4, at + 4));
                shapes.add(Path.line(Paint.OFF, x + 4, at - 4, x - 4, at + 4));
            }
        }
        double most = shares.stream().mapToDouble(Double::doubleValue).max().orElse(1);
        for (int rung = low; rung <= high && rung < shares.size(); rung++) {
            double width = (RIGHT - 244) * shares.get(rung) / most;
            if (width >= 0.5) {
                shapes.add(new Box(Paint.MARK, 244, y.at(rung) - 6, width, 12));
            }
        }
        return new Picture(title, description, bottom + 6, shapes, data);
    }

    /** A small text in the middle of x, moved so far that it stays within the picture. */
    private static Label centred(Paint paint, double x, double y, String text) {
        double half = widthOf(text) / 2;
        return new Label(paint, Math.min(Math.max(x, half), Picture.WIDTH - half), y, Anchor.MIDDLE, SMALL, text);
    }

    /** Room that a small text may take: 0.63 of its size a letter, which no usual font exceeds on average. */
    private static double widthOf(String text) {
        return 0.63 * SMALL * text.length();
    }

    private static boolean isMarked(Chances chances, int i, @Nullable Integer marked) {
        return marked != null && marked == chances.first() + i;
    }

    /** The text, or as much of it as so many letters hold. */
    static String shortened(String text, int most) {
        return text.codePointCount(0, text.length()) <= most
                ? text
                : text.substring(0, text.offsetByCodePoints(0, most - 1)) + "\u2026";
    }

    private static String plain(double value) {
        String text = String.format(Locale.ROOT, "%.4f", value);
        text = text.replaceAll("0+$", "").replaceAll("\\.$", "");
        return text.equals("-0") ? "0" : text;
    }
}
