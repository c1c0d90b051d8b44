package boardside.app.cli;

import boardside.app.practice.TrialPlan;
import boardside.app.record.TrialDetail;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Deletes a trial. */
@Command(name = "delete", description = "Delete a trial; what was thrown for it stays, and restore brings it back.")
final class TrialDeleteCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(paramLabel = "NAME", description = "The trial.")
    private String name = "";

    TrialDeleteCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        int player = context.player().id();
        TrialDetail detail = context.records().trials().named(player, name);
        TrialPlan plan = detail.plan();
        context.records().trials().delete(player, plan.id(), true);
        context.answer(
                TrialAnswers.plan(detail),
                "Deleted: " + plan.name() + "; bring it back with: boardside trial restore \"" + plan.name() + "\"");
        return Cli.DONE;
    }
}
