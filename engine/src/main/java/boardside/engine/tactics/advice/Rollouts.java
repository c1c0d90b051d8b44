package boardside.engine.tactics.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Which shot is best if both sides play their base policies after it: one step of policy improvement by rollouts (Tesauro
 * and Galperin 1996, "On-line policy improvement using Monte-Carlo search", NIPS 9), samples given out by sequential
 * halving (Karnin, Koren and Somekh 2013, "Almost optimal exploration in multi-armed bandits", ICML, algorithm 1): in each
 * round all shots still in get as many, then the worse half leaves.
 *
 * <p>Sample n of a replicate has the same luck and the same draw of the player for every shot. Work is cut by shot and
 * replicate and put together in order: any number of threads gives the same. It runs in the fork-join pool that it is called
 * in.
 */
final class Rollouts {
    /** Independent shifts of the lattice, from whose spread the error of sampling is told. */
    static final int REPLICATES = 32;

    private Rollouts() {}

    /** Samples that a round of halving gives at least, for each replicate of a shot. */
    private static final int FEWEST = 1;

    /**
     * The shots, best first: those that stayed in longest, then by value.
     *
     * @param shots at least one
     * @param samples to be spread over all, roughly; each shot gets at least {@link #REPLICATES} times {@link #FEWEST}
     * @param value of a shot's samples so far
     */
    static <S, A> List<Sampled<A>> halving(
            Turns<S, A> turns, S state, List<A> shots, long samples, long seed, ToDoubleFunction<Sampled<A>> value) {
        List<Sampled<A>> in = new ArrayList<>();
        shots.forEach(shot -> in.add(new Sampled<>(shot)));
        List<Sampled<A>> ranked = new ArrayList<>();
        int rounds = Math.max(1, 32 - Integer.numberOfLeadingZeros(shots.size() - 1));
        for (int round = 1; round <= rounds; round++) {
            int more = (int) Math.max(FEWEST, samples / ((long) rounds * in.size() * REPLICATES));
            sample(turns, state, in, more, seed);
            for (Sampled<A> sampled : in) {
                sampled.reached(round);
            }
            in.sort(Comparator.comparingDouble(value).reversed());
            int stay = round == rounds ? 0 : Math.max(2, (in.size() + 1) / 2);
            while (in.size() > stay) {
                ranked.add(0, in.remove(in.size() - 1));
            }
        }
        return List.copyOf(ranked);
    }

    /** As many more samples of each shot. */
    static <S, A> void sample(Turns<S, A> turns, S state, List<Sampled<A>> shots, int more, long seed) {
        int[] from = new int[shots.size()];
        for (int i = 0; i < from.length; i++) {
            from[i] = shots.get(i).perReplicate();
            shots.get(i).grow(more);
        }
        IntStream.range(0, shots.size() * REPLICATES).parallel().forEach(task -> {
            Sampled<A> sampled = shots.get(task / REPLICATES);
            int replicate = task % REPLICATES;
            Luck luck = new Luck(seed);
            int first = turns.turn(state);
            for (int n = from[task / REPLICATES]; n < sampled.perReplicate(); n++) {
                luck.at(replicate, n, first);
                int draw = draw(replicate, n, turns.draws());
                S after = turns.play(state, sampled.shot(), draw, luck);
                boolean worked = turns.worked(state, sampled.shot(), after);
                while (turns.left(after) > 0) {
                    after = turns.play(after, turns.base(after), draw, luck);
                }
                sampled.put(replicate, n, turns.result(after), worked);
            }
        });
    }

    /** Which draw of the player a sample has: all in turn, each replicate beginning elsewhere. */
    static int draw(int replicate, int n, int draws) {
        return (n + replicate * 7) % draws;
    }
}
