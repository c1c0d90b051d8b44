package boardside.engine.league.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.LongStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class WeeksTest {
    private static Weeks weeks(String starts, String zone) {
        return new Weeks(LocalDateTime.parse(starts), ZoneId.of(zone));
    }

    /**
     * Clocks went back in the European Union on the last Sunday of October 2026 (the 25th) at 01:00 UTC (directive 2000/84/EC),
     * so that the week over it has 169 hours; they go forward on 28 March 2027.
     */
    @Test
    void aWeekInWhichTheClocksChangeIsAnHourLongerOrShorter() {
        Weeks weeks = weeks("2026-10-19T00:00", "Europe/Berlin");
        Window autumn = weeks.window(1);
        assertThat(autumn.opens()).isEqualTo(Instant.parse("2026-10-18T22:00:00Z"));
        assertThat(autumn.closes()).isEqualTo(Instant.parse("2026-10-25T23:00:00Z"));
        assertThat(Duration.between(autumn.opens(), autumn.closes())).hasHours(169);
        Window spring = weeks.window(23);
        assertThat(weeks.begins(23)).isEqualTo(LocalDateTime.parse("2027-03-22T00:00"));
        assertThat(Duration.between(spring.opens(), spring.closes())).hasHours(167);
    }

    /** In Chicago clocks went forward on 8 March 2026 at 2 in the morning (US Energy Policy Act of 2005): 02:30 never was. */
    @Test
    void aBeginningThatTheClocksSkipIsAfterTheGap() {
        Weeks weeks = weeks("2026-03-01T02:30", "America/Chicago");
        assertThat(weeks.window(2).opens()).isEqualTo(Instant.parse("2026-03-08T08:30:00Z"));
        assertThat(weeks.window(1).closes()).isEqualTo(weeks.window(2).opens());
        assertThat(weeks.local(weeks.window(2).opens())).isEqualTo(LocalDateTime.parse("2026-03-08T03:30"));
        // The next ones are at the old time again.
        assertThat(weeks.local(weeks.window(3).opens())).isEqualTo(LocalDateTime.parse("2026-03-15T02:30"));
    }

    static LongStream seeds() {
        return LongStream.range(9_100, 9_140);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void weeksNeitherOverlapNorLeaveAGapInAnyZone(long seed) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        List<String> zones = ZoneId.getAvailableZoneIds().stream().sorted().toList();
        Weeks weeks = new Weeks(
                LocalDateTime.parse("2026-01-01T00:00").plusMinutes(15L * random.nextInt(4 * 24 * 365)),
                ZoneId.of(zones.get(random.nextInt(zones.size()))));
        for (int week = 1; week <= 60; week++) {
            Window window = weeks.window(week);
            assertThat(window.closes())
                    .as("%s, week %s", weeks, week)
                    .isEqualTo(weeks.window(week + 1).opens());
            // No zone's clocks jump by more than three hours in these years.
            assertThat(Duration.between(window.opens(), window.closes()))
                    .isBetween(Duration.ofHours(165), Duration.ofHours(171));
            assertThat(weeks.at(window.opens())).isEqualTo(week);
            assertThat(weeks.at(window.closes().minusMillis(1))).isEqualTo(week);
        }
        assertThat(weeks.at(weeks.window(1).opens().minusMillis(1))).isZero();
    }
}
