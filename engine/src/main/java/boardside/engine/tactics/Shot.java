package boardside.engine.tactics;

import boardside.engine.rules.Word;

/** A way to throw a bag, by what it is to do. */
public enum Shot implements Word {
    /** Up the board and in. */
    SLIDE,
    /** To lie in front of the hole. */
    BLOCK,
    /** To lie behind the hole. */
    BACK_BLOCK,
    /** Through a bag, to move or collect it. */
    PUSH,
    /** Round a bag, curving left. */
    CUT_LEFT,
    /** Round a bag, curving right. */
    CUT_RIGHT,
    /** On its edge. */
    ROLL,
    /** Through the air and in. */
    AIRMAIL,
    /** An airmail that takes a bag in with it. */
    DRAG;

    /** The shot that is this one in a mirror. */
    public Shot mirrored() {
        return switch (this) {
            case CUT_LEFT -> CUT_RIGHT;
            case CUT_RIGHT -> CUT_LEFT;
            default -> this;
        };
    }

    /** Whether it is meant to come to rest in a called part of the board. */
    public boolean placed() {
        return this == BLOCK || this == BACK_BLOCK;
    }
}
