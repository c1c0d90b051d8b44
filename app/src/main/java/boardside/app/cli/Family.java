package boardside.app.cli;

import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** A command that does nothing by itself: one of those below it has to be named. */
abstract class Family implements Callable<Integer> {
    private final String ask;

    @Spec
    private @Nullable CommandSpec spec;

    /** @param ask what to say to who names none, such as "say which odds" */
    Family(String ask) {
        this.ask = ask;
    }

    /** The command with those below it. */
    CommandLine with(List<Callable<Integer>> below) {
        CommandLine line = new CommandLine(this);
        below.forEach(line::addSubcommand);
        return line;
    }

    @Override
    public final Integer call() {
        CommandLine line = Objects.requireNonNull(spec).commandLine();
        throw new CommandLine.ParameterException(
                line,
                ask + ": one of " + String.join(", ", line.getSubcommands().keySet()));
    }
}
