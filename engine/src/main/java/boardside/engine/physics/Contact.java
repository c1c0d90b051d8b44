package boardside.engine.physics;

/**
 * What happens where bags meet each other and the hole; docs/physics.md says how each default was come by.
 *
 * @param restitution share of the approach speed along the line of centres at which two bags part, 0..1
 * @param friction coefficient of friction of a bag's side on another's, 0..5
 * @param parting least speed at which two bags part after a blow, metres a second, above 0 to 0.1: what keeps bags that
 *     press on each other touching again and again instead of for ever
 * @param drop how far a bag must fall while its centre crosses the hole in order to stay in it, inches, 0..6
 */
public record Contact(double restitution, double friction, double parting, double drop) {
    /**
     * The defaults, none of them measured: restitution 0.1, friction 0.3 and a drop of 0.65 in are chosen so that typical
     * players' counts and pushes come out (the drop as half of a bag's published thickness of 1.1 to 1.5 in); a parting speed
     * of 0.01 m/s is chosen as too small to matter.
     */
    public static final Contact USUAL = new Contact(0.1, 0.3, 0.01, 0.65);

    private static final double HIGHEST_FRICTION = 5;
    private static final double HIGHEST_PARTING = 0.1;
    private static final double DEEPEST = 6;

    /**
     * Checks the ranges.
     *
     * @throws IllegalArgumentException if one is out of range or not a number
     */
    public Contact {
        if (!(restitution >= 0 && restitution <= 1)) {
            throw new IllegalArgumentException("restitution is 0 to 1, not " + restitution);
        }
        if (!(friction >= 0 && friction <= HIGHEST_FRICTION)) {
            throw new IllegalArgumentException(
                    "friction between bags is 0 to " + HIGHEST_FRICTION + ", not " + friction);
        }
        if (!(parting > 0 && parting <= HIGHEST_PARTING)) {
            throw new IllegalArgumentException(
                    "the least parting speed is above 0 to " + HIGHEST_PARTING + " m/s, not " + parting);
        }
        if (!(drop >= 0 && drop <= DEEPEST)) {
            throw new IllegalArgumentException("the drop is 0 to " + DEEPEST + " in, not " + drop);
        }
    }
}
