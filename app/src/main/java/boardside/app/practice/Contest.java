package boardside.app.practice;

import boardside.engine.rules.Approach;
import boardside.engine.rules.Face;
import boardside.engine.rules.FirstThrow;
import boardside.engine.rules.Side;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The two sides of a duel or a game. The first side throws as the set-up says.
 *
 * @param alone whether both sides are the player's own: {@code a} against {@code b}; else {@code me} against
 *     {@code versus}
 * @param theirs whether the other side's bags are recorded
 * @param doubles whether only every other round is the player's: the partner throws from the other end
 * @param first whether the first side throws first in the first round
 * @param firstThrow who throws first after a round without points
 * @param headStart points the first side begins with; below 0 the other side begins with as many
 * @param other how the player's second side throws, where both are the player's own; else null
 */
public record Contest(
        boolean alone,
        boolean theirs,
        boolean doubles,
        boolean first,
        FirstThrow firstThrow,
        int headStart,
        @Nullable Way other) {
    /**
     * How a side throws.
     *
     * @param bag id of the bag set, or empty
     * @param face the face down, or null
     * @param approach the approach, or null
     */
    public record Way(
            String bag, @Nullable Face face, @Nullable Approach approach) {}

    /**
     * Checked.
     *
     * @throws IllegalArgumentException if the head start cannot be, or one plays doubles against oneself
     */
    public Contest {
        if (!(headStart >= -20 && headStart <= 20)) {
            throw new IllegalArgumentException("a head start is 0 to 20 points, not " + Math.abs(headStart));
        }
        if (alone && (doubles || !theirs)) {
            throw new IllegalArgumentException("against oneself both sides are recorded, and there are no doubles");
        }
    }

    /** The sides whose bags are recorded, the first side first. */
    public List<Side> sides() {
        if (alone) {
            return List.of(Side.A, Side.B);
        }
        return theirs ? List.of(Side.ME, Side.VERSUS) : List.of(Side.ME);
    }
}
