package boardside.app.transfer;

import boardside.app.practice.Line;
import boardside.app.practice.Moment;
import boardside.app.record.LineDifference;
import boardside.app.record.LogRun;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Side;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.IntConsumer;
import org.jspecify.annotations.Nullable;

/** Reads logs in the CSV format and gathers their rows into runs, with every fault by line and column. */
final class LogReader {
    private final Faults faults;
    private final Map<String, Gathered> runs = new LinkedHashMap<>();
    private final Map<String, String> repeated = new HashMap<>();
    private int rows;

    LogReader(Faults faults) {
        this.faults = faults;
    }

    /** Rows read so far, without headers. */
    int rows() {
        return rows;
    }

    /** The runs of all files read. Whole only where there were no faults. */
    List<LogRun> runs() {
        return runs.values().stream().map(Gathered::run).toList();
    }

    /**
     * Reads one file.
     *
     * @param file name to call it by
     * @param progress told how many characters have been read
     */
    void read(String file, byte[] bytes, IntConsumer progress) {
        Optional<String> text = text(file, bytes);
        if (text.isEmpty()) {
            return;
        }
        Csv csv = new Csv(text.get());
        int header = 0;
        try {
            Csv.Row row = csv.next();
            if (row == null) {
                faults.add(file + ": the file is empty; the first line names the columns "
                        + String.join(",", LogColumns.ALWAYS));
                return;
            }
            header = row.fields().size();
            Optional<int[]> places = places(file, row);
            if (places.isEmpty()) {
                return;
            }
            while (true) {
                row = csv.next();
                if (row == null) {
                    return;
                }
                rows++;
                new LogRow(this, faults, new LogRun.Source(file, row.line()), row.fields(), places.get(), header)
                        .read();
                progress.accept(csv.position());
            }
        } catch (Csv.Broken broken) {
            faults.add(new LogRun.Source(file, broken.line), String.valueOf(broken.field), broken.fault);
        }
    }

    private Optional<String> text(String file, byte[] bytes) {
        int start = bytes.length >= 3 && bytes[0] == (byte) 0xEF && bytes[1] == (byte) 0xBB && bytes[2] == (byte) 0xBF
                ? 3
                : 0;
        ByteBuffer in = ByteBuffer.wrap(bytes, start, bytes.length - start);
        CharBuffer out = CharBuffer.allocate(bytes.length - start + 1);
        CharsetDecoder decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        CoderResult result = decoder.decode(in, out, true);
        int broken = result.isError() ? in.position() : -1;
        for (int i = start; broken < 0 && i < bytes.length; i++) {
            broken = bytes[i] == 0 ? i : -1;
        }
        if (broken < 0) {
            return Optional.of(out.flip().toString());
        }
        int line = 1;
        int column = 1;
        for (int i = start; i < broken; i++) {
            if (bytes[i] == '\n') {
                line++;
                column = 1;
            } else if (bytes[i] == ',') {
                column++;
            }
        }
        faults.add(
                new LogRun.Source(file, line),
                String.valueOf(column),
                "not text: byte %02x cannot stand here; save the file as CSV in UTF-8".formatted(bytes[broken] & 0xff));
        return Optional.empty();
    }

    /** For each column of the format, the place of its field in a row, or -1. */
    private Optional<int[]> places(String file, Csv.Row header) {
        int[] places = new int[LogColumns.ALL.size()];
        Arrays.fill(places, -1);
        boolean sound = true;
        for (int i = 0; i < header.fields().size(); i++) {
            String name = header.fields().get(i);
            int column = LogColumns.ALL.indexOf(name);
            String fault = column < 0
                    ? "\"" + name + "\" is no column of the log; those are " + String.join(",", LogColumns.ALL)
                    : places[column] >= 0 ? "\"" + name + "\" is given twice; leave one out" : "";
            if (fault.isEmpty()) {
                places[column] = i;
            } else {
                faults.add(new LogRun.Source(file, header.line()), String.valueOf(i + 1), fault);
                sound = false;
            }
        }
        for (String name : LogColumns.ALWAYS) {
            if (places[LogColumns.ALL.indexOf(name)] < 0) {
                faults.add(
                        new LogRun.Source(file, header.line()),
                        name,
                        "this column is missing; add it, blank where nothing is to be said");
                sound = false;
            }
        }
        return sound ? Optional.of(places) : Optional.empty();
    }

