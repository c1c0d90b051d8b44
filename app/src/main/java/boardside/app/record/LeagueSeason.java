package boardside.app.record;

import boardside.app.practice.Fixture;
import boardside.app.practice.League;
import boardside.engine.league.GameTotals;
import boardside.engine.league.MatchResult;
import boardside.engine.league.Ranking;
import boardside.engine.league.SeasonForecast;
import boardside.engine.league.SeasonForecast.Half;
import boardside.engine.league.SeasonForecast.Remaining;
import boardside.engine.league.TieBreak;
import boardside.engine.league.TotalGuess;
import boardside.engine.odds.BagChances;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.odds.Total;
import boardside.engine.skill.ChanceRange;
import boardside.engine.skill.Skill;
import boardside.engine.skill.TotalForecast;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How the season of a league may end: the player's games by their records, everybody else's by the totals they posted.
 *
 * @param league the league
 * @param forecast chances of each place
 * @param open games still to be thrown by one side or both
 */
public record LeagueSeason(League league, SeasonForecast forecast, int open) {
    /** Seasons thrown: a chance near one half is then known to about one in a hundred. */
    private static final int SEASONS = 2_000;

    /** Equally likely forms of each player. */
    private static final int FORMS = 21;

    /** Half the width of a 90 % range, in standard deviations. */
    private static final double NINETY = 1.6448536269514722;

    private static final long SEED = 20261125;

    /** What records and posted totals say; empty without counted rounds of the player. */
    public static Optional<LeagueSeason> of(Records records, int player, LeagueState state, LocalDate today) {
        Skill skill = Skills.of(records, player, today);
        Optional<TotalForecast> total = skill.total(state.league().rounds());
        Optional<ChanceRange> chances = skill.chances();
        return total.isEmpty() || chances.isEmpty()
                ? Optional.empty()
                : Optional.of(of(state, total.get(), chances.get()));
    }

    private static LeagueSeason of(LeagueState state, TotalForecast typical, ChanceRange chances) {
        List<Remaining> matches = state.fixtures().stream()
                .map(fixture -> remaining(state, fixture))
                .toList();
        return new LeagueSeason(
                state.league(),
                SeasonForecast.of(
                        state.names(),
                        matches,
                        Ranking.of(state.league().points(), TieBreak.USUAL),
                        forms(state, typical, chances),
                        SEASONS,
                        SEED),
                matches.stream()
                        .mapToInt(match -> match.left() + match.half().size())
                        .sum());
    }

    private static Remaining remaining(LeagueState state, Fixture fixture) {
        List<GameTotals> games = new ArrayList<>();
        List<Half> half = new ArrayList<>();
        int left = 0;
        for (int number = 1; number <= state.league().games(); number++) {
            Fixture.Totals totals = state.totals(fixture, number);
            Integer first = totals.first();
            Integer second = totals.second();
            if (first != null && second != null) {
                games.add(new GameTotals(first, second));
            } else if (first != null) {
                half.add(new Half(true, first));
            } else if (second != null) {
                half.add(new Half(false, second));
            } else {
                left++;
            }
        }
        return new Remaining(new MatchResult(fixture.first(), fixture.second(), games), left, half);
    }

    private static Map<String, List<List<Double>>> forms(
            LeagueState state, TotalForecast typical, ChanceRange chances) {
        League league = state.league();
        double unknown = (mean(chances.high(), league) - mean(chances.low(), league)) / (2 * NINETY);
        double luck =
                Math.sqrt(Math.max(1, typical.standardDeviation() * typical.standardDeviation() - unknown * unknown));
        Map<String, List<Integer>> totals = LeagueNight.totals(state);
        Map<String, List<List<Double>>> forms = new HashMap<>();
        for (String name : state.names()) {
            boolean me = name.equals(league.me());
            TotalGuess guess = me
                    ? new TotalGuess(typical.mean(), Math.max(0.1, unknown), luck)
                    : LeagueNight.guess(league, totals, name, typical);
            // The player's own totals are among the records already.
            Collection<Integer> posted = me ? List.of() : totals.getOrDefault(name, List.of());
            forms.put(name, guess.given(posted, league.mostPoints(), FORMS));
        }
        return forms;
    }

    private static double mean(BagChances chances, League league) {
        return Total.of(RoundDistribution.of(chances), league.rounds()).mean();
    }
}
