package boardside.bench.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What POSIX says of fsync, asked of traces written by hand; and the short form of what docs/faults.md tells of lost power. */
class PowerCutTest {
    private static final Path HOUSE = Path.of("/d");

    @TempDir
    private Path folder;

    private int left;

    private static String hex(String text) {
        StringBuilder hex = new StringBuilder();
        for (byte b : text.getBytes(StandardCharsets.US_ASCII)) {
            hex.append(String.format(Locale.ROOT, "\\x%02x", b));
        }
        return hex.toString();
    }

    private static String write(String file, String text, int at) {
        return "pwrite64(9<" + hex(file) + ">, \"" + hex(text) + "\", " + text.length() + ", " + at + ") = "
                + text.length();
    }

    private static String sync(String file) {
        return "fsync(9<" + hex(file) + ">) = 0";
    }

    private PowerCut trace(String... calls) throws IOException {
        StringBuilder lines = new StringBuilder();
        for (int i = 0; i < calls.length; i++) {
            // A call that names its thread is written as it is.
            lines.append(calls[i].startsWith("8 ") ? calls[i] : "7  1." + (100_000 + i) + " " + calls[i])
                    .append('\n');
        }
        Path file = folder.resolve("trace");
        Files.writeString(file, lines.toString());
        return new PowerCut(HOUSE, file);
    }

    /** All that may be left of a file when the power goes in a call, or "none". */
    private Set<String> left(PowerCut power, int cut, int heeded, String name) throws IOException {
        Set<String> all = new TreeSet<>();
        for (int seed = 0; seed < 200; seed++) {
            Path target = Files.createDirectory(folder.resolve("left" + left++));
            power.leave(cut, heeded, target, new SplittableRandom(seed));
            Path file = target.resolve(name);
            all.add(Files.exists(file) ? Files.readString(file).replace('\0', '_') : "none");
        }
        return all;
    }

    @Test
    void whatWasSyncedIsThereAndWhatWasNotMayBe() throws Exception {
        PowerCut power = trace(
                write("/d/s", "aa", 0), sync("/d/s"), sync("/d"), write("/d/s", "bb", 2), sync("/d/s"), sync("/d"));
        assertThat(power.size()).isEqualTo(6);
        assertThat(power.micros(3)).isEqualTo(1_100_003);
        assertThat(power.touches(3, Path.of("/d/s"))).isTrue();
        assertThat(power.touches(5, Path.of("/d/s"))).isFalse();
        assertThat(left(power, 0, 6, "s")).containsExactlyInAnyOrder("none", "", "aa");
        assertThat(left(power, 2, 6, "s")).containsExactly("aa");
        assertThat(left(power, 3, 6, "s")).containsExactlyInAnyOrder("aa", "aabb");
        assertThat(left(power, 4, 6, "s")).as("the sync has not ended").containsExactlyInAnyOrder("aa", "aabb");
        assertThat(left(power, 5, 6, "s")).containsExactly("aabb");
        assertThat(left(power, 5, 4, "s")).as("a disk that lies").containsExactlyInAnyOrder("aa", "aabb");
    }

    @Test
    void sectorsComeInAnyOrder() throws Exception {
        String two = "x".repeat(512) + "y".repeat(512);
        PowerCut power = trace(write("/d/s", "-".repeat(1024), 0), sync("/d/s"), write("/d/s", two, 0));
        assertThat(left(power, 2, 3, "s"))
                .containsExactlyInAnyOrder(
                        "-".repeat(1024), "x".repeat(512) + "-".repeat(512), "-".repeat(512) + "y".repeat(512), two);
    }

    @Test
    void aCallThatEndsAfterASyncBeganIsNotSyncedByIt() throws Exception {
        PowerCut power = trace(
                write("/d/s", "aa", 0),
                sync("/d/s"),
                "fsync(9<" + hex("/d/s") + "> <unfinished ...>",
                "8  1.200000 " + write("/d/s", "bb", 0),
                "<... fsync resumed>) = 0",
                sync("/d"));
        assertThat(power.size()).isEqualTo(5);
        assertThat(left(power, 4, 5, "s")).containsExactlyInAnyOrder("aa", "bb");
    }

    @Test
    void filesThatWereBegunOrRemovedSinceTheFolderWasSyncedMayBeThereOrNot() throws Exception {
        PowerCut power = trace(
                write("/d/j", "aa", 0),
                sync("/d/j"),
                "unlink(\"" + hex("/d/j") + "\") = 0",
                sync("/d"),
                write("/d/j", "c", 1),
                "unlink(\"" + hex("/d/k") + "\") = -1 ENOENT (No such file or directory)");
        assertThat(left(power, 2, 5, "j")).containsExactlyInAnyOrder("none", "aa");
        assertThat(left(power, 3, 5, "j")).containsExactlyInAnyOrder("none", "aa");
        assertThat(left(power, 4, 5, "j")).containsExactlyInAnyOrder("none", "", "_c");
    }

    @Test
    void whatIsCutOffMayBeThereUntilThatIsSynced() throws Exception {
        PowerCut power = trace(
                write("/d/s", "aaaa", 0),
                sync("/d/s"),
                "ftruncate(9<" + hex("/d/s") + ">, 1) = 0",
                write("/d/s", "b", 3),
                sync("/d/s"),
                sync("/d"));
        assertThat(left(power, 2, 6, "s")).containsExactlyInAnyOrder("aaaa", "a");
        assertThat(left(power, 5, 6, "s")).containsExactly("a__b");
    }

    @Test
    void aTraceThatIsNotUnderstoodIsRefused() {
        assertThatIllegalStateException()
                .isThrownBy(() -> trace("rename(\"" + hex("/d/a") + "\", \"" + hex("/d/b") + "\") = 0"))
                .withMessageContaining("another kind: rename");
        assertThatIllegalStateException().isThrownBy(() -> trace("<... fsync resumed>) = 0"));
        assertThatIllegalStateException().isThrownBy(() -> trace("so"));
    }

    @Test
    void whatWasAcknowledgedIsThereAfterThePowerWent() throws Exception {
        assumeThat(traces()).as("strace is there and may trace").isTrue();
        Path house = Files.createDirectory(folder.toRealPath().resolve("house"));
        Faults faults = new Faults(
                new Program(Built.command(), house.resolve("faults.db").toString(), folder.resolve("log")), 7);
        Faults.Result result = faults.power(house, 30, 2);
        assertThat(result.differences()).as(result.done()).isEmpty();
        assertThat(result.done()).contains("power cut in 2");
    }

    private static boolean traces() throws InterruptedException {
        try {
            return new ProcessBuilder("strace", "-qq", "-f", "--seccomp-bpf", "-e", "trace=fsync", "true")
                            .redirectErrorStream(true)
                            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                            .start()
                            .waitFor()
                    == 0;
        } catch (IOException e) {
            return false;
        }
    }
}
