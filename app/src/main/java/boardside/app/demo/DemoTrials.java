package boardside.app.demo;

import boardside.app.practice.BagSet;
import boardside.app.practice.Contest;
import boardside.app.practice.Line;
import boardside.app.practice.Operation;
import boardside.app.practice.Player;
import boardside.app.practice.Round;
import boardside.app.practice.Setup;
import boardside.app.practice.TrialPlan;
import boardside.app.record.Records;
import boardside.app.record.TrialDetail;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/** The example player's trials: one that was settled, one under way. */
final class DemoTrials {
    private static final int BLOCKS_A_DAY = 5;

    private final Records records;
    private final int player;
    private final SplittableRandom random;

    private DemoTrials(Records records, int player, long seed) {
        this.records = records;
        this.player = player;
        this.random = new SplittableRandom(seed);
    }

    /** Adds the trials to a player with bag sets. */
    static void add(Records records, Player player, LocalDate last, long seed) {
        List<BagSet> bags =
                records.bags(player.id()).stream().filter(bag -> !bag.retired()).toList();
        DemoTrials trials = new DemoTrials(records, player.id(), seed);
        String usual = bags.get(1).id();
        trials.add(
                "Fast or slow face",
                List.of(
                        new Contest.Way(usual, Face.SLOW, Approach.CONSERVATIVE),
                        new Contest.Way(usual, Face.FAST, Approach.CONSERVATIVE)),
                List.of(0.52, 0.30),
                last.minusDays(40),
                6);
        trials.add(
                "Which bags",
                bags.stream()
                        .map(bag -> new Contest.Way(bag.id(), Face.SLOW, Approach.CONSERVATIVE))
                        .toList(),
                List.of(0.44, 0.46, 0.38),
                last.minusDays(12),
                4);
    }

    private void add(String name, List<Contest.Way> candidates, List<Double> in, LocalDate first, int days) {
        TrialPlan plan = records.trials()
                .add(
                        player,
                        new TrialPlan(
                                "",
                                name,
                                candidates,
                                BoardKind.REGULATION,
                                50,
                                0.5,
                                random.nextLong(),
                                "",
                                TrialPlan.State.OPEN,
                                false));
        for (int day = 0; day < days; day++) {
            run(plan, in, first.plusDays(3L * day));
        }
    }

    private void run(TrialPlan plan, List<Double> in, LocalDate day) {
        OffsetDateTime at = OffsetDateTime.of(day, LocalTime.of(17, 20), ZoneOffset.ofHours(2));
        String run = records.ids().next();
        if (detail(plan).next().isEmpty()) {
            return;
        }
        Setup setup = Setup.plain()
                .with(draft -> draft.bags = plan.candidates().stream()
                        .map(Contest.Way::bag)
                        .distinct()
                        .toList());
        records.applyAll(
                player,
                List.of(
                        new Operation.StartRun(op(), run, op(), Drill.TRIAL, text(at), false, "", null, null, setup),
                        new Operation.ThrowTrial(op(), plan.id(), run)),
                at.toInstant());
        double form = 0.04 * (random.nextDouble() - 0.5);
        int number = 0;
        for (int block = 0; block < BLOCKS_A_DAY; block++) {
            Optional<TrialDetail.NextBlock> next = detail(plan).next();
            if (next.isEmpty()) {
                break;
            }
            List<Operation> operations = new ArrayList<>();
            for (int candidate : next.get().order()) {
                for (int i = 0; i < 2; i++) {
                    at = at.plusSeconds(40 + random.nextInt(8));
                    Line line = line(plan.candidates().get(candidate), in.get(candidate) + form, text(at));
                    operations.add(
                            new Operation.PutRound(run, new Round(++number, Side.ME, op(), List.of(line), List.of())));
                }
            }
            records.applyAll(player, operations, at.toInstant());
        }
        records.applyAll(player, List.of(new Operation.FinishRun(op(), run, text(at))), at.toInstant());
    }

    private TrialDetail detail(TrialPlan plan) {
        return records.trials().find(player, plan.id()).orElseThrow();
    }

    private Line line(Contest.Way way, double chance, String at) {
        int in = 0;
        int on = 0;
        for (int bag = 0; bag < 4; bag++) {
            double u = random.nextDouble();
            in += u < chance ? 1 : 0;
            on += u >= chance && u < chance + 0.32 ? 1 : 0;
        }
        return new Line(
                way.bag(),
                way.face(),
                way.approach(),
                BoardKind.REGULATION,
                Setting.PRACTICE,
                null,
                null,
                4,
                in,
                on,
                4 - in - on,
                Line.Misses.NONE,
                at,
                "");
    }

    private String op() {
        return records.ids().next();
    }

    private static String text(OffsetDateTime at) {
        return at.format(DateTimeFormatter.ISO_OFFSET_DATE_TIME);
    }
}
