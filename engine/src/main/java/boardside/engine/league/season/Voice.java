package boardside.engine.league.season;

import boardside.engine.rules.Word;

/** Who says what a match came to. */
public enum Voice implements Word {
    /** The player named first. */
    FIRST,
    /** The other player. */
    SECOND,
    /** Whoever runs the season: what they say is settled. */
    ORGANISER
}
