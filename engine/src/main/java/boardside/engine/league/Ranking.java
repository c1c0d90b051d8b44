package boardside.engine.league;

import boardside.engine.odds.LeaguePoints;
import java.util.List;
import java.util.Map;

/**
 * How players are ranked: by league points, then by tie-breaks, then by lot.
 *
 * @param worth what a game is worth
 * @param tieBreaks in the order asked; may be empty
 * @param lots by player, the lot drawn for them, all different: of those whom nothing else tells apart the lower one stands
 *     higher. Whoever has none shares the place with the others who have none; empty where places are shared
 */
public record Ranking(LeaguePoints worth, List<TieBreak> tieBreaks, Map<String, Integer> lots) {
    /** List and map copied. */
    public Ranking {
        tieBreaks = List.copyOf(tieBreaks);
        lots = Map.copyOf(lots);
    }

    /** Without lots: whom nothing tells apart share a place. */
    public static Ranking of(LeaguePoints worth, List<TieBreak> tieBreaks) {
        return new Ranking(worth, tieBreaks, Map.of());
    }
}
