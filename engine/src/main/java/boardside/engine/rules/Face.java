package boardside.engine.rules;

/** Which side of the bag lies down. */
public enum Face implements Word {
    /** The side that grips. */
    SLOW,
    /** The side that slides. */
    FAST;
}
