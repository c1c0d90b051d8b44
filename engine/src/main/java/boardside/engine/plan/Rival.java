package boardside.engine.plan;

import boardside.engine.odds.BagChances;
import boardside.engine.odds.LeaguePoints;
import boardside.engine.odds.Match;
import boardside.engine.odds.Race;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.rules.GameRules;

/**
 * Somebody to win against.
 *
 * @param name as the player calls them; of a ghost, empty
 * @param ghost points a round of a ghost, or -1 of somebody else
 * @param rounds what a round gives them
 * @param games games of ten or so rounds of a league match, or 0 for a race to 21
 * @param roundsOfGame rounds of such a game; 0 for a race
 * @param weight how much beating them matters beside the others, above 0
 * @param days until it comes to that, 0 or more; 30 where there is no date
 */
public record Rival(
        String name, int ghost, RoundDistribution rounds, int games, int roundsOfGame, double weight, double days) {
    /** Days ahead that count where nothing is dated. */
    public static final double NO_DATE = 30;

    /** Checked. */
    public Rival {
        if (!(weight > 0 && days >= 0 && games >= 0 && roundsOfGame >= 0 && ghost >= -1)) {
            throw new IllegalArgumentException("a rival has a weight above 0, and days and games of 0 or more");
        }
    }

    /** The ghost at a level, in a race to 21. */
    public static Rival ghost(int points) {
        return new Rival("", points, RoundDistribution.ghost(points), 0, 0, 1, NO_DATE);
    }

    /** A league match in so many days. */
    public static Rival league(String name, RoundDistribution rounds, int games, int roundsOfGame, double days) {
        return new Rival(name, -1, rounds, games, roundsOfGame, 2, days);
    }

    /** The chance of winning with such bags, an even match counted half. */
    double win(BagChances bag) {
        RoundDistribution mine = RoundDistribution.of(bag);
        return games == 0
                ? Race.solve(GameRules.STANDARD, mine, rounds).winOrHalf(0, 0, true)
                : Match.of(mine, rounds, roundsOfGame, games, LeaguePoints.STANDARD)
                        .ahead();
    }
}
