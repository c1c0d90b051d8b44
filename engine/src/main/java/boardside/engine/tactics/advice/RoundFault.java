package boardside.engine.tactics.advice;

import boardside.engine.rules.Side;

/** Why a round cannot stand as it is told. */
public sealed interface RoundFault {
    /** What is wrong and what to do, in words for a caller that has none of its own. */
    String message();

    /**
     * A side has more than four bags.
     *
     * @param side whose they are
     * @param on bags on the board
     * @param in bags in the hole
     * @param left bags still to throw
     */
    record TooMany(Side side, int on, int in, int left) implements RoundFault {
        /** Bags to take away, 1 or more. */
        public int over() {
            return on + in + left - RoundPosition.BAGS;
        }

        @Override
        public String message() {
            return "a side has four bags, but " + side.word() + " has " + on + " on the board, " + in + " in and "
                    + left + " left; take " + over() + " away";
        }
    }

    /**
     * The bags left are not those of sides that throw in turn.
     *
     * @param next who throws next
     * @param leftMe bags left to me
     * @param leftVersus bags left to them
     */
    record OutOfTurn(Side next, int leftMe, int leftVersus) implements RoundFault {
        @Override
        public String message() {
            return "left: sides throw in turn, so the side that is next (" + next.word()
                    + ") has as many bags left as the other or one more, not " + leftMe + " of me and " + leftVersus
                    + " of versus";
        }
    }
}
