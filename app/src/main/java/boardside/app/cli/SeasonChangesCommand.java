package boardside.app.cli;

import boardside.app.season.SeasonChange;
import boardside.app.web.SeasonWords;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch.Stage;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What was changed of a season. */
@Command(name = "changes", description = "What was changed, the latest first; undo a change.")
final class SeasonChangesCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(paramLabel = "SEASON", description = "Name of the season.")
    private String name = "";

    @Option(names = "--undo", paramLabel = "ID", description = "Undo this one.")
    private @Nullable String undo;

    SeasonChangesCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Season season = SeasonCommand.named(context, name);
        if (undo != null) {
            context.records().seasons().undo(season.id(), undo);
        }
        SeasonWords texts = SeasonCommand.words();
        List<Map<String, Object>> answer = new ArrayList<>();
        List<String> words = new ArrayList<>();
        for (SeasonChange change : context.records().seasons().changes(season.id())) {
            String says = texts.told(season, change);
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("id", change.id());
            one.put("at", change.at());
            one.put("what", change.kind().word());
            one.put("says", says);
            one.put("undone", change.undone());
            int lost = change.kind() == SeasonChange.Kind.PLAY_OFF && !change.undone()
                    ? context.records().matchNights().rounds(season, Stage.PLAY_OFF)
                    : 0;
            one.put("undoTakesOut", lost);
            answer.add(one);
            words.add(change.id() + " " + change.at() + " " + says
                    + (change.undone() ? " (undone)" : "")
                    + (lost > 0 ? " (undoing it takes " + lost + " rounds out of the play-off's matches)" : ""));
        }
        context.answer(answer, String.join("\n", words));
        return answer.isEmpty() ? Cli.NO : Cli.DONE;
    }
}
