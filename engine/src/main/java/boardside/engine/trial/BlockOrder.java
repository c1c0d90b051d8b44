package boardside.engine.trial;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * In which order a block's candidates are thrown. The sequences of a Williams square are used in turn, in random order
 * and with the candidates' numbers drawn anew for every square; of two candidates that makes randomised pairs, each order
 * once in every two blocks. The same seed gives the same orders everywhere.
 */
public final class BlockOrder {
    private static final long MIX = 0x9E3779B97F4A7C15L;

    private final long seed;

    private BlockOrder(long seed) {
        this.seed = seed;
    }

    /** The orders of a trial. */
    public static BlockOrder of(TrialDesign design) {
        return new BlockOrder(design.seed());
    }

    /**
     * The order of one block.
     *
     * @param block counted from 0 over the whole trial
     * @param inPlay candidates thrown in it, at least two
     * @return these, first thrown first
     */
    public List<Integer> of(int block, List<Integer> inPlay) {
        return places(block, inPlay.size()).stream().map(inPlay::get).toList();
    }

    /**
     * The same for so many candidates in play, as places in their list.
     *
     * @param block counted from 0 over the whole trial
     * @param candidates in play, 2 or more
     */
    public List<Integer> places(int block, int candidates) {
        int[][] sequences = WilliamsSquare.sequences(candidates);
        int square = block / sequences.length;
        // java.util.Random's numbers are fixed by its contract, so a trial goes on in its order on any Java.
        Random random = new Random(seed ^ MIX * (31L * square + candidates));
        List<Integer> rows = shuffled(sequences.length, random);
        List<Integer> names = shuffled(candidates, random);
        List<Integer> order = new ArrayList<>();
        for (int treatment : sequences[rows.get(block % sequences.length)]) {
            order.add(names.get(treatment));
        }
        return List.copyOf(order);
    }

    private static List<Integer> shuffled(int n, Random random) {
        List<Integer> numbers = new ArrayList<>(IntStream.range(0, n).boxed().toList());
        Collections.shuffle(numbers, random);
        return numbers;
    }
}
