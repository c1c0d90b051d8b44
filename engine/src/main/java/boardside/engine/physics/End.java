package boardside.engine.physics;

import boardside.engine.rules.Outcome;

/** How a bag ended. */
public sealed interface End {
    /** The outcome as the rules know it. */
    Outcome outcome();

    /** Through the hole. */
    record In() implements End {
        @Override
        public Outcome outcome() {
            return Outcome.IN;
        }
    }

    /**
     * At rest on the board.
     *
     * @param x of its centre, inches
     * @param y of its centre, inches
     */
    record On(double x, double y) implements End {
        @Override
        public Outcome outcome() {
            return Outcome.ON;
        }
    }

    /** Over an edge, or never on the board. */
    record Off() implements End {
        @Override
        public Outcome outcome() {
            return Outcome.OFF;
        }
    }
}
