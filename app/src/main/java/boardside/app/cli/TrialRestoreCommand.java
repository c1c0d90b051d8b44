package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.practice.TrialPlan;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Brings a deleted trial back. */
@Command(name = "restore", description = "Bring a deleted trial back; of several of one name the newest.")
final class TrialRestoreCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(paramLabel = "NAME", description = "The trial.")
    private String name = "";

    TrialRestoreCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        int player = context.player().id();
        List<TrialPlan> gone = context.records().trials().deleted(player);
        TrialPlan plan = gone.stream()
                .filter(one -> one.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new Failure.NotFound("there is no deleted trial \"" + name + "\""
                        + (gone.isEmpty()
                                ? ""
                                : "; there are "
                                        + gone.stream().map(TrialPlan::name).collect(Collectors.joining(", ")))));
        TrialPlan back = context.records().trials().delete(player, plan.id(), false);
        context.answer(
                TrialAnswers.plan(
                        context.records().trials().find(player, plan.id()).orElseThrow()),
                back.name().equals(name)
                        ? "Back: " + name
                        : "Back: " + name + " is now " + back.name() + ", as another trial has its name");
        return Cli.DONE;
    }
}
