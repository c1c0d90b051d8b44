package boardside.app.cli;

import boardside.app.practice.TrialPlan;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Gives a trial another name. */
@Command(name = "rename", description = "Give a trial another name.")
final class TrialRenameCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(index = "0", paramLabel = "NAME", description = "The trial.")
    private String name = "";

    @Parameters(index = "1", paramLabel = "NEW", description = "Its new name.")
    private String other = "";

    TrialRenameCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        int player = context.player().id();
        TrialPlan plan = context.records().trials().named(player, name).plan();
        TrialPlan renamed = context.records().trials().rename(player, plan.id(), other);
        context.answer(
                TrialAnswers.plan(
                        context.records().trials().find(player, plan.id()).orElseThrow()),
                "Renamed: " + plan.name() + " is now " + renamed.name());
        return Cli.DONE;
    }
}
