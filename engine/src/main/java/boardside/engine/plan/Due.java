package boardside.engine.plan;

import boardside.engine.rules.BoardKind;
import java.util.List;
import java.util.Optional;

/**
 * What waits to be done.
 *
 * @param ladder the climb; empty where there was none yet
 * @param trial a trial under way
 * @param boards what is known of how the boards play
 */
public record Due(Optional<Ladder> ladder, Optional<Trial> trial, Boards boards) {
    /** Nothing, and the boards never tested. */
    public static final Due NOTHING = new Due(Optional.empty(), Optional.empty(), Boards.UNTESTED);

    /**
     * When the boards were last measured by a slide test.
     *
     * @param days since then, 0 or more; infinite where they never were
     * @param changed whether the player has said since that they play otherwise
     */
    public record Boards(double days, boolean changed) {
        /** Never measured. */
        public static final Boards UNTESTED = new Boards(Double.POSITIVE_INFINITY, false);

        /** Checked. */
        public Boards {
            if (!(days >= 0)) {
                throw new IllegalArgumentException("days since a slide test are 0 or more, not " + days);
            }
        }
    }

    /**
     * Where the climb stands.
     *
     * @param rung the ghost of the next race, 0..12
     * @param days since the last one
     */
    public record Ladder(int rung, double days) {}

    /**
     * A trial.
     *
     * @param id the trial's
     * @param name what it is called
     * @param bags bag sets it takes
     * @param board the kind of board it is thrown at
     * @param roundsPerBlock rounds of four that belong together, 1 or more
     * @param blocksLeft at most to throw, 1 or more
     */
    public record Trial(
            String id, String name, List<String> bags, BoardKind board, int roundsPerBlock, int blocksLeft) {
        /** Checked, list copied. */
        public Trial {
            bags = List.copyOf(bags);
            if (!(roundsPerBlock >= 1 && blocksLeft >= 1)) {
                throw new IllegalArgumentException("a trial under way has rounds and blocks left");
            }
        }
    }
}