    /** One object for a text met again and again. */
    String once(String text) {
        return repeated.computeIfAbsent(text, same -> same);
    }

    /** What a row says of its run. */
    record Head(
            String run,
            String session,
            Moment start,
            Drill drill,
            String opponent,
            @Nullable Integer target,
            @Nullable Integer game,
            String trial,
            boolean warmUp) {}

    /** A run as gathered so far. */
    private static final class Gathered {
        private final Head head;
        private final LogRun.Source source;
        private final TreeMap<Integer, Map<Side, Map<Key, LogRun.LogLine>>> rounds = new TreeMap<>();

        Gathered(Head head, LogRun.Source source) {
            this.head = head;
            this.source = source;
        }

        LogRun run() {
            List<LogRun.LogRound> all = new ArrayList<>();
            rounds.forEach((number, sides) -> sides.forEach(
                    (side, lines) -> all.add(new LogRun.LogRound(number, side, List.copyOf(lines.values())))));
            return new LogRun(
                    head.run(),
                    head.session(),
                    head.drill(),
                    head.start(),
                    head.opponent(),
                    head.target(),
                    head.game(),
                    head.trial(),
                    head.warmUp(),
                    source,
                    all);
        }
    }

    private record Key(String bag, @Nullable Face face) {}

    /** Adds a row that is sound in itself. */
    void add(LogRow row, Head head, int number, Side side, Line line) {
        Gathered run = runs.computeIfAbsent(head.run(), id -> new Gathered(head, row.source()));
        if (!agrees(row, run, head)) {
            return;
        }
        Map<Key, LogRun.LogLine> lines = run.rounds
                .computeIfAbsent(number, made -> new TreeMap<>())
                .computeIfAbsent(side, made -> new LinkedHashMap<>(2));
        Key key = new Key(line.bag(), line.face());
        LogRun.LogLine known = lines.get(key);
        if (known != null) {
            LineDifference.between(line, known.line(), where(row, known.source()) + " has")
                    .ifPresent(difference -> row.fault(
                            difference.column(),
                            difference.message() + " for the same run, round, side, bag and face; leave one out"));
            return;
        }
        int bags = line.thrown();
        for (LogRun.LogLine other : lines.values()) {
            bags += other.line().thrown();
        }
        if (bags > head.drill().mostBags()) {
            row.fault(
                    lines.isEmpty() && line.in() == null || line.on() == null ? "thrown" : "in",
                    bags + " bags of one side in round " + number + "; a round of "
                            + head.drill().word() + " has at most "
                            + head.drill().mostBags());
            return;
        }
        lines.put(key, new LogRun.LogLine(line, row.source()));
    }

    private static String where(LogRow row, LogRun.Source other) {
        return (row.source().file().equals(other.file()) ? "" : other.file() + ", ") + "line " + other.line();
    }

    private static boolean agrees(LogRow row, Gathered run, Head head) {
        Head first = run.head;
        return same(row, run, "started_at", head.start().text(), first.start().text())
                & same(row, run, "drill", head.drill().word(), first.drill().word())
                & same(row, run, "session", head.session(), first.session())
                & same(row, run, "opponent", head.opponent(), first.opponent())
                & same(row, run, "target", head.target(), first.target())
                & same(row, run, "game", head.game(), first.game())
                & same(row, run, "trial", head.trial(), first.trial())
                & same(row, run, "warm_up", head.warmUp() ? "yes" : "", first.warmUp() ? "yes" : "");
    }

    private static boolean same(
            LogRow row, Gathered run, String column, @Nullable Object said, @Nullable Object first) {
        if (Objects.equals(said, first)) {
            return true;
        }
        row.fault(
                column,
                "\"" + Objects.toString(said, "") + "\", but " + where(row, run.source) + " has \""
                        + Objects.toString(first, "") + "\" for the same run; a run has one");
        return false;
    }
}
