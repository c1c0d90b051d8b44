package boardside.app.season;

import boardside.engine.league.season.Voice;

/**
 * A change of a round that came too late to be part of throwing, or was the organiser's.
 *
 * @param id of the change
 * @param at when it was made, ISO-8601
 * @param by who changed it
 * @param game number of the game
 * @param side whose round it is
 * @param round number of the round
 * @param earlier bags in, on and off as 3-1-0, or empty for none
 * @param later the same after it
 */
public record MatchEdit(
        String id, String at, Voice by, int game, MatchSide side, int round, String earlier, String later) {}
