package boardside.engine.tactics.advice;

import boardside.engine.rules.Side;
import boardside.engine.tactics.Position;

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
        side("me", board, Side.ME, inMe, leftMe);
        side("versus", board, Side.VERSUS, inVersus, leftVersus);
        if (next != Side.ME && next != Side.VERSUS) {
            throw new IllegalArgumentException("next: me or versus throws next, not " + next.word());
        }
        int ahead = next == Side.ME ? leftMe - leftVersus : leftVersus - leftMe;
        if (leftMe + leftVersus > 0 && ahead != 0 && ahead != 1) {
            throw new IllegalArgumentException("left: sides throw in turn, so the side that is next (" + next.word()
                    + ") has as many bags left as the other or one more, not " + leftMe + " of me and " + leftVersus
                    + " of versus");
        }
    }

    private static void side(String name, Position board, Side side, int in, int left) {
        if (!(in >= 0 && in <= BAGS)) {
            throw new IllegalArgumentException("in." + name + " is 0 to 4 bags, not " + in);
        }
        if (!(left >= 0 && left <= BAGS)) {
            throw new IllegalArgumentException("left." + name + " is 0 to 4 bags, not " + left);
        }
        long on = board.bags().stream().filter(bag -> bag.side() == side).count();
        if (on + in + left > BAGS) {
            throw new IllegalArgumentException("a side has four bags, but " + name + " has " + on + " on the board, "
                    + in + " in and " + left + " left; take " + (on + in + left - BAGS) + " away");
        }
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
