package boardside.engine.odds;

import boardside.engine.rules.GameRules;
import java.util.ArrayList;
import java.util.List;

/**
 * A player's level: the ghost score that they would beat exactly half the time.
 *
 * @param value 0..12, read off the straight line between the two whole ghost scores where the chance to win crosses one
 *     half (the lowest crossing); 0 if ghost 0 is not beaten more than half the time, 12 if ghost 12 is
 * @param winByGhost chance to win a race from 0-0 against ghosts 0..12, a race without end counted half
 */
public record Level(double value, List<Double> winByGhost) {
    /** Keeps a copy of the list. */
    public Level {
        winByGhost = List.copyOf(winByGhost);
    }

    /** The level of a player in races under such rules. */
    public static Level of(GameRules rules, RoundDistribution me) {
        List<Double> wins = new ArrayList<>();
        for (int ghost = 0; ghost <= RoundDistribution.MOST; ghost++) {
            wins.add(Race.solve(rules, me, RoundDistribution.ghost(ghost)).winOrHalf(0, 0, true));
        }
        return new Level(crossing(wins), wins);
    }

    private static double crossing(List<Double> wins) {
        if (wins.get(0) <= 0.5) {
            return 0;
        }
        for (int ghost = 1; ghost < wins.size(); ghost++) {
            double below = wins.get(ghost - 1);
            double above = wins.get(ghost);
            if (above <= 0.5) {
                return ghost - 1 + (below - 0.5) / (below - above);
            }
        }
        return RoundDistribution.MOST;
    }
}
