package boardside.engine.skill;

import boardside.engine.rules.Word;

/** How sure a difference is. */
public enum Verdict implements Word {
    /** The chance of its sign is at least 97.5 %. */
    SIGNAL,
    /** The chance of its sign is at least 85 %. */
    LEANING,
    /** Neither: it may be luck. */
    OPEN;

    private static final double SURE = 0.975;
    private static final double LIKELY = 0.85;

    /** The verdict on a difference that is above 0 with this chance, 0..1. */
    public static Verdict of(double chance) {
        if (!(chance >= 0 && chance <= 1)) {
            throw new IllegalArgumentException("a chance is 0 to 1, not " + chance);
        }
        // 1 - 0.975 is a hair above 0.025; compare each side with its own bound.
        if (chance >= SURE || chance <= 0.025) {
            return SIGNAL;
        }
        return chance >= LIKELY || chance <= 0.15 ? LEANING : OPEN;
    }
}
