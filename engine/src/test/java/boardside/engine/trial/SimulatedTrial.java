package boardside.engine.trial;

import boardside.engine.trial.simulated.SimulatedThrower;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.rng.UniformRandomProvider;

/** Trials thrown by {@link SimulatedThrower}s from start to end. */
public final class SimulatedTrial {
    private SimulatedTrial() {}

    /**
     * How a trial went.
     *
     * @param ending what it found
     * @param blocks blocks thrown
     * @param rounds rounds thrown in all, those of blocks left unfinished too
     * @param roundsWasted of these, rounds of blocks left unfinished
     * @param lost candidates that dropped out
     * @param estimate the stated difference of the first two, with its range
     */
    public record Result(
            Ending ending, int blocks, int rounds, int roundsWasted, List<Integer> lost, TrialState state) {
        /** Whether one of some candidates won that does not truly stand alone. */
        public boolean won(int candidate) {
            return ending instanceof Ending.Winner winner && winner.candidate() == candidate;
        }
    }

    /**
     * Throws a trial to its end.
     *
     * @param differences true points per round above the first candidate, which has 0
     */
    public static Result run(TrialDesign design, double[] differences, UniformRandomProvider random) {
        SimulatedThrower thrower = new SimulatedThrower(differences, random);
        BlockOrder order = BlockOrder.of(design);
        Procedure procedure = new Procedure(design);
        List<List<Unit>> runs = new ArrayList<>();
        List<Unit> run = new ArrayList<>();
        runs.add(run);
        int units = 0;
        while (procedure.ending() instanceof Ending.UnderWay) {
            int block = procedure.blocks().size();
            for (int candidate : order.of(block, procedure.inPlay())) {
                if (thrower.tired()) {
                    thrower.nextOuting();
                    procedure.startRun();
                    run = new ArrayList<>();
                    runs.add(run);
                    break;
                }
                Unit unit = thrower.unit(candidate);
                run.add(unit);
                procedure.take(unit, units++);
            }
        }
        int wasted = TrialDesign.ROUNDS * procedure.unused();
        List<String> names = IntStream.range(0, design.candidates())
                .mapToObj(c -> "candidate " + c)
                .toList();
        return new Result(
                procedure.ending(),
                procedure.blocks().size(),
                TrialDesign.ROUNDS * units,
                wasted,
                procedure.dropped().stream().map(Procedure.Dropped::candidate).toList(),
                Trial.of(design, names, java.util.Set.of()).state(runs));
    }

    /**
     * The highest range of alike candidates over all looks, in standard errors times the fourth root of the block's number
     * over the length: what a boundary's constant must be for this trial not to pass it.
     *
     * @return one per length of {@link TrialDesign#LENGTHS}
     */
    public static double[] peaks(int candidates, long seed, UniformRandomProvider random) {
        int lengths = TrialDesign.LENGTHS.size();
        int longest = TrialDesign.LENGTHS.get(lengths - 1);
        BlockOrder order = BlockOrder.of(new TrialDesign(candidates, longest, 1, seed));
        SimulatedThrower thrower = new SimulatedThrower(new double[candidates], random);
        List<Integer> all = IntStream.range(0, candidates).boxed().toList();
        List<List<Unit>> blocks = new ArrayList<>();
        double[] peaks = new double[lengths];
        double peak = 0;
        while (blocks.size() < longest) {
            List<Unit> block = new ArrayList<>();
            for (int candidate : order.of(blocks.size(), all)) {
                if (thrower.tired()) {
                    thrower.nextOuting();
                    break;
                }
                block.add(thrower.unit(candidate));
            }
            if (block.size() < candidates) {
                continue;
            }
            blocks.add(block);
            int n = blocks.size();
            peak = Math.max(peak, Look.at(all, blocks).range() / Boundaries.shape(longest, n));
            int length = TrialDesign.LENGTHS.indexOf(n);
            if (length >= 0) {
                peaks[length] = peak / Boundaries.shape(n, longest);
            }
        }
        return peaks;
    }
}
