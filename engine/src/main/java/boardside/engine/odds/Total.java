package boardside.engine.odds;

/** The points of a number of rounds added up, without an opponent: by convolution. Immutable. */
public final class Total {
    /** Most rounds of a total. */
    public static final int MOST_ROUNDS = 1000;

    /** What a sum of chances may fall short by, from rounding, and still count as having reached a bound. */
    private static final double ROUNDING = 1e-13;

    private final RoundDistribution round;
    private final int rounds;
    private final double[] chances;

    private Total(RoundDistribution round, int rounds) {
        this.round = round;
        this.rounds = rounds;
        this.chances = convolve(round, rounds);
    }

    /**
     * The total of so many independent rounds.
     *
     * @throws IllegalArgumentException if rounds lie outside 1..1000
     */
    public static Total of(RoundDistribution round, int rounds) {
        if (!(rounds >= 1 && rounds <= MOST_ROUNDS)) {
            throw new IllegalArgumentException("a total takes 1 to " + MOST_ROUNDS + " rounds, not " + rounds);
        }
        return new Total(round, rounds);
    }

    private static double[] convolve(RoundDistribution round, int rounds) {
        double[] sums = {1};
        for (int i = 0; i < rounds; i++) {
            double[] next = new double[sums.length + RoundDistribution.MOST];
            for (int points = 0; points <= RoundDistribution.MOST; points++) {
                double chance = round.chance(points);
                if (chance > 0) {
                    for (int sum = 0; sum < sums.length; sum++) {
                        next[sum + points] += chance * sums[sum];
                    }
                }
            }
            sums = next;
        }
        return sums;
    }

    /** Most points there can be: 12 a round. */
    public int most() {
        return chances.length - 1;
    }

    /** Chance of exactly so many points; 0 outside 0..{@link #most()}. */
    public double chance(int points) {
        return points >= 0 && points < chances.length ? chances[points] : 0;
    }

    /** Chance of so many points or more. */
    public double atLeast(int points) {
        double sum = 0;
        for (int t = most(); t >= Math.max(points, 0); t--) {
            sum += chances[t];
        }
        return Math.min(1, sum);
    }

    /** Mean points. */
    public double mean() {
        return rounds * round.mean();
    }

    /** Standard deviation of the points. */
    public double standardDeviation() {
        return Math.sqrt(rounds * round.variance());
    }

    /**
     * The smallest total t with P(T &lt;= t) &gt;= q.
     *
     * @param q above 0, at most 1
     * @throws IllegalArgumentException if it is not
     */
    public int quantile(double q) {
        if (!(q > 0 && q <= 1)) {
            throw new IllegalArgumentException("a quantile is asked for a share above 0 and at most 1, not " + q);
        }
        double sum = 0;
        for (int t = 0; t < most(); t++) {
            sum += chances[t];
            if (sum >= q - ROUNDING) {
                return t;
            }
        }
        return most();
    }
}
