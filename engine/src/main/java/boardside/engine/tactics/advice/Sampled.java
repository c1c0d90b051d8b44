package boardside.engine.tactics.advice;

import java.util.Arrays;

/**
 * What came of one shot in sampled rests of a round. Sample n belongs to replicate n / size % {@link Rollouts#REPLICATES} of
 * its batch; see {@link Rollouts}. Mutable while it is filled.
 */
final class Sampled<A> {
    private static final int WORKED = 64;

    private final A shot;
    private byte[] ends = new byte[0];
    private int perReplicate;
    private int stage;

    Sampled(A shot) {
        this.shot = shot;
    }

    A shot() {
        return shot;
    }

    /** Samples of each replicate. */
    int perReplicate() {
        return perReplicate;
    }

    /** Samples of all replicates. */
    long samples() {
        return ends.length;
    }

    /** The last round of halving it was in, from 1. */
    int stage() {
        return stage;
    }

    void reached(int number) {
        stage = number;
    }

    /** Makes room for more samples of each replicate; replicates are stored one after another. */
    void grow(int more) {
        byte[] wider = new byte[Rollouts.REPLICATES * (perReplicate + more)];
        for (int r = 0; r < Rollouts.REPLICATES; r++) {
            System.arraycopy(ends, r * perReplicate, wider, r * (perReplicate + more), perReplicate);
        }
        ends = wider;
        perReplicate += more;
    }

    void put(int replicate, int n, int result, boolean worked) {
        ends[replicate * perReplicate + n] = (byte) (worked ? result | WORKED : result);
    }

    int result(int replicate, int n) {
        return ends[replicate * perReplicate + n] & WORKED - 1;
    }

    boolean worked(int replicate, int n) {
        return (ends[replicate * perReplicate + n] & WORKED) != 0;
    }

    /** Share of samples in which it worked. */
    double share() {
        int count = 0;
        for (byte end : ends) {
            count += (end & WORKED) != 0 ? 1 : 0;
        }
        return ends.length == 0 ? 0 : (double) count / ends.length;
    }

    /** How often each end came, for samples in which the shot worked, or did not. */
    long[] counts(boolean worked, int results) {
        long[] counts = new long[results];
        for (byte end : ends) {
            if (((end & WORKED) != 0) == worked) {
                counts[end & WORKED - 1]++;
            }
        }
        return counts;
    }

    @Override
    public String toString() {
        return shot + " " + ends.length + " samples " + Arrays.toString(counts(true, WORKED));
    }
}
