package boardside.app.record;

import boardside.app.practice.Contest;
import boardside.app.practice.Line;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.practice.TrialPlan;
import boardside.engine.rules.Finish;
import boardside.engine.rules.Side;
import boardside.engine.rules.Tally;
import boardside.engine.skill.Trait;
import boardside.engine.trial.BlockOrder;
import boardside.engine.trial.Trial;
import boardside.engine.trial.TrialDesign;
import boardside.engine.trial.TrialState;
import boardside.engine.trial.Unit;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * A trial with what was thrown for it.
 *
 * @param plan how it was set up
 * @param names what its candidates are called, in their order
 * @param runs runs that count, with their rounds, the earliest first
 */
public record TrialDetail(TrialPlan plan, List<String> names, List<RunDetail> runs) {
    /** A break within a run after which a block is thrown anew: the day may have changed. */
    public static final Duration BREAK = Duration.ofHours(3);

    /** Lists copied. */
    public TrialDetail {
        names = List.copyOf(names);
        runs = List.copyOf(runs);
    }

    /** A trial whose candidates are called by their bag sets' names. */
    static TrialDetail of(TrialPlan plan, Map<String, String> bagNames, List<RunDetail> runs) {
        return new TrialDetail(plan, names(plan.candidates(), bagNames), runs);
    }

    /** What tells the candidates apart. */
    public static Set<Trait> by(List<Contest.Way> candidates) {
        Set<Trait> by = EnumSet.noneOf(Trait.class);
        differ(candidates, Contest.Way::bag, Trait.BAG, by);
        differ(candidates, Contest.Way::face, Trait.FACE, by);
        differ(candidates, Contest.Way::approach, Trait.APPROACH, by);
        return by;
    }

    private static void differ(
            List<Contest.Way> candidates, Function<Contest.Way, ? extends Object> part, Trait trait, Set<Trait> by) {
        if (candidates.stream()
                        .map(way -> Objects.toString(part.apply(way), ""))
                        .distinct()
                        .count()
                > 1) {
            by.add(trait);
        }
    }

    /** Each candidate by what tells it from the others. */
    public static List<String> names(List<Contest.Way> candidates, Map<String, String> bagNames) {
        Set<Trait> by = by(candidates);
        List<String> names = new ArrayList<>();
        for (Contest.Way way : candidates) {
            List<String> parts = new ArrayList<>();
            if (by.contains(Trait.BAG)) {
                parts.add(bagNames.getOrDefault(way.bag(), "unnamed bags"));
            }
            if (by.contains(Trait.FACE)) {
                parts.add(way.face() == null ? "any face" : way.face().word() + " face");
            }
            if (by.contains(Trait.APPROACH)) {
                parts.add(
                        way.approach() == null ? "any approach" : way.approach().word());
            }
            names.add(String.join(", ", parts));
        }
        return names;
    }

    /** How it stands. */
    public TrialState state() {
        return engine().state(parts(runs));
    }

    /** How it stands without the runs from one on. */
    TrialDetail before(String run) {
        List<RunDetail> earlier = new ArrayList<>();
        for (RunDetail detail : runs) {
            if (detail.run().id().equals(run)) {
                break;
            }
            earlier.add(detail);
        }
        return new TrialDetail(plan, names, earlier);
    }

    private Trial engine() {
        return Trial.of(plan.design(), names, by(plan.candidates()));
    }

    /** Units thrown before a run, part by part; all of them for a run that is not there yet. */
    public List<List<Unit>> unitsBefore(String run) {
        return parts(before(run).runs());
    }

    private List<List<Unit>> parts(List<RunDetail> of) {
        return of.stream().flatMap(detail -> parts(detail).stream()).toList();
    }

