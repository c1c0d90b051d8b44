package boardside.app.practice;

import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Outcome;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Where bags went, as far as it was recorded.
 *
 * @param bags single bags, the latest runs first
 * @param misses counts of rounds without single bags, by kind of board
 */
public record Marking(List<Bag> bags, List<Misses> misses) {
    /** Lists copied. */
    public Marking {
        bags = List.copyOf(bags);
        misses = List.copyOf(misses);
    }

    /**
     * One bag.
     *
     * @param shot the shot called, or empty
     * @param miss left, right, short or long, or empty
     * @param land where it came down, or null
     * @param rest where it lay in the end, or null
     */
    public record Bag(
            BoardKind board,
            String shot,
            Outcome outcome,
            String miss,
            Round.@Nullable Point land,
            Round.@Nullable Point rest) {}

    /**
     * Counts; of the bags off, those whose direction was noted.
     *
     * @param shortOf in front
     * @param past behind
     */
    public record Misses(BoardKind board, int in, int on, int off, int left, int right, int shortOf, int past) {}
}
