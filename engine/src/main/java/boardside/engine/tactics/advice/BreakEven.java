package boardside.engine.tactics.advice;

import boardside.engine.tactics.Rate;
import org.jspecify.annotations.Nullable;

/**
 * How often a shot has to work to be right against another.
 *
 * @param against the best other shot
 * @param alternative chance to win with that, 0..1
 * @param ifWorked chance to win where the shot works
 * @param ifNot chance to win where it does not
 * @param made how often the player makes it
 */
public record BreakEven(Call against, double alternative, double ifWorked, double ifNot, Rate made) {
    /** What the comparison comes to. */
    public enum Case {
        /** Right from a rate of working on. */
        AT,
        /** Right however often it works. */
        ALWAYS,
        /** Not right however often it works. */
        NEVER
    }

    /** Which case it is. */
    public Case is() {
        if (Math.min(ifNot, ifWorked) >= alternative) {
            return Case.ALWAYS;
        }
        return ifWorked > alternative && ifWorked > ifNot ? Case.AT : Case.NEVER;
    }

    /**
     * The rate from which the shot is the better one: (V - F) / (S - F), with V the alternative's value, S and F the shot's
     * where it works and where not.
     *
     * @return 0..1, or null where no rate decides
     */
    public @Nullable Double needed() {
        return is() == Case.AT ? (Double) ((alternative - ifNot) / (ifWorked - ifNot)) : null;
    }
}
