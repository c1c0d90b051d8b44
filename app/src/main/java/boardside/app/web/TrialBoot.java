package boardside.app.web;

import boardside.app.practice.Contest;
import boardside.app.practice.Player;
import boardside.app.practice.Run;
import boardside.app.practice.TrialPlan;
import boardside.app.record.TrialDetail;
import boardside.engine.rules.Approach;
import boardside.engine.rules.Face;
import boardside.engine.trial.BlockOrder;
import boardside.engine.trial.Limits;
import boardside.engine.trial.TrialDesign;
import boardside.engine.trial.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * What the page at the boards needs to go on with a trial without the network.
 *
 * @param name the trial's
 * @param longest blocks after which it ends
 * @param breakMillis a break after which a block is thrown anew
 * @param order by number of candidates in play, then by block: places in the list of those in play
 * @param before units thrown before this run: candidate, bags in, bags on
 */
record TrialBoot(
        String name,
        List<Candidate> candidates,
        int longest,
        double margin,
        long breakMillis,
        Limits limits,
        Map<Integer, List<List<Integer>>> order,
        List<List<List<Integer>>> before) {
    record Candidate(
            String bag, @Nullable Face face, @Nullable Approach approach, String name) {}

    /** Of the trial a run is thrown for, or null where the store has none. */
    static @Nullable TrialBoot of(Web web, Player player, Run run) {
        return run.trial().isEmpty()
                ? null
                : web.records()
                        .trials()
                        .find(player.id(), run.trial())
                        .map(detail -> of(detail, run.id()))
                        .orElse(null);
    }

    static TrialBoot of(TrialDetail detail, String run) {
        TrialPlan plan = detail.plan();
        List<Candidate> candidates = new ArrayList<>();
        for (int i = 0; i < plan.candidates().size(); i++) {
            Contest.Way way = plan.candidates().get(i);
            candidates.add(new Candidate(
                    way.bag(), way.face(), way.approach(), detail.names().get(i)));
        }
        return new TrialBoot(
                plan.name(),
                candidates,
                plan.longest(),
                plan.margin(),
                TrialDetail.BREAK.toMillis(),
                Limits.of(plan.design()),
                order(plan.design()),
                units(detail.unitsBefore(run)));
    }

    static Map<Integer, List<List<Integer>>> order(TrialDesign design) {
        BlockOrder order = BlockOrder.of(design);
        Map<Integer, List<List<Integer>>> orders = new TreeMap<>();
        for (int inPlay = 2; inPlay <= design.candidates(); inPlay++) {
            int candidates = inPlay;
            orders.put(
                    inPlay,
                    IntStream.range(0, design.longest())
                            .mapToObj(block -> order.places(block, candidates))
                            .toList());
        }
        return orders;
    }

    static List<List<List<Integer>>> units(List<List<Unit>> parts) {
        return parts.stream()
                .map(part -> part.stream()
                        .map(unit -> List.of(
                                unit.candidate(), unit.bags().in(), unit.bags().on()))
                        .toList())
                .toList();
    }
}
