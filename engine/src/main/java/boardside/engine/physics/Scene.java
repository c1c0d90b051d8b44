package boardside.engine.physics;

import java.util.List;

/**
 * A board with the bags that lie on it.
 *
 * <p>Bags may lie on each other; such a pair passes over each other for one throw. A bag whose centre is over the hole hangs
 * there until it is struck (see {@link Simulator}).
 *
 * @param board the board
 * @param contact how bags meet
 * @param bags at most {@link #MOST_BAGS}, each on the board
 */
public record Scene(Board board, Contact contact, List<Lying> bags) {
    /** Most bags that can lie there. */
    public static final int MOST_BAGS = 8;

    /** What two distances written as decimals may fall short of 6 in by. */
    private static final double ROUNDING = 1e-9;

    /**
     * Checks the bags; takes a copy of the list.
     *
     * @throws IllegalArgumentException if there are too many, or one is off the board; the message names it, counted from 1
     */
    public Scene {
        bags = List.copyOf(bags);
        if (bags.size() > MOST_BAGS) {
            throw new IllegalArgumentException("at most " + MOST_BAGS + " bags lie on a board, not " + bags.size());
        }
        for (int i = 0; i < bags.size(); i++) {
            Lying bag = bags.get(i);
            if (!board.holds(bag.x(), bag.y())) {
                throw new IllegalArgumentException(
                        place(i, bag) + " is not on the board, which is " + -board.width() / 2 + " to "
                                + board.width() / 2 + " in across and 0 to " + Board.LENGTH + " in up");
            }
        }
    }

    /** An empty board. */
    public static Scene empty(Board board) {
        return new Scene(board, Contact.USUAL, List.of());
    }

    /**
     * Checks further that no two bags overlap: their centres are at least 6 in apart, but for rounding.
     *
     * @throws IllegalArgumentException if two do; the message names both, counted from 1
     */
    public void requireApart() {
        for (int i = 0; i < bags.size(); i++) {
            for (int j = i + 1; j < bags.size(); j++) {
                double apart = StrictMath.hypot(
                        bags.get(i).x() - bags.get(j).x(),
                        bags.get(i).y() - bags.get(j).y());
                if (!(apart >= 2 * Bag.RADIUS - ROUNDING)) {
                    throw new IllegalArgumentException(place(i, bags.get(i)) + " and " + place(j, bags.get(j))
                            + " overlap: their centres are " + apart + " in apart; bags lie at least "
                            + 2 * Bag.RADIUS + " in apart");
                }
            }
        }
    }

    private static String place(int index, Lying bag) {
        return "bag " + (index + 1) + " at (" + bag.x() + ", " + bag.y() + ")";
    }
}
