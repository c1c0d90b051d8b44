package boardside.app.account;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Objects;
import java.util.Optional;
import java.util.Properties;
import org.bouncycastle.crypto.generators.Argon2BytesGenerator;
import org.bouncycastle.crypto.params.Argon2Parameters;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PasswordsTest {
    private static final int SMALL_KIB = 64;

    private final Passwords quick = new Passwords(SMALL_KIB, 1);

    private static byte[] tag(Argon2Parameters parameters, byte[] password, int length) {
        Argon2BytesGenerator generator = new Argon2BytesGenerator();
        generator.init(parameters);
        byte[] tag = new byte[length];
        generator.generateBytes(password, tag);
        return tag;
    }

    /** The library we hash with, against the vector of the RFC. */
    @Test
    void argon2idIsThatOfRfc9106() throws IOException {
        Properties vector = new Properties();
        try (InputStream in =
                Objects.requireNonNull(getClass().getResourceAsStream("/accounts/argon2id-rfc9106.properties"))) {
            vector.load(in);
        }
        HexFormat hex = HexFormat.of();
        Argon2Parameters parameters = new Argon2Parameters.Builder(Argon2Parameters.ARGON2_id)
                .withVersion(Integer.parseInt(vector.getProperty("version")))
                .withMemoryAsKB(Integer.parseInt(vector.getProperty("memory-kib")))
                .withIterations(Integer.parseInt(vector.getProperty("passes")))
                .withParallelism(Integer.parseInt(vector.getProperty("lanes")))
                .withSalt(hex.parseHex(vector.getProperty("salt")))
                .withSecret(hex.parseHex(vector.getProperty("secret")))
                .withAdditional(hex.parseHex(vector.getProperty("associated-data")))
                .build();
        byte[] tag = tag(
                parameters,
                hex.parseHex(vector.getProperty("password")),
                Integer.parseInt(vector.getProperty("tag-bytes")));
        assertThat(hex.formatHex(tag)).isEqualTo(vector.getProperty("tag"));
    }

    /** A hash is what it says: RFC 9106, section 4, second recommended option, and its tag is Argon2id of the password. */
    @Test
    void aHashIsArgon2idWithTheParametersItNames() {
        String hash = new Passwords().hash("correct horse battery");
        assertThat(hash).matches("\\$argon2id\\$v=19\\$m=65536,t=3,p=4\\$[A-Za-z0-9+/]{22}\\$[A-Za-z0-9+/]{43}");
        String[] parts = hash.split("\\$");
        Argon2Parameters parameters = new Argon2Parameters.Builder(Argon2Parameters.ARGON2_id)
                .withVersion(19)
                .withMemoryAsKB(65536)
                .withIterations(3)
                .withParallelism(4)
                .withSalt(Base64.getDecoder().decode(parts[4]))
                .build();
        byte[] tag = tag(parameters, "correct horse battery".getBytes(StandardCharsets.UTF_8), 32);
        assertThat(Base64.getEncoder().withoutPadding().encodeToString(tag)).isEqualTo(parts[5]);
    }

    @Test
    void aPasswordMatchesItsHashAloneAndSaltsDiffer() {
        String hash = quick.hash("grüne Wiese am See");
        assertThat(quick.matches("grüne Wiese am See", hash)).isTrue();
        assertThat(quick.matches("grüne Wiese am see", hash)).isFalse();
        assertThat(quick.matches("grüne Wiese am See ", hash)).isFalse();
        assertThat(quick.hash("grüne Wiese am See")).isNotEqualTo(hash);
    }

    /** U+0075 U+0308 and U+00FC are the same letter, typed on different keyboards. */
    @Test
    void compatibilityFormsAreOneCharacter() {
        assertThat(quick.matches("gru\u0308ne Wiese", quick.hash("gr\u00fcne Wiese")))
                .isTrue();
    }

    @Test
    void nobodysPasswordIsNeverRight() {
        assertThat(quick.matches("", null)).isFalse();
        assertThat(quick.matches("correct horse battery", null)).isFalse();
    }

    @Test
    void aHashWithLessWorkIsOutdated() {
        String hash = quick.hash("correct horse battery");
        assertThat(quick.outdated(hash)).isFalse();
        assertThat(new Passwords(2 * SMALL_KIB, 1).outdated(hash)).isTrue();
        assertThat(new Passwords(SMALL_KIB, 2).outdated(hash)).isTrue();
        assertThat(new Passwords(2 * SMALL_KIB, 2).matches("correct horse battery", hash))
                .as("still matches")
                .isTrue();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "correct horse battery",
                "0123456789 and more",
                "my boardside password",
                "🎯🎯 ten 🥨 bags 🌽",
                "kV9#pQ2!xx",
                "annas garden",
            })
    void manyKindsOfPasswordWillDo(String password) {
        assertThat(Passwords.fault(password, "anna")).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "password123",
                "Password!!!!",
                "passwordpassword",
                "1234567890",
                "0987654321",
                "qwertyuiop",
                "abcdefghijkl",
                "1q2w3e4r5t",
                "aaaaaaaaaaaa",
                "ababababababab",
                "Cornhole2026",
                "boardside99",
                "anna.berger",
                "Anna-Berger-1",
                "AnnaBergerAnnaBerger",
            })
    void theMostObviousAreRefused(String password) {
        assertThat(Passwords.fault(password, "Anna.Berger")).contains(Passwords.Fault.OBVIOUS);
    }

    @Test
    void lengthIsCountedInCharacters() {
        assertThat(Passwords.fault("ninechars", "x")).contains(Passwords.Fault.SHORT);
        assertThat(Passwords.fault("🎯🥨🌽🎳🏹🥏🎲🎱🎮", "x")).as("nine").contains(Passwords.Fault.SHORT);
        assertThat(Passwords.fault("🎯🥨🌽🎳🏹🥏🎲🎱🎮🎰", "x")).as("ten").isEqualTo(Optional.empty());
        String long128 = "correct horse battery staple ".repeat(5).substring(0, 128);
        assertThat(Passwords.fault(long128, "x")).isEmpty();
        assertThat(Passwords.fault(long128 + "x", "x")).contains(Passwords.Fault.LONG);
    }
}
