package boardside.app.transfer;

import boardside.app.practice.Failure;
import boardside.app.record.Records;
import boardside.app.transfer.LogFiles.Progress;
import java.io.BufferedInputStream;
import java.io.BufferedReader;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Set;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipException;

/**
 * Backups: all that players recorded, as JSON Lines in gzip. The same file restores into an SQLite file and into
 * PostgreSQL. Paired devices are not in it.
 */
public final class Backups {
    private Backups() {}

    /** What a backup holds. */
    public record Contents(int players, int bags, int sessions, int runs, int rounds, long bagsThrown) {
        static Contents of(JsonLines.Counts counts) {
            return new Contents(
                    counts.players(),
                    counts.bags(),
                    counts.sessions(),
                    counts.runs(),
                    counts.rounds(),
                    counts.bagsThrown());
        }
    }

    /** Writes one player's records, without deleted runs and history, as JSON Lines. */
    public static void export(Records records, int player, Appendable out) {
        records.snapshot(
                snapshot -> JsonLines.write(snapshot, one -> one.id() == player, false, false, out, Progress.NONE));
    }

    /** The same, with the seasons that are run here, which are nobody's. */
    public static void exportWithSeasons(Records records, int player, Appendable out) {
        records.snapshot(
                snapshot -> JsonLines.write(snapshot, one -> one.id() == player, false, true, out, Progress.NONE));
    }

    /**
     * Writes a backup as of one moment (others may write meanwhile), reads it back whole, and only then puts it in place.
     *
     * @throws Failure.BadInput if the file cannot be written, or exists and is no backup
     */
    public static Contents write(Records records, Path file, Progress progress) {
        if (Files.exists(file) && !isBackup(file)) {
            throw new Failure.BadInput(file + " exists and is no backup of Boardside; give another name");
        }
        Path part = file.resolveSibling(file.getFileName() + ".part");
        try {
            Files.deleteIfExists(part);
            JsonLines.Counts written;
            try (FileChannel channel = FileChannel.open(
                            part, Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE), mode("rw-------"));
                    OutputStream bytes = new GZIPOutputStream(Channels.newOutputStream(channel), 1 << 16);
                    Writer out = new OutputStreamWriter(bytes, StandardCharsets.UTF_8)) {
                written = records.snapshot(
                        snapshot -> JsonLines.write(snapshot, player -> true, true, true, out, progress));
                out.close();
            }
            try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
                channel.force(true);
            }
            try (BufferedReader in = open(part)) {
                if (!JsonLines.read(part.toString(), in, null, progress).equals(written)) {
                    throw new IOException("what was read back differs from what was written");
                }
            }
            Files.move(part, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            return Contents.of(written);
        } catch (IOException | UncheckedIOException e) {
            throw new Failure.BadInput(
                    "the backup " + file + " cannot be written; check that its folder exists and has room (" + e + ")");
        } finally {
            deleteQuietly(part);
        }
    }

    private static void deleteQuietly(Path part) {
        try {
            Files.deleteIfExists(part);
        } catch (IOException e) {
            // It is in nobody's way.
        }
    }

    private static FileAttribute<?>[] mode(String permissions) {
        return FileSystems.getDefault().supportedFileAttributeViews().contains("posix")
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(permissions))
                }
                : new FileAttribute<?>[0];
    }

    /**
     * Replaces all that is recorded by what a backup holds; at any fault the store is as before.
     *
     * @param force also where something is recorded
     * @throws Failure.BadInput if the file is missing or damaged, or something is recorded and {@code force} is not set
     */
    public static Contents restore(Records records, Path file, boolean force, Progress progress) {
        if (!Files.isRegularFile(file)) {
            throw new Failure.BadInput("there is no file " + file + "; give the path of a backup");
        }
        try (BufferedReader in = open(file)) {
            return Contents.of(records.refill(force, refill -> JsonLines.read(file.toString(), in, refill, progress)));
        } catch (IOException e) {
            throw unreadable(file, e);
        }
    }

    /**
     * Reads a backup whole and keeps nothing of it.
     *
     * @throws Failure.BadInput if the file is missing or damaged
     */
    public static Contents read(Path file, Progress progress) {
        if (!Files.isRegularFile(file)) {
            throw new Failure.BadInput("there is no file " + file + "; give the path of a backup");
        }
        try (BufferedReader in = open(file)) {
            return Contents.of(JsonLines.read(file.toString(), in, null, progress));
        } catch (IOException e) {
            throw unreadable(file, e);
        }
    }

    private static Failure.BadInput unreadable(Path file, IOException e) {
        boolean damaged = e instanceof ZipException || e instanceof EOFException;
        return new Failure.BadInput(
                file + (damaged ? " is damaged or cut short; use another backup" : " cannot be read (" + e + ")"));
    }

    /** Makes a folder, and those above it, that this user alone may look into. */
    static void makePrivate(Path folder) throws IOException {
        Files.createDirectories(folder, mode("rwx------"));
    }

    private static boolean isBackup(Path file) {
        try (BufferedReader in = open(file)) {
            String first = in.readLine();
            return first != null && first.startsWith("{\"kind\":\"boardside\"");
        } catch (IOException e) {
            return false;
        }
    }

    private static BufferedReader open(Path file) throws IOException {
        InputStream bytes = new BufferedInputStream(Files.newInputStream(file), 1 << 16);
        try {
            bytes.mark(2);
            boolean gzip = bytes.read() == 0x1f && bytes.read() == 0x8b;
            bytes.reset();
            InputStream text = gzip ? new GZIPInputStream(bytes, 1 << 16) : bytes;
            return new BufferedReader(new InputStreamReader(text, StandardCharsets.UTF_8.newDecoder()), 1 << 16);
        } catch (IOException | RuntimeException e) {
            bytes.close();
            throw e;
        }
    }
}
