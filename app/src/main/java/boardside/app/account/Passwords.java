package boardside.app.account;

import java.security.SecureRandom;
import java.text.Normalizer;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Semaphore;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.security.crypto.argon2.Argon2PasswordEncoder;

/**
 * Passwords as Argon2id hashes, and which ones are refused. Thread safe.
 *
 * <p>Parameters are the second recommended option of RFC 9106, section 4: 64 MiB, 3 passes, 4 lanes, a salt of 128 bits and a
 * tag of 256. They stand in each hash, so that they can be raised: a hash with lower ones is made anew at the next sign-in.
 */
public final class Passwords {
    /** Fewest characters. */
    public static final int SHORTEST = 10;

    /** Most characters. */
    public static final int LONGEST = 128;

    private static final int MEMORY_KIB = 64 * 1024;
    private static final int PASSES = 3;
    private static final int LANES = 4;
    private static final int SALT_BYTES = 16;
    private static final int TAG_BYTES = 32;

    /** Different characters that a password has at least. */
    private static final int FEWEST_DIFFERENT = 5;

    /** Words that are no password by themselves, with whatever digits and signs around them. */
    private static final Set<String> OBVIOUS = Set.of(
            "password",
            "passwort",
            "passphrase",
            "letmein",
            "welcome",
            "iloveyou",
            "qwerty",
            "administrator",
            "changeme",
            "secret",
            "boardside",
            "cornhole",
            "bags",
            "airmail",
            "fourbagger",
            "football",
            "baseball",
            "sunshine");

    /** Rows of keys and alphabets; a password that only walks along them is refused. */
    private static final List<String> ROWS = List.of(
            "01234567890123456789",
            "abcdefghijklmnopqrstuvwxyz",
            "qwertyuiopasdfghjklzxcvbnm",
            "qwertzuiopasdfghjklyxcvbnm",
            "1qaz2wsx3edc4rfv5tgb6yhn7ujm",
            "q1w2e3r4t5y6u7i8o9p0",
            "1q2w3e4r5t6y7u8i9o0p");

    /** So many keys in a row are a walk; fewer are in many a password. */
    private static final int LONG_WALK = 8;

    private final Argon2PasswordEncoder encoder;

    /** Each hash needs its memory; no more are made at once than a small machine can bear. */
    private final Semaphore turns = new Semaphore(2, true);

    /** What the password of nobody is held against: a salt and a tag at random, so that the work is the same. */
    private final String nobodys;

    /** What is wrong with a password that somebody wants. */
    public enum Fault implements boardside.engine.rules.Word {
        SHORT,
        LONG,
        OBVIOUS
    }

    /** With the parameters above. */
    public Passwords() {
        this(MEMORY_KIB, PASSES);
    }

    /** With other work than is right for people's passwords; for tests. */
    public Passwords(int memoryKib, int passes) {
        this.encoder = new Argon2PasswordEncoder(SALT_BYTES, TAG_BYTES, LANES, memoryKib, passes);
        this.nobodys = "$argon2id$v=19$m=" + memoryKib + ",t=" + passes + ",p=" + LANES + "$" + random(SALT_BYTES) + "$"
                + random(TAG_BYTES);
    }

    private static String random(int bytes) {
        byte[] some = new byte[bytes];
        new SecureRandom().nextBytes(some);
        return Base64.getEncoder().withoutPadding().encodeToString(some);
    }

    /**
     * What is wrong with a password; empty where nothing is. There is no rule on what it is made of.
     *
     * @param name what is signed in with; it is no password
     */
    public static Optional<Fault> fault(String password, String name) {
        String folded = folded(password);
        int length = folded.codePointCount(0, folded.length());
        if (length < SHORTEST) {
            return Optional.of(Fault.SHORT);
        }
        if (length > LONGEST) {
            return Optional.of(Fault.LONG);
        }
        return obvious(folded.toLowerCase(Locale.ROOT), folded(name).toLowerCase(Locale.ROOT))
                ? Optional.of(Fault.OBVIOUS)
                : Optional.empty();
    }

    private static boolean obvious(String password, String name) {
        if (password.codePoints().distinct().count() < FEWEST_DIFFERENT) {
            return true;
        }
        String letters = password.replaceAll("[^\\p{L}]", "");
        String plain = password.replaceAll("[^\\p{L}\\p{N}]", "");
        String called = name.replaceAll("[^\\p{L}\\p{N}]", "");
        if (OBVIOUS.stream().anyMatch(word -> repeats(letters, word))
                || !called.isEmpty() && (repeats(plain, called) || repeats(letters, called))) {
            return true;
        }
        return plain.length() >= LONG_WALK
                && ROWS.stream()
                        .anyMatch(row -> row.contains(plain)
                                || new StringBuilder(row).reverse().toString().contains(plain));
    }

    /** Whether a text is nothing but a word, once or several times. */
    private static boolean repeats(String text, String word) {
        return !text.isEmpty() && text.replace(word, "").isEmpty();
    }

    /** A password as an Argon2id hash with its parameters and a new salt. */
    public String hash(String password) {
        return inTurn(() -> String.valueOf(encoder.encode(folded(password))));
    }

    /** Whether a password is the one of a hash; with null, for a name that nobody bears, false after as much work. */
    public boolean matches(String password, @Nullable String hash) {
        String against = hash == null ? nobodys : hash;
        return inTurn(() -> encoder.matches(folded(password), against)) && hash != null;
    }

    /** Whether a hash was made with less work than hashes are now. */
    public boolean outdated(String hash) {
        return encoder.upgradeEncoding(hash);
    }

    /** Compatibility forms are one character (NFKC), so that one keyboard's password can be typed on another. */
    private static String folded(String password) {
        return Normalizer.normalize(password, Normalizer.Form.NFKC);
    }

    private <T> T inTurn(Supplier<T> work) {
        turns.acquireUninterruptibly();
        try {
            return work.get();
        } finally {
            turns.release();
        }
    }
}
