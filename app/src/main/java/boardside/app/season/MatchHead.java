package boardside.app.season;

import boardside.engine.league.season.SeasonMatch.Stage;
import boardside.engine.league.season.SeasonMatch.State;
import org.jspecify.annotations.Nullable;

/**
 * What has to be known of a match to show it or to add a round, without reading its whole season.
 *
 * @param open whether anyone may look
 * @param week of the season, or round of the play-off
 * @param first name of the side named first
 * @param second name of the other side
 * @param firstPlayer number of the player it is, or null
 * @param games of a match
 * @param rounds of a game
 * @param stands whether the match can no longer be changed by players: it counts for nobody, the play-off has begun since, or
 *     the season was deleted
 */
public record MatchHead(
        String season,
        String match,
        String seasonName,
        boolean open,
        boolean deleted,
        Stage stage,
        int week,
        String first,
        String second,
        @Nullable Integer firstPlayer,
        @Nullable Integer secondPlayer,
        String firstSubstitute,
        String secondSubstitute,
        int games,
        int rounds,
        int headStart,
        State state,
        boolean stands) {
    /** Whether a side's rounds still come from its player: nothing is settled, disputed or given away. */
    public boolean throwing() {
        return !stands && (state == State.OPEN || state == State.REPORTED);
    }

    /** The side a player throws for, or null. */
    public @Nullable MatchSide side(int player) {
        return firstPlayer != null && firstPlayer == player
                ? MatchSide.FIRST
                : secondPlayer != null && secondPlayer == player ? MatchSide.SECOND : null;
    }
}
