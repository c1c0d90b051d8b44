package boardside.app.cli;

import boardside.app.practice.Fixture;
import boardside.app.record.LeagueState;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** All leagues of a player. */
@Command(name = "list", description = "Your leagues, with what is left to throw.")
final class LeagueListCommand implements Callable<Integer> {
    private final Context context;

    LeagueListCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        List<Map<String, Object>> leagues = new ArrayList<>();
        List<String> words = new ArrayList<>();
        for (LeagueState state :
                context.records().leagues().all(context.player().id())) {
            Map<String, Object> league = new LinkedHashMap<>();
            league.put("name", state.league().name());
            league.put("me", state.league().me());
            league.put("zone", state.league().zone());
            league.put("games", state.league().games());
            league.put("rounds", state.league().rounds());
            league.put("points", state.league().points());
            league.put("fixtures", state.fixtures().size());
            List<Map<String, Object>> open = new ArrayList<>();
            String line =
                    state.league().name() + ": " + Words.count(state.fixtures().size(), "fixture");
            for (Fixture fixture : state.toThrow()) {
                Map<String, Object> one = new LinkedHashMap<>();
                one.put("week", fixture.week());
                one.put("opponent", fixture.against(state.league().me()));
                one.put(
                        "deadline",
                        state.deadline(fixture).map(Object::toString).orElse(null));
                open.add(one);
                line += "\n  to throw: " + fixture.against(state.league().me())
                        + (fixture.week() == 0 ? "" : ", week " + fixture.week())
                        + (fixture.deadline().isEmpty()
                                ? ""
                                : ", due " + fixture.deadline().replace('T', ' ') + " "
                                        + state.league().zone());
            }
            league.put("toThrow", open);
            leagues.add(league);
            words.add(line);
        }
        context.answer(Map.of("leagues", leagues), words.isEmpty() ? "No league yet." : String.join("\n", words));
        return leagues.isEmpty() ? Cli.NO : Cli.DONE;
    }
}
