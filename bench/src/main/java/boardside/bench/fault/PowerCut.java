package boardside.bench.fault;

import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a loss of power may leave on a disk, worked out from the calls by which a program wrote to it: what was synced is there;
 * of what was written since, any sector may be there and any may not, in whatever order they were written. A file that was
 * begun or removed since its folder was synced may be there or not.
 *
 * <p>This is what POSIX promises of fsync, and no more; disks that lose what they said they had are beyond it. That a sector is
 * written wholly or not at all is what SQLite takes for granted too (sqlite.org/psow.html).
 */
final class PowerCut {
    private static final int SECTOR = 512;
    private static final String CALLS =
            "pwrite64,pwritev,write,ftruncate,fallocate,fsync,fdatasync,unlink,unlinkat,rename";
    private static final Pattern LINE = Pattern.compile("(\\d+) +(\\d+)\\.(\\d{6}) (.*)");
    private static final Pattern RESUMED = Pattern.compile("<\\.\\.\\. \\w+ resumed>(.*)");
    private static final Pattern CALL = Pattern.compile("(\\w+)\\((.*)\\) += (-?\\d+).*");
    private static final Pattern FILE = Pattern.compile("\\d+<([^>]*)>");
    private static final String UNFINISHED = " <unfinished ...>";

    /** Something a program did to a file. */
    private enum Kind {
        WRITE,
        TRUNCATE,
        REMOVE,
        SYNC
    }

    /**
     * A call that came to its end.
     *
     * @param micros since 1970, when it began
     * @param path of the file or folder
     * @param at where bytes are written, or the length to cut to
     * @param bytes that are written
     * @param since of a sync: how many calls had ended when it began
     */
    private record Call(long micros, Kind kind, String path, long at, byte[] bytes, int since) {}

    private record Begun(long micros, String text, int since) {}

    private final String folder;
    private final List<Call> calls = new ArrayList<>();

