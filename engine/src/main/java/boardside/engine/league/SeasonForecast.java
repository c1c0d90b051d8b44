package boardside.engine.league;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * How a season may end: the chance of each place for each player, by throwing the games that are left many times.
 *
 * <p>In each season thrown, every player has one form throughout (one of their equally likely distributions of a total), so
 * that somebody who may be better than their posted totals is so in all games that are left; totals are drawn independently
 * given the forms. Who share a place have an equal part in the places they take up. The same seed gives the same answer.
 *
 * @param seasons how many were thrown
 * @param chances by player, the chances of first to last place, which add up to 1
 */
public record SeasonForecast(int seasons, Map<String, List<Double>> chances) {
    /** Maps and lists copied. */
    public SeasonForecast {
        Map<String, List<Double>> copy = new TreeMap<>();
        chances.forEach((player, places) -> copy.put(player, List.copyOf(places)));
        chances = Collections.unmodifiableMap(copy);
    }

    /**
     * A match with its games, thrown or not.
     *
     * @param match both names and the games that have both totals, or went by forfeit
     * @param left games still to be thrown, 0 or more
     * @param half games of which one side's total is known
     * @param headStart what the side named first is given in each game still to be decided; see {@link GameTotals}
     */
    public record Remaining(MatchResult match, int left, List<Half> half, int headStart) {
        /**
         * List copied.
         *
         * @throws IllegalArgumentException if the number of games left is negative
         */
        public Remaining {
            if (!(left >= 0)) {
                throw new IllegalArgumentException("0 or more games of a match are left, not " + left);
            }
            half = List.copyOf(half);
        }

        /** A match without a head start. */
        public Remaining(MatchResult match, int left, List<Half> half) {
            this(match, left, half, 0);
        }

        private boolean open() {
            return left > 0 || !half.isEmpty();
        }
    }

    /**
     * A game of which one side's total is known.
     *
     * @param firstPosted whether it is that of the side named first
     * @param total the total, 0 or more
     */
    public record Half(boolean firstPosted, int total) {}

    /**
     * Throws the rest of a season.
     *
     * @param players all who take part; everybody named in a match is one of them
     * @param matches of the whole season, in any order
     * @param ranking how the table is made
     * @param totals by player, equally likely distributions of a game's total: the chances of 0, 1, ...
     * @param seasons how many to throw, 1 or more
     * @throws IllegalArgumentException if somebody with a game left has no distribution
     */
    public static SeasonForecast of(
            Collection<String> players,
            List<Remaining> matches,
            Ranking ranking,
            Map<String, List<List<Double>>> totals,
            int seasons,
            long seed) {
        if (!(seasons >= 1)) {
            throw new IllegalArgumentException("one season or more is thrown, not " + seasons);
        }
        TreeSet<String> names = new TreeSet<>(players);
        for (Remaining remaining : matches) {
            List<String> sides =
                    List.of(remaining.match().first(), remaining.match().second());
            for (String name : sides) {
                if (!names.contains(name)) {
                    throw new IllegalArgumentException(name + " plays in a match but not in the league");
                }
            }
            for (String name : sides) {
                if (remaining.open() && !totals.containsKey(name)) {
                    throw new IllegalArgumentException("nothing says what " + name + " may throw");
                }
            }
        }
        Map<String, double[]> counts = new TreeMap<>();
        names.forEach(name -> counts.put(name, new double[names.size()]));
        Map<String, List<double[]>> cumulative = new TreeMap<>();
        totals.forEach((player, forms) ->
                cumulative.put(player, forms.stream().map(SeasonForecast::sums).toList()));
        SplittableRandom random = new SplittableRandom(seed);
        for (int season = 0; season < seasons; season++) {
            count(Standings.of(names, thrown(matches, cumulative, random), ranking), counts, 1.0 / seasons);
        }
        Map<String, List<Double>> chances = new HashMap<>();
        counts.forEach((name, places) ->
                chances.put(name, Arrays.stream(places).boxed().toList()));
        return new SeasonForecast(seasons, chances);
    }

