package boardside.app.cli;

import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** Exact chances, from given chances of one bag or from those that records show; opens the store only for these. */
@Command(
        name = "odds",
        synopsisSubcommandLabel = "QUESTION",
        description =
                "Exact chances: races, totals, the climb, league matches, head starts, what a better bag is worth.")
final class OddsCommand extends Family {
    private OddsCommand() {
        super("say which odds");
    }

    /** The command with its questions. */
    static CommandLine in(Context context) {
        return new OddsCommand()
                .with(List.of(
                        new RaceQuestion(context),
                        new TotalQuestion(context),
                        new ClimbQuestion(context),
                        new MatchQuestion(context),
                        new HeadStartQuestion(context),
                        new WorthQuestion(context)));
    }
}
