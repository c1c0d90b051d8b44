package boardside.engine.odds;

import boardside.engine.rules.GameRules;

/**
 * How precisely games against ghosts pin a player's level, against the same number of bags thrown as totals.
 *
 * <p>The ladder's estimate is the mean rung of the games of a climber who has settled (a run-up would only make it
 * worse). The totals' estimate is the level of a player with that mean of points a round; a total does not tell bags in
 * from bags on, so the missing one is filled in by keeping the share of on among the bags that are not in. Both errors are
 * exact expectations: no simulation.
 *
 * @param games number of games
 * @param level the player's level, 0..12
 * @param roundsPerGame mean rounds of a game on the ladder
 * @param ladderError root of the mean squared error of the mean rung, in points of level
 * @param totalsError the same for the level read off as many rounds thrown as totals
 * @param roundsForLadderError rounds of totals that would do as well as the ladder: (totalsError / ladderError)^2 of
 *     those thrown
 * @param gameWorth what the mere result of one game against the nearest ghost tells, in rounds whose points are kept:
 *     the ratio of the Fisher informations on points per round, (dw/dm)^2 / (w (1 - w)) x variance of a round
 * @param gameRounds mean rounds of that game
 */
public record Precision(
        int games,
        double level,
        double roundsPerGame,
        double ladderError,
        double totalsError,
        double roundsForLadderError,
        double gameWorth,
        double gameRounds) {
    private static final double NEGLIGIBLE = 1e-16;
    private static final double DIFFERENCE = 1e-5;

    /**
     * Compares the two for a player.
     *
     * @param rules how each game is won
     * @param me the player; mean points a round from 0.5 to 11.5, so that both sides of the level can be seen
     * @param games games on the ladder, 1..100
     * @throws IllegalArgumentException if they are out of range
     */
    public static Precision of(GameRules rules, BagChances me, int games) {
        double mean = me.pointsPerRound();
        if (!(mean >= 0.5 && mean <= 11.5)) {
            throw new IllegalArgumentException(
                    "the comparison is for players of 0.5 to 11.5 points a round, not " + mean);
        }
        if (!(games >= 1 && games <= 100)) {
            throw new IllegalArgumentException("the comparison takes 1 to 100 games, not " + games);
        }
        RoundDistribution round = RoundDistribution.of(me);
        Level level = Level.of(rules, round);
        Climb climb = new Climb(
                0, level.winByGhost().stream().map(win -> Math.min(1, win)).toList());
        double roundsPerGame = roundsPerGame(rules, round, climb);
        int rounds = (int) Math.min(Total.MOST_ROUNDS, Math.max(1, Math.round(games * roundsPerGame)));
        double ladderError = climb.error(level.value(), games);
        double totalsError = totalsError(rules, me, rounds, level.value());
        int ghost = (int) Math.round(level.value());
        double win = win(rules, me, ghost);
        double slope =
                (win(rules, atMean(me, mean + DIFFERENCE), ghost) - win(rules, atMean(me, mean - DIFFERENCE), ghost))
                        / (2 * DIFFERENCE);
        return new Precision(
                games,
                level.value(),
                roundsPerGame,
                ladderError,
                totalsError,
                rounds * (totalsError / ladderError) * (totalsError / ladderError),
                slope * slope / (win * (1 - win)) * round.variance(),
                rounds(rules, round, ghost));
    }

    private static double roundsPerGame(GameRules rules, RoundDistribution me, Climb climb) {
        double[] shares = climb.stationary();
        double mean = 0;
        for (int ghost = 0; ghost < shares.length; ghost++) {
            // A race without end has no number of rounds; it comes up with certain bags only.
            if (shares[ghost] > 0) {
                mean += shares[ghost] * rounds(rules, me, ghost);
            }
        }
        return mean;
    }

    private static double rounds(GameRules rules, RoundDistribution me, int ghost) {
        RaceAnswer answer =
                Race.solve(rules, me, RoundDistribution.ghost(ghost)).fromStart();
        return answer instanceof RaceAnswer.Ends ends ? ends.expectedRounds() : Double.POSITIVE_INFINITY;
    }

    private static double win(GameRules rules, BagChances me, int ghost) {
        return Race.solve(rules, RoundDistribution.of(me), RoundDistribution.ghost(ghost))
                .winOrHalf(0, 0, true);
    }

    private static double totalsError(GameRules rules, BagChances me, int rounds, double level) {
        Total total = Total.of(RoundDistribution.of(me), rounds);
        double squares = 0;
        for (int points = 0; points <= total.most(); points++) {
            double chance = total.chance(points);
            if (chance > NEGLIGIBLE) {
                BagChances read = atMean(me, (double) points / rounds);
                double error = Level.of(rules, RoundDistribution.of(read)).value() - level;
                squares += chance * error * error;
            }
        }
        return Math.sqrt(squares);
    }

    /** The bag with such a mean of points a round that keeps the share of on among bags not in, as far as it can. */
    private static BagChances atMean(BagChances me, double mean) {
        double kept = me.in() < 1 ? me.on() / (1 - me.in()) : 0;
        double perBag = mean / 4;
        if (perBag <= kept) {
            return new BagChances(0, perBag);
        }
        double in = Math.min(1, (perBag - kept) / (3 - kept));
        return new BagChances(in, Math.min(1, kept * (1 - in)));
    }
}
