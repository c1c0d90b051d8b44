package boardside.app.cli;

import boardside.app.practice.Fixture;
import boardside.app.practice.Player;
import boardside.app.record.LeagueState;
import boardside.app.web.LeaguesPage;
import boardside.app.web.Texts;
import boardside.engine.league.Standings;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** A league's table and fixtures. */
@Command(
        name = "table",
        description = "A league's table, with why each stands where they do, and with --json its fixtures.")
final class LeagueTableCommand implements Callable<Integer> {
    private final Context context;

    @Parameters(paramLabel = "LEAGUE", description = "Name of the league.")
    private String league = "";

    LeagueTableCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Player player = context.player();
        LeagueState state = LeagueCommand.named(context, player.id(), league);
        Map<String, Object> answer = new LinkedHashMap<>();
        List<Map<String, Object>> rows = new ArrayList<>();
        List<String> words = new ArrayList<>();
        Texts texts = Texts.in("en");
        String above = "";
        for (Standings.Row row : state.standings().rows()) {
            Standings.Played played = row.record();
            String reason = LeaguesPage.reason(texts, row.reason(), above);
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("place", row.place());
            one.put("player", row.player());
            one.put("points", played.points());
            one.put("games", played.games());
            one.put("won", played.won());
            one.put("tied", played.tied());
            one.put("lost", played.lost());
            one.put("thrown", played.thrown());
            one.put("against", played.against());
            one.put("reason", reason);
            rows.add(one);
            words.add(row.place() + ". " + row.player() + ": " + Words.count(played.points(), "point") + " in "
                    + Words.count(played.games(), "game") + " (" + played.won() + "-" + played.tied() + "-"
                    + played.lost() + "), " + played.thrown() + "-" + played.against()
                    + (reason.isEmpty() ? "" : "; " + reason));
            above = row.player();
        }
        answer.put("league", state.league().name());
        answer.put("table", rows);
        answer.put(
                "fixtures",
                state.fixtures().stream()
                        .map(fixture -> fixture(state, fixture))
                        .toList());
        context.answer(answer, String.join("\n", words));
        return Cli.DONE;
    }

    private static Map<String, Object> fixture(LeagueState state, Fixture fixture) {
        Map<String, Object> one = new LinkedHashMap<>();
        one.put("week", fixture.week());
        one.put("first", fixture.first());
        one.put("second", fixture.second());
        one.put("deadline", state.deadline(fixture).map(Object::toString).orElse(null));
        one.put(
                "games",
                IntStream.rangeClosed(1, state.league().games())
                        .mapToObj(game -> state.totals(fixture, game))
                        .map(totals -> Arrays.asList(totals.first(), totals.second()))
                        .toList());
        return one;
    }
}
