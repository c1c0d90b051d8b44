package boardside.engine.odds;

/** Checks that arrays of chances share. */
final class Chances {
    private static final double TOLERANCE = 1e-9;

    private Chances() {}

    /**
     * A copy scaled to add up to 1.
     *
     * @param chances not modified
     * @param what what they are the chances of, for the message
     * @throws IllegalArgumentException if one is negative or not a number, or they do not add up to 1 within 1e-9
     */
    static double[] checked(double[] chances, String what) {
        double sum = 0;
        for (int i = 0; i < chances.length; i++) {
            if (!(chances[i] >= 0)) {
                throw new IllegalArgumentException(
                        "the chances of " + what + " are 0 or more, not " + chances[i] + " at position " + i);
            }
            sum += chances[i];
        }
        if (!(Math.abs(sum - 1) <= TOLERANCE)) {
            throw new IllegalArgumentException("the chances of " + what + " add up to 1, not " + sum);
        }
        double[] scaled = new double[chances.length];
        for (int i = 0; i < chances.length; i++) {
            scaled[i] = chances[i] / sum;
        }
        return scaled;
    }
}
