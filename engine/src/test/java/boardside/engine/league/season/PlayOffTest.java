package boardside.engine.league.season;

import static boardside.engine.league.season.Made.games;
import static boardside.engine.league.season.Made.ids;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.engine.ReferenceTable;
import boardside.engine.league.Bracket;
import boardside.engine.league.Schedule.Meetings;
import boardside.engine.league.Standings;
import boardside.engine.league.season.SeasonMatch.Stage;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class PlayOffTest {
    private static Season settled(int players, int qualifiers, long seed) {
        Season season =
                Made.season(Made.rules(Meetings.SINGLE, qualifiers), new Weeks(Made.STARTS, Made.ZONE), players);
        return Made.allTold(season, RandomSource.XO_RO_SHI_RO_128_PP.create(seed), ids("x"));
    }

    private static List<SeasonMatch> round(Season season, int round) {
        return season.matches(Stage.PLAY_OFF).stream()
                .filter(match -> match.week() == round)
                .toList();
    }

    static List<ReferenceTable.Row> byes() {
        return ReferenceTable.read("09-byes.csv");
    }

    /** Who meets whom in the first round, and who has a bye, for any number of entrants (09-byes.csv). */
    @ParameterizedTest
    @MethodSource("byes")
    void isSeededAsIsStandard(ReferenceTable.Row row) {
        int entrants = row.whole("entrants");
        Season season = SeasonChanges.playOff(settled(entrants, entrants, entrants), null, ids("p"));
        assertThat(round(season, 1).stream()
                        .map(match -> season.entrant(match.first())
                                        .orElseThrow()
                                        .seed() + "-"
                                + season.entrant(match.second()).orElseThrow().seed())
                        .collect(Collectors.joining(" ")))
                .isEqualTo(row.text("first_round_matches"));
        // Seeds are places of the table.
        List<Standings.Row> table = season.table(0).rows();
        for (Entrant entrant : season.entrants()) {
            assertThat(table.get(entrant.seed() - 1).player()).isEqualTo(entrant.name());
        }
    }

    @Test
    void sixtyFourAreSeededByTheSameRule() {
        Season season = SeasonChanges.playOff(settled(64, 64, 64), null, ids("p"));
        List<Integer> order = new ArrayList<>();
        for (SeasonMatch match : round(season, 1)) {
            int first = season.entrant(match.first()).orElseThrow().seed();
            int second = season.entrant(match.second()).orElseThrow().seed();
            assertThat(first + second).isEqualTo(65);
            order.add(first);
        }
        assertThat(order).startsWith(1, 32, 16, 17, 8).doesNotHaveDuplicates().hasSize(32);
    }

    @Test
    void isPlayedToTheEndRoundByRound() {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(9_300);
        Supplier<String> ids = ids("p");
        Season season = SeasonChanges.playOff(settled(11, 11, 11), null, ids);
        // The round robin ends with its eleventh week; each round has a week of its own.
        assertThat(season.playOffStarts()).isEqualTo(LocalDateTime.parse("2026-12-21T00:00"));
        assertThat(season.window(round(season, 1).get(0)).closes()).isEqualTo(Instant.parse("2026-12-27T23:00:00Z"));
        Season end = Made.allTold(season, random, ids);
        assertThat(end.matches(Stage.PLAY_OFF)).hasSize(10).allMatch(SeasonMatch::fixed);
        assertThat(end.matches(Stage.PLAY_OFF).stream().map(SeasonMatch::id)).doesNotHaveDuplicates();
        Bracket bracket = PlayOff.bracket(end).orElseThrow();
        SeasonMatch last = round(end, 4).get(0);
        assertThat(bracket.champion())
                .contains(end.entrant(PlayOff.winner(end, last)).orElseThrow().seed());
        assertThat(end.waiting(Instant.MAX)).isEmpty();
    }

    @Test
    void aResultToldAnewTakesBackWhatFollowedFromIt() {
        Supplier<String> ids = ids("p");
        Season season = SeasonChanges.playOff(settled(4, 4, 4), null, ids);
        for (SeasonMatch match : round(season, 1)) {
            season = SeasonChanges.told(season, match.id(), games(90, 60, 90, 60, 90, 60), Voice.ORGANISER, ids);
        }
        SeasonMatch last = round(season, 2).get(0);
        season = SeasonChanges.told(season, last.id(), games(80, 70, 80, 70, 80, 70), Voice.ORGANISER, ids);
        assertThat(PlayOff.bracket(season).orElseThrow().champion()).contains(1);
        SeasonMatch semi = round(season, 1).get(0);
        Season same = SeasonChanges.told(season, semi.id(), games(91, 60, 90, 60, 90, 60), Voice.ORGANISER, ids);
        assertThat(same.match(last.id()).orElseThrow().fixed()).isTrue();
        Season other = SeasonChanges.told(season, semi.id(), games(60, 90, 60, 90, 60, 90), Voice.ORGANISER, ids);
        SeasonMatch again = other.match(last.id()).orElseThrow();
        assertThat(again.fixed()).isFalse();
        assertThat(again.has(semi.second())).isTrue();
        assertThat(again.games()).isEmpty();
        // Open again, the final has not two players any more.
        Season open = SeasonChanges.reopened(season, semi.id(), ids);
        assertThat(round(open, 2)).isEmpty();
    }

    @Test
    void aMatchThatIsEqualGoesByPointsThrownAndThenToTheBetterSeed() {
        Season season = SeasonChanges.playOff(settled(2, 2, 2), null, ids("p"));
        String last = round(season, 1).get(0).id();
        Season thrown = SeasonChanges.told(season, last, games(80, 90, 80, 70, 70, 70), Voice.ORGANISER, ids("p"));
        assertThat(PlayOff.winner(thrown, thrown.match(last).orElseThrow()))
                .isEqualTo(round(season, 1).get(0).first());
        Season more = SeasonChanges.told(season, last, games(80, 91, 80, 70, 70, 70), Voice.ORGANISER, ids("p"));
        assertThat(PlayOff.winner(more, more.match(last).orElseThrow()))
                .isEqualTo(round(season, 1).get(0).second());
    }

    @Test
    void divisionsSendTheirBestAndPlacesComeFirst() {
        Season season = Made.season(Made.rules(Meetings.SINGLE, 2), new Weeks(Made.STARTS, Made.ZONE), 4, 5);
        season = Made.allTold(season, RandomSource.XO_RO_SHI_RO_128_PP.create(9_400), ids("x"));
        Season done = SeasonChanges.playOff(season, LocalDateTime.parse("2026-12-01T18:00"), ids("p"));
        assertThat(done.playOffStarts()).isEqualTo(LocalDateTime.parse("2026-12-01T18:00"));
        for (int division = 0; division < 2; division++) {
            for (int place = 1; place <= 2; place++) {
                String name = done.table(division).rows().get(place - 1).player();
                assertThat(done.named(name).orElseThrow().seed()).isBetween(2 * place - 1, 2 * place);
            }
        }
        // Whoever left does not go: the next one does.
        String best = season.table(0).rows().get(0).player();
        Season left =
                SeasonChanges.left(season, season.named(best).orElseThrow().id(), ids("x"));
        assertThat(PlayOff.seeds(left)).extracting(Entrant::name).hasSize(4).doesNotContain(best);
    }

    @Test
    void isRefusedWhileMatchesAreOpen() {
        Season season = Made.season(3);
        assertThatThrownBy(() -> SeasonChanges.playOff(season, null, ids("p")))
                .hasMessageContaining("3 matches are not settled yet");
        Season done = SeasonChanges.playOff(settled(3, 3, 3), null, ids("p"));
        String early = done.matches(Stage.LEAGUE).get(0).id();
        assertThatThrownBy(() -> SeasonChanges.reopened(done, early, ids("p")))
                .hasMessageContaining("the play-off has begun");
        assertThatThrownBy(() -> SeasonChanges.playOff(done, null, ids("p"))).hasMessageContaining("already");
    }

    @Test
    void whoLeavesThePlayOffForfeits() {
        Supplier<String> ids = ids("p");
        Season season = SeasonChanges.playOff(settled(4, 4, 5), null, ids);
        SeasonMatch semi = round(season, 1).get(0);
        Season left = SeasonChanges.left(season, semi.first(), ids);
        assertThat(PlayOff.winner(left, left.match(semi.id()).orElseThrow())).isEqualTo(semi.second());
        assertThat(left.entrant(semi.first()).orElseThrow().standing()).isEqualTo(Entrant.Standing.LEFT);
    }
}
