package boardside.engine.league.season;

import boardside.engine.league.TotalGuess;
import boardside.engine.odds.HeadStart;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.odds.Total;
import boardside.engine.odds.TypicalPlayer;
import boardside.engine.rules.Side;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What the players of a season threw in it so far, and what they will probably throw next: a season knows nothing of
 * anybody's practice. Totals that a substitute threw are not the player's.
 *
 * <p>The next total is {@link TotalGuess}'s about the mean of those who have thrown. How much one player's totals vary is
 * taken as the luck of a typical player at that mean (variance u), and learned: with n totals more than players, and S the sum
 * of their squared distances from their player's mean, it is (10 u + S) / (10 + n), the mean of a scaled inverse chi-square
 * posterior with ten prior observations, but for its two degrees of freedom (Gelman and others, Bayesian Data Analysis, third
 * edition, section 2.6). Ten is our choice: about three matches.
 *
 * @param rules of the season
 * @param byName totals so far, by name, for everybody
 */
public record TotalsSoFar(SeasonRules rules, Map<String, List<Integer>> byName) {
    private static final double PRIOR_OBSERVATIONS = 10;

    /** Points a round before anybody has thrown: the middle of what there is. It hardly matters, since all are alike then. */
    private static final double USUAL_POINTS = 6;

    /** Map and lists copied. */
    public TotalsSoFar {
        Map<String, List<Integer>> copy = new TreeMap<>();
        byName.forEach((name, totals) -> copy.put(name, List.copyOf(totals)));
        byName = Collections.unmodifiableMap(copy);
    }

    /** The totals told so far. */
    public static TotalsSoFar of(Season season) {
        Map<String, List<Integer>> byName = new TreeMap<>();
        season.entrants().forEach(one -> byName.put(one.name(), new ArrayList<>()));
        for (SeasonMatch match : season.matches()) {
            for (GameScore game : match.games()) {
                Integer first = game.first();
                Integer second = game.second();
                if (first != null && match.firstSubstitute().isEmpty()) {
                    byName.computeIfAbsent(season.name(match.first()), name -> new ArrayList<>())
                            .add(first);
                }
                if (second != null && match.secondSubstitute().isEmpty()) {
                    byName.computeIfAbsent(season.name(match.second()), name -> new ArrayList<>())
                            .add(second);
                }
            }
        }
        return new TotalsSoFar(season.rules(), byName);
    }

    /** How many totals there are. */
    public int count() {
        return byName.values().stream().mapToInt(List::size).sum();
    }

    /** Totals of one player. */
    public List<Integer> of(String name) {
        return byName.getOrDefault(name, List.of());
    }

    /** What is believed of a next total. */
    public TotalGuess guess() {
        double middle = byName.values().stream()
                .filter(totals -> !totals.isEmpty())
                .mapToDouble(TotalsSoFar::mean)
                .average()
                .orElse(USUAL_POINTS * rules.rounds());
        double luck = Total.of(RoundDistribution.of(TypicalPlayer.ofPoints(middle / rules.rounds())), rules.rounds())
                .standardDeviation();
        double squares = PRIOR_OBSERVATIONS * luck * luck;
        double weight = PRIOR_OBSERVATIONS;
        for (List<Integer> totals : byName.values()) {
            double mean = mean(totals);
            squares += totals.stream()
                    .mapToDouble(total -> (total - mean) * (total - mean))
                    .sum();
            weight += Math.max(0, totals.size() - 1);
        }
        return new TotalGuess(
                middle, TotalGuess.BETWEEN_A_ROUND * rules.rounds(), Math.max(1, Math.sqrt(squares / weight)));
    }

    private static double mean(Collection<Integer> totals) {
        return totals.stream().mapToInt(total -> total).average().orElse(0);
    }

    /**
     * The fair head start of a match as things stand: whole points that bring each game nearest to even, by what both will
     * probably throw.
     *
     * @return what the side named first is given; negative, the other side
     */
    public int headStart(String first, String second) {
        TotalGuess guess = guess();
        HeadStart fair = HeadStart.inTotals(
                guess.next(of(first), rules.mostPoints()), guess.next(of(second), rules.mostPoints()));
        return fair.to() == Side.ME ? fair.points() : -fair.points();
    }
}
