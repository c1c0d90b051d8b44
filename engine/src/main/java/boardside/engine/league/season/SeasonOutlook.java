package boardside.engine.league.season;

import boardside.engine.league.MatchResult;
import boardside.engine.league.SeasonForecast;
import boardside.engine.league.SeasonForecast.Half;
import boardside.engine.league.SeasonForecast.Remaining;
import boardside.engine.league.TotalGuess;
import boardside.engine.league.season.SeasonMatch.Stage;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * How a division may end: chances of each place, and of the play-off, by throwing what is left many times.
 *
 * @param forecast chances of each place
 * @param open games still to be thrown by one side or both
 * @param totals how many totals it goes by
 * @param qualifiers how many of the division go to the play-off, 0 where there is none
 */
public record SeasonOutlook(SeasonForecast forecast, int open, int totals, int qualifiers) {
    /** Seasons thrown in a division that is not large: a chance near one half is then known to about one in a hundred. */
    private static final int MOST_SEASONS = 2_000;

    private static final int FEWEST_SEASONS = 200;

    /** Games thrown at most, of which a large division has fewer seasons. */
    private static final int GAMES = 2_000_000;

    /** Equally likely forms of each player. */
    private static final int FORMS = 21;

    /** The outlook of a division as it stands; what is told but not settled yet is taken as it is told. */
    public static SeasonOutlook of(Season season, int division, long seed) {
        TotalsSoFar totals = TotalsSoFar.of(season);
        TotalGuess guess = totals.guess();
        Map<String, List<List<Double>>> forms = new HashMap<>();
        List<String> names = new ArrayList<>();
        for (Entrant entrant : season.of(division)) {
            if (entrant.standing() != Entrant.Standing.STRUCK) {
                names.add(entrant.name());
                forms.put(
                        entrant.name(),
                        guess.given(totals.of(entrant.name()), season.rules().mostPoints(), FORMS));
            }
        }
        List<Remaining> matches = new ArrayList<>();
        for (SeasonMatch match : season.matches(Stage.LEAGUE)) {
            if (match.division() == division && season.counts(match)) {
                matches.add(remaining(season, match));
            }
        }
        int games = Math.max(1, matches.size() * season.rules().games());
        return new SeasonOutlook(
                SeasonForecast.of(
                        names,
                        matches,
                        season.ranking(),
                        forms,
                        Math.max(FEWEST_SEASONS, Math.min(MOST_SEASONS, GAMES / games)),
                        seed),
                matches.stream()
                        .mapToInt(match -> match.left() + match.half().size())
                        .sum(),
                totals.count(),
                season.rules().qualifiers());
    }

    private static Remaining remaining(Season season, SeasonMatch match) {
        if (match.fixed()) {
            return new Remaining(season.result(match).orElseThrow(), 0, List.of());
        }
        List<Half> half = new ArrayList<>();
        int left = season.rules().games();
        for (GameScore game : match.games()) {
            Integer first = game.first();
            Integer second = game.second();
            if (first != null && second == null) {
                half.add(new Half(true, first));
            } else if (first == null && second != null) {
                half.add(new Half(false, second));
            }
            left -= first == null && second == null ? 0 : 1;
        }
        return new Remaining(
                new MatchResult(season.name(match.first()), season.name(match.second()), match.totals()),
                left,
                half,
                match.headStart());
    }

    /** The chance of a place that goes to the play-off; 0 where none does. */
    public double playOff(String name) {
        return qualifiers == 0 ? 0 : forecast.among(name, qualifiers);
    }
}
