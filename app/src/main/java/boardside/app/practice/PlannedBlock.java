package boardside.app.practice;

import boardside.engine.plan.Activity;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A block of a plan as it is kept.
 *
 * @param choice what was chosen, by the id that a refusal names
 * @param activity what it is
 * @param minutes it takes
 * @param thrown bags planned
 * @param rounds rounds planned, or 0
 * @param bags names of bag sets
 * @param approach or null for the usual
 * @param board or null where none matters
 * @param ghost or null
 * @param target what to reach, or null
 * @param aim a target or shot, or empty
 * @param why the reason, in the words it was given in
 * @param serves whether it serves a goal
 */
public record PlannedBlock(
        String choice,
        Activity activity,
        int minutes,
        int thrown,
        int rounds,
        List<String> bags,
        @Nullable Approach approach,
        @Nullable BoardKind board,
        @Nullable Integer ghost,
        @Nullable Integer target,
        String aim,
        String why,
        boolean serves) {
    /** List copied. */
    public PlannedBlock {
        bags = List.copyOf(bags);
    }
}
