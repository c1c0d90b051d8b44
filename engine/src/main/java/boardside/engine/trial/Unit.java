package boardside.engine.trial;

import boardside.engine.rules.Finish;
import boardside.engine.rules.Tally;

/**
 * Two rounds of four of one candidate, thrown one after the other.
 *
 * @param candidate from 0
 * @param bags where its eight bags ended
 */
public record Unit(int candidate, Tally bags) {
    /** Bags of a unit. */
    public static final int BAGS = TrialDesign.ROUNDS * Finish.BAGS;

    /**
     * Checked.
     *
     * @throws IllegalArgumentException unless eight bags were thrown
     */
    public Unit {
        if (!(candidate >= 0 && candidate < TrialDesign.MOST)) {
            throw new IllegalArgumentException("candidates are numbered 0 to 7, not " + candidate);
        }
        if (bags.thrown() != BAGS) {
            throw new IllegalArgumentException("a unit is two rounds of four bags, not " + bags.thrown() + " bags");
        }
    }
}
