package boardside.app.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class IdsTest {
    /** RFC 9562, appendix A.6: 2022-02-22T14:22:22-05:00 is 017F22E279B0 in the first 48 bits. */
    @Test
    void beginsWithTheMillisecond() {
        long millis = Moment.of("2022-02-22T14:22:22-05:00").millis();
        UUID id = UUID.fromString(new Ids(() -> Instant.ofEpochMilli(millis), new Random(1)).next());
        assertThat(id.toString()).startsWith("017f22e2-79b0-7");
        assertThat(id.version()).isEqualTo(7);
        assertThat(id.variant()).isEqualTo(2);
    }

    @Test
    void sortsInTheOrderMadeWithinAMillisecondAndWhenTheClockGoesBack() {
        long[] millis = {1_000};
        Ids ids = new Ids(() -> Instant.ofEpochMilli(millis[0]), new Random(2));
        String last = "";
        for (int i = 0; i < 10_000; i++) {
            millis[0] += i % 1000 == 999 ? -5 : 0;
            String next = ids.next();
            assertThat(next).isGreaterThan(last);
            last = next;
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "0fffffff-ffff-7fff-bfff-ffffffffffff",
                "0fffffff-ffff-7abc-bfff-ffffffffffff",
                "00000000-0000-7000-8000-000000000000",
                "",
                "0"
            })
    void sortsAfterAnother(String other) {
        Ids ids = new Ids(() -> Instant.ofEpochMilli(5), new Random(3));
        String after = ids.nextAfter(other);
        assertThat(after).isGreaterThan(other);
        assertThat(ids.next()).isGreaterThan(after);
        assertThat(UUID.fromString(after).version()).isEqualTo(7);
        assertThat(UUID.fromString(after).variant()).isEqualTo(2);
    }

    @ParameterizedTest
    @CsvSource({
        "2026-05-31T23:30:00-05:00, 2026-05-31, 1780288200000",
        "2026-05-31T23:30-05, 2026-05-31, 1780288200000",
        "2026-05-31T23:30:00.000-0500, 2026-05-31, 1780288200000",
        "2026-06-01T04:30:00Z, 2026-06-01, 1780288200000",
    })
    void momentKeepsTheDayOfItsOwnOffset(String text, String day, long millis) {
        assertThat(Moment.of(text)).isEqualTo(new Moment(text, millis, day));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "2026-05-31",
                "2026-05-31T23:30:00",
                "2026-02-30T23:30:00Z",
                "2026-05-31T24:30:00Z",
                "2026-05-31 23:30:00Z",
                "+12026-05-31T23:30:00Z",
                "yesterday"
            })
    void momentIsADateAndTimeWithOffset(String text) {
        assertThatThrownBy(() -> Moment.of(text))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("write it like");
    }
}
