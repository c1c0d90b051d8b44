package boardside.app.demo;

import boardside.app.practice.BagSet;
import boardside.app.practice.Exercise;
import boardside.app.practice.Operation;
import boardside.app.practice.Player;
import boardside.app.practice.Setup;
import boardside.app.practice.Try;
import boardside.app.record.Records;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Outcome;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import boardside.engine.tactics.Depth;
import boardside.engine.tactics.Lane;
import boardside.engine.tactics.Lying;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Situation;
import boardside.engine.tactics.Spot;
import boardside.engine.tactics.Target;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;

/** The example player's tries at targets and in situations, over the last ten weeks. */
final class DemoTries {
    private static final int WEEKS = 10;
    private static final int TRIES = 20;

    private final Records records;
    private final Player player;
    private final List<BagSet> bags;
    private final SplittableRandom random;
    private final List<Operation> operations = new ArrayList<>();

    private DemoTries(Records records, Player player, long seed) {
        this.records = records;
        this.player = player;
        this.bags =
                records.bags(player.id()).stream().filter(bag -> !bag.retired()).toList();
        this.random = new SplittableRandom(seed);
    }

    /** Adds tries to a player with bag sets. */
    static void add(Records records, Player player, LocalDate last, long seed) {
        DemoTries tries = new DemoTries(records, player, seed);
        Position doorstep = new Position(List.of(new Lying(-1.5, 32, Side.VERSUS), new Lying(8, 27, Side.ME)));
        tries.operations.add(
                new Operation.KeepSituation(tries.op(), records.ids().next(), "Doorstep", doorstep, false));
        for (int week = WEEKS; week > 0; week--) {
            LocalDate day = last.minusDays(7L * week - 3);
            tries.placement(day);
            tries.situation(day, week % 2 == 0 ? Situation.GATE : Situation.SENTRY);
            if (week % 3 == 0) {
                tries.chain(day);
            }
        }
        records.applyAll(player.id(), tries.operations, last.atStartOfDay().toInstant(ZoneOffset.UTC));
    }

    private String op() {
        return records.ids().next();
    }

    private BagSet bag() {
        return bags.get(random.nextInt(bags.size()));
    }

    private String start(LocalDate day, String time, Drill drill, Exercise exercise, BagSet bag) {
        String run = op();
        Setup setup = Setup.plain().with(draft -> {
            draft.bags = List.of(bag.id());
            draft.face = Face.SLOW;
            draft.approach = Approach.CONSERVATIVE;
            draft.exercise = exercise;
        });
        operations.add(new Operation.StartRun(
                op(), run, "tries-" + day, drill, day + "T" + time + "+02:00", false, "", null, null, setup));
        return run;
    }

    private void finish(String run, LocalDate day, String time) {
        operations.add(new Operation.FinishRun(op(), run, day + "T" + time + "+02:00"));
    }

    private Try.Played played(
            Shot shot,
            @Nullable Target target,
            Position position,
            Try.@Nullable Link link,
            boolean byHand,
            boolean worked,
            Try.@Nullable Rest rest,
            BagSet bag) {
        return new Try.Played(
                Side.ME,
                shot,
                target,
                position,
                "",
                link,
                byHand,
                worked,
                rest,
                new Try.How(bag.id(), Face.SLOW, Approach.CONSERVATIVE, BoardKind.REGULATION, Setting.PRACTICE, null),
                "");
    }

