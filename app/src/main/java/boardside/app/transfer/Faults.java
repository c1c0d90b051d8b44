package boardside.app.transfer;

import boardside.app.practice.Failure;
import boardside.app.record.LogRun;
import java.util.ArrayList;
import java.util.List;

/** Faults of a log: the first {@value #SHOWN} in words, the rest counted. */
final class Faults {
    private static final int SHOWN = 20;

    private final List<String> shown = new ArrayList<>();
    private int count;

    /**
     * Adds a fault.
     *
     * @param column number and name, or number, of the column
     */
    void add(LogRun.Source source, String column, String message) {
        add(source.file() + ", line " + source.line() + ", column " + column + ": " + message);
    }

    /** Adds a fault of a whole file. */
    void add(String fault) {
        if (count < SHOWN) {
            shown.add(fault);
        }
        count++;
    }

    boolean isEmpty() {
        return count == 0;
    }

    /** Nothing happens without faults. */
    void raise() {
        if (count == 0) {
            return;
        }
        List<String> lines = new ArrayList<>(shown);
        if (count > shown.size()) {
            int more = count - shown.size();
            lines.add("and " + more + (more == 1 ? " more fault" : " more faults") + "; nothing was stored");
        }
        throw new Failure.BadInput(lines);
    }
}
