package boardside.engine.skill;

import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Finish;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Tally;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A player's own bags in one run that were thrown in one way. Only what counts: no warm-ups, and only drills that say
 * something about skill.
 *
 * @param day the session's start date in its own offset
 * @param run tells runs apart
 * @param drill what the run was a go at
 * @param bag name of the bag set as sentences should call it, or empty
 * @param face the face down, or null where not recorded
 * @param approach the approach, or null where not recorded
 * @param board the kind of board
 * @param setting what was at stake
 * @param conditions how the boards played, or null where not recorded
 * @param rounds rounds with such bags, 0 or more
 * @param known bags of which the outcome was counted
 * @param thrownOnlyIn further bags of which only those in the hole were counted, 0 or more
 * @param inOnlyIn of these, the bags in
 * @param finishes full rounds of four by finish: 15 counts in the order of {@link Finish#values()}
 */
public record RunCount(
        LocalDate day,
        String run,
        Drill drill,
        String bag,
        @Nullable Face face,
        @Nullable Approach approach,
        BoardKind board,
        Setting setting,
        @Nullable Conditions conditions,
        int rounds,
        Tally known,
        int thrownOnlyIn,
        int inOnlyIn,
        List<Integer> finishes) {
    /**
     * Checks the counts; the list is copied.
     *
     * @throws IllegalArgumentException if counts are negative, disagree, or there are not 15 finishes
     */
    public RunCount {
        finishes = List.copyOf(finishes);
        if (!(rounds >= 0 && inOnlyIn >= 0 && inOnlyIn <= thrownOnlyIn)) {
            throw new IllegalArgumentException("counts are 0 or more and no more are in than were thrown, not " + rounds
                    + " rounds, " + inOnlyIn + " in of " + thrownOnlyIn);
        }
        if (finishes.size() != Finish.values().size()) {
            throw new IllegalArgumentException("there are 15 finishes of four bags, not " + finishes.size());
        }
    }

    /** Bags thrown. */
    public int thrown() {
        return known.thrown() + thrownOnlyIn;
    }

    /** Bags in the hole. */
    public int in() {
        return known.in() + inOnlyIn;
    }

    /** Full rounds of four whose finish was counted. */
    public int fullRounds() {
        return finishes.stream().mapToInt(Integer::intValue).sum();
    }

    /** Of these, the ones with all four bags in. */
    public int fourBaggers() {
        return finishes.get(new Finish(Finish.BAGS, 0, 0).index());
    }
}
