package boardside.app.transfer;

import boardside.app.practice.BagSet;
import boardside.app.practice.Failure;
import boardside.app.practice.Line;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.record.ImportResult;
import boardside.app.record.LogRun;
import boardside.app.record.Records;
import boardside.app.record.Snapshot;
import boardside.app.record.StoredRun;
import boardside.engine.rules.Word;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Logs in the CSV format: into the store, and out of it. */
public final class LogFiles {
    private LogFiles() {}

    /** A log to be read. */
    public record Source(String name, byte[] bytes) {}

    /** Told how far a long work has got. */
    public interface Progress {
        /** Shows nothing. */
        Progress NONE = (what, done, all) -> {};

        /**
         * @param what what is being done, in a word
         * @param done how much of it is done
         * @param all how much there is
         */
        void at(String what, long done, long all);
    }

    /** What an import did: rows read, and what became of them. */
    public record Imported(int rows, ImportResult.Stored stored) {}

    /**
     * Reads logs and stores all that is new in them; at any fault nothing is stored.
     *
     * @throws Failure.BadInput with the first faults by line and column, and how many more there are
     */
    public static Imported read(Records records, int player, List<Source> logs, Progress progress) {
        Faults faults = new Faults();
        LogReader reader = new LogReader(faults);
        long all = logs.stream().mapToLong(log -> log.bytes().length).sum();
        long before = 0;
        for (Source log : logs) {
            long start = before;
            reader.read(log.name(), log.bytes(), read -> progress.at("reading", start + read, all));
            before += log.bytes().length;
        }
        faults.raise();
        List<LogRun> runs = reader.runs();
        int rounds = runs.stream().mapToInt(run -> run.rounds().size()).sum();
        ImportResult result = records.importRuns(player, runs, done -> progress.at("storing", done, rounds));
        if (result instanceof ImportResult.Refused refused) {
            refused.faults().stream()
                    .sorted(Comparator.comparing(
                                    (ImportResult.Fault fault) -> fault.source().file())
                            .thenComparing(fault -> fault.source().line()))
                    .forEach(fault -> faults.add(fault.source(), fault.column(), fault.message()));
            faults.raise();
        }
        return new Imported(reader.rows(), (ImportResult.Stored) result);
    }

    /** Writes a player's log: sorted by started_at, run, round, side, bag, face; columns nobody uses left out. */
    public static void write(Records records, int player, Appendable out) {
        records.snapshot(snapshot -> {
            BitSet used = new BitSet();
            used.set(0, LogColumns.ALWAYS.size());
            eachRow(snapshot, player, row -> {
                for (int i = LogColumns.ALWAYS.size(); i < row.length; i++) {
                    used.set(i, used.get(i) || !row[i].isEmpty());
                }
            });
            append(out, used, LogColumns.ALL.toArray(new String[0]));
            eachRow(snapshot, player, row -> append(out, used, row));
            return player;
        });
    }

    private static void append(Appendable out, BitSet used, String[] row) {
        List<String> fields = new ArrayList<>(row.length);
        used.stream().forEach(i -> fields.add(row[i]));
        StringBuilder line = new StringBuilder();
        Csv.write(line, fields);
        try {
            out.append(line);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private interface Rows {
        void row(String[] fields);
    }

    private static void eachRow(Snapshot snapshot, int player, Rows rows) {
        Map<String, String> bags = snapshot.bags(player).stream().collect(Collectors.toMap(BagSet::id, BagSet::name));
        snapshot.eachRun(player, stored -> {
            if (stored.deletedAt() != null) {
                return;
            }
            List<Round> rounds = new ArrayList<>(
                    stored.rounds().stream().map(StoredRun.StoredRound::round).toList());
            rounds.sort(Comparator.comparingInt(Round::number)
                    .thenComparing(round -> round.side().word()));
            for (Round round : rounds) {
                List<Line> lines = new ArrayList<>(round.lines());
                lines.sort(Comparator.comparing((Line line) -> bags.getOrDefault(line.bag(), ""))
                        .thenComparing(line -> word(line.face())));
                for (Line line : lines) {
                    rows.row(row(stored.run(), round, line, bags.getOrDefault(line.bag(), "")));
                }
            }
        });
    }

    private static String[] row(Run run, Round round, Line line, String bag) {
        return new String[] {
            run.session(),
            run.id(),
            run.startedAt(),
            run.drill().word(),
            String.valueOf(round.number()),
            round.side().word(),
            bag,
            word(line.face()),
            word(line.approach()),
            line.board().word(),
            line.setting().word(),
            number(line.ghost()),
            number(line.in()),
            number(line.on()),
            number(line.off()),
            line.on() == null ? String.valueOf(line.thrown()) : "",
            word(line.conditions()),
            run.opponent(),
            number(run.target()),
            number(run.game()),
            run.trial(),
            run.warmUp() ? "yes" : "",
            line.at(),
            number(line.misses().left()),
            number(line.misses().right()),
            number(line.misses().shortOf()),
            number(line.misses().past()),
            line.note(),
        };
    }

    private static String word(@Nullable Word word) {
        return word == null ? "" : word.word();
    }

    private static String number(@Nullable Integer number) {
        return number == null ? "" : number.toString();
    }
}
