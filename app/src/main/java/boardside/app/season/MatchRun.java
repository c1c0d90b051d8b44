package boardside.app.season;

/**
 * The run that one side of a game of a match is thrown in.
 *
 * @param player number of the player whose run it is
 */
public record MatchRun(int player, String run, String season, String match, int game, MatchSide side) {}
