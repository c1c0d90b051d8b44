package boardside.engine.plan;

import boardside.engine.odds.RoundDistribution;
import boardside.engine.odds.Total;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Something that can be practised with what is at hand, and what it brings.
 *
 * @param id the same from plan to plan
 * @param theme what it makes better
 * @param activity what it is
 * @param bags bag sets it takes
 * @param approach or null for the player's usual
 * @param board where
 * @param ghost or null
 * @param aim a target or shot, or empty
 * @param bagsPerMinute the player's pace, above 0
 * @param bagsPerRound bags that belong together: 4, or several sets or rounds of 4; a multiple of 4
 * @param shortest minutes of the shortest block
 * @param longest minutes of the longest block
 * @param once whether it comes but once in a session
 * @param perBag what a fresh bag adds to the chance of winning, games in a hundred
 * @param due what doing it today adds beside, likewise
 * @param knowing what knowing the skill exactly would add, likewise
 * @param known bags that what is known of it rests on, 0 or more
 * @param target what there is to reach
 * @param reason why one would
 * @param serves whether it serves a goal
 */
record Choice(
        String id,
        Theme theme,
        Activity activity,
        List<String> bags,
        @Nullable Approach approach,
        BoardKind board,
        @Nullable Integer ghost,
        String aim,
        double bagsPerMinute,
        int bagsPerRound,
        int shortest,
        int longest,
        boolean once,
        double perBag,
        double due,
        double knowing,
        double known,
        Reachable target,
        Reason reason,
        boolean serves) {
    /** Minutes of a block that go by before its first bag: walk, set up, start. Chosen. */
    static final int CHANGE_OVER = 1;

    /** Minutes of the longest block of all; a whole number of such blocks bounds the breaks. */
    static final int LONGEST = 20;

    /** A target is set so that it is reached about so often: in the middle of half and two thirds. */
    private static final double REACHED = 0.58;

    Choice {
        bags = List.copyOf(bags);
        if (!(bagsPerMinute > 0
                && bagsPerRound >= 4
                && bagsPerRound % 4 == 0
                && shortest >= 2
                && shortest <= longest
                && longest <= LONGEST)) {
            throw new IllegalArgumentException("a choice has a pace above 0, bags in fours and blocks of 2 to "
                    + LONGEST + " minutes, not " + bagsPerMinute + ", " + shortest + ".." + longest);
        }
    }

    /** What there is to reach in a block. */
    sealed interface Reachable {
        /** Points of rounds of four. */
        record Points(RoundDistribution round) implements Reachable {}

        /** Bags or tries that work, each with the same chance. */
        record Worked(double chance) implements Reachable {}

        /** Nothing. */
        record Nothing() implements Reachable {}
    }

    /** Rounds that a block of so many minutes holds. */
    int rounds(int minutes) {
        return (int) ((minutes - CHANGE_OVER) * bagsPerMinute / bagsPerRound + 1e-9);
    }

    /** Bags that a block of so many minutes takes. */
    int throwsIn(int minutes) {
        return rounds(minutes) * bagsPerRound;
    }

    /** The block as it stands in a plan. */
    Block block(int minutes) {
        return new Block(
                id,
                activity,
                minutes,
                throwsIn(minutes),
                rounds(minutes),
                bags,
                approach,
                board,
                ghost,
                goal(minutes),
                aim,
                reason,
                serves);
    }

    /** The most that is reached at least 58 times in 100; at least 1. */
    private @Nullable Integer goal(int minutes) {
        if (target instanceof Reachable.Points points) {
            Total total = Total.of(points.round(), rounds(minutes));
            int most = total.most();
            while (most > 1 && total.atLeast(most) < REACHED) {
                most--;
            }
            return most;
        }
        if (target instanceof Reachable.Worked worked) {
            return atLeast(throwsIn(minutes), worked.chance());
        }
        return null;
    }

    private static int atLeast(int n, double p) {
        double[] chances = new double[n + 1];
        chances[0] = 1;
        for (int i = 0; i < n; i++) {
            for (int k = i + 1; k > 0; k--) {
                chances[k] = chances[k] * (1 - p) + chances[k - 1] * p;
            }
            chances[0] *= 1 - p;
        }
        double sum = 0;
        for (int k = n; k > 1; k--) {
            sum += chances[k];
            if (sum >= REACHED) {
                return k;
            }
        }
        return 1;
    }
}
