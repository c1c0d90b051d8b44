package boardside.app.transfer;

import boardside.app.practice.Failure;
import boardside.app.record.Records;
import boardside.app.watch.Metrics;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.time.temporal.IsoFields;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A backup a day while a server runs, each read back before an older one goes. Kept are the last {@value #DAYS} and the
 * last one of each of the last {@value #WEEKS} weeks that have one (ISO 8601 weeks). Files of other names are left alone.
 */
public final class DailyBackups implements AutoCloseable {
    /** How many of the latest are kept, one a day. */
    public static final int DAYS = 7;

    /** How many weeks keep their last. */
    public static final int WEEKS = 8;

    private static final Logger LOG = LoggerFactory.getLogger(DailyBackups.class);
    private static final String BEFORE = "boardside-";
    private static final String AFTER = ".jsonl.gz";
    private static final long STOP_SECONDS = 5;

    private final Records records;
    private final Path folder;
    private final Clock clock;
    private final Metrics metrics;
    private final ScheduledExecutorService worker = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread thread = new Thread(work, "backups");
        thread.setDaemon(true);
        return thread;
    });

    /** A backup and the day it was made. */
    private record Dated(LocalDate day, Path file) {}

    private DailyBackups(Records records, Path folder, Clock clock, Metrics metrics) {
        this.records = records;
        this.folder = folder;
        this.clock = clock;
        this.metrics = metrics;
    }

    /** Makes today's backup soon, if there is none, and looks again every hour. */
    public static DailyBackups start(Records records, Path folder, Clock clock, Metrics metrics) {
        DailyBackups backups = new DailyBackups(records, folder, clock, metrics);
        // Not in the way of a start.
        backups.worker.scheduleWithFixedDelay(backups::look, 60, 3600, TimeUnit.SECONDS);
        return backups;
    }

    /** The newest automatic backup in a folder. */
    public static Optional<Path> newest(Path folder) {
        return in(folder).stream().findFirst().map(Dated::file);
    }

    private void look() {
        try {
            today(records, folder, LocalDate.now(clock)).ifPresent(file -> {
                metrics.backupWritten(clock.instant());
                LOG.info("Backed up and read back: {}", file);
            });
        } catch (RuntimeException e) {
            // Tried again in an hour. Nothing of this may end the worker.
            metrics.backupFailed();
            if (e instanceof Failure) {
                LOG.error("No backup was made: {}", e.getMessage());
            } else {
                LOG.error("No backup was made", e);
            }
        }
    }

    /**
     * Makes a day's backup where there is none and something is recorded, then removes those that are not kept.
     *
     * @return the backup, if one was made
     * @throws Failure if it cannot be written or read back; all earlier ones are still there
     */
    static Optional<Path> today(Records records, Path folder, LocalDate day) {
        Path file = folder.resolve(BEFORE + day + AFTER);
        // An empty store is no reason to let backups of a full one go.
        if (Files.exists(file) || records.isEmpty()) {
            return Optional.empty();
        }
        try {
            Backups.makePrivate(folder);
        } catch (IOException e) {
            throw new Failure.BadInput("the folder for backups, " + folder + ", cannot be made (" + e + ")");
        }
        Backups.write(records, file, LogFiles.Progress.NONE);
        for (Dated gone : superfluous(in(folder))) {
            try {
                Files.deleteIfExists(gone.file());
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return Optional.of(file);
    }

    /** Of backups, the latest first, those that are neither among the last days nor the last of a kept week. */
    private static List<Dated> superfluous(List<Dated> all) {
        List<Dated> gone = new ArrayList<>();
        Set<String> weeks = new HashSet<>();
        for (int i = 0; i < all.size(); i++) {
            LocalDate day = all.get(i).day();
            boolean lastOfItsWeek =
                    weeks.add(day.get(IsoFields.WEEK_BASED_YEAR) + "-" + day.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR));
            if (i >= DAYS && !(lastOfItsWeek && weeks.size() <= WEEKS)) {
                gone.add(all.get(i));
            }
        }
        return gone;
    }

    private static List<Dated> in(Path folder) {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.flatMap(file -> dated(file).stream())
                    .sorted(Comparator.comparing(Dated::day).reversed())
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Optional<Dated> dated(Path file) {
        String name = file.getFileName().toString();
        if (!name.startsWith(BEFORE) || !name.endsWith(AFTER) || name.length() < BEFORE.length() + AFTER.length()) {
            return Optional.empty();
        }
        try {
            return Optional.of(
                    new Dated(LocalDate.parse(name.substring(BEFORE.length(), name.length() - AFTER.length())), file));
        } catch (DateTimeParseException e) {
            return Optional.empty();
        }
    }

    /** Waits a moment for a backup that is being written; one that takes longer is left unfinished under another name. */
    @Override
    public void close() {
        worker.shutdown();
        try {
            worker.awaitTermination(STOP_SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
