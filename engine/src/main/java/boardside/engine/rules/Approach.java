package boardside.engine.rules;

/** How much risk a side takes. */
public enum Approach implements Word {
    /** Hole or board, no risks. */
    CONSERVATIVE,
    /** After every bag. */
    AGGRESSIVE;
}
