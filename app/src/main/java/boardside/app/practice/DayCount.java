package boardside.app.practice;

import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Setting;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What analyses read: counts of the player's own bags in one run, thrown in one way. Only drills that feed the skill
 * model, no warm-ups, nothing deleted.
 *
 * @param day yyyy-mm-dd
 * @param run id of the run
 * @param drill what the run was a go at
 * @param bag id of the bag set, or empty
 * @param rounds rounds with such bags; one thrown in several ways counts with the first of them only
 * @param thrown bags thrown, with {@code in} of them in
 * @param known of those, the bags whose on and off were counted too: {@code knownIn} in, {@code knownOn} on, the rest off
 * @param finishes full rounds of four by finish, 15 counts in the order of
 *     {@link boardside.engine.rules.Finish#values()}
 */
public record DayCount(
        String day,
        String run,
        Drill drill,
        String bag,
        @Nullable Face face,
        @Nullable Approach approach,
        BoardKind board,
        Setting setting,
        @Nullable Conditions conditions,
        int rounds,
        int thrown,
        int in,
        int known,
        int knownIn,
        int knownOn,
        List<Integer> finishes) {
    /** Lists copied. */
    public DayCount {
        finishes = List.copyOf(finishes);
    }
}
