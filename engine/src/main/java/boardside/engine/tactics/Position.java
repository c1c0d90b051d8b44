package boardside.engine.tactics;

import boardside.engine.rules.Side;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Bags lying on a board, none over another.
 *
 * @param bags at most four of a side, middles at least two radii apart
 */
public record Position(List<Lying> bags) {
    /** Nothing on the board. */
    public static final Position EMPTY = new Position(List.of());

    private static final int MOST_OF_A_SIDE = 4;

    /** A finger's rounding does not make an overlap, inches. */
    public static final double ROUNDING = 1e-6;

    /**
     * Checked, list copied.
     *
     * @throws IllegalArgumentException if a side has too many bags or two overlap
     */
    public Position {
        bags = List.copyOf(bags);
        for (Side side : List.of(Side.ME, Side.VERSUS)) {
            long number = bags.stream().filter(bag -> bag.side() == side).count();
            if (number > MOST_OF_A_SIDE) {
                throw new IllegalArgumentException(
                        "a side has at most four bags on the board, not " + number + "; take one away");
            }
        }
        for (int i = 0; i < bags.size(); i++) {
            for (int j = 0; j < i; j++) {
                Lying one = bags.get(j);
                Lying other = bags.get(i);
                if (!(one.spot().distance(other.spot()) >= 2 * Spot.RADIUS - ROUNDING)) {
                    throw new IllegalArgumentException("the bags at " + at(one) + " and " + at(other)
                            + " lie over each other; keep their middles 6 in apart");
                }
            }
        }
    }

    private static String at(Lying bag) {
        return String.format(Locale.ROOT, "%.1f, %.1f", bag.x(), bag.y());
    }

    /** The same in a mirror. */
    public Position mirrored() {
        return new Position(bags.stream().map(Lying::mirrored).toList());
    }

    /** The same with one more bag. */
    public Position with(Lying bag) {
        List<Lying> more = new ArrayList<>(bags);
        more.add(bag);
        return new Position(more);
    }

    /**
     * Whether all bags lie on a board of this width, inches.
     */
    public boolean on(double width) {
        return bags.stream().allMatch(bag -> Math.abs(bag.x()) <= width / 2);
    }

    /**
     * What is the same for positions that look the same at the boards: side, depth and lane of each bag, in order, such as
     * {@code me:1-left versus:2-middle}; {@code open} for an empty board.
     *
     * @param width of the board, inches, above 0
     */
    public String code(double width) {
        return bags.isEmpty()
                ? "open"
                : bags.stream()
                        .map(bag -> bag.side().word() + ":"
                                + Target.at(bag.spot(), width).text())
                        .sorted()
                        .collect(Collectors.joining(" "));
    }

    /** What a bag on the board is to somebody who wants theirs in; which side it lies on or belongs to does not matter. */
    private enum Part {
        /** In the middle lane, at most two bags in front of the hole. */
        CLOSE,
        /** In the middle lane, farther in front. */
        FAR,
        /** In a lane to the side. */
        ASIDE,
        /** Behind the hole. */
        BEHIND
    }

    /**
     * The kind of position it is, shared by those that ask much the same of a shot, mirror images among them: which of the
     * ways in are blocked.
     *
     * @param width of the board, inches, above 0
     */
    public String family(double width) {
        return family(bags.stream().map(Lying::spot).toList(), width);
    }

    /**
     * The same of bags of which only the middles matter, and which may lie on each other.
     *
     * @param middles of bags on the board
     * @param width of the board, inches, above 0
     */
    public static String family(List<Spot> middles, double width) {
        Set<Part> parts = EnumSet.noneOf(Part.class);
        for (Spot middle : middles) {
            Target target = Target.at(middle, width);
            if (target.depth() == Depth.BACK) {
                parts.add(Part.BEHIND);
            } else if (target.lane() != Lane.MIDDLE) {
                parts.add(Part.ASIDE);
            } else {
                parts.add(target.depth().ordinal() <= Depth.TWO.ordinal() ? Part.CLOSE : Part.FAR);
            }
        }
        return parts.isEmpty()
                ? "open"
                : parts.stream()
                        .map(part -> part.name().toLowerCase(Locale.ROOT))
                        .collect(Collectors.joining("+"));
    }
}
