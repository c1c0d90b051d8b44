package boardside.engine.physics;

/**
 * What of a bag matters to how it slides: cloth on this board today, and weight.
 *
 * @param friction coefficient of sliding friction on the board, 0..5, the lower side's
 * @param ounces weight, 8..32 (bodies publish 14 to 16.5)
 */
public record Bag(double friction, double ounces) {
    /** Radius of the disc a bag is taken as, inches: half of its side of 6 in (published by the rules' bodies). */
    public static final double RADIUS = 3;

    /** Weight unless said otherwise, ounces (published: bodies allow 14 to 16.5). */
    public static final double USUAL_OUNCES = 16;

    private static final double HIGHEST_FRICTION = 5;
    private static final double LIGHTEST = 8;
    private static final double HEAVIEST = 32;

    /**
     * Checks both.
     *
     * @throws IllegalArgumentException if one is out of range or not a number
     */
    public Bag {
        if (!(friction >= 0 && friction <= HIGHEST_FRICTION)) {
            throw new IllegalArgumentException(
                    "friction is 0 to " + HIGHEST_FRICTION + ", usually 0.2 to 0.6, not " + friction);
        }
        if (!(ounces >= LIGHTEST && ounces <= HEAVIEST)) {
            throw new IllegalArgumentException(
                    "a bag weighs " + LIGHTEST + " to " + HEAVIEST + " oz, usually 14 to 16.5, not " + ounces);
        }
    }

    /** A bag of usual weight. */
    public static Bag of(double friction) {
        return new Bag(friction, USUAL_OUNCES);
    }
}
