package boardside.app.record;

import boardside.app.practice.Fixture;
import boardside.app.practice.FixtureRun;
import boardside.app.practice.League;
import boardside.engine.league.Reach;
import boardside.engine.league.TotalGuess;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.odds.Total;
import boardside.engine.skill.Skill;
import boardside.engine.skill.TotalForecast;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What a player's records say of the games of a fixture. The runs of the fixture itself are left out of them: a chance is what
 * was known before the match, with the points thrown since.
 *
 * @param reach by rounds left, none first, what can still be reached; empty without records to tell it from
 * @param typical what a game gives, by the player's records; null where those tell nothing
 */
public record LeagueNight(
        List<Reach> reach,
        @org.jspecify.annotations.Nullable TotalForecast typical) {
    /** How many others must have posted something for the league's own mean to be used. */
    private static final int FEWEST = 2;

    /** Lists copied. */
    public LeagueNight {
        reach = List.copyOf(reach);
    }

    /** What the records up to and with a day say of a fixture's games. */
    public static LeagueNight of(Records records, int player, LeagueState state, String fixture, LocalDate today) {
        Skill skill = Skills.of(records, player, today);
        for (FixtureRun run : state.thrown()) {
            if (run.fixture().equals(fixture)) {
                skill = skill.without(run.run());
            }
        }
        int rounds = state.league().rounds();
        Optional<TotalForecast> typical = skill.total(rounds);
        if (typical.isEmpty()) {
            return new LeagueNight(List.of(), null);
        }
        List<Reach> reach = new ArrayList<>(List.of(Reach.DONE));
        for (int left = 1; left <= rounds; left++) {
            reach.add(reach(skill, left).orElseThrow());
        }
        return new LeagueNight(reach, typical.get());
    }

    /** What a number of rounds may give by a player's records; empty where those tell nothing. */
    static Optional<Reach> reach(Skill skill, int rounds) {
        return skill.total(rounds)
                .flatMap(forecast -> skill.chances()
                        .map(chances -> reach(
                                forecast,
                                chances.steps().stream()
                                        .map(step -> Total.of(RoundDistribution.of(step), rounds))
                                        .toList())));
    }

    /** The forecast, in which good and bad days are, with the range of what is not known of the player around it. */
    private static Reach reach(TotalForecast forecast, List<Total> steps) {
        List<Double> likely = new ArrayList<>();
        List<Double> low = new ArrayList<>();
        List<Double> high = new ArrayList<>();
        for (int points = 0; points < forecast.chances().size(); points++) {
            double chance = forecast.atLeast(points);
            double least = chance;
            double most = chance;
            for (Total step : steps) {
                double at = Math.min(1, step.atLeast(points));
                least = Math.min(least, at);
                most = Math.max(most, at);
            }
            likely.add(chance);
            low.add(least);
            high.add(most);
        }
        return new Reach(likely, low, high);
    }

    /** Where the chances of an opponent's total come from. */
    public enum Source {
        /** They posted it. */
        POSTED,
        /** Other totals they posted. */
        THEIRS,
        /** What the league posts on average. */
        LEAGUE,
        /** Nobody posted anything: they are taken to throw as the player does. */
        LIKE_ME
    }

    /**
     * The other side's total of a game.
     *
     * @param chances of each total from 0 on
     * @param totals how many totals of theirs it goes by
     */
    public record Rival(Source source, int totals, List<Double> chances) {}

    /** The other side's total of a game: posted, else what is to be expected. Empty where that takes records there are not. */
    public Optional<Rival> rival(LeagueState state, Fixture fixture, int game) {
        League league = state.league();
        Integer posted = state.mine(fixture, game).second();
        if (posted != null) {
            return Optional.of(new Rival(Source.POSTED, 1, TotalGuess.posted(posted)));
        }
        TotalForecast mine = typical;
        if (mine == null) {
            return Optional.empty();
        }
        Map<String, List<Integer>> totals = totals(state);
        String opponent = fixture.against(league.me());
        List<Integer> theirs = totals.getOrDefault(opponent, List.of());
        TotalGuess guess = guess(league, totals, opponent, mine);
        Source source =
                !theirs.isEmpty() ? Source.THEIRS : others(totals, opponent) >= FEWEST ? Source.LEAGUE : Source.LIKE_ME;
        return Optional.of(new Rival(source, theirs.size(), guess.next(theirs, league.mostPoints())));
    }

    /** What somebody's totals lie about: the mean of the league's other players, or the player's own where too few posted. */
    static TotalGuess guess(League league, Map<String, List<Integer>> totals, String name, TotalForecast mine) {
        double middle = others(totals, name) < FEWEST
                ? mine.mean()
                : totals.entrySet().stream()
                        .filter(entry -> !entry.getKey().equals(name))
                        .mapToDouble(entry -> entry.getValue().stream()
                                .mapToInt(total -> total)
                                .average()
                                .orElse(0))
                        .average()
                        .orElse(0);
        return new TotalGuess(
                middle, TotalGuess.BETWEEN_A_ROUND * league.rounds(), Math.max(1, mine.standardDeviation()));
    }

    private static long others(Map<String, List<Integer>> totals, String name) {
        return totals.keySet().stream().filter(other -> !other.equals(name)).count();
    }

    /** Totals posted or thrown so far, by player. */
    static Map<String, List<Integer>> totals(LeagueState state) {
        Map<String, List<Integer>> totals = new TreeMap<>();
        for (Fixture fixture : state.fixtures()) {
            for (int game = 1; game <= state.league().games(); game++) {
                Fixture.Totals both = state.totals(fixture, game);
                Integer first = both.first();
                Integer second = both.second();
                if (first != null) {
                    totals.computeIfAbsent(fixture.first(), name -> new ArrayList<>())
                            .add(first);
                }
                if (second != null) {
                    totals.computeIfAbsent(fixture.second(), name -> new ArrayList<>())
                            .add(second);
                }
            }
        }
        return totals;
    }

    /**
     * A game under way.
     *
     * @param thrown points so far
     * @param left rounds still to throw
     * @param rival the other side's total
     * @param chances of winning, and of winning or tying; null where the records tell nothing
     */
    public record Standing(int thrown, int left, Rival rival, Reach.@org.jspecify.annotations.Nullable Game chances) {}

    /** A game after so many points, with so many rounds left. */
    public Optional<Standing> standing(LeagueState state, Fixture fixture, int game, int thrown, int left) {
        return rival(state, fixture, game)
                .map(rival -> new Standing(
                        thrown,
                        left,
                        rival,
                        left < reach.size() ? reach.get(left).against(thrown, rival.chances()) : null));
    }
}
