package boardside.app.season;

import boardside.engine.league.season.Voice;
import boardside.engine.rules.Word;

/** One of the two who throw a match. */
public enum MatchSide implements Word {
    /** The one named first. */
    FIRST,
    /** The other one. */
    SECOND;

    /** What this side says is said by. */
    public Voice voice() {
        return this == FIRST ? Voice.FIRST : Voice.SECOND;
    }
}