    private void placement(LocalDate day) {
        List<Target> targets = new ArrayList<>();
        for (Depth depth : List.of(Depth.ONE, Depth.TWO)) {
            for (Lane lane : Lane.values()) {
                targets.add(new Target(depth, lane));
            }
        }
        BagSet bag = bag();
        Exercise exercise = new Exercise(targets, List.of(), false, Exercise.Call.RANDOM, null, TRIES, "", "", "");
        String run = start(day, "18:05:00", Drill.PLACEMENT, exercise, bag);
        for (int number = 1; number <= TRIES; number++) {
            Target target = targets.get(random.nextInt(targets.size()));
            Spot aim = target.centre(24);
            // A little short and to the left of the aim, more spread up and down the board than across.
            double x = quarter(aim.x() - 0.8 + 3 * gaussian());
            double y = quarter(aim.y() - 1.5 + 4.5 * gaussian());
            Try.Rest rest;
            if (y > 48 || y < 0) {
                rest = new Try.Rest(Outcome.OFF, y > 48 ? "long" : "short", null);
            } else if (Math.abs(x) > 12) {
                rest = new Try.Rest(Outcome.OFF, x < 0 ? "left" : "right", null);
            } else {
                Spot spot = new Spot(x, y);
                rest = spot.inHole() ? new Try.Rest(Outcome.IN, "", null) : new Try.Rest(Outcome.ON, "", spot);
            }
            Spot spot = rest.spot();
            boolean worked = spot != null && target.holds(spot, 24);
            operations.add(new Operation.PutTry(
                    op(), run, number, played(Shot.BLOCK, target, Position.EMPTY, null, false, worked, rest, bag)));
        }
        finish(run, day, "18:20:00");
    }

    private void situation(LocalDate day, Situation situation) {
        List<Exercise.Step> shots = List.of(
                new Exercise.Step(Shot.CUT_LEFT, null, situation.position()),
                new Exercise.Step(Shot.CUT_RIGHT, null, situation.position()),
                new Exercise.Step(Shot.AIRMAIL, null, situation.position()));
        BagSet bag = bag();
        Exercise exercise =
                new Exercise(List.of(), shots, false, Exercise.Call.RANDOM, null, TRIES, situation.word(), "", "");
        String run = start(day, "18:25:00", Drill.SITUATION, exercise, bag);
        for (int number = 1; number <= TRIES; number++) {
            Shot shot = shots.get(random.nextInt(shots.size())).shot();
            double chance = shot == Shot.CUT_LEFT ? 0.62 : shot == Shot.CUT_RIGHT ? 0.4 : 0.15;
            boolean worked = random.nextDouble() < chance;
            operations.add(new Operation.PutTry(
                    op(),
                    run,
                    number,
                    played(
                            shot,
                            null,
                            situation.position(),
                            null,
                            true,
                            worked,
                            worked ? new Try.Rest(Outcome.IN, "", null) : null,
                            bag)));
        }
        finish(run, day, "18:40:00");
    }

    private void chain(LocalDate day) {
        Target target = new Target(Depth.ONE, Lane.MIDDLE);
        Position blocked = new Position(List.of(new Lying(0, 33, Side.ME)));
        List<Exercise.Step> shots = List.of(
                new Exercise.Step(Shot.BLOCK, target, Position.EMPTY),
                new Exercise.Step(Shot.CUT_LEFT, null, blocked),
                new Exercise.Step(Shot.PUSH, null, blocked));
        double[] chances = {0.4, 0.6, 0.7};
        BagSet bag = bag();
        Exercise exercise =
                new Exercise(List.of(), shots, true, Exercise.Call.ORDER, null, 5, Situation.OPEN.word(), "", "");
        String run = start(day, "18:45:00", Drill.SITUATION, exercise, bag);
        int number = 0;
        for (int go = 1; go <= 5; go++) {
            boolean worked = true;
            for (int step = 1; step <= shots.size(); step++) {
                boolean byHand = step > 1 && !worked;
                worked = random.nextDouble() < chances[step - 1];
                Exercise.Step shot = shots.get(step - 1);
                operations.add(new Operation.PutTry(
                        op(),
                        run,
                        ++number,
                        played(
                                shot.shot(),
                                shot.target(),
                                shot.position(),
                                new Try.Link(go, step, shots.size()),
                                byHand,
                                worked,
                                null,
                                bag)));
            }
        }
        finish(run, day, "18:55:00");
    }

    private static double quarter(double inches) {
        return Math.round(4 * inches) / 4.0;
    }

    // Box and Muller.
    private double gaussian() {
        return Math.sqrt(-2 * Math.log(1 - random.nextDouble())) * Math.cos(2 * Math.PI * random.nextDouble());
    }
}
