package boardside.app.practice;

import boardside.engine.rules.Word;
import java.util.List;

/**
 * How a ghost whose points change from round to round plays: fixed when the run starts, so that it goes on without a
 * network and every device sees the same.
 *
 * @param kind where its points come from
 * @param of the month (yyyy-mm), the day (yyyy-mm-dd) or the level that is meant
 * @param points its points in round 1, 2, ...; after the last it begins again; 1 to 200 of them, each 0..12
 */
public record GhostPlay(Kind kind, String of, List<Integer> points) {
    /** Most rounds that are fixed beforehand. */
    public static final int MOST_ROUNDS = 200;

    /** Where a ghost's points come from. */
    public enum Kind implements Word {
        /** Drawn as a real player of that level would throw. */
        LEVEL,
        /** The player's own rounds of a month, in the order thrown. */
        MONTH,
        /** The player's own rounds of a day, in the order thrown. */
        DAY
    }

    /**
     * Checked, list copied.
     *
     * @throws IllegalArgumentException if there are no points, too many, or some that a round cannot have
     */
    public GhostPlay {
        points = List.copyOf(points);
        if (!(points.size() >= 1 && points.size() <= MOST_ROUNDS)) {
            throw new IllegalArgumentException(
                    "a ghost's points are fixed for 1 to " + MOST_ROUNDS + " rounds, not " + points.size());
        }
        for (int each : points) {
            if (!(each >= 0 && each <= 12)) {
                throw new IllegalArgumentException("a ghost scores 0 to 12 a round, not " + each);
            }
        }
    }

    /** Its points in a round, numbered from 1. */
    public int in(int round) {
        return points.get((round - 1) % points.size());
    }
}
