package boardside.app.season;

import boardside.engine.rules.Word;

/**
 * One change of a season, kept with what was before so that it can be undone.
 *
 * @param id of the change
 * @param at when it was made, ISO-8601
 * @param kind what was done
 * @param earlier the parts that differ, as they were
 * @param later the same parts, as they became
 * @param undone whether it has been undone
 */
public record SeasonChange(String id, String at, Kind kind, SeasonParts earlier, SeasonParts later, boolean undone) {
    /** What was done. */
    public enum Kind implements Word {
        /** Name, rules, dates, who may look; or it was deleted. */
        SETTINGS,
        /** Totals were told, confirmed, disputed, given away or opened again. */
        RESULT,
        /** A match was put off, has a substitute, a head start or a note. */
        MATCH,
        /** Somebody left, came late or has another name. */
        PLAYERS,
        /** The play-off began. */
        PLAY_OFF,
        /** An earlier change was undone. */
        UNDO
    }
}
