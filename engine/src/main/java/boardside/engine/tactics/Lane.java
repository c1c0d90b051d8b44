package boardside.engine.tactics;

import boardside.engine.rules.Word;

/** A third of the board's width, as the thrower sees it. */
public enum Lane implements Word {
    LEFT,
    MIDDLE,
    RIGHT;

    /** The middle lane reaches a sixth of the board's width to either side, its edges included: 4 in on a full board. */
    private static final double HALF = 1.0 / 6;

    /**
     * The lane of a point.
     *
     * @param x inches from the centre line
     * @param width of the board, inches, above 0
     */
    static Lane of(double x, double width) {
        if (Math.abs(x) <= width * HALF) {
            return MIDDLE;
        }
        return x < 0 ? LEFT : RIGHT;
    }

    /** The lane's middle, inches from the centre line. */
    double centre(double width) {
        return (ordinal() - 1) * width / 3;
    }

    /** The lane on the other side. */
    public Lane mirrored() {
        return values()[2 - ordinal()];
    }
}
