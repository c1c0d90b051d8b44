package boardside.app.cli;

import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import boardside.app.practice.SetGoal;
import boardside.app.record.Plans;
import boardside.app.record.Seasons;
import boardside.app.record.Skills;
import boardside.app.web.GoalWords;
import boardside.app.web.Texts;
import boardside.engine.plan.Goal;
import boardside.engine.plan.GoalAnswer;
import boardside.engine.plan.GoalAnswer.Standing;
import boardside.engine.plan.Goals;
import boardside.engine.plan.Theme;
import boardside.engine.rules.Word;
import boardside.engine.skill.Skill;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A player's goals: how they stand, one more, one less. */
@Command(name = "goal", description = "One or two goals: how they stand (unless said), set one, put one away.")
final class GoalCommand implements Callable<Integer> {
    private final Context context;

    GoalCommand(Context context) {
        this.context = context;
    }

    private LocalDate today() {
        return LocalDate.now(context.surroundings().clock());
    }

    @Override
    public Integer call() {
        Player player = context.player();
        List<SetGoal> goals = context.records().plans().goals(player.id());
        if (goals.isEmpty()) {
            context.surroundings().err().println("no goal is set; set one, such as: goal set in 70 --by 2027-03-31");
            return Cli.NO;
        }
        Skill skill = Skills.of(context.records(), player.id(), today());
        GoalWords words = new GoalWords(Texts.in("en"));
        List<Map<String, Object>> json = new ArrayList<>();
        List<String> lines = new ArrayList<>();
        for (SetGoal set : goals) {
            GoalAnswer answer = Goals.of(skill, set.goal(), today());
            List<String> says = words.says(set.goal(), answer);
            json.add(json(set, answer, says));
            lines.add((json.size()) + ". " + words.name(set.goal()));
            says.forEach(line -> lines.add("   " + line));
        }
        context.answer(Map.of("goals", json), String.join("\n", lines));
        return Cli.DONE;
    }

    private static Map<String, Object> json(SetGoal set, GoalAnswer answer, List<String> says) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("id", set.id());
        json.put("kind", set.goal().kind());
        json.put("value", set.goal().value());
        json.put("by", set.goal().by().toString());
        if (answer instanceof Standing standing) {
            json.put("now", standing.now());
            json.put("then", standing.then());
            json.put("chanceNow", standing.chanceNow());
            json.put("chanceThen", standing.chanceThen());
            json.put("neededPerMonth", standing.needed());
            json.put("pacePerMonth", standing.pace());
            json.put("verdict", standing.verdict());
        }
        json.put(
                "serves",
                set.goal().themes().stream()
                        .map(Theme.Kind::name)
                        .map(name -> name.toLowerCase(Locale.ROOT))
                        .sorted()
                        .toList());
        json.put("sentences", says);
        return json;
    }

    @Command(name = "set", description = "Set a goal: bags in of a hundred, a level, last season, a ten-round total.")
    int set(
            @Parameters(index = "0", paramLabel = "KIND", description = "in, level, season or total.") String kind,
            @Parameters(index = "1", arity = "0..1", paramLabel = "VALUE", description = "How much; none for season.")
                    @Nullable
                    Double value,
            @Option(
                            names = "--by",
                            paramLabel = "DATE",
                            required = true,
                            description = "By which day, such as 2027-03-31.")
                    LocalDate by) {
        Player player = context.player();
        Goal.Kind what;
        try {
            what = Word.of(Goal.Kind.class, kind);
        } catch (IllegalArgumentException e) {
            throw new Failure.BadInput("KIND: " + e.getMessage());
        }
        double much;
        if (what == Goal.Kind.SEASON) {
            if (value != null) {
                throw new Failure.BadInput("VALUE: the season before says how much; leave it out");
            }
            much = Seasons.before(Skills.of(context.records(), player.id(), today()), today())
                    .orElseThrow(() -> new Failure.BadInput("there are no rounds of the season before to beat"));
        } else if (value == null) {
            throw new Failure.BadInput("VALUE: say how much, such as: goal set " + kind + " 70 --by " + by);
        } else {
            much = value;
        }
        List<String> faults = Goal.faults(what, much, by, today());
        if (!faults.isEmpty()) {
            throw new Failure.BadInput(faults);
        }
        SetGoal set = context.records().plans().setGoal(player.id(), new Goal(what, much, by), today());
        context.answer(Map.of("id", set.id()), "Set: " + new GoalWords(Texts.in("en")).name(set.goal()));
        return Cli.DONE;
    }

    @Command(name = "drop", description = "Put a goal away, by its number in the list.")
    int drop(@Parameters(index = "0", paramLabel = "NUMBER", description = "1 or 2.") int number) {
        Player player = context.player();
        Plans plans = context.records().plans();
        List<SetGoal> goals = plans.goals(player.id());
        if (!(number >= 1 && number <= goals.size())) {
            throw new Failure.NotFound("there is no goal " + number + "; " + goals.size() + " are set");
        }
        plans.dropGoal(player.id(), goals.get(number - 1).id(), today());
        context.answer(Map.of("dropped", goals.get(number - 1).id()), "Put away.");
        return Cli.DONE;
    }
}
