package boardside.engine.tactics;

import boardside.engine.rules.Side;

/**
 * A bag that lies on the board.
 *
 * @param x inches to the thrower's right from the centre line
 * @param y inches up from the front edge
 * @param side whose it is, {@code me} or {@code versus}
 */
public record Lying(double x, double y, Side side) {
    /**
     * Checked.
     *
     * @throws IllegalArgumentException if it does not lie on the board, has fallen in, or is of another side
     */
    public Lying {
        if (side != Side.ME && side != Side.VERSUS) {
            throw new IllegalArgumentException("a bag on the board is of me or versus, not " + side.word());
        }
        if (new Spot(x, y).inHole()) {
            throw new IllegalArgumentException("a bag at " + x + ", " + y + " has fallen in; put it outside the hole");
        }
    }

    /** Its middle. */
    public Spot spot() {
        return new Spot(x, y);
    }

    /** The same on the other side of the centre line. */
    Lying mirrored() {
        Spot spot = spot().mirrored();
        return new Lying(spot.x(), spot.y(), side);
    }
}
