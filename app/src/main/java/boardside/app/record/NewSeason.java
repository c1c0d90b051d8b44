package boardside.app.record;

import boardside.engine.league.season.SeasonRules;
import boardside.engine.league.season.Weeks;
import java.util.List;

/**
 * A season to be run here.
 *
 * @param name what it is called
 * @param rules how it is thrown and counted
 * @param weeks when its weeks are
 * @param divisions who plays in each
 * @param open whether anyone may see tables, results and calendars
 * @param note free text for everybody
 */
public record NewSeason(
        String name, SeasonRules rules, Weeks weeks, List<Division> divisions, boolean open, String note) {
    /** List copied. */
    public NewSeason {
        divisions = List.copyOf(divisions);
    }

    /**
     * A division.
     *
     * @param players names, in the order of the schedule
     */
    public record Division(String name, List<String> players) {
        /** List copied. */
        public Division {
            players = List.copyOf(players);
        }
    }
}
