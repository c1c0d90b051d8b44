package boardside.engine.rules;

/**
 * How a game is won.
 *
 * @param target points to reach, 1..999; 21 by default
 * @param exact whether the target must be hit exactly; a side that passes it falls back (common practice, no source)
 * @param fallBack score a side falls back to when it passes an exact target, 0..target-1; 15 by default; not used
 *     otherwise
 * @param skunk lead to nil that ends a game early, 1..target, or 0 for none (common practice, no source: 13-0)
 * @param firstThrow who throws first after a round without points
 */
public record GameRules(int target, boolean exact, int fallBack, int skunk, FirstThrow firstThrow) {
    /** To 21 or more, no variants, first throw kept after a round without points. */
    public static final GameRules STANDARD = new GameRules(21, false, 15, 0, FirstThrow.KEEP);

    /**
     * Checks the settings.
     *
     * @throws IllegalArgumentException if a number is out of its range
     */
    public GameRules {
        if (!(target >= 1 && target <= 999)) {
            throw new IllegalArgumentException("the target is 1 to 999 points, not " + target);
        }
        if (exact && !(fallBack >= 0 && fallBack < target)) {
            throw new IllegalArgumentException(
                    "the score to fall back to is 0 or more and below the target " + target + ", not " + fallBack);
        }
        if (!(skunk >= 0 && skunk <= target)) {
            throw new IllegalArgumentException("the skunk lead is 0 (none) to the target " + target + ", not " + skunk);
        }
    }

    /** The same with another target; a fall-back that would not lie below it moves to six below, at least 0. */
    public GameRules withTarget(int points) {
        return new GameRules(
                points,
                exact,
                fallBack < points ? fallBack : Math.max(0, points - 6),
                Math.min(skunk, points),
                firstThrow);
    }

    /** The same with an exact target and the score to fall back to. */
    public GameRules withExact(int fallBackTo) {
        return new GameRules(target, true, fallBackTo, skunk, firstThrow);
    }

    /** The same, ended early by such a lead to nil. */
    public GameRules withSkunk(int lead) {
        return new GameRules(target, exact, fallBack, lead, firstThrow);
    }

    /** The same with another rule for the first throw. */
    public GameRules withFirstThrow(FirstThrow rule) {
        return new GameRules(target, exact, fallBack, skunk, rule);
    }

    /**
     * The score of a side after it gains points.
     *
     * @param score before, 0..target-1
     * @param gain points after cancellation, 0 or more
     */
    public int after(int score, int gain) {
        int sum = score + gain;
        return exact && sum > target ? fallBack : sum;
    }

    /** Whether a side with this score has won against a side with that one. */
    public boolean won(int score, int other) {
        return (exact ? score == target : score >= target) || (skunk > 0 && other == 0 && score >= skunk);
    }
}
