package boardside.app.transfer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.app.practice.Failure;
import boardside.app.record.Records;
import boardside.app.record.SampleStore;
import boardside.app.record.Stores;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DailyBackupsTest {
    @TempDir
    private Path folder;

    private Path backups() {
        return folder.resolve("backups");
    }

    private List<String> names() throws Exception {
        try (Stream<Path> files = Files.list(backups())) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    private static String name(String day) {
        return "boardside-" + day + ".jsonl.gz";
    }

    @Test
    void oneADayThatOneCanGoBackToAndNoneOfAnEmptyStore() throws Exception {
        LocalDate day = LocalDate.parse("2026-06-01");
        Path made;
        try (Records records = Stores.open(folder.resolve("store.db").toString(), 1)) {
            assertThat(DailyBackups.today(records, backups(), day)).isEmpty();
            assertThat(DailyBackups.newest(backups())).isEmpty();
            SampleStore.fill(records);
            made = DailyBackups.today(records, backups(), day).orElseThrow();
            assertThat(DailyBackups.today(records, backups(), day)).isEmpty();
        }
        assertThat(DailyBackups.newest(backups())).contains(made);
        assertThat(Files.getPosixFilePermissions(made)).isEqualTo(PosixFilePermissions.fromString("rw-------"));
        assertThat(Files.getPosixFilePermissions(backups())).isEqualTo(PosixFilePermissions.fromString("rwx------"));
        try (Records again = Stores.open(folder.resolve("again.db").toString(), 2)) {
            assertThat(Backups.restore(again, made, false, LogFiles.Progress.NONE))
                    .isEqualTo(Backups.read(made, LogFiles.Progress.NONE));
            assertThat(again.check()).isEmpty();
        }
    }

    /** Kept by hand from a calendar: 2026-06-01 is a Monday; weeks are ISO 8601's, Monday to Sunday. */
    @Test
    void theLastSevenDaysAndTheLastOfEachOfEightWeeksAreKept() throws Exception {
        Files.createDirectories(backups());
        LocalDate first = LocalDate.parse("2026-04-01");
        LocalDate last = LocalDate.parse("2026-06-18");
        for (LocalDate day = first; day.isBefore(last); day = day.plusDays(1)) {
            Files.writeString(backups().resolve(name(day.toString())), "");
        }
        Files.writeString(backups().resolve("boardside-before-the-move.jsonl.gz"), "mine");
        Files.writeString(backups().resolve("notes.txt"), "mine");
        try (Records records = Stores.open(folder.resolve("store.db").toString(), 1)) {
            SampleStore.fill(records);
            assertThat(DailyBackups.today(records, backups(), last)).isPresent();
        }
        assertThat(names())
                .containsExactly(
                        // Sundays of the weeks before: with the current week eight.
                        name("2026-05-03"),
                        name("2026-05-10"),
                        name("2026-05-17"),
                        name("2026-05-24"),
                        name("2026-05-31"),
                        name("2026-06-07"),
                        // Seven days, the Sunday of another week among them.
                        name("2026-06-12"),
                        name("2026-06-13"),
                        name("2026-06-14"),
                        name("2026-06-15"),
                        name("2026-06-16"),
                        name("2026-06-17"),
                        name("2026-06-18"),
                        "boardside-before-the-move.jsonl.gz",
                        "notes.txt");
    }

    @Test
    void whereNoneCanBeWrittenAllEarlierOnesStay() throws Exception {
        Files.createDirectories(backups());
        for (int day = 10; day < 30; day++) {
            Files.writeString(backups().resolve(name("2026-05-" + day)), "");
        }
        // Something is in the way of the file that is written first.
        Files.createDirectories(backups().resolve(name("2026-06-01") + ".part").resolve("x"));
        try (Records records = Stores.open(folder.resolve("store.db").toString(), 1)) {
            SampleStore.fill(records);
            assertThatThrownBy(() -> DailyBackups.today(records, backups(), LocalDate.parse("2026-06-01")))
                    .isInstanceOf(Failure.class)
                    .hasMessageContaining("cannot be written");
        }
        assertThat(names()).hasSize(21);
    }
}
