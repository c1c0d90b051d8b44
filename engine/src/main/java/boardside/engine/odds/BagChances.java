package boardside.engine.odds;

import boardside.engine.rules.Finish;

/**
 * Chances of one bag; the same for each bag, and independent of the others.
 *
 * @param in chance that it ends in the hole, 0..1
 * @param on chance that it ends on the board, 0..1; what is left of 1 is off
 */
public record BagChances(double in, double on) {
    /** What the sum of two chances written as decimals may exceed 1 by. */
    private static final double ROUNDING = 1e-12;

    /**
     * Checks the chances.
     *
     * @throws IllegalArgumentException if one lies outside 0..1 or is not a number, or the two add up to more than 1
     */
    public BagChances {
        check("in", in);
        check("on", on);
        if (!(in + on <= 1 + ROUNDING)) {
            throw new IllegalArgumentException("the chances of in and on add up to " + (in + on)
                    + "; a bag ends only once, so they are at most 1 together");
        }
    }

    private static void check(String name, double chance) {
        if (!(chance >= 0 && chance <= 1)) {
            throw new IllegalArgumentException("the chance of " + name + " is 0 to 1, not " + chance
                    + (chance > 1 && chance <= 100 ? "; write " + chance + " % as " + chance / 100 : ""));
        }
    }

    /** Chance that the bag ends off, 0..1; 0 where the other two add up to 1 but for rounding. */
    public double off() {
        double rest = 1 - in - on;
        return rest > ROUNDING ? rest : 0;
    }

    /** Mean points of a round of four, before cancellation: 4 (3 in + on), 0..12. */
    public double pointsPerRound() {
        return Finish.BAGS * (3 * in + on);
    }

    /**
     * Chances of the 15 finishes of four bags, in the order of {@link Finish#values()}: multinomial,
     * 4! / (i! o! f!) in^i on^o off^f. A new array.
     */
    public double[] finishes() {
        double[] chances = new double[Finish.values().size()];
        for (Finish finish : Finish.values()) {
            chances[finish.index()] =
                    ways(finish) * power(in, finish.in()) * power(on, finish.on()) * power(off(), finish.off());
        }
        return chances;
    }

    private static int ways(Finish finish) {
        return factorial(Finish.BAGS) / (factorial(finish.in()) * factorial(finish.on()) * factorial(finish.off()));
    }

    private static int factorial(int n) {
        return n < 2 ? 1 : n * factorial(n - 1);
    }

    private static double power(double base, int exponent) {
        double product = 1;
        for (int i = 0; i < exponent; i++) {
            product *= base;
        }
        return product;
    }
}
