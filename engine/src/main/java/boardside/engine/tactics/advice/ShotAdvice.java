package boardside.engine.tactics.advice;

import boardside.engine.physics.Landing;
import boardside.engine.physics.Range;

/**
 * One shot's prospects.
 *
 * @param call the shot
 * @param release where the player's bag comes down on average when it is thrown so, and how fast
 * @param winProbability chance to win the game; the range is what is not known of the player
 * @param simulationError standard error of sampling in it
 * @param netPoints points of the round, mine less theirs, with the same kind of range
 * @param risk chance that the round costs points
 * @param breakEven against the best other shot
 * @param probabilityBehind chance that it is worse than the best shot, 0.5 for the best itself
 * @param behind how much chance to win it gives away against the best, 0 or more
 * @param behindError standard error of sampling in {@code behind}
 * @param asGood whether it is as good as the best shot as far as can be told
 * @param tries the player's own tries that count, those elsewhere in part
 */
public record ShotAdvice(
        Call call,
        Landing release,
        Range winProbability,
        double simulationError,
        Range netPoints,
        double risk,
        BreakEven breakEven,
        double probabilityBehind,
        double behind,
        double behindError,
        boolean asGood,
        double tries) {}
