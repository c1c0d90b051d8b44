package boardside.app.record;

import boardside.engine.rules.GameRules;
import boardside.engine.rules.Side;
import boardside.engine.tactics.Lying;
import boardside.engine.tactics.Spot;
import boardside.engine.tactics.advice.RoundFault;
import java.util.Locale;

/** What is wrong with a position that is asked about. A page has words of its own for it. */
public sealed interface AdviceFault {
    /** What, where in the file, what to do. */
    String line();

    /**
     * Two bags lie over each other.
     *
     * @param first number of the one in the list, from 1
     * @param second number of the other
     */
    record Overlap(int first, Lying one, int second, Lying other) implements AdviceFault {
        /** Inches between their middles. */
        public double apart() {
            return one.spot().distance(other.spot());
        }

        @Override
        public String line() {
            return String.format(
                    Locale.ROOT,
                    "bags, numbers %d at (%.1f, %.1f) and %d at (%.1f, %.1f): they lie over each other, %.1f in apart; keep"
                            + " their middles at least %.0f in apart",
                    first,
                    one.x(),
                    one.y(),
                    second,
                    other.x(),
                    other.y(),
                    apart(),
                    2 * Spot.RADIUS);
        }
    }

    /**
     * A bag lies where none can.
     *
     * @param number in the list, from 1
     * @param why in words
     */
    record Misplaced(int number, String why) implements AdviceFault {
        @Override
        public String line() {
            return "bags, number " + number + ": " + why;
        }
    }

    /** The round cannot stand so. */
    record Round(RoundFault fault) implements AdviceFault {
        @Override
        public String line() {
            return (fault instanceof RoundFault.TooMany ? "bags: " : "") + fault.message();
        }
    }

    /** There is no bag to throw. */
    record NoneLeft() implements AdviceFault {
        @Override
        public String line() {
            return "left.me: you have no bag left to throw; say 1 to 4";
        }
    }

    /**
     * A number that is none, or out of range.
     *
     * @param of in, left or score
     * @param side whose
     * @param most the highest there is; the lowest is 0
     * @param given as it was given
     * @param number whether it is a whole number at all
     */
    record OutOfRange(String of, Side side, int most, String given, boolean number) implements AdviceFault {
        @Override
        public String line() {
            String where = of + "." + side.word() + ": ";
            return number
                    ? where + "0 to " + most + ", not " + given
                            + (of.equals("score") ? "; a game is over at " + GameRules.STANDARD.target() : "")
                    : where + "a whole number from 0 to " + most + ", not " + given;
        }
    }

    /**
     * Chances that cannot be.
     *
     * @param side whose
     * @param why in words
     */
    record Chances(Side side, String why) implements AdviceFault {
        @Override
        public String line() {
            return side.word() + ": " + why;
        }
    }

    /** Something else in the file. */
    record Other(String line) implements AdviceFault {}
}
