package boardside.engine.rules;

/** Who threw the bags of a line: the player, one of the player's two selves, or somebody else. */
public enum Side implements Word {
    /** The player. */
    ME,
    /** The player against themselves: the first side. */
    A,
    /** The player against themselves: the second side. */
    B,
    /** An opponent. */
    VERSUS;

    /** Whether the player threw these bags. */
    public boolean mine() {
        return this != VERSUS;
    }
}
