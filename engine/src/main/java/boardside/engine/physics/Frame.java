package boardside.engine.physics;

import java.util.List;

/**
 * The board at one instant of a throw, for a picture that moves.
 *
 * @param time since the thrown bag landed, s
 * @param bags the thrown bag, then those of the scene in their order
 */
public record Frame(double time, List<Spot> bags) {
    /** Takes a copy of the list. */
    public Frame {
        bags = List.copyOf(bags);
    }

    /** What a bag is doing. */
    public enum Doing {
        /** On its way. */
        SLIDING,
        /** At rest on the board. */
        LYING,
        /** Through the hole. */
        IN,
        /** Over an edge. */
        OFF
    }

    /**
     * One bag.
     *
     * @param doing what it is doing
     * @param x of its centre, inches; where it left the board if it has
     * @param y of its centre, inches
     * @param across speed to the right, m/s; 0 unless sliding
     * @param up speed up the board, m/s; 0 unless sliding
     */
    public record Spot(Doing doing, double x, double y, double across, double up) {}
}
