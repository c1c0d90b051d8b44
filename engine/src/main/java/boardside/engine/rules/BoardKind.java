package boardside.engine.rules;

/** The kind of board thrown at. */
public enum BoardKind implements Word {
    /** 24 in wide, 48 in long. */
    REGULATION,
    /** Full length, sides cut away. */
    NARROW;
}
