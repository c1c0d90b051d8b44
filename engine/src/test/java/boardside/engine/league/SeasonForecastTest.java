package boardside.engine.league;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boardside.engine.league.SeasonForecast.Half;
import boardside.engine.league.SeasonForecast.Remaining;
import boardside.engine.odds.LeaguePoints;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class SeasonForecastTest {
    private static final LeaguePoints WORTH = new LeaguePoints(2, 1, 0);
    private static final int SEASONS = 40_000;

    /** Four standard errors at a chance of one half. */
    private static final double NEAR = 4 * 0.5 / Math.sqrt(SEASONS);

    private static Remaining match(String first, String second, int left, GameTotals... games) {
        return new Remaining(new MatchResult(first, second, List.of(games)), left, List.of());
    }

    private static SeasonForecast forecast(List<Remaining> matches, Map<String, List<List<Double>>> totals) {
        return SeasonForecast.of(totals.keySet(), matches, Ranking.of(WORTH, List.of()), totals, SEASONS, 20261125L);
    }

    /**
     * Binomial: the better of three games that each side wins or loses with chances p and 1 - p takes the season with chance
     * p^2 (3 - 2 p) (Feller, An Introduction to Probability Theory, volume 1, VI.2; the closed form is elementary).
     */
    @Test
    void threeGamesAreWonAsOftenAsTheBinomialSays() {
        double p = 0.6;
        SeasonForecast season = forecast(
                List.of(match("Ada", "Ben", 3)),
                Map.of("Ada", List.of(List.of(1 - p, 0.0, p)), "Ben", List.of(List.of(0.0, 1.0))));
        assertThat(season.among("Ada", 1)).isCloseTo(p * p * (3 - 2 * p), within(NEAR));
        assertThat(season.among("Ada", 2)).isCloseTo(1, within(1e-9));
    }

    /**
     * A player of whom it is not known whether they win always or never: the three games are won together, with chance 1/2,
     * not with that of three tosses.
     */
    @Test
    void aPlayersFormIsOneForAllGamesLeft() {
        SeasonForecast season = forecast(
                List.of(match("Ada", "Ben", 1), match("Ada", "Cleo", 1), match("Ben", "Cleo", 0, new GameTotals(1, 1))),
                Map.of(
                        "Ada", List.of(List.of(1.0, 0.0, 0.0), List.of(0.0, 0.0, 1.0)),
                        "Ben", List.of(List.of(0.0, 1.0)),
                        "Cleo", List.of(List.of(0.0, 1.0))));
        assertThat(season.quantile("Ada", 0.05)).isEqualTo(1);
        assertThat(season.quantile("Ada", 0.95)).isEqualTo(3);
        assertThat(season.places("Ada")).satisfies(places -> {
            assertThat(places.get(0)).isCloseTo(0.5, within(NEAR));
            assertThat(places.get(1)).isZero();
            assertThat(places.get(2)).isCloseTo(0.5, within(NEAR));
        });
        // Ben and Cleo always share: equal parts of the two places they take up.
        assertThat(season.chances().get("Ben")).isEqualTo(season.chances().get("Cleo"));
        assertThat(season.among("Ben", 2) - season.among("Ben", 1)).isCloseTo(0.5, within(1e-9));
    }

    @Test
    void aPostedTotalStands() {
        Remaining half = new Remaining(new MatchResult("Ada", "Ben", List.of()), 0, List.of(new Half(true, 2)));
        SeasonForecast season = forecast(
                List.of(half), Map.of("Ada", List.of(List.of(1.0)), "Ben", List.of(List.of(0.0, 0.25, 0.25, 0.5))));
        assertThat(season.among("Ada", 1)).isCloseTo(0.25 + 0.25 / 2, within(NEAR));
    }

    @Test
    void aFinishedSeasonIsItsTable() {
        SeasonForecast season = SeasonForecast.of(
                Set.of("Ada", "Ben", "Cleo"),
                List.of(match("Ada", "Ben", 0, new GameTotals(3, 2)), match("Cleo", "Ben", 0, new GameTotals(1, 2))),
                Ranking.of(WORTH, TieBreak.USUAL),
                Map.of(),
                1,
                0);
        assertThat(season.chances())
                .containsEntry("Ada", List.of(1.0, 0.0, 0.0))
                .containsEntry("Ben", List.of(0.0, 1.0, 0.0))
                .containsEntry("Cleo", List.of(0.0, 0.0, 1.0));
        assertThat(season.likeliest("Ben")).isEqualTo(2);
        assertThatThrownBy(() -> season.places("Dan")).hasMessage("Dan is not in the league");
    }

    @Test
    void theSameSeedGivesTheSameAnswer() {
        List<Remaining> matches = List.of(match("Ada", "Ben", 3));
        Map<String, List<List<Double>>> totals =
                Map.of("Ada", List.of(List.of(0.3, 0.7)), "Ben", List.of(List.of(0.4, 0.6)));
        assertThat(forecast(matches, totals)).isEqualTo(forecast(matches, totals));
    }

    @Test
    void refusesWhatItCannotThrow() {
        assertThatThrownBy(() -> SeasonForecast.of(
                        List.of("Ada"), List.of(match("Ada", "Ben", 1)), Ranking.of(WORTH, List.of()), Map.of(), 1, 0))
                .hasMessageContaining("Ben plays in a match but not in the league");
        assertThatThrownBy(() -> SeasonForecast.of(
                        List.of("Ada", "Ben"),
                        List.of(match("Ada", "Ben", 1)),
                        Ranking.of(WORTH, List.of()),
                        Map.of(),
                        1,
                        0))
                .hasMessage("nothing says what Ada may throw");
    }
}
