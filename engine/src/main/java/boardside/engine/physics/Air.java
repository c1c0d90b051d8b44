package boardside.engine.physics;

/**
 * What slows a bag in flight: drag of half the density times the drag area times the speed squared.
 *
 * @param density of the air, kg/m3, 0..2
 * @param dragArea drag coefficient times area, m2, 0..0.1
 */
public record Air(double density, double dragArea) {
    /**
     * Density published (dry air at 20 degrees at sea level); drag area chosen, between a bag's edge and its full side.
     */
    public static final Air USUAL = new Air(1.2, 0.006);

    /** No air. */
    public static final Air NONE = new Air(0, 0);

    private static final double DENSEST = 2;
    private static final double LARGEST = 0.1;

    /**
     * Checks the ranges.
     *
     * @throws IllegalArgumentException if one is out of range or not a number
     */
    public Air {
        if (!(density >= 0 && density <= DENSEST)) {
            throw new IllegalArgumentException("the density of air is 0 to " + DENSEST + " kg/m3, not " + density);
        }
        if (!(dragArea >= 0 && dragArea <= LARGEST)) {
            throw new IllegalArgumentException("a drag area is 0 to " + LARGEST + " m2, not " + dragArea);
        }
    }
}
