package boardside.app.cli;

import boardside.app.record.TrialDetail;
import boardside.engine.skill.Interval;
import boardside.engine.trial.TrialState;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** How a trial stands. */
@Command(name = "status", description = "How a trial stands, or how it ended.")
final class TrialStatusCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(arity = "0..1", paramLabel = "NAME", description = "The trial; the only open one unless said.")
    private @Nullable String name;

    TrialStatusCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        TrialDetail detail = TrialCommand.named(context, name);
        TrialState state = detail.state();
        StringBuilder words = new StringBuilder(state.sentence());
        for (TrialState.Standing standing : state.standings()) {
            Interval points = standing.pointsPerRound();
            if (points != null) {
                words.append(String.format(
                        Locale.ROOT,
                        "%n  %s: %.1f points a round (%.1f to %.1f) in %s%s",
                        detail.names().get(standing.candidate()),
                        points.estimate(),
                        points.low(),
                        points.high(),
                        Words.count(standing.rounds(), "round"),
                        standing.droppedAfter() == null ? "" : ", out since block " + standing.droppedAfter()));
            }
        }
        context.answer(TrialAnswers.status(detail), words.toString());
        return Cli.DONE;
    }
}
