package boardside.engine.physics;

/**
 * How one player throws one face of one bag set at an empty board: a slide, straight up the board.
 *
 * <p>Three independent normal variables: where the bag comes to lie across, where it lands up the board, and its speed once
 * it lies. The <em>reach</em> is where it would stop if the board had no hole and no end: landing place plus slide.
 *
 * @param x mean across, inches to the thrower's right of the hole
 * @param spreadX standard deviation across, inches, above 0
 * @param reach at the mean landing place and speed, inches up from the front edge
 * @param spreadY standard deviation of the landing place up the board, inches, above 0
 * @param spreadSpeed standard deviation of the speed as a share of its mean, above 0
 * @param slide length at the mean speed on a board of usual slope, inches, above 0
 * @param friction of the bag on the board, above {@link #HOLDS}, at most 5
 */
public record ThrowModel(
        double x, double spreadX, double reach, double spreadY, double spreadSpeed, double slide, double friction) {
    /** The least friction with which a bag stays where it stops on a board of usual slope: the slope's tangent. */
    public static final double HOLDS;

    /**
     * Speed of a bag just before it lands, m/s. Flights of 27 ft from 30 in up come down at 9.1 to 9.5 m/s for elevations of
     * 33 to 52 degrees.
     */
    static final double ARRIVAL = 9.25;

    private static final double SIN;
    private static final double COS;

    static {
        double slope = StrictMath.toRadians(
                Board.of(Board.REGULATION_WIDTH, Board.FRONT_HEIGHT).slope());
        SIN = StrictMath.sin(slope);
        COS = StrictMath.cos(slope);
        HOLDS = SIN / COS;
    }

    /**
     * Checks the ranges.
     *
     * @throws IllegalArgumentException if a number is out of range or none
     */
    public ThrowModel {
        if (!(Math.abs(x) + Math.abs(reach) < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("aim and reach are finite, not " + x + ", " + reach);
        }
        if (!(spreadX > 0 && spreadY > 0 && spreadSpeed > 0 && spreadX + spreadY + spreadSpeed < 1e6)) {
            throw new IllegalArgumentException(
                    "a spread is above 0, not " + spreadX + ", " + spreadY + ", " + spreadSpeed);
        }
        if (!(slide > 0 && slide < 1e6)) {
            throw new IllegalArgumentException("a slide is longer than nothing, not " + slide);
        }
        if (!(friction > HOLDS && friction <= 5)) {
            throw new IllegalArgumentException(
                    "a bag that stays on the board has friction above " + HOLDS + ", not " + friction);
        }
    }

    /** What slows a bag going straight up a board of usual slope, m/s2. */
    static double deceleration(double friction) {
        return Simulator.GRAVITY * (friction * COS + SIN);
    }

    /** Mean speed once it lies, m/s. */
    public double speed() {
        return Math.sqrt(2 * deceleration(friction) * slide * Simulator.INCH);
    }

    /** Mean landing place up the board, inches. */
    public double landingY() {
        return reach - slide;
    }

    /** Standard deviation of the reach, inches: landing place and length of the slide together. */
    public double spreadAlong() {
        double length = 2 * slide * spreadSpeed;
        return Math.sqrt(spreadY * spreadY + length * length);
    }

    /** The landing meant, for {@link Batch#landings}. */
    public Landing landing() {
        return new Landing(x, landingY(), speed(), 0);
    }

    /** The errors around it, for {@link Batch#landings}. */
    public LandingSpread landingSpread() {
        return new LandingSpread(spreadX, spreadY, spreadSpeed * speed(), 0);
    }

    /** The bag thrown. */
    public Bag bag() {
        return Bag.of(friction);
    }

    /**
     * Length of the slide of a bag that comes down on the board at a steepness: of its speed, the part into the board is
     * lost, and friction's impulse takes the coefficient times that from the part along it.
     *
     * @param steepness angle between its way and the board, degrees, 0..90
     * @param friction coefficient, at least 0
     * @return inches, 0 where the impulse takes all
     */
    public static double slide(double steepness, double friction) {
        double angle = StrictMath.toRadians(steepness);
        double left = ARRIVAL * (StrictMath.cos(angle) - friction * StrictMath.sin(angle));
        return left > 0 ? left * left / (2 * deceleration(friction)) / Simulator.INCH : 0;
    }

    /** The angle at which its bags come down on the board, degrees: what gives this slide with this friction. */
    public double steepness() {
        double share = Math.min(1, speed() / (ARRIVAL * Math.sqrt(1 + friction * friction)));
        return StrictMath.toDegrees(StrictMath.acos(share) - StrictMath.atan(friction));
    }

    /**
     * The same throw onto boards with more or less friction: the same steepness and spreads, and the same reach, as a player
     * who has found the board throws.
     *
     * @param factor on the friction, above 0
     */
    public ThrowModel onBoards(double factor) {
        double other = Math.min(5, Math.max(HOLDS + LEAST_ABOVE, friction * factor));
        double length = Math.max(SHORTEST, slide(steepness(), other));
        return new ThrowModel(x, spreadX, reach, spreadY, spreadSpeed, length, other);
    }

    /** Least friction above {@link #HOLDS} that is told from it. */
    static final double LEAST_ABOVE = 1e-3;

    /** No slide is taken to be shorter, inches. */
    static final double SHORTEST = 0.5;

    /** The same player aiming elsewhere: mean across and reach, inches. */
    public ThrowModel aimed(double meanX, double meanReach) {
        return new ThrowModel(meanX, spreadX, meanReach, spreadY, spreadSpeed, slide, friction);
    }

    /** The same aim with spreads multiplied: across, and along the board (landing place and speed alike). */
    public ThrowModel spread(double across, double along) {
        return new ThrowModel(x, across * spreadX, reach, along * spreadY, along * spreadSpeed, slide, friction);
    }
}
