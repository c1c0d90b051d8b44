package boardside.app.cli;

import boardside.app.record.TrialOutlook;
import boardside.engine.trial.Outlook;
import boardside.engine.trial.TrialDesign;
import java.time.LocalDate;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What a trial will probably take. */
@Command(name = "outlook", description = "How many rounds a trial will probably take, by your own swings and pace.")
final class TrialOutlookCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(arity = "0..1", paramLabel = "NAME", description = "A trial; without it, one of --candidates.")
    private @Nullable String name;

    @Option(names = "--candidates", paramLabel = "N", description = "How many ways to throw, 2 (usual) to 8.")
    private int candidates = 2;

    @Option(names = "--blocks", paramLabel = "N", description = "Most blocks: 25, 50 (usual), 100 or 200.")
    private int blocks = TrialDesign.USUAL_LENGTH;

    TrialOutlookCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        String named = name;
        TrialDesign design = named == null
                ? OddsInputs.checked(
                        "--candidates, --blocks",
                        () -> new TrialDesign(candidates, blocks, TrialDesign.USUAL_MARGIN, 0))
                : TrialCommand.named(context, named).plan().design();
        Outlook outlook = TrialOutlook.of(
                context.records(),
                context.player().id(),
                LocalDate.now(context.surroundings().clock()),
                design);
        context.answer(TrialAnswers.outlook(outlook), outlook.sentence());
        return Cli.DONE;
    }
}
