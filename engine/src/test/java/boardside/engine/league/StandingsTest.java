package boardside.engine.league;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.engine.league.Standings.Reason;
import boardside.engine.league.Standings.Row;
import boardside.engine.odds.LeaguePoints;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.LongStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class StandingsTest {
    private static final LeaguePoints FOOTBALL = new LeaguePoints(3, 1, 0);

    private static MatchResult game(String first, String second, int mine, int theirs) {
        return new MatchResult(first, second, List.of(new GameTotals(mine, theirs)));
    }

    private static List<String> places(Standings table) {
        return table.rows().stream()
                .map(row -> row.place() + " " + row.player())
                .toList();
    }

    /**
     * Results and final table of group C of the football World Cup of 2010, recalled from memory of the published table:
     * the United States above England by goals scored, points and difference being equal.
     */
    @Test
    void aPublishedTableDecidedByWhatWasScored() {
        Standings table = Standings.of(
                Set.of(),
                List.of(
                        game("England", "United States", 1, 1),
                        game("Algeria", "Slovenia", 0, 1),
                        game("Slovenia", "United States", 2, 2),
                        game("England", "Algeria", 0, 0),
                        game("Slovenia", "England", 0, 1),
                        game("United States", "Algeria", 1, 0)),
                Ranking.of(FOOTBALL, List.of(TieBreak.DIFFERENCE, TieBreak.THROWN)));
        assertThat(places(table)).containsExactly("1 United States", "2 England", "3 Slovenia", "4 Algeria");
        assertThat(table.rows()).extracting(row -> row.record().points()).containsExactly(5, 5, 4, 1);
        assertThat(table.rows().get(0).record()).isEqualTo(new Standings.Played(3, 1, 2, 0, 5, 4, 3, 1, 0));
        assertThat(table.rows())
                .extracting(Row::reason)
                .containsExactly(
                        new Reason.Top(),
                        new Reason.Broken(TieBreak.THROWN, 4, 2),
                        new Reason.Points(5, 4),
                        new Reason.Points(4, 1));
    }

    /**
     * Results and final table of group C of the European football championship of 2004, recalled from memory of the
     * published table: three sides with five points, all draws among them.
     */
    @Test
    void aPublishedTableOfThreeEqualSides() {
        Standings table = Standings.of(
                Set.of(),
                List.of(
                        game("Denmark", "Italy", 0, 0),
                        game("Sweden", "Bulgaria", 5, 0),
                        game("Bulgaria", "Denmark", 0, 2),
                        game("Italy", "Sweden", 1, 1),
                        game("Italy", "Bulgaria", 2, 1),
                        game("Denmark", "Sweden", 2, 2)),
                Ranking.of(FOOTBALL, TieBreak.USUAL));
        assertThat(places(table)).containsExactly("1 Sweden", "2 Denmark", "3 Italy", "4 Bulgaria");
        assertThat(table.rows().get(1).reason()).isEqualTo(new Reason.Broken(TieBreak.DIFFERENCE, 5, 2));
    }

    @Test
    void headToHeadCountsOnlyGamesAmongThoseWhoAreEqual() {
        List<MatchResult> results = List.of(
                game("Ash", "Bea", 80, 90),
                game("Ash", "Cal", 120, 10),
                game("Bea", "Cal", 70, 80),
                game("Cal", "Dot", 60, 70),
                game("Dot", "Ash", 50, 60),
                game("Dot", "Bea", 50, 60));
        Standings table = Standings.of(Set.of(), results, Ranking.of(LeaguePoints.STANDARD, TieBreak.USUAL));
        // Ash and Bea have four league points each; Bea won their game, though Ash threw far more.
        assertThat(places(table)).containsExactly("1 Bea", "2 Ash", "3 Dot", "4 Cal");
        assertThat(table.rows().get(1).reason()).isEqualTo(new Reason.Broken(TieBreak.HEAD_TO_HEAD, 2, 0));
        // Cal beat Bea, Dot beat Cal: two points each, and Dot won their game.
        assertThat(table.rows().get(3).reason()).isEqualTo(new Reason.Broken(TieBreak.HEAD_TO_HEAD, 2, 0));
    }

    @Test
    void whomNothingTellsApartSharesThePlace() {
        Standings table = Standings.of(
                Set.of("Eve"),
                List.of(game("Ash", "Bea", 50, 50), game("Cal", "Dot", 40, 30)),
                Ranking.of(LeaguePoints.STANDARD, TieBreak.USUAL));
        assertThat(places(table)).containsExactly("1 Cal", "2 Ash", "2 Bea", "4 Eve", "5 Dot");
        assertThat(table.rows().get(2).reason()).isEqualTo(new Reason.Level());
        assertThat(table.rows().get(4).reason()).isEqualTo(new Reason.Broken(TieBreak.DIFFERENCE, 0, -10));
    }

    static LongStream seeds() {
        return LongStream.range(7_100, 7_160);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theOrderOfResultsNeverMatters(long seed) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        List<MatchResult> results = season(random);
        LeaguePoints worth = random.nextBoolean() ? LeaguePoints.STANDARD : FOOTBALL;
        Standings table = Standings.of(Set.of("p0"), results, Ranking.of(worth, TieBreak.USUAL));
        for (int i = 0; i < 5; i++) {
            List<MatchResult> shuffled = new ArrayList<>();
            for (MatchResult result : results) {
                boolean turn = random.nextBoolean();
                List<GameTotals> games = new ArrayList<>(result.games());
                Collections.shuffle(games, new Random(random.nextLong()));
                shuffled.add(
                        turn
                                ? new MatchResult(
                                        result.second(),
                                        result.first(),
                                        games.stream().map(GameTotals::turned).toList())
                                : new MatchResult(result.first(), result.second(), games));
            }
            Collections.shuffle(shuffled, new Random(random.nextLong()));
            assertThat(Standings.of(Set.of("p0"), shuffled, Ranking.of(worth, TieBreak.USUAL)))
                    .isEqualTo(table);
        }
        sumsFit(table, results, worth);
    }

    private static void sumsFit(Standings table, List<MatchResult> results, LeaguePoints worth) {
        int games = results.stream().mapToInt(result -> result.games().size()).sum();
        int handedOut = results.stream()
                .flatMap(result -> result.games().stream())
                .mapToInt(game -> game.points(worth) + game.turned().points(worth))
                .sum();
        assertThat(table.rows().stream().mapToInt(row -> row.record().games()).sum())
                .isEqualTo(2 * games);
        assertThat(table.rows().stream().mapToInt(row -> row.record().points()).sum())
                .isEqualTo(handedOut);
        assertThat(table.rows().stream()
                        .mapToInt(row -> row.record().difference())
                        .sum())
                .isZero();
        Row above = null;
        for (Row row : table.rows()) {
            if (above != null) {
                assertThat(row.record().points())
                        .isLessThanOrEqualTo(above.record().points());
                boolean same = row.place() == above.place();
                assertThat(row.reason() instanceof Reason.Level).isEqualTo(same);
            }
            above = row;
        }
    }

    /** A league of few players and small totals, so that ties abound. */
    private static List<MatchResult> season(UniformRandomProvider random) {
        int players = 2 + random.nextInt(6);
        List<MatchResult> results = new ArrayList<>();
        for (int first = 0; first < players; first++) {
            for (int second = first + 1; second < players; second++) {
                List<GameTotals> games = new ArrayList<>();
                for (int game = random.nextInt(4); game > 0; game--) {
                    games.add(new GameTotals(random.nextInt(3), random.nextInt(3)));
                }
                results.add(new MatchResult("p" + first, "p" + second, games));
            }
        }
        return results;
    }

    @Test
    void refusesMatchesAgainstOneself() {
        assertThatThrownBy(() -> new MatchResult("Ash", "Ash", List.of()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("between two players");
        assertThatThrownBy(() -> new GameTotals(-1, 3)).isInstanceOf(IllegalArgumentException.class);
    }
}
