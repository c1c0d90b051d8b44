package boardside.engine.league.season;

import static boardside.engine.league.season.Made.games;
import static boardside.engine.league.season.Made.ids;
import static boardside.engine.league.season.Made.match;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.engine.ReferenceTable;
import boardside.engine.league.MatchResult.Award;
import boardside.engine.league.Schedule.Meetings;
import boardside.engine.league.Standings;
import boardside.engine.league.Standings.Reason;
import boardside.engine.league.TieBreak;
import boardside.engine.league.season.Entrant.Standing;
import boardside.engine.league.season.SeasonMatch.Said;
import boardside.engine.league.season.SeasonMatch.Stage;
import boardside.engine.league.season.SeasonMatch.State;
import boardside.engine.odds.LeaguePoints;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.LongStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class SeasonTest {
    /** Each division has the Berger tables of FIDE Handbook C.05, annex 1 (09-round-robin.csv), whoever throws first named first. */
    @Test
    void aDivisionPlaysTheBergerTables() {
        Season season = Made.season(8, 5);
        for (int division = 0; division < 2; division++) {
            int even = division == 0 ? 8 : 6;
            String letter = division == 0 ? "A" : "B";
            List<String> expected = new ArrayList<>();
            for (ReferenceTable.Row row : ReferenceTable.read("09-round-robin.csv")) {
                boolean bye = division == 1 && (row.whole("first") == 6 || row.whole("second") == 6);
                if (row.whole("players_even") == even && !bye) {
                    expected.add(row.whole("round") + ": " + letter + row.whole("first") + " v " + letter
                            + row.whole("second"));
                }
            }
            int of = division;
            assertThat(season.matches(Stage.LEAGUE).stream()
                            .filter(match -> match.division() == of)
                            .map(match -> match.week() + ": " + season.name(match.first()) + " v "
                                    + season.name(match.second())))
                    .containsExactlyElementsOf(expected);
        }
        assertThat(season.bye(1, 1).map(Entrant::name)).contains("B1");
        assertThat(season.bye(0, 1)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"SINGLE, 2", "SINGLE, 7", "SINGLE, 12", "SINGLE, 101", "DOUBLE, 2", "DOUBLE, 9", "DOUBLE, 16"})
    void everyPairMeetsAsOftenAsItShouldAndNobodyTwiceAWeek(Meetings meetings, int players) {
        Season season = Made.season(Made.rules(meetings, 0), new Weeks(Made.STARTS, Made.ZONE), players, players + 1);
        Map<Set<String>, Integer> met = new HashMap<>();
        Map<Integer, Set<String>> busy = new HashMap<>();
        for (SeasonMatch match : season.matches()) {
            met.merge(Set.of(match.first(), match.second()), 1, Integer::sum);
            Set<String> week = busy.computeIfAbsent(match.week(), number -> new HashSet<>());
            assertThat(week.add(match.first()) && week.add(match.second())).isTrue();
        }
        assertThat(met.values()).containsOnly(meetings == Meetings.SINGLE ? 1 : 2);
        assertThat(met).hasSize(players * (players - 1) / 2 + (players + 1) * players / 2);
    }

    static LongStream seeds() {
        return LongStream.range(9_200, 9_240);
    }

    /** The same results in any order, typed in whatever zone the season is in, make the same tables. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theOrderOfResultsAndTheTimeZoneNeverMatter(long seed) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        int[] sizes = {2 + random.nextInt(6), 2 + random.nextInt(6)};
        List<String> zones = List.of("Europe/Berlin", "America/Chicago", "Pacific/Apia", "Australia/Lord_Howe");
        List<List<Standings>> tables = new ArrayList<>();
        Map<String, List<GameScore>> results = new HashMap<>();
        Map<String, Award> forfeits = new HashMap<>();
        for (int time = 0; time < 4; time++) {
            Season season = Made.season(
                    new SeasonRules(
                            3, 10, LeaguePoints.STANDARD, List.of(TieBreak.values()), Meetings.DOUBLE, 2, false),
                    new Weeks(Made.STARTS, ZoneId.of(zones.get(time))),
                    sizes);
            List<String> order = new ArrayList<>(
                    season.matches().stream().map(SeasonMatch::id).toList());
            Collections.shuffle(order, new Random(random.nextLong()));
            for (String match : order) {
                List<GameScore> games = results.computeIfAbsent(
                        match, id -> Made.anyGames(Made.season(2).rules(), random));
                Award award =
                        forfeits.computeIfAbsent(match, id -> Award.values()[random.nextInt(Award.values().length)]);
                boolean forfeited = match.hashCode() % 5 == 0;
                season = SeasonChanges.told(
                        season, match, forfeited ? games.subList(0, 2) : games, Voice.ORGANISER, ids("x"));
                season = forfeited ? SeasonChanges.forfeited(season, match, award, ids("x")) : season;
            }
            tables.add(List.of(season.table(0), season.table(1)));
        }
        assertThat(new HashSet<>(tables)).hasSize(1);
        for (Standings table : tables.get(0)) {
            for (int place = 1; place <= table.rows().size(); place++) {
                // The lot tells apart whom nothing else does.
                assertThat(table.rows().get(place - 1).place()).isEqualTo(place);
            }
        }
    }

    @Test
    void aMatchCountsOnceBothPlayersOrTheOrganiserSaySo() {
        Season season = Made.season(4);
        String id = match(season, "A1", "A4").id();
        season = SeasonChanges.told(season, id, games(80, null, 71, null), Voice.FIRST, ids("x"));
        assertThat(season.match(id).orElseThrow().state()).isEqualTo(State.OPEN);
        season = SeasonChanges.told(season, id, games(80, 75, 71, 80, 60, 60), Voice.FIRST, ids("x"));
        assertThat(season.match(id).orElseThrow().state()).isEqualTo(State.REPORTED);
        assertThat(season.table(0).rows()).allMatch(row -> row.record().games() == 0);
        // Saying so twice is saying so once.
        season = SeasonChanges.confirmed(season, id, Voice.FIRST, ids("x"));
        assertThat(season.match(id).orElseThrow().said()).isEqualTo(Said.FIRST);
        season = SeasonChanges.disputed(season, id, "game 2 was 81", ids("x"));
        assertThat(season.match(id).orElseThrow().state()).isEqualTo(State.DISPUTED);
        Season disputed = season;
        assertThatThrownBy(() -> SeasonChanges.confirmed(disputed, id, Voice.SECOND, ids("x")))
                .hasMessageContaining("the organiser decides");
        // New totals are to be agreed to anew.
        season = SeasonChanges.told(season, id, games(80, 75, 71, 81, 60, 60), Voice.SECOND, ids("x"));
        assertThat(season.match(id).orElseThrow().said()).isEqualTo(Said.SECOND);
        season = SeasonChanges.confirmed(season, id, Voice.FIRST, ids("x"));
        assertThat(season.match(id).orElseThrow().state()).isEqualTo(State.CONFIRMED);
        assertThat(season.table(0).rows().get(0).record().points()).isEqualTo(3);
        Season settled = season;
        assertThatThrownBy(() -> SeasonChanges.told(settled, id, games(1, 1), Voice.FIRST, ids("x")))
                .hasMessageContaining("this match is settled");
        assertThatThrownBy(() -> SeasonChanges.disputed(settled, id, "", ids("x")))
                .hasMessageContaining("this match is settled");
        season = SeasonChanges.told(season, id, games(80, 75, 71, 81, 60, 61), Voice.ORGANISER, ids("x"));
        assertThat(season.match(id).orElseThrow().state()).isEqualTo(State.CONFIRMED);
    }

    @Test
    void theSameFromTheOtherSideIsAgreementAndFromTheSameSideNothing() {
        Season season = Made.season(4);
        String id = match(season, "A1", "A4").id();
        List<GameScore> totals = games(80, 75, 71, 80, 60, 60);
        season = SeasonChanges.told(season, id, totals, Voice.FIRST, ids("x"));
        season = SeasonChanges.told(season, id, totals, Voice.FIRST, ids("x"));
        assertThat(season.match(id).orElseThrow().state()).isEqualTo(State.REPORTED);
        season = SeasonChanges.told(season, id, totals, Voice.SECOND, ids("x"));
        assertThat(season.match(id).orElseThrow().state()).isEqualTo(State.CONFIRMED);
        Season settled = SeasonChanges.told(season, id, totals, Voice.FIRST, ids("x"));
        assertThat(settled.matches()).isEqualTo(season.matches());
        // Partial totals told again leave a forfeit as it is.
        String other = match(season, "A2", "A3").id();
        season = SeasonChanges.told(season, other, games(80, null), Voice.ORGANISER, ids("x"));
        season = SeasonChanges.forfeited(season, other, Award.FIRST, ids("x"));
        season = SeasonChanges.told(season, other, games(80, null), Voice.ORGANISER, ids("x"));
        assertThat(season.match(other).orElseThrow().state()).isEqualTo(State.FORFEITED);
    }

    @Test
    void totalsThatCannotBeThrownAreRefused() {
        Season season = Made.season(2);
        String id = season.matches().get(0).id();
        for (int total : new int[] {-1, 119, 121}) {
            assertThatThrownBy(() -> SeasonChanges.told(season, id, games(80, total), Voice.ORGANISER, ids("x")))
                    .hasMessage("game 1: 10 rounds give 0 to 120 points (all but 119), not " + total);
        }
        assertThatThrownBy(
                        () -> SeasonChanges.told(season, id, games(1, 1, 1, 1, 1, 1, 1, 1), Voice.ORGANISER, ids("x")))
                .hasMessage("a match of this season has 3 games, not 4");
    }

    /** What was thrown counts; the rest is worth wins to the other, and nothing to whoever forfeits. */
    @Test
    void aForfeitGivesAwayOnlyWhatWasNotThrown() {
        Season season = Made.season(2);
        SeasonMatch match = season.matches().get(0);
        season = SeasonChanges.told(season, match.id(), games(80, 75, 71, null), Voice.ORGANISER, ids("x"));
        season = SeasonChanges.forfeited(season, match.id(), Award.FIRST, ids("x"));
        Standings table = season.table(0);
        assertThat(table.rows().get(0).record()).isEqualTo(new Standings.Played(3, 3, 0, 0, 6, 80, 75, 1, 0));
        assertThat(table.rows().get(1).record()).isEqualTo(new Standings.Played(3, 0, 0, 3, 0, 75, 80, 0, 2));
        season = SeasonChanges.reopened(season, match.id(), ids("x"));
        season = SeasonChanges.forfeited(season, match.id(), Award.NEITHER, ids("x"));
        assertThat(season.table(0).rows())
                .extracting(row -> row.record().forfeits())
                .containsExactly(2, 2);
    }

    @Test
    void tieBreaksAreAskedInTheOrderChosen() {
        for (List<TieBreak> order : List.of(
                List.of(TieBreak.HEAD_TO_HEAD, TieBreak.THROWN), List.of(TieBreak.THROWN, TieBreak.HEAD_TO_HEAD))) {
            Season season = Made.season(
                    new SeasonRules(1, 10, LeaguePoints.STANDARD, order, Meetings.SINGLE, 0, false),
                    new Weeks(Made.STARTS, Made.ZONE),
                    4);
            // A1 and A2 have four points each: A1 won their game, A2 threw far more.
            season = Made.told(season, "A1", "A2", 50, 49);
            season = Made.told(season, "A2", "A3", 100, 40);
            season = Made.told(season, "A2", "A4", 50, 10);
            season = Made.told(season, "A1", "A4", 50, 10);
            season = Made.told(season, "A3", "A1", 41, 40);
            season = Made.told(season, "A4", "A3", 20, 10);
            boolean thrown = order.get(0) == TieBreak.THROWN;
            Standings.Row second = season.table(0).rows().get(1);
            assertThat(second.player()).isEqualTo(thrown ? "A1" : "A2");
            assertThat(second.reason())
                    .isEqualTo(
                            thrown
                                    ? new Reason.Broken(TieBreak.THROWN, 199, 140)
                                    : new Reason.Broken(TieBreak.HEAD_TO_HEAD, 2, 0));
        }
    }

    @Test
    void whomNothingTellsApartIsPutInOrderByLot() {
        Season season = Made.season(6);
        List<String> order =
                season.table(0).rows().stream().map(Standings.Row::player).toList();
        assertThat(season.table(0).rows().subList(1, 6)).allMatch(row -> row.reason() instanceof Reason.Lot);
        // The same whatever happens in between, such as somebody's new name.
        Season renamed = SeasonChanges.renamed(season, "eA3", "Zoe");
        assertThat(renamed.table(0).rows())
                .extracting(Standings.Row::player)
                .containsExactlyElementsOf(order.stream()
                        .map(name -> name.equals("A3") ? "Zoe" : name)
                        .toList());
    }

    /** A head start decides who wins, and is nobody's points thrown. */
    @Test
    void aHeadStartDecidesGamesOnly() {
        Season season = Made.season(2);
        String id = season.matches().get(0).id();
        season = SeasonChanges.headStart(season, id, -8, ids("x"));
        season = SeasonChanges.told(season, id, games(80, 75, 80, 72, 80, 70), Voice.ORGANISER, ids("x"));
        assertThat(season.table(0).rows())
                .extracting(Standings.Row::record)
                .containsExactly(
                        new Standings.Played(3, 1, 1, 1, 3, 240, 217, 0, 0),
                        new Standings.Played(3, 1, 1, 1, 3, 217, 240, 0, 0));
    }

    /** FIDE Tournament Rules (2011), 06 V.4: with fewer than half the games, points by and against do not count. */
    @Test
    void whoLeavesBeforeHalfIsStruckAndCountsForNobody() {
        Season season = Made.season(6);
        season = Made.told(season, "A1", "A6", 90, 60, 90, 60, 90, 60);
        season = Made.told(season, "A1", "A2", 60, 90, 60, 90, 60, 90);
        season = SeasonChanges.left(season, "eA1", ids("x"));
        assertThat(season.entrant("eA1").orElseThrow().standing()).isEqualTo(Standing.STRUCK);
        assertThat(season.table(0).rows())
                .hasSize(5)
                .allMatch(row -> row.record().games() == 0);
        Season struck = season;
        assertThat(season.waiting(Instant.parse("2027-01-01T00:00:00Z")))
                .noneMatch(one -> one.match().has("eA1"));
        assertThatThrownBy(() -> Made.told(struck, "A1", "A3", 1, 2)).hasMessageContaining("A1 left the season");
    }

    /** The same rules: with half the games or more, they count, and the others win what is left. */
    @Test
    void whoLeavesAfterHalfForfeitsTheRest() {
        Season season = Made.season(5);
        season = Made.told(season, "A1", "A2", 90, 60, 90, 60, 90, 60);
        season = Made.told(season, "A1", "A3", 60, 90, 60, 90, 60, 90);
        season = SeasonChanges.left(season, "eA1", ids("x"));
        assertThat(season.entrant("eA1").orElseThrow().standing()).isEqualTo(Standing.LEFT);
        Map<String, Integer> points = new HashMap<>();
        season.table(0)
                .rows()
                .forEach(row -> points.put(row.player(), row.record().points()));
        assertThat(points).isEqualTo(Map.of("A1", 6, "A2", 0, "A3", 6, "A4", 6, "A5", 6));
        assertThat(season.table(0).rows())
                .filteredOn(row -> row.player().equals("A1"))
                .allMatch(row -> row.record().forfeits() == 6);
    }

    @Test
    void whoComesLateFillsTheBye() {
        Season season = Made.season(5);
        Instant secondWeek = Instant.parse("2026-10-14T12:00:00Z");
        Season joined = SeasonChanges.joined(season, 0, "Late", null, secondWeek, ids("late"));
        assertThat(joined.matches()).hasSize(15);
        Set<Set<String>> met = new HashSet<>();
        joined.matches()
                .forEach(match -> assertThat(met.add(Set.of(match.first(), match.second())))
                        .isTrue());
        Map<Integer, Set<String>> busy = new HashMap<>();
        for (SeasonMatch match : joined.matches()) {
            Set<String> week = busy.computeIfAbsent(match.week(), number -> new HashSet<>());
            assertThat(week.add(match.first()) && week.add(match.second())).isTrue();
            boolean missed = match.week() == 1 && match.has("late1");
            assertThat(match.extended()).isEqualTo(missed ? LocalDateTime.parse("2026-11-09T00:00") : null);
        }
        assertThatThrownBy(() -> SeasonChanges.joined(joined, 0, "Later", null, secondWeek, ids("x")))
                .hasMessageContaining("an even number of players");
    }

    @Test
    void weeksOverlapOnlyByAnExtension() {
        Season season = Made.season(4);
        SeasonMatch match = match(season, "A1", "A4");
        assertThat(season.window(match)).isEqualTo(season.weeks().window(1));
        assertThatThrownBy(() ->
                        SeasonChanges.extended(season, match.id(), LocalDateTime.parse("2026-10-12T00:00"), ids("x")))
                .hasMessageContaining("closes at 2026-10-12T00:00");
        Season later = SeasonChanges.extended(season, match.id(), LocalDateTime.parse("2026-10-14T21:00"), ids("x"));
        assertThat(later.window(later.match(match.id()).orElseThrow()).closes())
                .isEqualTo(Instant.parse("2026-10-14T19:00:00Z"));
        assertThat(later.waiting(Instant.parse("2026-10-13T10:00:00Z"))).hasSize(8);
    }

    @Test
    void namesAreToldApartWithoutCapitals() {
        Season season = Made.season(3);
        assertThatThrownBy(() -> SeasonChanges.renamed(season, "eA1", " a2"))
                .hasMessageContaining("is in the season twice");
    }
}
