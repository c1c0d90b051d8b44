package boardside.app.cli;

import boardside.app.practice.Failure;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** Looks whether the store is sound. */
@Command(name = "check", description = "Look whether the store is sound: the file itself, and what it says.")
final class CheckCommand implements Callable<Integer> {
    private final Context context;

    CheckCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        List<String> faults;
        try {
            faults = context.soundRecords().check();
        } catch (Failure.StoreUnusable e) {
            if (!e.damaged()) {
                throw e;
            }
            faults = e.faults();
        }
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("sound", faults.isEmpty());
        answer.put("faults", faults);
        faults.forEach(context.surroundings().err()::println);
        context.answer(
                answer,
                faults.isEmpty()
                        ? context.records().location() + " is sound."
                        : "The store has " + Words.count(faults.size(), "fault")
                                + "; bring back the latest backup with restore --force.");
        return faults.isEmpty() ? Cli.DONE : Cli.NO;
    }
}
