package boardside.app.practice;

import boardside.engine.rules.Word;

/**
 * A challenge that was taken up: something the player's own numbers give about an even chance.
 *
 * @param id any non-blank text, unique for the player
 * @param day yyyy-mm-dd, the day it was dealt for
 * @param kind what has to be done
 * @param rounds rounds of four it takes; in a race, 0
 * @param ghost the ghost's points a round in a race, else 0
 * @param need how many of what the kind counts
 * @param chance the chance it was dealt at, as the records showed it then
 * @param low the least that chance may well have been
 * @param high the most it may well have been
 * @param run id of the run it was thrown in
 */
public record Challenge(
        String id,
        String day,
        Kind kind,
        int rounds,
        int ghost,
        int need,
        double chance,
        double low,
        double high,
        String run) {
    /** What has to be done. */
    public enum Kind implements Word {
        /** At least so many points in the rounds. */
        POINTS,
        /** At least so many bags in. */
        BAGS_IN,
        /** At most so many bags off. */
        FEW_OFF,
        /** At least so many four-baggers. */
        FOUR_BAGGERS,
        /** A race won against the ghost. */
        RACE
    }

    /** Checked. */
    public Challenge {
        if (!(0 <= low && low <= chance && chance <= high && high <= 1)) {
            throw new IllegalArgumentException(
                    "a chance lies in its range, not " + chance + " in " + low + " to " + high);
        }
    }
}