    /**
     * The units of a run, in parts where there was a longer break. A unit is the rounds 1 and 2, 3 and 4, ... of one
     * candidate, four bags each; what is none breaks off its block.
     */
    private List<List<Unit>> parts(RunDetail detail) {
        List<List<Unit>> parts = new ArrayList<>();
        List<Unit> part = new ArrayList<>();
        String last = "";
        int before = 0;
        List<Round> rounds = detail.rounds().stream()
                .filter(round -> round.side() == Side.ME)
                .toList();
        for (int i = 0; i + 1 < rounds.size(); i++) {
            Round first = rounds.get(i);
            Round second = rounds.get(i + 1);
            if (first.number() % 2 == 0 || second.number() != first.number() + 1) {
                continue;
            }
            int candidate = candidate(first);
            boolean unit = candidate >= 0 && candidate == candidate(second);
            if (!unit
                    || first.number() != before + 1
                    || longBreak(last, at(first))
                    || longBreak(at(first), at(second))) {
                parts.add(part);
                part = new ArrayList<>();
            }
            if (unit) {
                part.add(new Unit(candidate, tally(first).plus(tally(second))));
            }
            last = at(second);
            before = second.number();
        }
        parts.add(part);
        parts.removeIf(List::isEmpty);
        return parts;
    }

    private static String at(Round round) {
        return round.lines().get(0).at();
    }

    private static boolean longBreak(String from, String to) {
        return !from.isEmpty()
                && !to.isEmpty()
                && Duration.between(OffsetDateTime.parse(from), OffsetDateTime.parse(to))
                                .compareTo(BREAK)
                        > 0;
    }

    /** The candidate that a round was thrown with, from 0; -1 where it was none, or not four counted bags. */
    int candidate(Round round) {
        if (round.lines().size() != 1
                || round.bags() != Finish.BAGS
                || round.lines().get(0).on() == null) {
            return -1;
        }
        Line line = round.lines().get(0);
        return plan.candidates().indexOf(new Contest.Way(line.bag(), line.face(), line.approach()));
    }

    private static Tally tally(Round round) {
        Line line = round.lines().get(0);
        return new Tally(
                Objects.requireNonNullElse(line.in(), 0),
                Objects.requireNonNullElse(line.on(), 0),
                Objects.requireNonNullElse(line.off(), 0));
    }

    /**
     * A block to throw.
     *
     * @param number from 1
     * @param order its candidates, the first thrown first
     */
    public record NextBlock(int number, List<Integer> order) {
        /** List copied. */
        public NextBlock {
            order = List.copyOf(order);
        }
    }

    /** The block that a new run begins with; empty where the trial is decided. */
    public Optional<NextBlock> next() {
        return next(state());
    }

    private Optional<NextBlock> next(TrialState state) {
        return state.over()
                ? Optional.empty()
                : Optional.of(new NextBlock(
                        state.blocks() + 1, BlockOrder.of(plan.design()).of(state.blocks(), state.inPlay())));
    }

    /**
     * What a new run throws, round by round.
     *
     * @param rounds counts of each round
     * @return candidates by round, as many as can be thrown before the trial is decided
     */
    public List<Integer> thrownBy(List<Tally> rounds) {
        List<List<Unit>> parts = new ArrayList<>(parts(runs));
        List<Unit> part = new ArrayList<>();
        parts.add(part);
        List<Integer> candidates = new ArrayList<>();
        for (int i = 0; i < rounds.size(); i += TrialDesign.ROUNDS) {
            TrialState state = engine().state(parts);
            Optional<NextBlock> block = next(state);
            if (block.isEmpty()) {
                break;
            }
            int candidate = block.get().order().stream()
                    .filter(one -> !state.rest().contains(one))
                    .findFirst()
                    .orElseThrow();
            candidates.add(candidate);
            if (i + 1 < rounds.size()) {
                candidates.add(candidate);
                Tally bags = rounds.get(i).plus(rounds.get(i + 1));
                if (bags.thrown() == Unit.BAGS) {
                    part.add(new Unit(candidate, bags));
                }
            }
        }
        return candidates;
    }

    /** The run under way, if one is open. */
    public Optional<RunDetail> open() {
        return runs.stream().filter(detail -> detail.run().open()).reduce((one, later) -> later);
    }

    /** When it was last thrown: the latest instant known of a run. */
    public static String lastAt(RunDetail detail) {
        Run run = detail.run();
        return detail.rounds().stream()
                .map(TrialDetail::at)
                .filter(at -> !at.isEmpty())
                .reduce((one, later) -> later)
                .orElse(run.startedAt());
    }
}
