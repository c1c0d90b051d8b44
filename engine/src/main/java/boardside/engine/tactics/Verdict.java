package boardside.engine.tactics;

import boardside.engine.rules.Word;

/** How sure it is that one way works more often than another. */
public enum Verdict implements Word {
    /** The chance of its sign is at least 97.5 %. */
    SIGNAL,
    /** The chance of its sign is at least 85 %. */
    LEANING,
    /** Neither: it may be luck. */
    OPEN;

    private static final double SURE = 0.975;
    private static final double LIKELY = 0.85;

    /**
     * The verdict at a chance.
     *
     * @param probability that the first is the better, 0..1
     */
    public static Verdict of(double probability) {
        double sign = Math.max(probability, 1 - probability);
        return sign >= SURE ? SIGNAL : sign >= LIKELY ? LEANING : OPEN;
    }
}
