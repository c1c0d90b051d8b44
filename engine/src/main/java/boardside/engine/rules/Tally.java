package boardside.engine.rules;

/**
 * Bags of one side in a round, or of any number of rounds, by where they ended. Any number of bags; a full round of
 * four is a {@link Finish}.
 *
 * @param in bags in the hole, 0 or more
 * @param on bags on the board, 0 or more
 * @param off bags off, 0 or more
 */
public record Tally(int in, int on, int off) {
    /** No bags. */
    public static final Tally NONE = new Tally(0, 0, 0);

    /**
     * Checks the counts.
     *
     * @throws IllegalArgumentException if a count is negative
     */
    public Tally {
        if (!(in >= 0 && on >= 0 && off >= 0)) {
            throw new IllegalArgumentException(
                    "counts of bags are 0 or more, not " + in + " in, " + on + " on, " + off + " off");
        }
    }

    /** Bags thrown. */
    public int thrown() {
        return in + on + off;
    }

    /** Points before cancellation: 3 a bag in, 1 a bag on. */
    public int points() {
        return Outcome.IN.points() * in + Outcome.ON.points() * on;
    }

    /** Both together. */
    public Tally plus(Tally other) {
        return new Tally(in + other.in, on + other.on, off + other.off);
    }

    /** Points per round of four, before cancellation; NaN without a bag thrown. */
    public double pointsPerRound() {
        return thrown() == 0 ? Double.NaN : (double) Finish.BAGS * points() / thrown();
    }
}
