package boardside.engine.physics;

import boardside.engine.rules.Tally;

/**
 * How bags thrown at an empty board ended, as counted.
 *
 * @param board where
 * @param bags in, on and off
 * @param left of those off, the ones known to have gone past the left edge; the others likewise
 * @param right past the right edge
 * @param shortOf in front
 * @param past over the back
 * @param notIn further bags of which nothing is known but that they did not go in
 * @param inOnly further bags in, where only those were counted
 */
public record ThrowCount(Board board, Tally bags, int left, int right, int shortOf, int past, int notIn, int inOnly) {
    /**
     * Checks the counts.
     *
     * @throws IllegalArgumentException for a negative count, or more misses told than bags off
     */
    public ThrowCount {
        if (!(left >= 0 && right >= 0 && shortOf >= 0 && past >= 0 && notIn >= 0 && inOnly >= 0)) {
            throw new IllegalArgumentException("a count is 0 or more, not " + left + ", " + right + ", " + shortOf
                    + ", " + past + ", " + notIn + ", " + inOnly);
        }
        if (left + right + shortOf + past > bags.off()) {
            throw new IllegalArgumentException("misses were told of " + (left + right + shortOf + past)
                    + " bags, but only " + bags.off() + " went off");
        }
    }

    /** Counts of in, on and off alone. */
    public static ThrowCount of(Board board, Tally bags) {
        return new ThrowCount(board, bags, 0, 0, 0, 0, 0, 0);
    }

    /** Bags thrown. */
    public int thrown() {
        return bags.thrown() + notIn + inOnly;
    }

    /** Misses told. */
    public int told() {
        return left + right + shortOf + past;
    }

    /** The log of the chance of these counts, but for a constant. */
    double logLikelihood(ThrowChances chances) {
        return part(bags.in() + inOnly, chances.in())
                + part(bags.on(), chances.on())
                + part(left, chances.left())
                + part(right, chances.right())
                + part(shortOf, chances.shortOf())
                + part(past, chances.past())
                + part(bags.off() - told(), chances.off())
                + part(notIn, 1 - chances.in());
    }

    private static double part(int count, double chance) {
        return count == 0 ? 0 : count * Elementary.log(Math.max(chance, 1e-300));
    }
}
