package boardside.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.json.Json;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TransferCommandsTest {
    private static final String LOG = """
            session,run,started_at,drill,round,side,bag,face,approach,board,setting,ghost,in,on,off
            s,r,2026-05-01T10:00:00+02:00,total,1,me,Blue,slow,,regulation,practice,,3,1,0
            s,r,2026-05-01T10:00:00+02:00,total,2,me,Blue,slow,,regulation,practice,,2,1,1
            """;

    @TempDir
    Path folder;

    private String data = "";
    private Path log;

    @BeforeEach
    void place() throws Exception {
        data = folder.resolve("store.db").toString();
        log = Files.writeString(folder.resolve("log.csv"), LOG);
    }

    private Ran run(String... args) {
        String[] all = new String[args.length + 2];
        System.arraycopy(args, 0, all, 0, args.length);
        all[args.length] = "--data";
        all[args.length + 1] = data;
        return Ran.of(all);
    }

    @Test
    void importsAndExports() {
        assertThat(run("import", log.toString()))
                .isEqualTo(new Ran(
                        0, "2 rows read: 1 new run, 2 new rounds, 0 rounds known before\nNew bag sets: Blue\n", ""));
        assertThat(run("export")).isEqualTo(new Ran(0, LOG, ""));
        JsonNode again = Json.read(run("import", log.toString(), "--json").out(), JsonNode.class);
        assertThat(again.get("newRounds").asInt()).isZero();
        assertThat(again.get("knownRounds").asInt()).isEqualTo(2);
        assertThat(run("import", log.toString(), "--quiet")).isEqualTo(new Ran(0, "", ""));
    }

    @Test
    void importsFromStandardInput() {
        assertThat(Ran.with(LOG, "import", "-", "--data", data).status()).isZero();
        assertThat(run("export").out()).isEqualTo(LOG);
    }

    @Test
    void faultyImportTellsEachFaultAndStoresNothing() throws Exception {
        Files.writeString(log, LOG.replace("total,2", "total,x").replace("3,1,0", "3,1,1"));
        assertThat(run("import", log.toString()))
                .isEqualTo(new Ran(
                        2,
                        "",
                        log
                                + ", line 2, column 13 (in): 5 bags of one side in a round; a round of total has at most 4\n"
                                + log
                                + ", line 3, column 5 (round): \"x\"; rounds are numbered from 1, a whole number\n"));
        assertThat(run("export").out()).hasLineCount(1);
        Ran missing = run("import", "nowhere.csv");
        assertThat(missing.status()).isEqualTo(2);
        assertThat(missing.err()).startsWith("nowhere.csv cannot be read; check the path");
    }

    @Test
    void exportsEverythingAsJsonLines() {
        run("import", log.toString());
        Ran ran = run("export", "--all");
        assertThat(ran.status()).isZero();
        assertThat(ran.out()
                        .lines()
                        .map(line -> Json.read(line, JsonNode.class).get("kind").asText()))
                .containsExactly("boardside", "player", "bag", "session", "run", "end");
        JsonNode end = Json.read(ran.out().lines().skip(5).findFirst().orElseThrow(), JsonNode.class);
        assertThat(end.get("rounds").asInt()).isEqualTo(2);
        assertThat(end.get("bagsThrown").asInt()).isEqualTo(8);
    }

    @Test
    void backupComesBackWhole() throws Exception {
        run("import", log.toString());
        run("record", "race", "--ghost", "5", "4-0-0");
        String backup = folder.resolve("backup").toString();
        assertThat(run("backup", backup))
                .isEqualTo(new Ran(
                        0, "Backed up and read back: 1 player, 1 bag set, 2 runs, 3 rounds, 12 bags thrown\n", ""));
        assertThat(Files.getPosixFilePermissions(Path.of(backup)))
                .isEqualTo(PosixFilePermissions.fromString("rw-------"));
        assertThat(run("backup", backup).status()).isZero();
        String all = run("export", "--all").out();
        String first = data;
        data = folder.resolve("other.db").toString();
        assertThat(run("restore", backup))
                .isEqualTo(new Ran(0, "Restored: 1 player, 1 bag set, 2 runs, 3 rounds, 12 bags thrown\n", ""));
        assertThat(run("export", "--all").out()).isEqualTo(all);
        assertThat(run("check")).isEqualTo(new Ran(0, data + " is sound.\n", ""));
        data = first;
        Ran refused = run("restore", backup);
        assertThat(refused.status()).isEqualTo(2);
        assertThat(refused.err())
                .isEqualTo(
                        "the store " + data + " holds records, which would be lost; back them up, then add --force, or"
                                + " give another store with --data\n");
        run("record", "total", "4-0-0");
        assertThat(run("restore", backup, "--force").status()).isZero();
        assertThat(run("export", "--all").out()).isEqualTo(all);
    }

    @Test
    void damagedBackupIsRefusedAndTheStoreKept() throws Exception {
        run("import", log.toString());
        Path backup = folder.resolve("backup");
        run("backup", backup.toString());
        byte[] whole = Files.readAllBytes(backup);
        String all = run("export", "--all").out();
        for (int cut : new int[] {0, 1, 30, whole.length / 2, whole.length - 8, whole.length - 1}) {
            Files.write(backup, java.util.Arrays.copyOf(whole, cut));
            Ran ran = run("restore", backup.toString(), "--force");
            assertThat(ran.status()).as("cut to %d", cut).isEqualTo(2);
            assertThat(ran.err()).contains(backup.toString()).doesNotContain("boardside failed");
        }
        byte[] flipped = whole.clone();
        flipped[whole.length / 2] ^= 0x10;
        Files.write(backup, flipped);
        assertThat(run("restore", backup.toString(), "--force").status()).isEqualTo(2);
        Path lines =
                Files.writeString(folder.resolve("lines"), all.replace("\"session\":\"s\"", "\"session\":\"gone\""));
        Ran gone = run("restore", lines.toString(), "--force");
        assertThat(gone.status()).isEqualTo(2);
        assertThat(gone.err()).contains("line 5");
        Files.writeString(lines, all.replace("\"format\":1", "\"format\":99"));
        assertThat(run("restore", lines.toString(), "--force").err()).contains("a newer Boardside wrote this backup");
        assertThat(run("restore", log.toString(), "--force").status()).isEqualTo(2);
        assertThat(run("restore", folder.resolve("none").toString()).status()).isEqualTo(2);
        assertThat(run("export", "--all").out()).isEqualTo(all);
    }

    @Test
    void backupNeverReplacesWhatIsNoBackup() throws Exception {
        run("import", log.toString());
        assertThat(run("backup", data).status()).isEqualTo(2);
        assertThat(run("backup", log.toString()).err()).contains("exists and is no backup of Boardside");
        assertThat(log).hasContent(LOG);
        assertThat(run("backup", folder.resolve("no/where").toString()).status())
                .isEqualTo(2);
    }

    @Test
    void checkFindsWhatMakesNoSense() throws Exception {
        run("import", log.toString());
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + data);
                Statement statement = connection.createStatement()) {
            statement.execute("update run set points = 7");
            statement.execute("update line set bag = 'gone' where number = 2");
        }
        Ran ran = run("check", "--json");
        assertThat(ran.status()).isEqualTo(1);
        assertThat(ran.err())
                .isEqualTo("run r, round 2: there is no bag set gone\nrun r: its sums are not those of its rounds\n");
        assertThat(Json.read(ran.out(), JsonNode.class).get("sound").asBoolean())
                .isFalse();
    }
}
