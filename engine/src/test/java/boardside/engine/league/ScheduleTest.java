package boardside.engine.league;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.engine.ReferenceTable;
import boardside.engine.league.Schedule.Meetings;
import boardside.engine.league.Schedule.Pairing;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class ScheduleTest {
    /** FIDE Handbook C.05, annex 1: the Berger tables (09-round-robin.csv). */
    @Test
    void isThatOfTheBergerTables() {
        Map<Integer, Map<Integer, List<Pairing>>> tables = new TreeMap<>();
        for (ReferenceTable.Row row : ReferenceTable.read("09-round-robin.csv")) {
            tables.computeIfAbsent(row.whole("players_even"), n -> new TreeMap<>())
                    .computeIfAbsent(row.whole("round"), round -> new ArrayList<>())
                    .add(new Pairing(row.whole("first"), row.whole("second")));
        }
        assertThat(tables.keySet()).contains(4, 6, 8, 10, 12, 14, 16);
        tables.forEach((players, rounds) -> {
            assertThat(Schedule.of(players, Meetings.SINGLE).weeks())
                    .as("%s players", players)
                    .containsExactlyElementsOf(rounds.values());
            List<List<Pairing>> odd = rounds.values().stream()
                    .map(round -> round.stream()
                            .filter(pair -> pair.first() != players && pair.second() != players)
                            .toList())
                    .toList();
            assertThat(Schedule.of(players - 1, Meetings.SINGLE).weeks())
                    .as("%s players", players - 1)
                    .containsExactlyElementsOf(odd);
        });
    }

    static IntStream sizes() {
        return IntStream.concat(IntStream.rangeClosed(2, 40), IntStream.of(99, 100, 499, 500));
    }

    @ParameterizedTest
    @MethodSource("sizes")
    void everyPairMeetsOnceAndNobodyPlaysTwiceAWeek(int players) {
        Schedule schedule = Schedule.of(players, Meetings.SINGLE);
        Map<Set<Integer>, Integer> met = new HashMap<>();
        int[] byes = new int[players + 1];
        for (int week = 1; week <= schedule.weeks().size(); week++) {
            Set<Integer> plays = new HashSet<>();
            for (Pairing pair : schedule.weeks().get(week - 1)) {
                assertThat(plays.add(pair.first()) && plays.add(pair.second()))
                        .as("week %s", week)
                        .isTrue();
                met.merge(Set.of(pair.first(), pair.second()), 1, Integer::sum);
            }
            int bye = schedule.bye(week);
            assertThat(plays).doesNotContain(bye).hasSize(bye == 0 ? players : players - 1);
            byes[bye]++;
        }
        assertThat(met).hasSize(players * (players - 1) / 2);
        assertThat(met.values()).containsOnly(1);
        if (players % 2 == 1) {
            assertThat(IntStream.rangeClosed(1, players).map(player -> byes[player]))
                    .containsOnly(1);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3, 7, 8, 15})
    void throwsFirstOnceEachWhereTheyMeetTwice(int players) {
        Set<Pairing> pairings = new HashSet<>();
        Schedule.of(players, Meetings.DOUBLE)
                .weeks()
                .forEach(week -> week.forEach(
                        pair -> assertThat(pairings.add(pair)).as("%s", pair).isTrue()));
        assertThat(pairings).hasSize(players * (players - 1));
    }

    @ParameterizedTest
    @ValueSource(ints = {-1, 0, 1, 501})
    void refusesOtherNumbers(int players) {
        assertThatThrownBy(() -> Schedule.of(players, Meetings.SINGLE))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("a league has 2 to 500 players, not " + players);
    }
}
