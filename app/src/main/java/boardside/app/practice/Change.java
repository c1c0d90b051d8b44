package boardside.app.practice;

import boardside.engine.rules.Word;

/**
 * One correction or deletion, kept with the earlier version so that it can be undone.
 *
 * @param id of the history entry
 * @param at when it was made, ISO-8601
 * @param kind what was done
 * @param run the run concerned, or empty
 * @param says in plain words what was before and after
 * @param undone whether it has been undone
 */
public record Change(String id, String at, Kind kind, String run, String says, boolean undone) {
    /** What was done. */
    public enum Kind implements Word {
        /** A stored round was set anew or taken back. */
        ROUND,
        /** A stored try was set anew or taken back. */
        TRY,
        /** A kept situation was changed. */
        SITUATION,
        /** A run's details (drill set-up, note, opponent, warm-up) were edited. */
        RUN,
        /** A run was deleted. */
        RUN_DELETED,
        /** A session's note was edited. */
        SESSION,
        /** A bag set's details were edited. */
        BAG,
        /** A board's details were edited. */
        BOARD,
        /** A league's settings were edited, or it was deleted. */
        LEAGUE,
        /** Fixtures of a league were added, edited or deleted, or results posted. */
        FIXTURES,
        /** A trial was paused, resumed, stopped or deleted. */
        TRIAL,
        /** A slide test was corrected or deleted. */
        SLIDE_TEST
    }
}
