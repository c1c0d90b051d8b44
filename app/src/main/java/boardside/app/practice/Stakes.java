package boardside.app.practice;

import org.jspecify.annotations.Nullable;

/**
 * What makes a run harder, so that practice has some of a match's pressure.
 *
 * @param lastBag whether the last bag of every round must go in; of tries, whether the last one must work
 * @param suddenDeath fewest points a round may have, 1..12; a round below ends the run, and loses a game; null for none
 * @param misses how many tries that do not work end the run, 1..12; null for none, and for rounds
 * @param shotClock seconds for a bag, 3..120, or null for none
 * @param countDown whether the device says the last seconds aloud
 */
public record Stakes(
        boolean lastBag,
        @Nullable Integer suddenDeath,
        @Nullable Integer misses,
        @Nullable Integer shotClock,
        boolean countDown) {
    /**
     * Checked.
     *
     * @throws IllegalArgumentException if a number is out of its range
     */
    public Stakes {
        if (suddenDeath != null && !(suddenDeath >= 1 && suddenDeath <= 12)) {
            throw new IllegalArgumentException("sudden death takes 1 to 12 points a round, not " + suddenDeath);
        }
        if (misses != null && !(misses >= 1 && misses <= 12)) {
            throw new IllegalArgumentException("1 to 12 misses end a run, not " + misses);
        }
        if (shotClock != null && !(shotClock >= 3 && shotClock <= 120)) {
            throw new IllegalArgumentException("a shot clock gives 3 to 120 seconds, not " + shotClock);
        }
    }

    /** Whether anything is at stake. */
    public boolean any() {
        return lastBag || suddenDeath != null || misses != null || shotClock != null;
    }
}
