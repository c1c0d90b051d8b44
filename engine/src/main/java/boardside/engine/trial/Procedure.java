package boardside.engine.trial;

import boardside.engine.trial.Ending.AsGoodAsEqual;
import boardside.engine.trial.Ending.NotSettled;
import boardside.engine.trial.Ending.UnderWay;
import boardside.engine.trial.Ending.Winner;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * The sequential procedure: takes units in the order thrown, looks after every block, drops who is clearly behind and
 * ends. Mirrored at the boards by {@code trial.js}.
 *
 * <p>A block lies within one run, so that its candidates share the day. One that a run leaves unfinished does not count
 * (a player may well stop because of how it goes) and is thrown anew. Where the best is ahead of the worst of those in
 * play by more than the boundary for so many candidates, the worst drops out, and the rest are looked at again with the
 * boundary for one fewer. Who is last is the winner. Candidates tied for the best thus lose one of them in at most 5 % of
 * trials, whatever the others do: that would take their range alone to pass its boundary.
 */
final class Procedure {
    private final TrialDesign design;
    private final List<Integer> inPlay;
    private final List<List<Unit>> blocks = new ArrayList<>();
    private final List<Dropped> dropped = new ArrayList<>();
    /** When each candidate was last thrown, as a number of units. */
    private final Map<Integer, Integer> last = new HashMap<>();

    private final List<Unit> block = new ArrayList<>();
    private final Set<Integer> seen = new HashSet<>();
    private Ending ending = new UnderWay();
    private int unused;

    /**
     * A candidate no longer thrown.
     *
     * @param candidate from 0
     * @param after blocks thrown with it
     * @param lead points per round the best was ahead of it then
     * @param error standard error of that
     */
    record Dropped(int candidate, int after, double lead, double error) {}

    /** A trial of which nothing was thrown yet. */
    Procedure(TrialDesign design) {
        this.design = design;
        inPlay = new ArrayList<>(IntStream.range(0, design.candidates()).boxed().toList());
    }

    /**
     * How a trial stands.
     *
     * @param runs units of each run in the order thrown, the earliest run first; not modified
     */
    static Procedure of(TrialDesign design, List<List<Unit>> runs) {
        Procedure procedure = new Procedure(design);
        int number = 0;
        for (List<Unit> run : runs) {
            for (Unit unit : run) {
                if (unit.candidate() >= design.candidates()) {
                    throw new IllegalArgumentException("this trial has " + design.candidates()
                            + " candidates, numbered from 0, and none is " + unit.candidate());
                }
                procedure.last.put(unit.candidate(), number++);
            }
        }
        number = 0;
        for (List<Unit> run : runs) {
            procedure.startRun();
            for (Unit unit : run) {
                procedure.take(unit, number++);
            }
        }
        return procedure;
    }

    /** The units to come belong to another run; what an earlier one left unfinished does not count. */
    void startRun() {
        abandon();
    }

    /**
     * Takes the next unit.
     *
     * @param number units taken before it
     */
    void take(Unit unit, int number) {
        if (!(ending instanceof UnderWay) || !inPlay.contains(unit.candidate())) {
            unused++;
            return;
        }
        if (seen.contains(unit.candidate())) {
            repeated(number);
            if (!(ending instanceof UnderWay) || !inPlay.contains(unit.candidate())) {
                unused++;
                return;
            }
        }
        block.add(unit);
        seen.add(unit.candidate());
        if (seen.containsAll(inPlay)) {
            complete();
        }
    }

    /** A candidate comes again before all were thrown: those that never come again had dropped out before. */
    private void repeated(int number) {
        List<Integer> missing =
                inPlay.stream().filter(candidate -> !seen.contains(candidate)).toList();
        boolean gone = missing.stream().allMatch(candidate -> last.getOrDefault(candidate, -1) < number);
        if (!gone || seen.size() < 2 || blocks.isEmpty()) {
            abandon();
            return;
        }
        // As when a correction made later takes back what they dropped out for.
        Look look = Look.at(inPlay, blocks);
        for (int candidate : missing) {
            double lead = look.points()[look.best()] - look.points()[inPlay.indexOf(candidate)];
            dropped.add(new Dropped(candidate, blocks.size(), lead, look.error()));
        }
        inPlay.removeAll(missing);
        complete();
    }

    private void abandon() {
        unused += block.size();
        block.clear();
        seen.clear();
    }

    private void complete() {
        blocks.add(List.copyOf(block));
        block.clear();
        seen.clear();
        int n = blocks.size();
        Look look = Look.at(inPlay, blocks);
        while (look.range() >= Boundaries.winner(inPlay.size(), design.longest(), n)) {
            int worst = look.worst();
            dropped.add(
                    new Dropped(inPlay.get(worst), n, look.points()[look.best()] - look.points()[worst], look.error()));
            inPlay.remove(worst);
            if (inPlay.size() == 1) {
                ending = new Winner(inPlay.get(0));
                return;
            }
            look = Look.at(inPlay, blocks);
        }
        double apart = look.points()[look.best()] - look.points()[look.worst()];
        if (apart + Boundaries.equal(design.longest(), n) * look.error() <= design.margin()) {
            ending = new AsGoodAsEqual(inPlay);
        } else if (n >= design.longest()) {
            ending = new NotSettled();
        }
    }

    Ending ending() {
        return ending;
    }

    /** Candidates still thrown, by number; one where it has won. */
    List<Integer> inPlay() {
        return List.copyOf(inPlay);
    }

    /** Those no longer thrown, in the order they dropped out. */
    List<Dropped> dropped() {
        return List.copyOf(dropped);
    }

    /** Blocks that count, in the order thrown. */
    List<List<Unit>> blocks() {
        return List.copyOf(blocks);
    }

    /** Units of the last run in the block under way. */
    List<Unit> rest() {
        return List.copyOf(block);
    }

    /** Units that do not count: of blocks left unfinished, of candidates that had dropped out, after the end. */
    int unused() {
        return unused;
    }
}
