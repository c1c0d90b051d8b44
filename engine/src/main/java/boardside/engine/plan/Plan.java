package boardside.engine.plan;

import java.util.List;

/**
 * A session.
 *
 * @param means what it was made for
 * @param blocks in their order
 * @param value what it adds to the chance of winning, games in a hundred, by the model of docs/plan.md; for comparing plans,
 *     not for showing
 * @param limited whether bags ran out before minutes did: the rest of the time is better spent resting
 */
public record Plan(Means means, List<Block> blocks, double value, boolean limited) {
    /** List copied. */
    public Plan {
        blocks = List.copyOf(blocks);
    }

    /** Minutes the blocks fill. */
    public int minutes() {
        return blocks.stream().mapToInt(Block::minutes).sum();
    }

    /** Bags the blocks take. */
    public int throwsPlanned() {
        return blocks.stream().mapToInt(Block::throwsPlanned).sum();
    }
}
