package boardside.app.cli;

import boardside.app.practice.TrialPlan;
import boardside.app.record.TrialDetail;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** Fair comparisons of ways to throw. */
@Command(name = "trial", description = "Fair comparisons of bags, faces and approaches.")
final class TrialCommand extends Family {
    private TrialCommand() {
        super("say what about trials");
    }

    /** The command with all it can do. */
    static CommandLine in(Context context) {
        CommandLine line = new TrialCommand()
                .with(List.of(
                        new TrialListCommand(context),
                        new TrialNewCommand(context),
                        new TrialOutlookCommand(context),
                        new TrialNextCommand(context),
                        new TrialStatusCommand(context),
                        new TrialShareCommand(context),
                        new TrialRenameCommand(context),
                        new TrialDeleteCommand(context),
                        new TrialRestoreCommand(context)));
        line.addSubcommand("pause", new TrialSetCommand(context, TrialPlan.State.PAUSED, "Paused"));
        line.addSubcommand("resume", new TrialSetCommand(context, TrialPlan.State.OPEN, "Resumed"));
        line.addSubcommand("stop", new TrialSetCommand(context, TrialPlan.State.STOPPED, "Stopped"));
        return line;
    }

    /** The trial of a name, or the only open one where none is named. */
    static TrialDetail named(Context context, @Nullable String name) {
        int player = context.player().id();
        if (name != null) {
            return context.records().trials().named(player, name);
        }
        List<TrialDetail> open = context.records().trials().all(player).stream()
                .filter(detail -> detail.plan().state() == TrialPlan.State.OPEN)
                .toList();
        if (open.size() == 1) {
            return open.get(0);
        }
        throw open.isEmpty()
                ? new boardside.app.practice.Failure.NotFound(
                        "there is no open trial; make one with: boardside trial new NAME --candidate BAG --candidate BAG")
                : new boardside.app.practice.Failure.BadInput("there are several open trials; name one of "
                        + open.stream()
                                .map(detail -> detail.plan().name())
                                .collect(java.util.stream.Collectors.joining(", ")));
    }
}
