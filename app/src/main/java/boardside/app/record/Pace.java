package boardside.app.record;

import java.time.Duration;
import java.util.List;

/**
 * How long a player takes for a round, the walk included.
 *
 * @param minutesPerRound above 0
 * @param rounds rounds it was told from; 0 where it is only what is usual
 */
public record Pace(double minutesPerRound, int rounds) {
    /** Ten rounds of four in six to eight minutes; common practice, no source. */
    public static final Pace USUAL = new Pace(0.7, 0);

    private static final int FEWEST = 10;
    private static final long SHORTEST = Duration.ofSeconds(10).toMillis();
    private static final long LONGEST = Duration.ofMinutes(4).toMillis();

    /**
     * The median of the times between two rounds of a run; what is too short was entered later, what is too long was a
     * break.
     *
     * @param gaps milliseconds between rounds that follow each other in a run
     */
    static Pace of(List<Long> gaps) {
        long[] used = gaps.stream()
                .mapToLong(Long::longValue)
                .filter(gap -> gap >= SHORTEST && gap <= LONGEST)
                .sorted()
                .toArray();
        if (used.length < FEWEST) {
            return USUAL;
        }
        double median = (used[(used.length - 1) / 2] + used[used.length / 2]) / 2.0;
        return new Pace(median / Duration.ofMinutes(1).toMillis(), used.length);
    }
}
