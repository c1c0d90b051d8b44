package boardside.app.practice;

import boardside.engine.rules.Word;

/** How the bag sets of a round follow each other. */
public enum BagOrder implements Word {
    /** One set after the other. */
    SET_BY_SET,
    /** Bag by bag in random order: the phone calls the next one. */
    MIXED
}
