package boardside.app.cli;

import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Exact chances, from given chances of one bag or from those that records show; opens the store only for these. */
@Command(
        name = "odds",
        synopsisSubcommandLabel = "QUESTION",
        description =
                "Exact chances: races, totals, the climb, league matches, head starts, what a better bag is worth.")
final class OddsCommand implements Callable<Integer> {
    @Spec
    private @Nullable CommandSpec spec;

    private OddsCommand() {}

    /** The command with its questions. */
    static CommandLine in(Context context) {
        CommandLine line = new CommandLine(new OddsCommand());
        for (Callable<Integer> question : List.of(
                new RaceQuestion(context),
                new TotalQuestion(context),
                new ClimbQuestion(context),
                new MatchQuestion(context),
                new HeadStartQuestion(context),
                new WorthQuestion(context))) {
            line.addSubcommand(question);
        }
        return line;
    }

    @Override
    public Integer call() {
        CommandLine line = Objects.requireNonNull(spec).commandLine();
        throw new CommandLine.ParameterException(
                line,
                "say which odds: one of "
                        + String.join(", ", line.getSubcommands().keySet()));
    }
}
