package boardside.app.record;

import boardside.engine.odds.BagChances;
import boardside.engine.odds.Climb;
import boardside.engine.odds.Level;
import boardside.engine.odds.Race;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.rules.GameRules;
import boardside.engine.skill.ChanceRange;
import boardside.engine.skill.Interval;
import boardside.engine.skill.Skill;
import java.util.Optional;

/**
 * The climb beside what all bags say: the next rung, the level, and where the ladder settles at the player's form.
 *
 * @param ladder the races so far
 * @param next the rung of the next race, 0..12
 * @param proposed whether the next rung is a proposal for the first race, not where the ladder stands
 * @param likely what the records make likely; empty without records that count points
 */
public record Climbing(Ladder ladder, int next, boolean proposed, Optional<Likely> likely) {
    /** How likely a race at the rung proposed for a first race is to be won, at least. */
    public static final double START_CHANCE = 0.7;

    /** Where one begins of whom nothing is known (common practice, no source). */
    private static final int UNKNOWN = 3;

    /**
     * What all counted bags make likely.
     *
     * @param level the ghost beaten half the time
     * @param climb the ladder at the likeliest chances of a bag, rungs 0 to 12
     * @param mean mean rung in the long run
     * @param win chance to win the next race
     * @param start the highest rung up to which every race is won with {@link #START_CHANCE}
     * @param winStart chance to win a race there
     */
    public record Likely(Interval level, Climb climb, Interval mean, Interval win, int start, Interval winStart) {}

    /** The climb of a player. */
    public static Climbing of(Ladder ladder, Skill skill) {
        Optional<ChanceRange> chances = skill.chances();
        Optional<Climb> climb = chances.map(range -> climb(range.likely()));
        boolean proposed = ladder.next().isEmpty();
        int start = climb.map(found -> found.start(START_CHANCE)).orElse(UNKNOWN);
        int next = ladder.next().orElse(start);
        return new Climbing(
                ladder,
                next,
                proposed,
                chances.map(range -> new Likely(
                        range.of(bag -> Level.of(GameRules.STANDARD, RoundDistribution.of(bag))
                                .value()),
                        climb.orElseThrow(),
                        range.of(bag -> climb(bag).mean()),
                        win(range, next),
                        start,
                        win(range, start))));
    }

    private static Climb climb(BagChances bag) {
        return Climb.of(GameRules.STANDARD, RoundDistribution.of(bag), 0, RoundDistribution.MOST);
    }

    private static Interval win(ChanceRange range, int ghost) {
        return range.of(bag -> Math.min(
                1,
                Race.solve(GameRules.STANDARD, RoundDistribution.of(bag), RoundDistribution.ghost(ghost))
                        .winOrHalf(0, 0, true)));
    }
}
