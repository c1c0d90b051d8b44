package boardside.engine.tactics.advice;

import boardside.engine.physics.Normal;

/**
 * The chance in one sampled rest of a round: numbers by position, the same for every shot that is tried (common random
 * numbers), so that shots differ by what they are and not by luck.
 *
 * <p>The numbers of the first bag, the one that is decided on, are points of a lattice that fills its errors evenly: the
 * n-th has frac(shift + n / g^(j+1)) in place j, g the root above 1 of g^(d+1) = g + 1 (Roberts 2018, "The unreasonable
 * effectiveness of quasirandom sequences"), shifted at random (Cranley and Patterson 1976, "Randomization of number
 * theoretic methods for multiple integration", SIAM J. Numer. Anal. 13, 904-914) once for each replicate; replicates are
 * independent of each other, so that their spread tells the error. Later bags have SplitMix64's numbers (Steele, Lea and
 * Flood 2014).
 *
 * <p>Mutable; one for each thread.
 */
final class Luck {
    /** Numbers set aside for a bag. */
    static final int NUMBERS = 4;

    /** Turns of my bags are below this, of theirs from this on. */
    static final int SIDE = 5;

    private static final long GOLDEN = 0x9E3779B97F4A7C15L;
    private static final double[] STEPS = new double[NUMBERS];

    static {
        double root = 1.1673039782614187; // of g^5 = g + 1
        double power = 1;
        for (int j = 0; j < NUMBERS; j++) {
            power /= root;
            STEPS[j] = power;
        }
    }

    private final long seed;
    private final double[] shift = new double[NUMBERS];
    private long stream;
    private int index;
    private int first;
    private boolean swapped;

    Luck(long seed) {
        this.seed = seed;
    }

    /**
     * Goes to a sample.
     *
     * @param replicate from 0
     * @param n within the replicate, from 0
     * @param firstTurn the bag that has the lattice
     */
    void at(int replicate, int n, int firstTurn) {
        long start = mixed(seed + (replicate + 1) * GOLDEN);
        for (int j = 0; j < NUMBERS; j++) {
            shift[j] = unit(mixed(start + (j + 1) * GOLDEN));
        }
        stream = mixed(start ^ (n + 1L) * 0xBF58476D1CE4E5B9L);
        index = n;
        first = firstTurn;
        swapped = false;
    }

    /** Gives either side's bags the luck of the other's from now on, until the next sample. */
    void swap() {
        swapped = true;
    }

    /** A number within 0..1, exclusive; the same for the same bag and place. */
    double uniform(int turn, int place) {
        if (turn == first) {
            double value = shift[place] + index * STEPS[place];
            value -= Math.floor(value);
            return Math.min(1 - 0x1p-40, Math.max(0x1p-40, value));
        }
        int bag = !swapped ? turn : turn < SIDE ? turn + SIDE : turn - SIDE;
        return unit(mixed(stream + (bag * NUMBERS + place + 1) * GOLDEN));
    }

    /** A standard normal number. */
    double normal(int turn, int place) {
        return Normal.quantile(uniform(turn, place));
    }

    private static double unit(long bits) {
        return ((bits >>> 11) + 0.5) * 0x1p-53;
    }

    private static long mixed(long from) {
        long z = from;
        z = (z ^ z >>> 30) * 0xBF58476D1CE4E5B9L;
        z = (z ^ z >>> 27) * 0x94D049BB133111EBL;
        return z ^ z >>> 31;
    }
}
