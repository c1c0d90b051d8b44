package boardside.engine.rules;

/** How much is at stake. */
public enum Setting implements Word {
    /** Nothing but the practice. */
    PRACTICE,
    /** A league night. */
    LEAGUE,
    /** A tournament. */
    TOURNAMENT;
}
