package boardside.engine.trial;

import java.util.List;

/**
 * What a trial is fixed to before its first bag.
 *
 * @param candidates ways to throw that are compared, 2..8
 * @param longest blocks after which it ends unsettled: one of {@link #LENGTHS}
 * @param margin points per round within which candidates count as equal, above 0 and at most 4
 * @param seed where the order of its blocks comes from
 */
public record TrialDesign(int candidates, int longest, double margin, long seed) {
    /** The most candidates: a block of eight is sixteen rounds, about ten minutes. */
    public static final int MOST = 8;

    /** Rounds of four a candidate throws in a block. */
    public static final int ROUNDS = 2;

    /** Lengths that boundaries were calibrated for, in blocks. */
    public static final List<Integer> LENGTHS = List.of(25, 50, 100, 200);

    /** Points per round unless the player says otherwise; common practice, no source. */
    public static final double USUAL_MARGIN = 0.5;

    /** Blocks unless the player says otherwise. */
    public static final int USUAL_LENGTH = 50;

    private static final double WIDEST_MARGIN = 4;

    /**
     * Checked.
     *
     * @throws IllegalArgumentException if a part is outside its range
     */
    public TrialDesign {
        if (!(candidates >= 2 && candidates <= MOST)) {
            throw new IllegalArgumentException("a trial compares 2 to " + MOST + " candidates, not " + candidates);
        }
        if (!LENGTHS.contains(longest)) {
            throw new IllegalArgumentException("a trial is at most 25, 50, 100 or 200 blocks long, not " + longest);
        }
        if (!(margin > 0 && margin <= WIDEST_MARGIN)) {
            throw new IllegalArgumentException(
                    "candidates count as equal within more than 0 and at most 4 points a round, not " + margin);
        }
    }
}
