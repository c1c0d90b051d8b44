package boardside.app.record;

import boardside.app.practice.PlannedBlock;
import boardside.app.practice.SessionPlan;
import boardside.app.practice.SessionPlan.Placed;
import boardside.engine.plan.Activity;
import boardside.engine.plan.Energy;
import boardside.engine.rules.BoardKind;
import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Set;

/** Choices that a player has had enough of, so that a plan offers others. */
public final class Refusals {
    private static final int TIMES = 8;

    private Refusals() {}

    /** Refuses each choice again and again on a day. */
    public static void of(Records records, int player, LocalDate day, String... choices) {
        for (String choice : choices) {
            Placed block = new Placed(
                    new PlannedBlock(
                            choice, Activity.TOTAL, 10, 40, 10, List.of(), null, null, null, null, "", "", false),
                    "",
                    "");
            SessionPlan plan = records.plans()
                    .follow(
                            player,
                            new SessionPlan(
                                    "",
                                    day.toString(),
                                    60,
                                    Energy.NORMAL,
                                    1,
                                    Set.of(BoardKind.REGULATION),
                                    false,
                                    false,
                                    null,
                                    "",
                                    Collections.nCopies(TIMES, block)));
            for (int i = 0; i < TIMES; i++) {
                records.plans().swap(player, plan.id(), 0, List.of(), day);
            }
            records.plans().close(player, plan.id());
        }
    }
}
