package boardside.engine.tactics.advice;

import boardside.engine.rules.Side;
import boardside.engine.tactics.Position;
import java.util.ArrayList;
import java.util.List;

/**
 * A round between two bags.
 *
 * @param board bags on the board, none over another
 * @param inMe bags of mine in the hole
 * @param inVersus bags of theirs in the hole
 * @param leftMe bags of mine still to throw, at least one where I am next
 * @param leftVersus bags of theirs still to throw
 * @param next who throws next, {@code me} or {@code versus}
 */
public record RoundPosition(Position board, int inMe, int inVersus, int leftMe, int leftVersus, Side next) {
    /** Bags of a side in a round. */
    public static final int BAGS = 4;

    /**
     * Checked.
     *
     * @throws IllegalArgumentException if a count is out of range, a side would have more than four bags, or the sides
     *     cannot have alternated; the message says which
     */
    public RoundPosition {
        inRange("in.me", inMe);
        inRange("in.versus", inVersus);
        inRange("left.me", leftMe);
        inRange("left.versus", leftVersus);
        if (next != Side.ME && next != Side.VERSUS) {
            throw new IllegalArgumentException("next: me or versus throws next, not " + next.word());
        }
        List<RoundFault> faults =
                faults(count(board, Side.ME), count(board, Side.VERSUS), inMe, inVersus, leftMe, leftVersus, next);
        if (!faults.isEmpty()) {
            throw new IllegalArgumentException(faults.get(0).message());
        }
    }

    private static void inRange(String name, int bags) {
        if (!(bags >= 0 && bags <= BAGS)) {
            throw new IllegalArgumentException(name + " is 0 to 4 bags, not " + bags);
        }
    }

    /**
     * All that is wrong with a round of which every count by itself is in range; empty where nothing is.
     *
     * @param onMe bags of mine on the board
     * @param onVersus bags of theirs on the board
     */
    public static List<RoundFault> faults(
            int onMe, int onVersus, int inMe, int inVersus, int leftMe, int leftVersus, Side next) {
        List<RoundFault> faults = new ArrayList<>();
        if (onMe + inMe + leftMe > BAGS) {
            faults.add(new RoundFault.TooMany(Side.ME, onMe, inMe, leftMe));
        }
        if (onVersus + inVersus + leftVersus > BAGS) {
            faults.add(new RoundFault.TooMany(Side.VERSUS, onVersus, inVersus, leftVersus));
        }
        int ahead = next == Side.ME ? leftMe - leftVersus : leftVersus - leftMe;
        if (leftMe + leftVersus > 0 && ahead != 0 && ahead != 1) {
            faults.add(new RoundFault.OutOfTurn(next, leftMe, leftVersus));
        }
        return faults;
    }

    /** Whether I threw first in this round. */
    public boolean meFirst() {
        return (next == Side.ME) == (leftMe == leftVersus);
    }

    /** A common situation in the middle of a round: both have thrown as often, I am next. */
    static RoundPosition of(Position board) {
        int me = count(board, Side.ME);
        int versus = count(board, Side.VERSUS);
        int left = BAGS - Math.max(1, Math.max(me, versus));
        return new RoundPosition(board, 0, 0, left, left, Side.ME);
    }

    private static int count(Position board, Side side) {
        return (int) board.bags().stream().filter(bag -> bag.side() == side).count();
    }
}
