package boardside.app.cli;

import boardside.app.record.TrialDetail;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Whom a new run of a trial throws. */
@Command(name = "next", description = "Whom to throw next, in order, two rounds each.")
final class TrialNextCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(arity = "0..1", paramLabel = "NAME", description = "The trial; the only open one unless said.")
    private @Nullable String name;

    TrialNextCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        TrialDetail detail = TrialCommand.named(context, name);
        Map<String, @Nullable Object> answer = new LinkedHashMap<>();
        answer.put("name", detail.plan().name());
        TrialDetail.NextBlock thrown = detail.next().orElse(null);
        if (thrown == null) {
            answer.put("block", null);
            context.answer(answer, detail.state().sentence());
            return Cli.NO;
        }
        answer.put("block", thrown.number());
        answer.put("order", thrown.order().stream().map(detail.names()::get).toList());
        context.answer(
                answer,
                "Block " + thrown.number() + ", two rounds each: "
                        + thrown.order().stream().map(detail.names()::get).collect(Collectors.joining("; ")));
        return Cli.DONE;
    }
}
