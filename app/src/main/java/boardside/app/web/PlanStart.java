package boardside.app.web;

import boardside.app.practice.BagOrder;
import boardside.app.practice.Exercise;
import boardside.app.practice.PlannedBlock;
import boardside.app.practice.Player;
import boardside.app.practice.Setup;
import boardside.app.record.Planning;
import boardside.engine.plan.Activity;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Finish;
import boardside.engine.rules.Setting;
import boardside.engine.tactics.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Starting a block of a plan: a run of its drill, set up as the plan says, from then on like any other. */
final class PlanStart {
    private final Web web;
    private final TrialStart trials;

    PlanStart(Web web) {
        this.web = web;
        this.trials = new TrialStart(web);
    }

    /** Starts the run; empty where the block is none (a break, a test of the boards). */
    Optional<String> start(Player player, PlannedBlock block) {
        Drill drill = block.activity().drill().orElse(null);
        if (drill == null) {
            return Optional.empty();
        }
        if (drill == Drill.TRIAL) {
            return Optional.of(trial(player, block));
        }
        String opponent = web.nextOpponent(player.id(), drill);
        return Optional.of(web.startRun(
                player, drill, setup(player, block, drill), block.activity() == Activity.WARM_UP, opponent));
    }

    /** How a block's run is set up. */
    private Setup setup(Player player, PlannedBlock block, Drill drill) {
        return web.nextSetup(player.id(), drill).with(draft -> {
            draft.bags = bags(player, block, draft.bags);
            draft.bagsPerSet = Finish.BAGS;
            draft.board = block.board() == null ? BoardKind.REGULATION : block.board();
            draft.setting = Setting.PRACTICE;
            draft.rounds = block.activity() == Activity.TOTAL || block.activity() == Activity.VOLUME
                    ? (Integer) block.rounds()
                    : null;
            draft.approach = block.approach() == null ? draft.approach : block.approach();
            draft.stakes = null;
            if (drill.needsGhost()) {
                draft.ghost = block.ghost();
                draft.ghostPlay = null;
                draft.target = 21;
            }
            if (drill == Drill.VOLUME) {
                draft.onlyIn = true;
                draft.order = draft.bags.size() > 1 ? BagOrder.MIXED : null;
            }
            if (drill == Drill.PLACEMENT || drill == Drill.SITUATION) {
                draft.exercise = exercise(player, block);
            }
        });
    }

    /** Whether a block is thrown on the page that rounds are entered on, and needs nothing more from the server. */
    static boolean offline(PlannedBlock block) {
        return block.activity()
                .drill()
                .filter(drill -> drill != Drill.TRIAL && !TriesPage.DRILLS.contains(drill))
                .isPresent();
    }

    /**
     * What the page at the boards starts such a block with.
     *
     * @throws java.util.NoSuchElementException if the block is none such
     */
    PlanBoot.Start prepared(Player player, PlannedBlock block) {
        Drill drill = block.activity().drill().orElseThrow();
        Setup setup = setup(player, block, drill);
        Integer rounds = setup.rounds();
        return new PlanBoot.Start(
                drill,
                block.activity() == Activity.WARM_UP,
                web.nextOpponent(player.id(), drill),
                setup,
                rounds == null ? null : web.records().standing(player.id(), drill, rounds, ""));
    }

    private String trial(Player player, PlannedBlock block) {
        return Planning.trial(web.records(), player, block.choice())
                .map(detail -> trials.start(player, detail))
                .orElseThrow(() -> new Refusal(409, web.texts().of("plan.fault.trial")));
    }

    private List<String> bags(Player player, PlannedBlock block, List<String> before) {
        Map<String, String> ids =
                web.records().bags(player.id()).stream().collect(Collectors.toMap(bag -> bag.name(), bag -> bag.id()));
        List<String> found = new ArrayList<>();
        for (String name : block.bags()) {
            String id = ids.get(name);
            if (id != null) {
                found.add(id);
            }
        }
        return found.isEmpty() ? before : found;
    }

    private Exercise exercise(Player player, PlannedBlock block) {
        List<Target> targets = new ArrayList<>();
        List<Exercise.Step> shots = new ArrayList<>();
        if (block.activity() == Activity.PLACEMENT) {
            targets.add(Target.parse(block.aim()));
        } else {
            Planning.step(web.records(), player, web.today(), block.choice()).ifPresent(shots::add);
            if (shots.isEmpty()) {
                throw new Refusal(409, web.texts().of("plan.fault.situation"));
            }
        }
        return new Exercise(targets, shots, false, Exercise.Call.MINE, null, Math.max(1, block.thrown()), "", "", "");
    }
}
