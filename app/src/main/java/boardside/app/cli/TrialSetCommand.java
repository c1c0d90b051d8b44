package boardside.app.cli;

import boardside.app.practice.TrialPlan;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Pauses, resumes or stops a trial. */
@Command(description = "Lay a trial aside, go on with it, or give it up.")
final class TrialSetCommand implements Callable<Integer> {
    private final Context context;
    private final TrialPlan.State state;
    private final String done;

    @Parameters(paramLabel = "NAME", description = "The trial.")
    private String name = "";

    TrialSetCommand(Context context, TrialPlan.State state, String done) {
        this.context = context;
        this.state = state;
        this.done = done;
    }

    @Override
    public Integer call() {
        int player = context.player().id();
        TrialPlan plan = context.records().trials().named(player, name).plan();
        context.records().trials().set(player, plan.id(), state);
        context.answer(
                TrialAnswers.plan(
                        context.records().trials().find(player, plan.id()).orElseThrow()),
                done + ": " + plan.name());
        return Cli.DONE;
    }
}
