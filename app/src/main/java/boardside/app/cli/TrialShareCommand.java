package boardside.app.cli;

import boardside.app.practice.BagSet;
import boardside.app.record.SharedTrial;
import boardside.app.record.TrialDetail;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** A trial's set-up for somebody else. */
@Command(name = "share", description = "The set-up as JSON, for: boardside trial new --from FILE.")
final class TrialShareCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(arity = "0..1", paramLabel = "NAME", description = "The trial; the only open one unless said.")
    private @Nullable String name;

    TrialShareCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        TrialDetail detail = TrialCommand.named(context, name);
        SharedTrial shared = SharedTrial.of(
                detail.plan(),
                context.records().bags(context.player().id()).stream()
                        .collect(Collectors.toMap(BagSet::id, BagSet::name)));
        context.answer(shared, shared.text());
        return Cli.DONE;
    }
}
