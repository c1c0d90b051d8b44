package boardside.engine.odds;

import boardside.engine.rules.GameRules;

/**
 * A player of a given level as players usually are: the better, the more bags go in, and the more of the others stay on
 * the board. The line is common practice, no source; it runs through 0.15 in with 0.42 on, 0.3 with 0.38, 0.5 with 0.3 and
 * 0.7 with 0.2. Which line is taken hardly matters: at equal points a round, races come out nearly the same.
 */
public final class TypicalPlayer {
    /** Halvings of the line: enough for every bit of a double. */
    private static final int STEPS = 60;

    private TypicalPlayer() {}

    /**
     * One bag's chances of a player with that level: who wins half the races to 21 against the ghost that scores so many
     * points.
     *
     * @param level a ghost score, 0..12; at 0 no bag stays on the board, at 12 every bag goes in
     * @throws IllegalArgumentException if it lies outside
     */
    public static BagChances ofLevel(int level) {
        if (!(level >= 0 && level <= RoundDistribution.MOST)) {
            throw new IllegalArgumentException("a level is 0 to 12, not " + level);
        }
        if (level == 0 || level == RoundDistribution.MOST) {
            return at(level == 0 ? 0 : 1);
        }
        RoundDistribution ghost = RoundDistribution.ghost(level);
        double low = 0;
        double high = 1;
        for (int step = 0; step < STEPS; step++) {
            double middle = (low + high) / 2;
            double win = Race.solve(GameRules.STANDARD, RoundDistribution.of(at(middle)), ghost)
                    .winOrHalf(0, 0, true);
            if (win < 0.5) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return at(high);
    }

    /**
     * One bag's chances of such a player who makes so many points a round.
     *
     * @param points mean points of a round of four, 0..12
     * @throws IllegalArgumentException if they lie outside
     */
    public static BagChances ofPoints(double points) {
        if (!(points >= 0 && points <= RoundDistribution.MOST)) {
            throw new IllegalArgumentException("a round makes 0 to 12 points, not " + points);
        }
        double low = 0;
        double high = 1;
        for (int step = 0; step < STEPS; step++) {
            double middle = (low + high) / 2;
            if (at(middle).pointsPerRound() < points) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return at(high);
    }

    /** The player on the line with such a chance of in. */
    private static BagChances at(double in) {
        return new BagChances(in, (1 - in) * Math.min(3 * in, 0.45 + 0.3 * in));
    }
}
