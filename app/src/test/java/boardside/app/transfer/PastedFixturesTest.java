package boardside.app.transfer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.app.practice.Failure;
import boardside.app.practice.Fixture.Totals;
import boardside.app.record.Posted;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class PastedFixturesTest {
    private static final LocalDate TODAY = LocalDate.parse("2026-11-25");

    private static List<Posted> read(String text) {
        return PastedFixtures.read(text, TODAY);
    }

    private static Totals totals(int first, int second) {
        return new Totals(first, second);
    }

    @Test
    void aWeekAsSomebodyPostsIt() {
        List<Posted> read = read("""
                *** Tuesday Post, fixtures ***
                # thrown from home

                Week 3 (due Sun 29 Nov, 9 pm)
                ---
                1. Ash Moor v Bea Lind
                2) Cy Holt vs. Di-Ann Oak   88-92, 101-75  90 : 90
                - Eve\u2013Lou | Flo
                Gus: bye
                Week 4, due 2026-12-06
                Ash Moor - Cy Holt: 88\u201392
                Bea Lind 71-? Flo
                """.replace("*** Tuesday Post, fixtures ***", "========"));
        assertThat(read)
                .containsExactly(
                        new Posted(3, "Ash Moor", "Bea Lind", "2026-11-29T21:00", List.of()),
                        new Posted(
                                3,
                                "Cy Holt",
                                "Di-Ann Oak",
                                "2026-11-29T21:00",
                                List.of(totals(88, 92), totals(101, 75), totals(90, 90))),
                        new Posted(3, "Eve\u2013Lou", "Flo", "2026-11-29T21:00", List.of()),
                        new Posted(4, "Ash Moor", "Cy Holt", "2026-12-06T23:59", List.of(totals(88, 92))),
                        new Posted(4, "Bea Lind", "Flo", "2026-12-06T23:59", List.of(new Totals(71, null))));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            due 2026-11-29 23:59           | 2026-11-29T23:59
            deadline: 29 Nov 2026          | 2026-11-29T23:59
            by Nov 29th, 2026 at 8:30 pm   | 2026-11-29T20:30
            until 29.11.2026 18:00         | 2026-11-29T18:00
            until 29.11.                   | 2026-11-29T23:59
            due Sunday, 3 January 12 am    | 2027-01-03T00:00
            ends Wednesday 1 July          | 2026-07-01T23:59
            throw by Sat 28 Nov, midnight  | 2026-11-28T23:59
            """)
    void deadlinesInManyHands(String written, String meant) {
        assertThat(read("Ash v Bea (" + written + ")")).containsExactly(new Posted(0, "Ash", "Bea", meant, List.of()));
        assertThat(read(written + "\nAsh v Bea")).containsExactly(new Posted(0, "Ash", "Bea", meant, List.of()));
    }

    @Test
    void aDeadlineOfOneLineIsNotThatOfTheNext() {
        assertThat(read("Ash v Bea, due 2026-11-29\nCy v Di"))
                .containsExactly(
                        new Posted(0, "Ash", "Bea", "2026-11-29T23:59", List.of()),
                        new Posted(0, "Cy", "Di", null, List.of()));
    }

    @Test
    void everyFaultIsNamedByItsLine() {
        assertThatThrownBy(() -> read("Week 1\nAsh plays Bea\nCy v Di\nEve v Flo due 03/04/2026\nGus v Hal due 31 Feb"))
                .isInstanceOf(Failure.BadInput.class)
                .satisfies(failure -> assertThat(((Failure) failure).faults())
                        .satisfiesExactly(
                                fault -> assertThat(fault)
                                        .isEqualTo("line 2: there are no two names in \"Ash plays Bea\"; write it like:"
                                                + " Ash v Bea, or with totals: Ash v Bea 88-92, 75-80"),
                                fault -> assertThat(fault).startsWith("line 4: \"03/04/2026\" may be one of two days"),
                                fault -> assertThat(fault).startsWith("line 5: \"due 31 Feb\" is no day there is")));
        assertThatThrownBy(() -> read("\n\n")).hasMessageContaining("there is no fixture in this text");
        assertThatThrownBy(() -> read("Ash v ash")).hasMessageContaining("line 1");
        assertThatThrownBy(() -> read("Ash v Bea deadline next Sunday")).hasMessageContaining("cannot be read");
    }

    @ParameterizedTest
    @ValueSource(strings = {"v", "vs", "VS.", "versus", "-", "\u2013", "|", "\t"})
    void namesApartByAnyOfThese(String between) {
        assertThat(read("Ash Moor " + between + " Bea Lind"))
                .containsExactly(new Posted(0, "Ash Moor", "Bea Lind", null, List.of()));
    }

    static LongStream seeds() {
        return LongStream.range(7_500, 7_540);
    }

    /** Whatever week is written out, in whichever of the hands, is read back as it was. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void whatIsWrittenIsReadBack(long seed) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        List<String> names = List.of("Ash", "Bea L.", "Cy O'Holt", "Di-Ann", "Élise", "Team 2", "日本 Bob");
        StringBuilder text = new StringBuilder();
        List<Posted> meant = new ArrayList<>();
        for (int week = 1; week <= 3; week++) {
            boolean due = random.nextBoolean();
            text.append("WEEK ")
                    .append(week)
                    .append(due ? " due 2026-12-0" + week : "")
                    .append("\n\n");
            for (int line = random.nextInt(5); line >= 0; line--) {
                int first = random.nextInt(names.size());
                int second = (first + 1 + random.nextInt(names.size() - 1)) % names.size();
                List<Totals> games = new ArrayList<>();
                for (int game = random.nextInt(4); game > 0; game--) {
                    games.add(totals(random.nextInt(121), random.nextInt(121)));
                }
                text.append(List.of("", "- ", "1. ").get(random.nextInt(3)))
                        .append(names.get(first))
                        .append(List.of(" v ", " vs ", " - ", "\t").get(random.nextInt(4)))
                        .append(names.get(second))
                        .append(games.isEmpty() ? "" : List.of(": ", "  ", " (").get(random.nextInt(3)));
                String dash = List.of("-", ":", " \u2013 ").get(random.nextInt(3));
                text.append(String.join(
                                ", ",
                                games.stream()
                                        .map(game -> game.first() + dash + game.second())
                                        .toList()))
                        .append('\n');
                meant.add(new Posted(
                        week, names.get(first), names.get(second), due ? "2026-12-0" + week + "T23:59" : null, games));
            }
        }
        assertThat(read(text.toString())).as(text.toString()).isEqualTo(meant);
    }
}
