package boardside.engine.skill;

import boardside.engine.skill.PointGroup.Point;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What was recorded of where bags went, of one kind of throw.
 *
 * @param flight how the bags travel
 * @param width of the board, inches, above 0 and at most 24
 * @param points where bags lay, or came down, as tapped
 * @param others bags without a point, by what is known of them
 */
public record Marks(Flight flight, double width, List<Point> points, Map<Place, Integer> others) {
    /** How bags travel. */
    public enum Flight {
        /** Along the board: a bag that comes over the hole's lower edge drops in, wherever else it would have stopped. */
        SLIDE,
        /** Through the air: a bag is in if it comes down in the hole. Points are where bags came down. */
        AIRMAIL
    }

    /** What is known of a bag without a point. */
    public enum Place {
        /** In the hole. */
        IN,
        /** On the board, nobody said where. */
        ON,
        /** Off the board, nobody said where. */
        OFF,
        /** Past the left edge. */
        LEFT,
        /** Past the right edge. */
        RIGHT,
        /** In front of the board, or not over its front edge. */
        SHORT,
        /** Over the back. */
        LONG
    }

    static final double HOLE_Y = 39;
    static final double HOLE_RADIUS = 3;
    private static final double TOP = 48;
    private static final double ALL = Double.POSITIVE_INFINITY;

    /**
     * Copied and checked.
     *
     * @throws IllegalArgumentException for a negative count or a board wider than 24 inches or not wide at all
     */
    public Marks {
        if (!(width > 0 && width <= 24)) {
            throw new IllegalArgumentException("a board is up to 24 inches wide, not " + width);
        }
        points = List.copyOf(points);
        Map<Place, Integer> copy = new EnumMap<>(Place.class);
        others.forEach((place, number) -> {
            if (!(number >= 0)) {
                throw new IllegalArgumentException("a count is 0 or more, not " + number + " " + place);
            }
            copy.put(place, number);
        });
        others = Map.copyOf(copy);
    }

    /** All bags of which something is known. */
    public int bags() {
        return points.size()
                + others.values().stream().mapToInt(number -> number).sum();
    }

    int count(Place place) {
        return others.getOrDefault(place, 0);
    }

    /** The chance of what is known of such a bag. */
    double chance(Place place, BivariateNormal law) {
        double half = width / 2;
        double in = hole(law);
        double board = law.inRectangle(-half, half, 0, TOP);
        // What of the hole's region lies over the board; the rest of a slide's strip lies behind it.
        double inOfBoard = flight == Flight.AIRMAIL ? in : law.inRectangle(-HOLE_RADIUS, HOLE_RADIUS, lowerEdge(), TOP);
        return switch (place) {
            case IN -> in;
            case ON -> board - inOfBoard;
            case OFF -> 1 - board - (in - inOfBoard);
            case LEFT -> law.inRectangle(-ALL, -half, -ALL, ALL);
            case RIGHT -> law.inRectangle(half, ALL, -ALL, ALL);
            case SHORT -> law.inRectangle(-ALL, ALL, -ALL, 0);
            case LONG -> law.inRectangle(-half, half, TOP, ALL) - (in - inOfBoard);
        };
    }

    private static double lowerEdge() {
        return HOLE_Y - HOLE_RADIUS;
    }

    /** A slide drops in from the hole's lower edge on, within its width; an airmail within its circle. */
    double hole(BivariateNormal law) {
        return flight == Flight.AIRMAIL
                ? law.inCircle(0, HOLE_Y, HOLE_RADIUS)
                : law.inRectangle(-HOLE_RADIUS, HOLE_RADIUS, lowerEdge(), ALL);
    }
}