    /**
     * Reads a trace of a program that began with an empty folder.
     *
     * @param folder where all its files are
     * @param trace as {@link #traced} has it written
     * @throws IllegalStateException for a call that is not known here
     */
    PowerCut(Path folder, Path trace) throws IOException {
        this.folder = folder.toString();
        Map<String, Begun> begun = new HashMap<>();
        try (BufferedReader lines = Files.newBufferedReader(trace, StandardCharsets.ISO_8859_1)) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                Matcher parts = LINE.matcher(line);
                if (!parts.matches()) {
                    throw new IllegalStateException("no line of a trace: " + shortened(line));
                }
                String thread = parts.group(1);
                String text = parts.group(4);
                Begun call = new Begun(Long.parseLong(parts.group(2) + parts.group(3)), text, calls.size());
                Matcher resumed = RESUMED.matcher(text);
                if (text.endsWith(UNFINISHED)) {
                    String start = text.substring(0, text.length() - UNFINISHED.length());
                    begun.put(thread, new Begun(call.micros, start, call.since));
                } else if (resumed.matches()) {
                    Begun start = begun.remove(thread);
                    if (start == null) {
                        throw new IllegalStateException("the end of a call that never began: " + shortened(line));
                    }
                    add(new Begun(start.micros, start.text + resumed.group(1), start.since));
                } else if (!text.startsWith("+++")) {
                    add(call);
                }
            }
        }
    }

    /** The command that runs a program and writes down what it does to a store and its folder; wants strace. */
    static List<String> traced(List<String> command, Path folder, Path store, Path trace) {
        List<String> line = new ArrayList<>(List.of("strace", "-f", "-qq", "--seccomp-bpf", "-ttt", "-xx", "-y"));
        line.addAll(List.of("-s", "1000000", "-e", "signal=none", "-e", "trace=" + CALLS, "-o", trace.toString()));
        for (String end : List.of("", "-wal", "-journal")) {
            line.addAll(List.of("-P", store + end));
        }
        line.addAll(List.of("-P", folder.toString()));
        line.addAll(command);
        return line;
    }

    private static String shortened(String line) {
        return line.substring(0, Math.min(200, line.length()));
    }

    private void add(Begun begun) {
        Matcher call = CALL.matcher(begun.text);
        if (!call.matches()) {
            throw new IllegalStateException("no call: " + shortened(begun.text));
        }
        long result = Long.parseLong(call.group(3));
        if (result < 0) {
            return;
        }
        String[] given = call.group(2).split(", ");
        Matcher file = FILE.matcher(given[0]);
        String path = text(bytes(file.matches() ? file.group(1) : given[0]));
        calls.add(
                switch (call.group(1)) {
                    case "pwrite64" ->
                        new Call(
                                begun.micros,
                                Kind.WRITE,
                                path,
                                Long.parseLong(given[3]),
                                Arrays.copyOf(bytes(given[1]), (int) result),
                                0);
                    case "ftruncate" ->
                        new Call(begun.micros, Kind.TRUNCATE, path, Long.parseLong(given[1]), new byte[0], 0);
                    case "unlink" -> new Call(begun.micros, Kind.REMOVE, path, 0, new byte[0], 0);
                    case "fsync", "fdatasync" -> new Call(begun.micros, Kind.SYNC, path, 0, new byte[0], begun.since);
                    default -> throw new IllegalStateException("a call of another kind: " + call.group(1));
                });
    }

    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.UTF_8);
    }

    /** Bytes written as \x2f\x74, with or without quotation marks about them. */
    private static byte[] bytes(String escaped) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(escaped.length() / 4);
        for (int at = escaped.indexOf("\\x"); at >= 0; at = escaped.indexOf("\\x", at + 4)) {
            bytes.write(Integer.parseInt(escaped, at + 2, at + 4, 16));
        }
        return bytes.toByteArray();
    }

    /** How many calls there are. */
    int size() {
        return calls.size();
    }

    /** When a call began, in microseconds since 1970. */
    long micros(int call) {
        return calls.get(call).micros;
    }

    /** Whether a call touches a file. */
    boolean touches(int call, Path file) {
        return calls.get(call).path.equals(file.toString());
    }

    /**
     * Writes the files that may be left when the power goes in the middle of a call.
     *
     * @param cut which one, from 0 on
     * @param heeded syncs from this call on do nothing, as on a disk that lies
     * @param target an empty folder
     */
    void leave(int cut, int heeded, Path target, SplittableRandom random) throws IOException {
        Set<String> paths = new LinkedHashSet<>();
        for (Call call : calls.subList(0, cut + 1)) {
            if (!call.path.equals(folder)) {
                paths.add(call.path);
            }
        }
        // Some disks have written nearly all of it, some hardly anything.
        double share = random.nextInt(3) / 2.0;
        for (String path : paths) {
            int synced = synced(path, cut, heeded);
            int listed = Math.max(synced, synced(folder, cut, heeded));
            Left left = new Left();
            for (int i = 0; i <= cut; i++) {
                Call call = calls.get(i);
                if (!call.path.equals(path)) {
                    continue;
                }
                if (call.kind == Kind.REMOVE) {
                    if (i < listed || isBegunAgain(path, i, cut) || random.nextDouble() < share) {
                        left = new Left();
                    }
                } else if (call.kind != Kind.SYNC) {
                    left.exists |= i < listed || random.nextDouble() < share;
                    left.take(call, i < synced ? 1 : share, random);
                }
            }
            if (left.exists) {
                Files.write(target.resolve(Path.of(path).getFileName()), Arrays.copyOf(left.bytes, left.length));
            }
        }
    }

    /** How many calls had ended when the last sync began that a file or folder came through. */
    private int synced(String path, int cut, int heeded) {
        int synced = 0;
        for (int i = 0; i < Math.min(cut, heeded); i++) {
            Call call = calls.get(i);
            if (call.kind == Kind.SYNC && call.path.equals(path)) {
                synced = Math.max(synced, call.since);
            }
        }
        return synced;
    }

    private boolean isBegunAgain(String path, int removed, int cut) {
        return calls.subList(removed + 1, cut + 1).stream()
                .anyMatch(call -> call.path.equals(path) && call.kind != Kind.SYNC);
    }

    /** A file as the disk has it. */
    private static final class Left {
        private byte[] bytes = new byte[0];
        private int length;
        private boolean exists;

        /** Takes over what a call did, each sector with a chance. */
        void take(Call call, double chance, SplittableRandom random) {
            if (call.kind == Kind.TRUNCATE) {
                if (random.nextDouble() < chance) {
                    lengthen((int) call.at);
                    Arrays.fill(bytes, (int) call.at, length, (byte) 0);
                    length = (int) call.at;
                    exists = true;
                }
                return;
            }
            int from = 0;
            while (from < call.bytes.length) {
                int at = (int) call.at + from;
                int size = Math.min(SECTOR - at % SECTOR, call.bytes.length - from);
                if (random.nextDouble() < chance) {
                    lengthen(at + size);
                    System.arraycopy(call.bytes, from, bytes, at, size);
                    exists = true;
                }
                from += size;
            }
        }

        private void lengthen(int to) {
            if (to > bytes.length) {
                bytes = Arrays.copyOf(bytes, Math.max(to, 2 * bytes.length));
            }
            length = Math.max(length, to);
        }
    }
}
