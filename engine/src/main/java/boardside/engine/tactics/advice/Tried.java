package boardside.engine.tactics.advice;

import boardside.engine.tactics.Position;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Target;
import org.jspecify.annotations.Nullable;

/**
 * Tries of one kind, and how many worked.
 *
 * @param shot what was thrown
 * @param target the called part of the board, or null
 * @param position what lay on the board
 * @param tries 0 or more
 * @param worked 0..tries
 */
public record Tried(Shot shot, @Nullable Target target, Position position, int tries, int worked) {
    /** Checked. */
    public Tried {
        if (!(worked >= 0 && worked <= tries)) {
            throw new IllegalArgumentException("0 to " + tries + " of " + tries + " tries worked, not " + worked);
        }
    }
}
