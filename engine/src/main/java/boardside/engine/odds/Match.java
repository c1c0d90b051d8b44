package boardside.engine.odds;

import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A league match: games in which both sides throw a number of rounds and the higher total wins. Immutable.
 *
 * @param games number of games, 1..99
 * @param win chance that the first side wins a game
 * @param tie chance that a game is tied
 * @param loss chance that the first side loses a game
 * @param points what a game is worth
 */
public record Match(int games, double win, double tie, double loss, LeaguePoints points) {
    /**
     * Checks the numbers.
     *
     * @throws IllegalArgumentException if games are out of range or the chances do not add up to 1 within 1e-9
     */
    public Match {
        if (!(games >= 1 && games <= 99)) {
            throw new IllegalArgumentException("a match has 1 to 99 games, not " + games);
        }
        if (!(win >= 0 && tie >= 0 && loss >= 0 && Math.abs(win + tie + loss - 1) <= 1e-9)) {
            throw new IllegalArgumentException(
                    "the chances of a win, a tie and a loss are 0 or more and add up to 1, not " + win + ", " + tie
                            + " and " + loss);
        }
    }

    /**
     * A match of independent games.
     *
     * @param mine what a round gives the first side
     * @param theirs what a round gives the other
     * @param rounds rounds of a game, 1..1000
     * @throws IllegalArgumentException if rounds or games are out of range
     */
    public static Match of(
            RoundDistribution mine, RoundDistribution theirs, int rounds, int games, LeaguePoints points) {
        Total me = Total.of(mine, rounds);
        Total versus = Total.of(theirs, rounds);
        double win = 0;
        double tie = 0;
        double loss = 0;
        double mineBelow = 0;
        double theirsBelow = 0;
        for (int total = 0; total <= me.most(); total++) {
            win += me.chance(total) * theirsBelow;
            tie += me.chance(total) * versus.chance(total);
            loss += versus.chance(total) * mineBelow;
            mineBelow += me.chance(total);
            theirsBelow += versus.chance(total);
        }
        return new Match(games, win, tie, loss, points);
    }

    /** Expected league points of the first side. */
    public double expectedPoints() {
        return games * (points.win() * win + points.tie() * tie + points.loss() * loss);
    }

    /** Chance of each number of league points of the first side that can come up, in rising order. */
    public SortedMap<Integer, Double> byPoints() {
        SortedMap<Integer, Double> sums = new TreeMap<>();
        forEachScore((won, tied, chance) -> sums.merge(
                won * points.win() + tied * points.tie() + (games - won - tied) * points.loss(), chance, Double::sum));
        return Collections.unmodifiableSortedMap(sums);
    }

    /** Chance of more league points than the other side, plus half of equal. */
    public double ahead() {
        double[] sum = {0};
        forEachScore((won, tied, chance) -> {
            int lead = (points.win() - points.loss()) * (won - (games - won - tied));
            sum[0] += lead > 0 ? chance : lead == 0 ? chance / 2 : 0;
        });
        return sum[0];
    }

    private interface Score {
        void at(int won, int tied, double chance);
    }

    private void forEachScore(Score score) {
        // chances[won][tied] of the games so far.
        double[][] chances = new double[games + 1][games + 1];
        chances[0][0] = 1;
        for (int game = 0; game < games; game++) {
            double[][] next = new double[games + 1][games + 1];
            for (int won = 0; won <= game; won++) {
                for (int tied = 0; won + tied <= game; tied++) {
                    double chance = chances[won][tied];
                    next[won + 1][tied] += chance * win;
                    next[won][tied + 1] += chance * tie;
                    next[won][tied] += chance * loss;
                }
            }
            chances = next;
        }
        for (int won = 0; won <= games; won++) {
            for (int tied = 0; won + tied <= games; tied++) {
                score.at(won, tied, chances[won][tied]);
            }
        }
    }
}
