package boardside.engine.odds;

import java.util.Arrays;

/**
 * What a round moves after cancellation, seen from the first side: chances of -12 (the other side scores 12) to 12.
 * Immutable.
 */
public final class NetDistribution {
    /** Most points a round moves. */
    public static final int MOST = RoundDistribution.MOST;

    private final double[] chances;

    private NetDistribution(double[] chances) {
        this.chances = chances;
    }

    /**
     * From the chances themselves.
     *
     * @param chances of -12, -11, ..., 12; 0 or more, adding up to 1 within 1e-9. Not modified.
     * @throws IllegalArgumentException if they do not
     */
    public static NetDistribution of(double[] chances) {
        if (chances.length != 2 * MOST + 1) {
            throw new IllegalArgumentException(
                    "a round after cancellation has 25 chances, of -12 to 12 points, not " + chances.length);
        }
        return new NetDistribution(Chances.checked(chances, "a round after cancellation"));
    }

    /** The difference of two sides that throw independently of each other. */
    public static NetDistribution between(RoundDistribution mine, RoundDistribution theirs) {
        double[] chances = new double[2 * MOST + 1];
        for (int i = 0; i <= MOST; i++) {
            double chance = mine.chance(i);
            if (chance > 0) {
                for (int j = 0; j <= MOST; j++) {
                    chances[MOST + i - j] += chance * theirs.chance(j);
                }
            }
        }
        return new NetDistribution(chances);
    }

    /** Chance that the first side scores so many; negative if the other does; 0 outside -12..12. */
    public double chance(int net) {
        return net >= -MOST && net <= MOST ? chances[MOST + net] : 0;
    }

    /** Mean, -12..12. */
    public double mean() {
        double mean = 0;
        for (int net = 1; net <= MOST; net++) {
            mean += net * (chances[MOST + net] - chances[MOST - net]);
        }
        return mean;
    }

    /** The same round seen from the other side. */
    public NetDistribution mirrored() {
        double[] mirrored = new double[chances.length];
        for (int i = 0; i < chances.length; i++) {
            mirrored[i] = chances[chances.length - 1 - i];
        }
        return new NetDistribution(mirrored);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof NetDistribution that && Arrays.equals(chances, that.chances);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(chances);
    }

    @Override
    public String toString() {
        return "NetDistribution" + Arrays.toString(chances);
    }
}
