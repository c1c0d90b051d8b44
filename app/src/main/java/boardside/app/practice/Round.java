package boardside.app.practice;

import boardside.engine.rules.Face;
import boardside.engine.rules.Outcome;
import boardside.engine.rules.Side;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One side's bags of one round.
 *
 * @param number 1, 2, ... within the run
 * @param side who threw
 * @param op the client's id (UUIDv7) of the upload that last set it; empty when imported
 * @param lines one per bag set and face, at least one unless the round was taken back
 * @param thrown the single throws in order, where they were recorded; else empty
 */
public record Round(int number, Side side, String op, List<Line> lines, List<Thrown> thrown) {
    /** Checked, lists copied. */
    public Round {
        lines = List.copyOf(lines);
        thrown = List.copyOf(thrown);
        if (!(number >= 1 && number <= 100_000)) {
            throw new IllegalArgumentException("rounds are numbered from 1, not " + number);
        }
    }

    /**
     * One bag thrown. Positions are inches on the board's surface: x to the thrower's right from the centre line, y up
     * from the front edge.
     *
     * @param bag id of the bag set, or empty
     * @param face the face down, or null
     * @param outcome where it ended when the round was over
     * @param miss left, right, short or long for a bag that missed, or empty
     * @param shot the shot called, or empty
     * @param aim where it was aimed, or null
     * @param land where it first touched the board, or null
     * @param rest where it lay in the end, or null
     */
    public record Thrown(
            String bag,
            @Nullable Face face,
            Outcome outcome,
            String miss,
            String shot,
            @Nullable Point aim,
            @Nullable Point land,
            @Nullable Point rest) {}

    /** A point on the board, inches. */
    public record Point(double x, double y) {}

    /** Bags thrown on this side. */
    public int bags() {
        return lines.stream().mapToInt(Line::thrown).sum();
    }

    /** Points before cancellation, or null where on was not counted for every line. */
    public @Nullable Integer points() {
        int sum = 0;
        for (Line line : lines) {
            Integer points = line.points();
            if (points == null) {
                return null;
            }
            sum += points;
        }
        return sum;
    }
}
