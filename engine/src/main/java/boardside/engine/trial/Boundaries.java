package boardside.engine.trial;

/**
 * How far apart candidates must be, in standard errors of a difference, for a trial to decide. The boundary falls with
 * the fourth root of the blocks thrown, C (n / longest)^(-1/4): a compromise between stopping early and losing little at
 * the end (Wang and Tsiatis 1987, Biometrics 43, 193-199, with Delta = 1/4). The constants were calibrated by simulation
 * of throwers with good and bad days, streaks, warming up and tiring ({@code boardside.bench.trial.Boundary}).
 */
final class Boundaries {
    private static final double POWER = 0.25;

    /** By candidates in play from 2, then by length in the order of {@link TrialDesign#LENGTHS}. */
    private static final double[][] WINNER = {
        {2.373, 2.380, 2.395, 2.391},
        {2.708, 2.718, 2.735, 2.741},
        {2.897, 2.910, 2.925, 2.950},
        {3.038, 3.071, 3.053, 3.068},
        {3.136, 3.143, 3.147, 3.155},
        {3.245, 3.264, 3.241, 3.258},
        {3.313, 3.319, 3.313, 3.324}
    };

    /** By length. */
    private static final double[] EQUAL = {2.070, 2.091, 2.109, 2.125};

    private Boundaries() {}

    /**
     * How far the best must be ahead of the worst of those in play for the worst to drop out: of equal ones, in 5 % of
     * trials or fewer one ever does.
     *
     * @param inPlay candidates in play, 2..8
     * @param longest the trial's length
     * @param blocks thrown so far, 1..longest
     */
    static double winner(int inPlay, int longest, int blocks) {
        return constant(inPlay, longest) * shape(longest, blocks);
    }

    /** How far within the margin the difference must be for candidates to count as equal; where they differ by the whole
     * margin, in 5 % of trials or fewer they ever do. */
    static double equal(int longest, int blocks) {
        return EQUAL[index(longest)] * shape(longest, blocks);
    }

    /** The boundary at the last block. */
    static double constant(int inPlay, int longest) {
        return WINNER[inPlay - 2][index(longest)];
    }

    static double equalConstant(int longest) {
        return EQUAL[index(longest)];
    }

    /** The boundary after so many blocks over that at the last one. */
    static double shape(int longest, int blocks) {
        return Math.pow((double) blocks / longest, -POWER);
    }

    private static int index(int longest) {
        return TrialDesign.LENGTHS.indexOf(longest);
    }
}
