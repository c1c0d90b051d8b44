package boardside.engine.plan;

import boardside.engine.rules.BoardKind;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * What is at hand for a session.
 *
 * @param minutes in all, {@value #LEAST_MINUTES}..{@value #MOST_MINUTES}
 * @param energy how fresh the player is
 * @param bagSets bag sets at hand, 1..{@value #MOST_BAG_SETS}
 * @param boards kinds of board at hand, at least one
 * @param company whether somebody throws along
 */
public record Means(int minutes, Energy energy, int bagSets, Set<BoardKind> boards, boolean company) {
    /** Less is no practice. */
    public static final int LEAST_MINUTES = 5;

    /** Longer sessions are planned in parts. */
    public static final int MOST_MINUTES = 240;

    public static final int MOST_BAG_SETS = 25;

    /**
     * Checked; set copied.
     *
     * @throws IllegalArgumentException with the first of {@link #faults}
     */
    public Means {
        boards = Set.copyOf(boards);
        List<String> faults = faults(minutes, bagSets, boards);
        if (!faults.isEmpty()) {
            throw new IllegalArgumentException(faults.get(0));
        }
    }

    /** What is wrong with such means, each in words that say what to give instead; empty where nothing is. */
    public static List<String> faults(int minutes, int bagSets, Set<BoardKind> boards) {
        List<String> faults = new ArrayList<>();
        if (!(minutes >= LEAST_MINUTES && minutes <= MOST_MINUTES)) {
            faults.add("minutes: a session takes " + LEAST_MINUTES + " to " + MOST_MINUTES + " minutes, not " + minutes
                    + (minutes > MOST_MINUTES ? "; plan a longer day in parts" : ""));
        }
        if (!(bagSets >= 1 && bagSets <= MOST_BAG_SETS)) {
            faults.add("bag-sets: at hand are 1 to " + MOST_BAG_SETS + " bag sets, not " + bagSets);
        }
        if (boards.isEmpty()) {
            faults.add("boards: name at least one of regulation, narrow");
        }
        return faults;
    }
}
