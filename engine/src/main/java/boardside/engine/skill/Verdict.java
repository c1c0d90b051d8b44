package boardside.engine.skill;

import boardside.engine.rules.Word;

/** How sure a difference is. */
public enum Verdict implements Word {
    /** The chance of its sign is at least 97.5 %. */
    SIGNAL,
    /** The chance of its sign is at least 85 %. */
    LEANING,
    /** Neither: it may be luck. */
    OPEN;
}
