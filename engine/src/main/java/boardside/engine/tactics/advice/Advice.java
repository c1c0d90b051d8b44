package boardside.engine.tactics.advice;

import java.util.List;

/**
 * Which shot to throw.
 *
 * @param shots best first; at least one
 * @param samples rests of the round that were sampled
 */
public record Advice(List<ShotAdvice> shots, long samples) {
    /** List copied. */
    public Advice {
        shots = List.copyOf(shots);
    }

    /** The best. */
    public ShotAdvice best() {
        return shots.get(0);
    }

    /** Those as good as the best, the best not among them. */
    public List<ShotAdvice> asGood() {
        return shots.stream().skip(1).filter(ShotAdvice::asGood).toList();
    }
}
