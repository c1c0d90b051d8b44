package boardside.app.account;

import boardside.app.practice.Device;
import boardside.app.practice.Ids;
import boardside.app.store.Database;
import boardside.app.store.DeviceRows;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Lets devices of the house network in. A pairing code is shown on the machine that runs Boardside, works once and for a
 * few minutes, and dies after a few wrong guesses; the device then keeps a random token, of which the store has only the
 * hash. All of it lies in the store, so that several instances over one act as one. Thread safe.
 */
public final class Devices {
    /** How long a code works. */
    public static final Duration CODE_LIFE = Duration.ofMinutes(10);

    /** Wrong guesses after which a code is void. */
    public static final int MOST_GUESSES = 8;

    // No letters or digits that are read for one another.
    private static final String ALPHABET = "23456789ABCDEFGHJKMNPQRSTUVWXYZ";
    private static final int CODE_LENGTH = 6;
    private static final Duration SEEN_GRAIN = Duration.ofHours(1);
    private static final int LONGEST_NAME = 60;

    private final Database database;
    private final InstantSource clock;
    private final SecureRandom random = new SecureRandom();
    private final Ids ids;

    /** What became of a try to pair. */
    public sealed interface Pairing {
        /** The device is in; its token goes into a cookie. */
        record Done(String token) implements Pairing {}

        /** The code is wrong, used up or too old. */
        record Refused() implements Pairing {}
    }

    /** A code to show and until when it works. */
    public record Offer(String code, Instant until) {}

    public Devices(Database database, InstantSource clock) {
        this.database = database;
        this.clock = clock;
        this.ids = new Ids(clock, random);
    }

    /** The code that works now; a new one when the last was used, guessed at too often, or is too old. */
    public Offer offer() {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < CODE_LENGTH; i++) {
            text.append(ALPHABET.charAt(random.nextInt(ALPHABET.length())));
        }
        Instant now = clock.instant();
        DeviceRows.Code code = database.write(rows ->
                rows.devices().offer(new DeviceRows.Code(text.toString(), now.plus(CODE_LIFE)), now, MOST_GUESSES));
        return new Offer(code.text(), code.until());
    }

    /** Tries to let a device in. Case, spaces and dashes in the code do not matter. */
    public Pairing pair(String given, String name) {
        String guess = given.toUpperCase(Locale.ROOT).replaceAll("[\\s-]", "");
        String token = Tokens.random();
        Instant now = clock.instant();
        String line = name.replaceAll("\\p{Cntrl}", " ").strip();
        String called = line.isEmpty() ? "Phone" : line;
        Device device = new Device(
                ids.next(),
                called.substring(0, Math.min(LONGEST_NAME, called.length())),
                now.toString(),
                now.toString());
        boolean in = database.write(rows -> {
            // A guess counts before it is looked at, so that many at once are no way around.
            String code = rows.devices().guess(now, MOST_GUESSES).orElse("");
            boolean right = !code.isEmpty()
                    && MessageDigest.isEqual(
                            guess.getBytes(StandardCharsets.UTF_8), code.getBytes(StandardCharsets.UTF_8));
            if (right) {
                rows.devices().withdraw();
                rows.devices().add(device, Tokens.hash(token));
            }
            return right;
        });
        return in ? new Pairing.Done(token) : new Pairing.Refused();
    }

    /** The device with that token, or empty if it was never let in or has been shut out. */
    public Optional<Device> find(String token) {
        return database.read(rows -> rows.devices().find(Tokens.hash(token))).map(this::seen);
    }

    private Device seen(Device device) {
        Instant now = clock.instant();
        if (Duration.between(Instant.parse(device.seenAt()), now).abs().compareTo(SEEN_GRAIN) < 0) {
            return device;
        }
        Device later = new Device(device.id(), device.name(), device.pairedAt(), now.toString());
        database.write(rows -> {
            rows.devices().seen(later.id(), later.seenAt());
            return later;
        });
        return later;
    }

    /** Devices that are let in, the newest first. */
    public List<Device> all() {
        return database.read(rows -> rows.devices().all());
    }

    /** Shuts a device out at once. */
    public void revoke(String id) {
        database.write(rows -> {
            rows.devices().revoke(id, clock.instant().toString());
            return id;
        });
    }
}
