package boardside.engine.plan;

import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A part of a session.
 *
 * @param choice id of what was chosen, the same from plan to plan, so that a refusal can name it; of warm-up and break,
 *     their word
 * @param activity what it is
 * @param minutes with the change-over from the block before
 * @param throwsPlanned bags the player throws in them at their pace
 * @param rounds rounds of four, or of all bag sets; 0 where it has none
 * @param bags names of the bag sets to throw, at most those at hand; empty where none is named
 * @param approach or null for the player's usual
 * @param board the board
 * @param ghost points a round of the ghost, or null
 * @param target what to reach in the block, about 58 times in 100: points, bags in, tries that work; null where there is none
 * @param aim what is aimed at: a target such as 2-left, or a shot; empty where there is none
 * @param reason why
 * @param serves whether it serves one of the player's goals
 */
public record Block(
        String choice,
        Activity activity,
        int minutes,
        int throwsPlanned,
        int rounds,
        List<String> bags,
        @Nullable Approach approach,
        @Nullable BoardKind board,
        @Nullable Integer ghost,
        @Nullable Integer target,
        String aim,
        Reason reason,
        boolean serves) {
    /** Checked, list copied. */
    public Block {
        bags = List.copyOf(bags);
        if (!(minutes >= 1 && throwsPlanned >= 0 && rounds >= 0)) {
            throw new IllegalArgumentException("a block takes a minute or more, and no negative number of throws");
        }
    }

    /** Whether something is thrown in it that counts or teaches. */
    public boolean work() {
        return activity != Activity.WARM_UP && activity != Activity.BREAK;
    }
}
