package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import boardside.app.record.ImportResult;
import boardside.app.transfer.LogFiles;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Takes in logs in the CSV format. */
@Command(name = "import", description = "Take in logs in the CSV format; at any fault nothing is stored.")
final class ImportCommand implements Callable<Integer> {
    private static final int KEPT_SHOWN = 5;

    private final Context context;

    @Parameters(arity = "1..*", paramLabel = "FILE", description = "CSV files; - reads standard input.")
    private List<String> files = List.of();

    ImportCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        List<LogFiles.Source> logs = new ArrayList<>();
        List<String> faults = new ArrayList<>();
        for (String file : files) {
            try {
                logs.add(new LogFiles.Source(
                        file,
                        file.equals("-")
                                ? context.surroundings().in().readAllBytes()
                                : Files.readAllBytes(Path.of(file))));
            } catch (IOException e) {
                faults.add(file + " cannot be read; check the path ("
                        + e.getClass().getSimpleName() + ")");
            }
        }
        if (!faults.isEmpty()) {
            throw new Failure.BadInput(faults);
        }
        Player player = context.writingPlayer();
        LogFiles.Imported imported;
        try (Bar bar = new Bar(context)) {
            imported = LogFiles.read(context.records(), player.id(), logs, bar);
        }
        tell(imported);
        return Cli.DONE;
    }

    private void tell(LogFiles.Imported imported) {
        ImportResult.Stored stored = imported.stored();
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("rows", imported.rows());
        answer.put("newRuns", stored.runs());
        answer.put("newRounds", stored.rounds());
        answer.put("knownRounds", stored.known());
        answer.put("newBags", stored.bags());
        answer.put("kept", stored.kept());
        answer.put("deleted", stored.deleted());
        List<String> words = new ArrayList<>();
        words.add(Words.count(imported.rows(), "row") + " read: " + Words.count(stored.runs(), "new run") + ", "
                + Words.count(stored.rounds(), "new round") + ", " + Words.count(stored.known(), "round")
                + " known before");
        if (!stored.bags().isEmpty()) {
            words.add("New bag sets: " + String.join(", ", stored.bags()));
        }
        several(words, "kept as corrected in the store, not as in the log", stored.kept());
        several(
                words,
                "deleted in the store, and stay so",
                stored.deleted().stream().map(run -> "run " + run).toList());
        context.answer(answer, context.quiet() ? "" : String.join("\n", words));
    }

    private static void several(List<String> words, String what, List<String> things) {
        if (things.isEmpty()) {
            return;
        }
        words.add(things.size() + " " + what + ":");
        things.stream().limit(KEPT_SHOWN).forEach(thing -> words.add("  " + thing));
        if (things.size() > KEPT_SHOWN) {
            words.add("  and " + (things.size() - KEPT_SHOWN) + " more");
        }
    }
}
