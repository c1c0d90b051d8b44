package boardside.app.cli;

import boardside.app.practice.TrialPlan;
import boardside.app.record.TrialDetail;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** All trials of a player. */
@Command(name = "list", description = "Your trials, with how they stand.")
final class TrialListCommand implements Callable<Integer> {
    private final Context context;

    TrialListCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        List<TrialDetail> all = context.records().trials().all(context.player().id());
        List<String> words = new ArrayList<>();
        for (TrialDetail detail : all) {
            TrialPlan plan = detail.plan();
            words.add(plan.name()
                    + (plan.state() == TrialPlan.State.OPEN
                            ? ": "
                            : " (" + plan.state().word() + "): ")
                    + detail.state().sentence());
        }
        context.answer(
                Map.of("trials", all.stream().map(TrialAnswers::status).toList()),
                words.isEmpty() ? "No trial yet." : String.join("\n", words));
        return all.isEmpty() ? Cli.NO : Cli.DONE;
    }
}
