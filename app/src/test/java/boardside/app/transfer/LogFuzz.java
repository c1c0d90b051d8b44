package boardside.app.transfer;

import boardside.app.fuzz.Fuzzed;
import boardside.app.practice.Failure;
import java.util.ArrayList;
import java.util.List;

/** The CSV log: faults by line and column, or a store that has it; what is written is read as it was. */
public final class LogFuzz {
    private LogFuzz() {}

    /** Opens the store before the time of the first input counts. */
    public static void fuzzerInitialize() {
        Fuzzed.records("log");
    }

    /** One input. */
    public static void fuzzerTestOneInput(byte[] data) {
        try {
            List<List<String>> rows = rows(Fuzzed.text(data));
            StringBuilder written = new StringBuilder();
            rows.forEach(row -> Csv.write(written, row));
            Fuzzed.same(rows, rows(written.toString()));
        } catch (Csv.Broken broken) {
            if (broken.line < 1 || broken.field < 1 || broken.fault.isBlank()) {
                throw new AssertionError("a fault without its place", broken);
            }
        }
        try {
            LogFiles.read(
                    Fuzzed.records("log"), 1, List.of(new LogFiles.Source("log.csv", data)), LogFiles.Progress.NONE);
        } catch (Failure.BadInput refused) {
            Fuzzed.refused(refused, Fuzzed.text(data));
            if (!refused.faults().get(0).startsWith("log.csv")) {
                throw new AssertionError("a fault without its place: " + refused.getMessage(), refused);
            }
        }
    }

    private static List<List<String>> rows(String text) throws Csv.Broken {
        Csv csv = new Csv(text);
        List<List<String>> rows = new ArrayList<>();
        for (Csv.Row row = csv.next(); row != null; row = csv.next()) {
            rows.add(row.fields());
        }
        return rows;
    }
}
