package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.engine.league.Schedule;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Who meets whom in which week. */
@Command(
        name = "schedule",
        description = {
            "A round robin: who meets whom in which week, the one who throws first named first.",
            "Every pair meets once, nobody plays twice in a week; with an odd number one has a bye each week."
        })
final class LeagueScheduleCommand implements Callable<Integer> {
    private final Context context;

    @Option(
            names = "--players",
            paramLabel = "N",
            required = true,
            description = "How many players; they are numbered from 1.")
    private int players;

    @Option(names = "--double", description = "Every pair meets twice, with the first throw exchanged.")
    private boolean twice;

    LeagueScheduleCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        if (!(players >= Schedule.FEWEST && players <= Schedule.MOST)) {
            throw new Failure.BadInput(
                    "--players: a league has " + Schedule.FEWEST + " to " + Schedule.MOST + " players, not " + players);
        }
        Schedule schedule = Schedule.of(players, twice ? Schedule.Meetings.DOUBLE : Schedule.Meetings.SINGLE);
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put(
                "weeks",
                schedule.weeks().stream()
                        .map(week -> week.stream()
                                .map(pair -> List.of(pair.first(), pair.second()))
                                .toList())
                        .toList());
        List<String> words = new ArrayList<>();
        for (int week = 1; week <= schedule.weeks().size(); week++) {
            int bye = schedule.bye(week);
            words.add("Week " + week + ": "
                    + schedule.weeks().get(week - 1).stream()
                            .map(pair -> pair.first() + " v " + pair.second())
                            .collect(Collectors.joining(", "))
                    + (bye == 0 ? "" : "; bye " + bye));
        }
        context.answer(answer, String.join("\n", words));
        return Cli.DONE;
    }
}
