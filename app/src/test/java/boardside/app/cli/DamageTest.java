package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.json.Json;
import boardside.app.practice.Failure;
import boardside.app.record.Records;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A damaged store is told at start, left as it is, and can be replaced by a backup without losing the damaged file. */
class DamageTest {
    @TempDir
    private Path folder;

    private Path store;
    private Path backup;

    @BeforeEach
    void record() throws Exception {
        store = folder.resolve("store.db");
        backup = folder.resolve("backup.jsonl.gz");
        String[] rounds = new String[40];
        Arrays.fill(rounds, "2-1-1");
        for (int run = 0; run < 8; run++) {
            String[] command = {"record", "casual", "--data", store.toString()};
            assertThat(Ran.of(Stream.concat(Arrays.stream(command), Arrays.stream(rounds))
                                    .toArray(String[]::new))
                            .status())
                    .isZero();
        }
        assertThat(Ran.of("backup", backup.toString(), "--data", store.toString())
                        .status())
                .isZero();
    }

    /** Overwrites the middle page of the file: a page of 4096 bytes, which is what SQLite takes unless told otherwise. */
    private void damage() throws Exception {
        byte[] bytes = Files.readAllBytes(store);
        for (int page = 2; page < bytes.length / 4096; page++) {
            Arrays.fill(bytes, page * 4096, page * 4096 + 64, (byte) 0xA5);
        }
        Files.write(store, bytes);
    }

    @ParameterizedTest
    @ValueSource(strings = {"serve --port 0", "check", "restore BACKUP"})
    void aDamagedStoreIsToldAndLeftAsItIs(String command) throws Exception {
        damage();
        byte[] before = Files.readAllBytes(store);
        Files.createDirectories(folder.resolve("backups"));
        Ran ran = Ran.of((command.replace("BACKUP", backup.toString()) + " --data " + store).split(" "));
        assertThat(ran.status()).isEqualTo(command.equals("check") ? 1 : 2);
        assertThat(ran.err())
                .startsWith("the store " + store + " is damaged, or no store of Boardside (")
                .endsWith("It was left as it is. To go on from a backup: boardside restore BACKUP --force --data "
                        + store
                        + ", which sets the damaged file aside; automatic backups lie in " + folder.resolve("backups")
                        + "\n");
        assertThat(Files.readAllBytes(store)).isEqualTo(before);
    }

    /** Easily done: a backup given as the store. It is the last to be called damaged, or set aside for another. */
    @ParameterizedTest
    @ValueSource(strings = {"form", "serve --port 0", "check", "restore BACKUP --force"})
    void aBackupGivenAsTheStoreIsToldAndLeftAsItIs(String command) throws Exception {
        byte[] before = Files.readAllBytes(backup);
        Path other = Files.copy(backup, folder.resolve("other.jsonl.gz"));
        Ran ran = Ran.of((command.replace("BACKUP", other.toString()) + " --data " + backup).split(" "));
        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.err())
                .isEqualTo(backup
                        + " is packed with gzip, as a backup is, and no store. To bring a backup back into a store:"
                        + " boardside restore " + backup + " --data STORE\n");
        assertThat(Files.readAllBytes(backup)).isEqualTo(before);
        assertThat(folder.resolve("backup.jsonl.gz-wal")).doesNotExist();
    }

    @Test
    void restoreSetsItAsideOnlyForABackupThatIsGood() throws Exception {
        String rounds = Ran.of("export", "--data", store.toString()).out();
        damage();
        byte[] before = Files.readAllBytes(store);
        byte[] good = Files.readAllBytes(backup);
        Files.write(backup, Arrays.copyOf(good, good.length / 2));
        assertThat(Ran.of("restore", backup.toString(), "--force", "--data", store.toString())
                        .status())
                .isEqualTo(2);
        assertThat(Files.readAllBytes(store)).isEqualTo(before);
        Files.write(backup, good);
        Ran ran = Ran.of("restore", backup.toString(), "--force", "--data", store.toString());
        assertThat(ran.status()).as(ran.err()).isZero();
        Path aside = folder.resolve("store.db.damaged-20260601-180000");
        assertThat(ran.err()).contains("The damaged store was set aside as " + aside);
        assertThat(Files.readAllBytes(aside)).isEqualTo(before);
        assertThat(Ran.of("export", "--data", store.toString()).out()).isEqualTo(rounds);
        assertThat(Json.read(
                                Ran.of("check", "--json", "--data", store.toString())
                                        .out(),
                                JsonNode.class)
                        .get("sound")
                        .asBoolean())
                .isTrue();
    }

    /** Bytes at random places: whatever becomes of it, it is a failure that says so, and the file is not touched. */
    @Test
    void randomDamageIsRefusedInWordsOrHarmless() throws Exception {
        byte[] whole = Files.readAllBytes(store);
        long seed = 11;
        SplittableRandom random = new SplittableRandom(seed);
        int refused = 0;
        for (int round = 0; round < 60; round++) {
            byte[] bytes = whole.clone();
            int at = random.nextInt(bytes.length);
            int length = 1 + random.nextInt(round % 2 == 0 ? 8 : 4000);
            for (int i = at; i < Math.min(bytes.length, at + length); i++) {
                bytes[i] = (byte) random.nextInt(256);
            }
            if (round % 10 == 0) {
                bytes = Arrays.copyOf(bytes, at);
            }
            Files.write(store, bytes);
            try {
                Records.verify(store.toString());
            } catch (Failure.StoreUnusable e) {
                refused++;
                assertThat(e.damaged()).isTrue();
                assertThat(e.faults()).hasSize(1).first().asString().contains("boardside restore BACKUP --force");
            }
            assertThat(Files.readAllBytes(store))
                    .as("seed " + seed + ", round " + round)
                    .isEqualTo(bytes);
            for (String log : List.of("store.db-wal", "store.db-shm")) {
                Files.deleteIfExists(Objects.requireNonNull(store.resolveSibling(log)));
            }
        }
        assertThat(refused).isGreaterThan(20);
    }
}
