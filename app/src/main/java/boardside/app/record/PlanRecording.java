package boardside.app.record;

import boardside.app.practice.Operation;
import boardside.app.practice.SessionPlan;
import boardside.app.practice.SessionPlan.Placed;
import boardside.app.store.Transaction;
import java.util.ArrayList;
import java.util.List;

/** Applies what was done of a plan at the boards, within one transaction. Every check comes before the first write. */
final class PlanRecording {
    private final Transaction rows;
    private final int player;
    private final String now;

    PlanRecording(Transaction rows, int player, String now) {
        this.rows = rows;
        this.player = player;
        this.now = now;
    }

    /** Whether the block was not taken so before. */
    boolean take(Operation.TakeBlock take) {
        SessionPlan plan = rows.plans()
                .find(player, take.plan())
                .orElseThrow(() -> new IllegalArgumentException(
                        "there is no plan " + take.plan() + " any more; what was thrown is kept without it"));
        List<Placed> blocks = new ArrayList<>(plan.blocks());
        if (!take.run().isEmpty()
                && blocks.stream().anyMatch(placed -> placed.run().equals(take.run()))) {
            return false;
        }
        int place = place(blocks, take);
        Placed placed = blocks.get(place);
        if (placed.taken()) {
            return false;
        }
        blocks.set(place, new Placed(placed.block(), take.run(), take.run().isEmpty() ? now : ""));
        rows.plans().blocks(player, plan.id(), blocks);
        return true;
    }

    /** Where the block stands now. */
    private static int place(List<Placed> blocks, Operation.TakeBlock take) {
        int there = -1;
        for (int place = 0; place < blocks.size(); place++) {
            Placed placed = blocks.get(place);
            boolean alike = placed.block().choice().equals(take.choice())
                    && placed.block().activity().drill().isEmpty() == take.run().isEmpty();
            // Where it stood, else the first of its kind that is still to be thrown.
            if (alike && (!placed.taken() || take.run().isEmpty()) && (place == take.place() || there < 0)) {
                there = place;
            }
        }
        if (there < 0) {
            throw new IllegalArgumentException("the plan has no block \"" + take.choice()
                    + "\" to be thrown any more; what was thrown is kept without it");
        }
        return there;
    }
}
