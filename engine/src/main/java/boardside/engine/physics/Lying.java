package boardside.engine.physics;

/**
 * A bag at rest on the board.
 *
 * @param x of its centre, inches to the right of the centre line
 * @param y of its centre, inches up from the front edge
 * @param bag its friction and weight
 */
public record Lying(double x, double y, Bag bag) {}
