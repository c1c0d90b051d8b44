package boardside.engine.trial;

import boardside.engine.rules.Finish;
import boardside.engine.skill.RunCount;
import java.util.Collection;

/**
 * How much a player's rounds differ from each other within a run: the luck that a trial has to see through. What makes
 * whole days and runs differ drops out of it, since candidates are compared within blocks.
 *
 * @param deviation standard deviation of a round's points within a run, above 0
 * @param rounds full rounds it was counted from; 0 for a new player
 */
public record Swings(double deviation, long rounds) {
    /**
     * Luck of a new player: bags 30 % in and 38 % on, about five points a round.
     */
    private static final double USUAL_VARIANCE = Finish.BAGS * Look.variance(0.30, 0.38);

    /** Rounds that the usual player counts for beside a player's own. */
    private static final double USUAL_ROUNDS = 20;

    /** Checked. */
    public Swings {
        if (!(deviation > 0 && rounds >= 0)) {
            throw new IllegalArgumentException(
                    "a deviation is above 0 and rounds are 0 or more, not " + deviation + " and " + rounds);
        }
    }

    /** Of a player without records. */
    public static Swings usual() {
        return new Swings(Math.sqrt(USUAL_VARIANCE), 0);
    }

    /**
     * Of a player's own full rounds: their squares about the mean of what was thrown one way in one run.
     *
     * @param counts in any order; not modified
     */
    public static Swings of(Collection<RunCount> counts) {
        double squares = 0;
        double freedom = 0;
        long rounds = 0;
        for (RunCount count : counts) {
            int n = count.fullRounds();
            if (n < 2) {
                continue;
            }
            double sum = 0;
            double square = 0;
            for (Finish finish : Finish.values()) {
                int times = count.finishes().get(finish.index());
                sum += (double) times * finish.points();
                square += (double) times * finish.points() * finish.points();
            }
            squares += square - sum * sum / n;
            freedom += n - 1;
            rounds += n;
        }
        double variance = (USUAL_ROUNDS * USUAL_VARIANCE + squares) / (USUAL_ROUNDS + freedom);
        return new Swings(Math.sqrt(variance), rounds);
    }

    /** Variance of the difference of two units' points per round. */
    double ofUnits() {
        return 2 * deviation * deviation / TrialDesign.ROUNDS;
    }
}
