package boardside.app.record;

import boardside.app.practice.Board;
import boardside.app.practice.Marking;
import boardside.app.practice.Round;
import boardside.engine.rules.BoardKind;
import boardside.engine.skill.Dispersion;
import boardside.engine.skill.Marks;
import boardside.engine.skill.Marks.Flight;
import boardside.engine.skill.Marks.Place;
import boardside.engine.skill.PointGroup.Point;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Where bags go and how they scatter, for each kind of throw at each kind of board of the last year. */
public final class Spreads {
    /** Days that say how one throws now. */
    public static final int DAYS = 365;

    /** Bags meant for the hole; blocks and the like are aimed elsewhere. */
    private static final Set<String> SLIDES = Set.of("", "slide");

    private static final Set<String> AIRMAILS = Set.of("airmail");

    private Spreads() {}

    /**
     * One kind of throw at one kind of board.
     *
     * @param marks what was recorded; at least one bag with a point or a direction
     * @param found what that says; empty with too few points
     */
    public record Spread(BoardKind board, Marks marks, Optional<Dispersion> found) {}

    /** Those of which anything was recorded up to a day, most points first. */
    public static List<Spread> of(Records records, int player, LocalDate asOf) {
        Marking marking =
                records.analyses().marking(player, asOf.minusDays(DAYS - 1L).toString());
        List<Spread> spreads = new ArrayList<>();
        for (Flight flight : Flight.values()) {
            for (BoardKind board : BoardKind.values()) {
                Marks marks = marks(marking, flight, board, width(records, player, board));
                if (marks.others().keySet().stream().anyMatch(Spreads::says)
                        || !marks.points().isEmpty()) {
                    spreads.add(new Spread(board, marks, Dispersion.of(marks)));
                }
            }
        }
        spreads.sort((a, b) ->
                Integer.compare(b.marks().points().size(), a.marks().points().size()));
        return spreads;
    }

    private static boolean says(Place place) {
        return place != Place.IN && place != Place.ON && place != Place.OFF;
    }

    private static double width(Records records, int player, BoardKind kind) {
        if (kind == BoardKind.REGULATION) {
            return Board.REGULATION_WIDTH;
        }
        return records.boards(player).stream()
                .filter(board -> board.kind() == kind)
                .mapToDouble(Board::width)
                .findFirst()
                .orElse(Board.NARROW_WIDTH);
    }

    private static Marks marks(Marking marking, Flight flight, BoardKind board, double width) {
        List<Point> points = new ArrayList<>();
        Map<Place, Integer> others = new EnumMap<>(Place.class);
        Set<String> shots = flight == Flight.AIRMAIL ? AIRMAILS : SLIDES;
        for (Marking.Bag bag : marking.bags()) {
            if (bag.board() == board && shots.contains(bag.shot())) {
                Point point = point(bag, flight, width);
                if (point == null) {
                    add(others, place(bag), 1);
                } else {
                    points.add(point);
                }
            }
        }
        if (flight == Flight.SLIDE) {
            for (Marking.Misses misses : marking.misses()) {
                if (misses.board() == board) {
                    int told = misses.left() + misses.right() + misses.shortOf() + misses.past();
                    add(others, Place.IN, misses.in());
                    add(others, Place.ON, misses.on());
                    add(others, Place.OFF, Math.max(0, misses.off() - told));
                    add(others, Place.LEFT, misses.left());
                    add(others, Place.RIGHT, misses.right());
                    add(others, Place.SHORT, misses.shortOf());
                    add(others, Place.LONG, misses.past());
                }
            }
        }
        return new Marks(flight, width, points, others);
    }

    /** Where it came down, for airmails; where it lay, for slides that stayed on the board. */
    private static @Nullable Point point(Marking.Bag bag, Flight flight, double width) {
        Round.Point at = flight == Flight.AIRMAIL ? bag.land() : bag.rest();
        return at != null && Math.abs(at.x()) <= width / 2 && at.y() >= 0 && at.y() <= 48
                ? new Point(at.x(), at.y())
                : null;
    }

    private static Place place(Marking.Bag bag) {
        return switch (bag.outcome()) {
            case IN -> Place.IN;
            case ON -> Place.ON;
            case OFF ->
                switch (bag.miss()) {
                    case "left" -> Place.LEFT;
                    case "right" -> Place.RIGHT;
                    case "short" -> Place.SHORT;
                    case "long" -> Place.LONG;
                    default -> Place.OFF;
                };
        };
    }

    private static void add(Map<Place, Integer> others, Place place, int number) {
        if (number > 0) {
            others.merge(place, number, Integer::sum);
        }
    }
}
