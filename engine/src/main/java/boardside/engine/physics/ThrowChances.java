package boardside.engine.physics;

/**
 * How a bag thrown at an empty board ends. The six add to 1.
 *
 * @param in in the hole
 * @param on on the board
 * @param left past the left edge
 * @param right past the right edge
 * @param shortOf between the side edges, landing in front of the board
 * @param past between the side edges, over the back
 */
public record ThrowChances(double in, double on, double left, double right, double shortOf, double past) {
    /** Off the board, anywhere. */
    public double off() {
        return left + right + shortOf + past;
    }

    /** Points a bag is worth, 3 in + on. */
    public double points() {
        return 3 * in + on;
    }
}
