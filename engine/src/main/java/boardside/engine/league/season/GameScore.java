package boardside.engine.league.season;

import org.jspecify.annotations.Nullable;

/**
 * What is known of one game; null where a side has not thrown it, or not said.
 *
 * @param first total of the side named first
 * @param second total of the other side
 */
public record GameScore(@Nullable Integer first, @Nullable Integer second) {
    /** Nothing known. */
    public static final GameScore NONE = new GameScore(null, null);

    /** Whether both totals are known. */
    public boolean complete() {
        return first != null && second != null;
    }
}
