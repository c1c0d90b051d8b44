package boardside.engine.rules;

/** How the boards play today. */
public enum Conditions implements Word {
    /** Damp, worn or cold: bags stop early. */
    SLOW,
    /** As usual. */
    NORMAL,
    /** Dry or new: bags slide far. */
    FAST;
}
