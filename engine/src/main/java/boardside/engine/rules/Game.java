package boardside.engine.rules;

/**
 * A game between two rounds: the score, and who throws first in the next one. Immutable.
 *
 * @param rules how the game is won
 * @param mine points of the first side, 0 or more
 * @param theirs points of the other side, 0 or more
 * @param meFirst whether the first side throws first in the next round
 * @param rounds rounds played
 */
public record Game(GameRules rules, int mine, int theirs, boolean meFirst, int rounds) {
    /** Whose game it is. */
    public enum Result {
        /** Nobody's yet. */
        OPEN,
        /** The first side won. */
        WON,
        /** The other side won. */
        LOST
    }

    /**
     * Checks the score.
     *
     * @throws IllegalArgumentException if a count is negative, a score lies beyond an exact target, or both sides have
     *     won
     */
    public Game {
        if (!(mine >= 0 && theirs >= 0 && rounds >= 0)) {
            throw new IllegalArgumentException(
                    "scores and rounds are 0 or more, not " + mine + "-" + theirs + " after " + rounds);
        }
        if (rules.exact() && Math.max(mine, theirs) > rules.target()) {
            throw new IllegalArgumentException("a score beyond an exact target of " + rules.target() + " falls back to "
                    + rules.fallBack() + ", so " + mine + "-" + theirs + " cannot be");
        }
        if (rules.won(mine, theirs) && rules.won(theirs, mine)) {
            throw new IllegalArgumentException("only one side can have won, not both at " + mine + "-" + theirs);
        }
    }

    /** A new game at 0-0. */
    public static Game start(GameRules rules, boolean meFirst) {
        return new Game(rules, 0, 0, meFirst, 0);
    }

    /** Who has won. */
    public Result result() {
        if (rules.won(mine, theirs)) {
            return Result.WON;
        }
        return rules.won(theirs, mine) ? Result.LOST : Result.OPEN;
    }

    /** Whether a side has won. */
    public boolean over() {
        return result() != Result.OPEN;
    }

    /**
     * Whose bag is next in the round to come: the sides alternate, and the one that throws first has the first.
     *
     * @param thrown bags thrown in it by both sides, 0..7
     * @return whether it is the first side's
     * @throws IllegalArgumentException if that many bags leave none
     */
    public boolean mineNext(int thrown) {
        if (!(thrown >= 0 && thrown < 2 * Finish.BAGS)) {
            throw new IllegalArgumentException(
                    "both sides together throw eight bags a round, so after " + thrown + " there is none to come");
        }
        return (thrown % 2 == 0) == meFirst;
    }

    /**
     * The game after one more round. Only the side with more raw points scores, and only the difference; it throws first
     * in the next round. After a round without points {@link GameRules#firstThrow()} decides (ACL rules, scoring).
     *
     * @param myPoints raw points of the first side, 0..12
     * @param theirPoints raw points of the other side, 0..12
     * @throws IllegalStateException if the game is over
     * @throws IllegalArgumentException if points lie outside 0..12
     */
    public Game play(int myPoints, int theirPoints) {
        if (over()) {
            throw new IllegalStateException("the game ended " + mine + "-" + theirs + " after round " + rounds
                    + "; start a new one for further rounds");
        }
        checkPoints(myPoints);
        checkPoints(theirPoints);
        int net = myPoints - theirPoints;
        if (net == 0) {
            return new Game(rules, mine, theirs, (rules.firstThrow() == FirstThrow.KEEP) == meFirst, rounds + 1);
        }
        return net > 0
                ? new Game(rules, rules.after(mine, net), theirs, true, rounds + 1)
                : new Game(rules, mine, rules.after(theirs, -net), false, rounds + 1);
    }

    private static void checkPoints(int points) {
        if (!(points >= 0 && points <= Outcome.IN.points() * Finish.BAGS)) {
            throw new IllegalArgumentException("a round of four bags gives 0 to 12 points, not " + points);
        }
    }
}
