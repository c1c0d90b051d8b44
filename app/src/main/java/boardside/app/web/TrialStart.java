package boardside.app.web;

import boardside.app.practice.Operation;
import boardside.app.practice.Player;
import boardside.app.practice.Setup;
import boardside.app.practice.TrialPlan;
import boardside.app.record.RunDetail;
import boardside.app.record.TrialDetail;
import boardside.engine.rules.Drill;
import java.util.List;
import java.util.Optional;

/** Throwing the next block of a trial, from its own page or as a block of a plan. */
final class TrialStart {
    private final Web web;

    TrialStart(Web web) {
        this.web = web;
    }

    /**
     * The run to go on with: the one under way, or a new one where there was a longer break.
     *
     * @throws Refusal where the trial is decided
     */
    String start(Player player, TrialDetail detail) {
        TrialPlan plan = detail.plan();
        Optional<RunDetail> open = detail.open();
        if (open.isPresent() && web.recent(TrialDetail.lastAt(open.get()))) {
            return open.get().run().id();
        }
        if (detail.state().over()) {
            throw new Refusal(422, web.texts().of("trial.fault.over"));
        }
        open.ifPresent(left -> web.records()
                .applyAll(
                        player.id(),
                        List.of(new Operation.FinishRun(
                                web.ids().next(), left.run().id(), TrialDetail.lastAt(left))),
                        web.now()));
        Setup setup = web.nextSetup(player.id(), Drill.TRIAL).with(draft -> {
            draft.bags = plan.candidates().stream()
                    .map(way -> way.bag())
                    .filter(bag -> !bag.isEmpty())
                    .distinct()
                    .toList();
            draft.board = plan.board();
            draft.rounds = null;
            draft.face = null;
            draft.approach = null;
        });
        return web.startRun(
                player,
                (id, session, at) -> List.of(
                        new Operation.StartRun(
                                web.ids().next(), id, session, Drill.TRIAL, at, false, "", null, null, setup),
                        new Operation.ThrowTrial(web.ids().next(), plan.id(), id)));
    }
}
