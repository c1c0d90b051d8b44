package boardside.app.practice;

import java.time.InstantSource;
import java.util.UUID;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;

/**
 * Makes UUIDs of version 7: their text sorts by the millisecond they were made in (RFC 9562, section 5.7). Those made in
 * one millisecond count on from the first (section 6.2, method 2), so each sorts after the one before. Thread safe.
 */
public final class Ids {
    private static final long RANDOM_BITS_TOP = 12;
    private static final long VARIANT = 0x8000_0000_0000_0000L;
    private static final long LOW = 0x3fff_ffff_ffff_ffffL;

    private final InstantSource clock;
    private final RandomGenerator random;
    private long most;
    private long least;

    /**
     * @param clock tells the time
     * @param random fills the rest; seeded for repeatable ids
     */
    public Ids(InstantSource clock, RandomGenerator random) {
        this.clock = clock;
        this.random = random;
    }

    /** A new id, 36 characters, sorting after every one this object made before. */
    public synchronized String next() {
        long millis = clock.millis();
        if (millis > most >>> 16) {
            most = millis << 16 | 0x7000L | random.nextLong() & (1L << RANDOM_BITS_TOP) - 1;
            // The top random bit starts clear, which leaves room to count.
            least = VARIANT | random.nextLong() & (LOW >>> 1);
        } else {
            countOn();
        }
        return new UUID(most, least).toString();
    }

    /**
     * A new id that sorts after another one too, even if that was made by a clock running ahead.
     *
     * @param other an id, or any text; what is no UUID of version 7 is ignored
     */
    public synchronized String nextAfter(String other) {
        String id = next();
        if (id.compareTo(other) > 0) {
            return id;
        }
        UUID ahead = uuid(other);
        if (ahead == null) {
            return id;
        }
        most = ahead.getMostSignificantBits();
        least = ahead.getLeastSignificantBits();
        countOn();
        return new UUID(most, least).toString();
    }

    private void countOn() {
        least = VARIANT | (least + 1) & LOW;
        if ((least & LOW) == 0) {
            long top = (most & 0xfff) + 1;
            most = top <= 0xfff ? most + 1 : ((most >>> 16) + 1) << 16 | 0x7000L;
        }
    }

    private static @Nullable UUID uuid(String text) {
        try {
            UUID uuid = UUID.fromString(text);
            return uuid.version() == 7 && uuid.toString().equals(text) ? uuid : null;
        } catch (IllegalArgumentException e) {
            return null;
        }
    }
}
