package boardside.engine.rules;

/** Where one bag lies when the round is over, with the points it is worth before cancellation. */
public enum Outcome implements Word {
    /** Through the hole: 3 points. */
    IN(3),
    /** At rest on the board: 1 point. */
    ON(1),
    /** Anywhere else, or touched the ground: 0 points. */
    OFF(0);

    private final int points;

    Outcome(int points) {
        this.points = points;
    }

    /** Points of one such bag: 3, 1 or 0. */
    public int points() {
        return points;
    }
}
