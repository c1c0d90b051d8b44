package boardside.app.account;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.practice.Device;
import boardside.app.store.Database;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DevicesTest {
    @TempDir
    private Path folder;

    private Database database;
    private Devices devices;
    private Instant now = Instant.parse("2026-06-01T12:00:00Z");

    @BeforeEach
    void open() {
        database = Database.open(folder.resolve("store.db").toString());
        devices = new Devices(database, () -> now);
    }

    @AfterEach
    void close() {
        database.close();
    }

    private String pair(String code, String name) {
        return devices.pair(code, name) instanceof Devices.Pairing.Done done ? done.token() : "";
    }

    @Test
    void aCodeEndsAfterItsTime() {
        Devices.Offer offer = devices.offer();
        assertThat(offer.until()).isEqualTo(now.plus(Devices.CODE_LIFE));
        now = offer.until().minusMillis(1);
        assertThat(devices.offer()).isEqualTo(offer);
        now = offer.until();
        assertThat(pair(offer.code(), "late")).isEmpty();
        assertThat(devices.offer().code()).isNotEqualTo(offer.code());
    }

    @Test
    void howACodeIsTypedDoesNotMatter() {
        String code = devices.offer().code();
        String typed = " " + code.substring(0, 3).toLowerCase(java.util.Locale.ROOT) + "-" + code.substring(3) + " ";
        assertThat(pair(typed, "phone")).hasSize(64);
    }

    @Test
    void nothingPairsBeforeACodeWasShown() {
        assertThat(pair("", "x")).isEmpty();
        assertThat(pair("ABCDEF", "x")).isEmpty();
    }

    @Test
    void aNameIsOneLineOfReasonableLength() {
        pair(devices.offer().code(), "  two\nlines\u0007  ");
        pair(devices.offer().code(), " \t ");
        pair(devices.offer().code(), "x".repeat(500));
        assertThat(devices.all().stream().map(Device::name).toList())
                .containsExactly("x".repeat(60), "Phone", "two lines");
    }

    @Test
    void theStoreHoldsNoTokenAndADeviceStaysInWhenItIsOpenedAgain() {
        String token = pair(devices.offer().code(), "phone");
        String stored = database.read(rows -> rows.devices().find(token)).toString();
        assertThat(stored).isEqualTo("Optional.empty");
        assertThat(new Devices(database, () -> now).find(token)).isPresent();
        assertThat(devices.find(token.replace('0', '1').replace('2', '3'))).isEmpty();
    }

    @Test
    void whenItWasLastHereIsKeptToTheHour() {
        String token = pair(devices.offer().code(), "phone");
        now = now.plus(Duration.ofMinutes(59));
        devices.find(token);
        assertThat(devices.all().get(0).seenAt()).isEqualTo("2026-06-01T12:00:00Z");
        now = now.plus(Duration.ofMinutes(1));
        devices.find(token);
        assertThat(devices.all().get(0).seenAt()).isEqualTo("2026-06-01T13:00:00Z");
        devices.revoke(devices.all().get(0).id());
        assertThat(devices.find(token)).isEmpty();
        assertThat(devices.all()).isEmpty();
    }

    @Test
    void twoProgramsOverOneStoreShareTheCodeAndWhoIsOut() {
        Devices other = new Devices(database, () -> now);
        Devices.Offer offer = devices.offer();
        assertThat(other.offer()).isEqualTo(offer);
        for (int guess = 0; guess < Devices.MOST_GUESSES; guess++) {
            assertThat((guess % 2 == 0 ? devices : other).pair("WRONG" + guess, "x"))
                    .isEqualTo(new Devices.Pairing.Refused());
        }
        assertThat(other.pair(offer.code(), "x")).isEqualTo(new Devices.Pairing.Refused());
        String token = pair(other.offer().code(), "phone");
        assertThat(other.find(token)).isPresent();
        devices.revoke(devices.all().get(0).id());
        assertThat(other.find(token)).isEmpty();
    }
}
