package boardside.engine.rules;

import java.util.ArrayList;
import java.util.List;

/**
 * How many bags of a full round of four ended in, on and off: one of 15.
 *
 * @param in bags in the hole, 0..4
 * @param on bags on the board, 0..4
 * @param off the rest; the three add up to 4
 */
public record Finish(int in, int on, int off) {
    /** Bags of one side in a full round (ACL rules: 4 a side). */
    public static final int BAGS = 4;

    private static final List<Finish> ALL = all();

    /**
     * Checks the counts.
     *
     * @throws IllegalArgumentException if a count is negative or the three do not add up to 4
     */
    public Finish {
        if (!(in >= 0 && on >= 0 && off >= 0 && in + on + off == BAGS)) {
            throw new IllegalArgumentException("a finish of four bags cannot be " + in + " in, " + on + " on, " + off
                    + " off; the three are 0 or more and add up to 4");
        }
    }

    /** Points before cancellation: 3 a bag in, 1 a bag on; 0..12, never 11. */
    public int points() {
        return Outcome.IN.points() * in + Outcome.ON.points() * on;
    }

    /** All four bags in. */
    public boolean fourBagger() {
        return in == BAGS;
    }

    /** Position of this finish in {@link #values()}, 0..14. */
    public int index() {
        // Finishes with fewer than `in` bags in the hole come first: sum over i < in of (5 - i).
        return in * (BAGS + 1) - in * (in - 1) / 2 + on;
    }

    /** The 15 finishes, ordered by bags in, then bags on. */
    public static List<Finish> values() {
        return ALL;
    }

    /**
     * The finishes that make a total, fewest bags in first; empty for 11 and whatever lies outside 0..12. Exactly 3, 4
     * and 6 have two.
     */
    public static List<Finish> ofTotal(int points) {
        return ALL.stream().filter(finish -> finish.points() == points).toList();
    }

    private static List<Finish> all() {
        List<Finish> finishes = new ArrayList<>();
        for (int in = 0; in <= BAGS; in++) {
            for (int on = 0; on <= BAGS - in; on++) {
                finishes.add(new Finish(in, on, BAGS - in - on));
            }
        }
        return List.copyOf(finishes);
    }
}
