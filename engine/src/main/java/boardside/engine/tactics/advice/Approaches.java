package boardside.engine.tactics.advice;

import boardside.engine.odds.NetDistribution;
import boardside.engine.odds.Race;
import boardside.engine.physics.Range;
import boardside.engine.physics.ThrowModel;
import boardside.engine.rules.Approach;
import boardside.engine.rules.GameRules;
import java.util.Arrays;

/**
 * What one player's approach is worth in whole games: rounds of base policies are sampled for each draw of the player, with
 * the same luck for both approaches, and the games of those rounds solved exactly. The opponent plays conservatively.
 *
 * @param conservative chance to win a game, throwing first in half of them
 * @param aggressive the same
 * @param difference aggressive less conservative, draw by draw; its range holds what sampling adds too
 * @param probabilityAggressive chance that the aggressive approach wins more
 */
public record Approaches(Range conservative, Range aggressive, Range difference, double probabilityAggressive) {
    private static final int DRAWS = 16;

    /**
     * The comparison.
     *
     * @param rounds sampled for each draw, approach and order of throwing
     */
    public static Approaches of(Thrower me, Thrower versus, GameRules rules, int rounds) {
        Thrower some = me.thinned(DRAWS);
        int n = some.draws().size();
        double[] careful = new double[n];
        double[] bold = new double[n];
        double[] difference = new double[n];
        double[] equal = new double[n];
        double better = 0;
        for (int k = 0; k < n; k++) {
            ThrowModel model = some.draws().get(k);
            careful[k] = win(Thrower.known(model, Approach.CONSERVATIVE), versus, rules, rounds);
            bold[k] = win(Thrower.known(model, Approach.AGGRESSIVE), versus, rules, rounds);
            difference[k] = bold[k] - careful[k];
            better += difference[k] > 0 ? 1.0 / n : 0;
        }
        Arrays.fill(equal, 1.0 / n);
        return new Approaches(Range.of(careful, equal), Range.of(bold, equal), Range.of(difference, equal), better);
    }

    private static double win(Thrower me, Thrower versus, GameRules rules, int rounds) {
        BoardTurns turns = new BoardTurns(me, versus);
        NetDistribution middle = Matchup.independent(me.usual(), versus.usual());
        Race race = Race.solve(
                rules, Matchup.sampled(turns, true, middle, rounds), Matchup.sampled(turns, false, middle, rounds));
        return (race.winOrHalf(0, 0, true) + race.winOrHalf(0, 0, false)) / 2;
    }
}
