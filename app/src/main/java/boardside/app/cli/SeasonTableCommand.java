package boardside.app.cli;

import boardside.app.transfer.SeasonResults;
import boardside.app.web.SeasonWords;
import boardside.engine.league.Standings;
import boardside.engine.league.season.Season;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** A season's tables. */
@Command(name = "table", description = "The table of each division, with why each player stands where they do.")
final class SeasonTableCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(paramLabel = "SEASON", description = "Name of the season.")
    private String name = "";

    SeasonTableCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Season season = SeasonCommand.named(context, name);
        SeasonWords texts = SeasonCommand.words();
        List<Map<String, Object>> divisions = new ArrayList<>();
        List<String> words = new ArrayList<>();
        for (int division = 0; division < season.divisions().size(); division++) {
            if (season.divisions().size() > 1) {
                words.add(season.divisions().get(division) + ":");
            }
            List<Map<String, Object>> rows = new ArrayList<>();
            String above = "";
            for (Standings.Row row : season.table(division).rows()) {
                String reason = texts.place(row, above);
                Map<String, Object> one = SeasonResults.row(row);
                one.put("reason", reason);
                rows.add(one);
                Standings.Played played = row.record();
                words.add(row.place() + ". " + row.player() + " (" + played.won() + "-" + played.tied() + "-"
                        + played.lost() + ", " + played.thrown() + "-" + played.against() + "): " + reason);
                above = row.player();
            }
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("division", season.divisions().get(division));
            one.put("table", rows);
            divisions.add(one);
        }
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("season", season.name());
        answer.put("divisions", divisions);
        context.answer(answer, String.join("\n", words));
        return Cli.DONE;
    }
}
