package boardside.app.account;

import boardside.app.practice.Device;
import boardside.app.practice.Ids;
import boardside.app.store.Database;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/**
 * Lets devices of the house network in. A pairing code is shown on the machine that runs Boardside, works once and for a
 * few minutes, and dies after a few wrong guesses; the device then keeps a random token, of which the store has only the
 * hash. Thread safe.
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
    private final Map<String, Device> known = new ConcurrentHashMap<>();
    private @Nullable Code code;

    private static final class Code {
        private final String text;
        private final Instant until;
        private int guesses;

        private Code(String text, Instant until) {
            this.text = text;
            this.until = until;
        }
    }

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
    public synchronized Offer offer() {
        Code now = code;
        if (now == null || !usable(now)) {
            StringBuilder text = new StringBuilder();
            for (int i = 0; i < CODE_LENGTH; i++) {
                text.append(ALPHABET.charAt(random.nextInt(ALPHABET.length())));
            }
            now = new Code(text.toString(), clock.instant().plus(CODE_LIFE));
            code = now;
        }
        return new Offer(now.text, now.until);
    }

    private boolean usable(Code candidate) {
        return candidate.guesses < MOST_GUESSES && clock.instant().isBefore(candidate.until);
    }

    /** Tries to let a device in. Case, spaces and dashes in the code do not matter. */
    public synchronized Pairing pair(String given, String name) {
        Code now = code;
        if (now == null || !usable(now)) {
            return new Pairing.Refused();
        }
        String guess = given.toUpperCase(Locale.ROOT).replaceAll("[\\s-]", "");
        if (!MessageDigest.isEqual(guess.getBytes(StandardCharsets.UTF_8), now.text.getBytes(StandardCharsets.UTF_8))) {
            now.guesses++;
            return new Pairing.Refused();
        }
        code = null;
        byte[] bytes = new byte[32];
        random.nextBytes(bytes);
        String token = HexFormat.of().formatHex(bytes);
        String at = clock.instant().toString();
        String line = name.replaceAll("\\p{Cntrl}", " ").strip();
        String called = line.isEmpty() ? "Phone" : line;
        Device device = new Device(ids.next(), called.substring(0, Math.min(LONGEST_NAME, called.length())), at, at);
        database.write(rows -> {
            rows.devices().add(device, hash(token));
            return device;
        });
        return new Pairing.Done(token);
    }

    /** The device with that token, or empty if it was never let in or has been shut out. */
    public Optional<Device> find(String token) {
        String hash = hash(token);
        Device device = known.get(hash);
        if (device == null) {
            device = lookUp(hash);
            if (device == null) {
                return Optional.empty();
            }
        }
        return Optional.of(seen(hash, device));
    }

    // Never while one is being shut out: what is known must not outlive what is stored.
    private synchronized @Nullable Device lookUp(String hash) {
        Device device = database.read(rows -> rows.devices().find(hash)).orElse(null);
        if (device != null) {
            known.put(hash, device);
        }
        return device;
    }

    private Device seen(String hash, Device device) {
        Instant now = clock.instant();
        if (Duration.between(Instant.parse(device.seenAt()), now).abs().compareTo(SEEN_GRAIN) < 0) {
            return device;
        }
        Device later = new Device(device.id(), device.name(), device.pairedAt(), now.toString());
        known.replace(hash, device, later);
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
    public synchronized void revoke(String id) {
        database.write(rows -> {
            rows.devices().revoke(id, clock.instant().toString());
            return id;
        });
        known.values().removeIf(device -> device.id().equals(id));
    }

    private static String hash(String token) {
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(token.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(hash);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