    private static double[] sums(List<Double> chances) {
        double[] sums = new double[chances.size()];
        double sum = 0;
        for (int total = 0; total < sums.length; total++) {
            sum += chances.get(total);
            sums[total] = sum;
        }
        return sums;
    }

    private static List<MatchResult> thrown(
            List<Remaining> matches, Map<String, List<double[]>> cumulative, SplittableRandom random) {
        Map<String, double[]> form = new HashMap<>();
        cumulative.forEach((player, forms) -> form.put(player, forms.get(random.nextInt(forms.size()))));
        List<MatchResult> results = new ArrayList<>();
        for (Remaining remaining : matches) {
            MatchResult match = remaining.match();
            int start = remaining.headStart();
            List<GameTotals> games = new ArrayList<>(match.games());
            for (Half half : remaining.half()) {
                games.add(
                        half.firstPosted()
                                ? new GameTotals(half.total(), draw(form, match.second(), random), start)
                                : new GameTotals(draw(form, match.first(), random), half.total(), start));
            }
            for (int game = 0; game < remaining.left(); game++) {
                games.add(new GameTotals(draw(form, match.first(), random), draw(form, match.second(), random), start));
            }
            results.add(new MatchResult(match.first(), match.second(), games, match.awards()));
        }
        return results;
    }

    private static int draw(Map<String, double[]> form, String player, SplittableRandom random) {
        double[] sums = Objects.requireNonNull(form.get(player));
        int at = Arrays.binarySearch(sums, random.nextDouble() * sums[sums.length - 1]);
        return Math.min(at >= 0 ? at + 1 : -at - 1, sums.length - 1);
    }

    private static void count(Standings table, Map<String, double[]> counts, double weight) {
        Map<Integer, List<String>> byPlace = new TreeMap<>();
        table.rows()
                .forEach(row -> byPlace.computeIfAbsent(row.place(), place -> new ArrayList<>())
                        .add(row.player()));
        byPlace.forEach((place, sharing) -> {
            for (String player : sharing) {
                for (int i = 0; i < sharing.size(); i++) {
                    Objects.requireNonNull(counts.get(player))[place - 1 + i] += weight / sharing.size();
                }
            }
        });
    }

    /**
     * The chances of first to last place.
     *
     * @throws IllegalArgumentException if nobody has that name
     */
    public List<Double> places(String player) {
        List<Double> places = chances.get(player);
        if (places == null) {
            throw new IllegalArgumentException(player + " is not in the league");
        }
        return places;
    }

    /** The chance of a place among the first so many. */
    public double among(String player, int first) {
        List<Double> places = places(player);
        return Math.min(
                1,
                places.subList(0, Math.min(first, places.size())).stream()
                        .mapToDouble(chance -> chance)
                        .sum());
    }

    /** The smallest place that is reached, or bettered, with at least that chance, in 0..1. */
    public int quantile(String player, double q) {
        int place = 1;
        // Shares of a place are sums of fractions: a hair less than the whole is the whole.
        while (place < chances.size() && among(player, place) < q - 1e-9) {
            place++;
        }
        return place;
    }

    /** The place with the greatest chance, the better one of equals. */
    public int likeliest(String player) {
        List<Double> places = places(player);
        return places.indexOf(Collections.max(places)) + 1;
    }

    /** The place reached on average. */
    public double average(String player) {
        List<Double> places = places(player);
        double average = 0;
        for (int place = 1; place <= places.size(); place++) {
            average += place * places.get(place - 1);
        }
        return average;
    }

    /** Everybody, by the place they reach on average. */
    public List<String> order() {
        return chances.keySet().stream()
                .sorted(Comparator.comparingDouble(this::average).thenComparing(Comparator.naturalOrder()))
                .toList();
    }

    /** The standard error that comes from throwing so many seasons and no more, of a chance. */
    public double standardError(double chance) {
        return Math.sqrt(chance * (1 - chance) / seasons);
    }
}
