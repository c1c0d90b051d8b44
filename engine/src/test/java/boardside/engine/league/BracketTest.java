package boardside.engine.league;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.engine.ReferenceTable;
import boardside.engine.league.Bracket.Match;
import boardside.engine.league.Bracket.Place;
import boardside.engine.league.Bracket.Sides;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class BracketTest {
    /** The plain standard order (09-seeding.csv). */
    @Test
    void seedsInThePlainOrder() {
        Map<Integer, List<Integer>> orders = new TreeMap<>();
        for (ReferenceTable.Row row : ReferenceTable.read("09-seeding.csv")) {
            orders.computeIfAbsent(row.whole("bracket_size"), size -> new ArrayList<>())
                    .add(row.whole("seed_plain_order"));
        }
        assertThat(orders.keySet()).contains(4, 8, 16, 32);
        orders.forEach((size, order) -> assertThat(Bracket.order(size)).isEqualTo(order));
    }

    static List<ReferenceTable.Row> byes() {
        return ReferenceTable.read("09-byes.csv");
    }

    /** Byes and first-round matches by entrants (09-byes.csv). */
    @ParameterizedTest
    @MethodSource("byes")
    void givesByesToTheBestSeeds(ReferenceTable.Row row) {
        Bracket bracket = Bracket.of(row.whole("entrants"));
        assertThat(bracket.size()).isEqualTo(row.whole("bracket_size"));
        List<Match> first = bracket.matches(1);
        assertThat(first.stream()
                        .map(bracket::sides)
                        .map(sides -> seed(sides.upper()) + "-" + seed(sides.lower()))
                        .collect(Collectors.joining(" ")))
                .isEqualTo(row.text("first_round_matches"));
        List<Integer> playing = new ArrayList<>();
        first.forEach(match -> playing.addAll(List.of(
                seed(bracket.sides(match).upper()), seed(bracket.sides(match).lower()))));
        assertThat(IntStream.rangeClosed(1, bracket.entrants())
                        .filter(seed -> !playing.contains(seed))
                        .mapToObj(Integer::toString)
                        .collect(Collectors.joining(" ")))
                .isEqualTo(row.text("seeds_with_bye"));
        assertThat(IntStream.rangeClosed(1, bracket.rounds())
                        .map(round -> bracket.matches(round).size())
                        .sum())
                .isEqualTo(row.whole("matches_in_all"));
    }

    private static int seed(Place place) {
        return ((Place.Seed) place).seed();
    }

    /** The same rule for 64: the better half of the seeds meets the worse, adding up to 65, and 1 and 2 in the last only. */
    @Test
    void keepsTheBestApart() {
        for (int size = 2; size <= 64; size *= 2) {
            List<Integer> order = Bracket.order(size);
            for (int best = size; best >= 2; best /= 2) {
                int part = size / best;
                for (int i = 0; i < best; i++) {
                    assertThat(order.subList(i * part, (i + 1) * part).stream().filter(within(best)))
                            .as("the best %s of %s", best, size)
                            .hasSize(1);
                }
            }
        }
    }

    private static java.util.function.Predicate<Integer> within(int best) {
        return seed -> seed <= best;
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3, 5, 6, 11, 16, 24, 64, 100})
    void isPlayedToTheEndWhateverHappens(int entrants) {
        UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(20261125L + entrants);
        Bracket bracket = Bracket.of(entrants);
        int played = 0;
        while (bracket.champion().isEmpty()) {
            List<Match> ready = bracket.ready();
            Match match = ready.get(random.nextInt(ready.size()));
            Sides sides = bracket.sides(match);
            bracket = bracket.with(match, seed(random.nextBoolean() ? sides.upper() : sides.lower()));
            played++;
        }
        assertThat(played).isEqualTo(entrants - 1);
        assertThat(bracket.ready()).isEmpty();
    }

    @Test
    void takesBackWhatFollowedFromAResultToldAnew() {
        Bracket bracket =
                Bracket.of(4).with(new Match(1, 1), 1).with(new Match(1, 2), 3).with(new Match(2, 1), 1);
        assertThat(bracket.champion()).contains(1);
        Bracket again = bracket.with(new Match(1, 1), 4);
        assertThat(again.champion()).isEmpty();
        assertThat(again.ready()).containsExactly(new Match(2, 1));
        assertThat(again.sides(new Match(2, 1))).isEqualTo(new Sides(new Place.Seed(4), new Place.Seed(3)));
        assertThat(bracket.with(new Match(1, 1), 1)).isEqualTo(bracket);
    }

    @Test
    void refusesWinnersWhoDoNotPlay() {
        Bracket bracket = Bracket.of(6);
        assertThat(bracket.sides(new Match(2, 1)))
                .isEqualTo(new Sides(new Place.Seed(1), new Place.WinnerOf(new Match(1, 2))));
        for (Match match : List.of(new Match(1, 1), new Match(2, 1), new Match(3, 2), new Match(4, 1))) {
            assertThatThrownBy(() -> bracket.with(match, 1))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining(match.toString());
        }
        assertThatThrownBy(() -> Bracket.of(1)).hasMessage("a bracket has 2 to 1024 entrants, not 1");
    }
}
