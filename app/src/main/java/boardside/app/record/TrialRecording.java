package boardside.app.record;

import boardside.app.practice.Operation;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.practice.TrialPlan;
import boardside.app.store.Transaction;
import boardside.engine.rules.Drill;
import java.util.List;

/** Applies what is thrown for trials, within one transaction. Every check comes before the first write. */
final class TrialRecording {
    private final Transaction rows;
    private final int player;

    TrialRecording(Transaction rows, int player) {
        this.rows = rows;
        this.player = player;
    }

    /** Whether the run was not the trial's before. */
    boolean put(Run run, Operation.ThrowTrial put) {
        if (run.drill() != Drill.TRIAL) {
            throw new IllegalArgumentException("a trial is thrown in runs of the drill trial, not of "
                    + run.drill().word());
        }
        if (run.trial().equals(put.trial())) {
            return false;
        }
        TrialPlan plan = rows.trials()
                .find(player, put.trial())
                .filter(found -> !found.deleted())
                .orElseThrow(() -> new IllegalArgumentException(
                        "there is no trial " + put.trial() + "; it may have been deleted"));
        if (plan.state() != TrialPlan.State.OPEN) {
            throw new IllegalArgumentException("the trial \"" + plan.name() + "\" is "
                    + (plan.state() == TrialPlan.State.PAUSED
                            ? "paused; resume it first"
                            : "stopped; start a new one"));
        }
        if (!run.trial().isEmpty()) {
            throw new IllegalArgumentException("the run belongs to another trial");
        }
        rows.runs().trial(player, run.id(), plan.id());
        return true;
    }

    /**
     * Holds a round against its trial, where the store has it.
     *
     * @param others the run's other rounds
     */
    void check(Run run, Round round, List<Round> others) {
        if (run.trial().isEmpty() || round.lines().isEmpty()) {
            return;
        }
        TrialPlan plan = rows.trials().find(player, run.trial()).orElse(null);
        if (plan == null) {
            return;
        }
        // Its candidates are all that matters here; what was thrown for it need not be read for every round.
        TrialDetail detail = TrialDetail.of(plan, Trials.bagNames(rows, player), List.of());
        int candidate = detail.candidate(round);
        if (candidate < 0) {
            throw new IllegalArgumentException(
                    "round " + round.number() + " of a trial is four bags, all counted, of one of its candidates: "
                            + String.join("; ", detail.names()));
        }
        int partner = round.number() % 2 == 1 ? round.number() + 1 : round.number() - 1;
        for (Round other : others) {
            if (other.number() == partner && !other.lines().isEmpty() && detail.candidate(other) != candidate) {
                throw new IllegalArgumentException("rounds " + Math.min(partner, round.number()) + " and "
                        + Math.max(partner, round.number()) + " of a trial are thrown with the same candidate, "
                        + detail.names().get(Math.max(0, detail.candidate(other))));
            }
        }
    }
}
