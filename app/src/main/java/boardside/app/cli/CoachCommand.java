package boardside.app.cli;

import boardside.app.practice.Player;
import boardside.app.practice.SessionPlan;
import boardside.app.practice.SetGoal;
import boardside.app.record.Plans;
import boardside.app.record.Skills;
import boardside.app.web.GoalWords;
import boardside.app.web.PlanWords;
import boardside.app.web.Texts;
import boardside.engine.plan.Goals;
import boardside.engine.skill.FormAnswer;
import boardside.engine.skill.FormAnswer.Form;
import boardside.engine.skill.Skill;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Who may see whose form and plan. */
@Command(name = "coach", description = "Who may see your form and plan (unless said); let somebody, stop, look.")
final class CoachCommand implements Callable<Integer> {
    private static final int TREND = 30;

    private final Context context;

    CoachCommand(Context context) {
        this.context = context;
    }

    @Override
    public Integer call() {
        Player player = context.player();
        Plans plans = context.records().plans();
        List<String> coaches =
                plans.coaches(player.id()).stream().map(Player::name).toList();
        List<String> shared =
                plans.sharedWith(player.id()).stream().map(Player::name).toList();
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("coaches", coaches);
        json.put("sharedWithMe", shared);
        context.answer(
                json,
                "May see your form and plan: " + (coaches.isEmpty() ? "nobody" : String.join(", ", coaches))
                        + "\nShare theirs with you: " + (shared.isEmpty() ? "nobody" : String.join(", ", shared)));
        return Cli.DONE;
    }

    @Command(name = "grant", description = "Let a player see your form and plan, in place of whoever could before.")
    int grant(@Parameters(paramLabel = "NAME", description = "Another player of the store.") String name) {
        Player coach = context.player(name);
        context.records().plans().grant(context.player().id(), coach.id());
        context.answer(Map.of("coach", coach.name()), coach.name() + " may see your form and plan.");
        return Cli.DONE;
    }

    @Command(name = "revoke", description = "Stop that.")
    int revoke(@Parameters(paramLabel = "NAME", description = "Who may see them.") String name) {
        Player coach = context.player(name);
        context.records().plans().revoke(context.player().id(), coach.id());
        context.answer(Map.of("revoked", coach.name()), coach.name() + " may not see them any more.");
        return Cli.DONE;
    }

    @Command(name = "see", description = "Form, goals and today's plan of somebody who shares them with you.")
    int see(@Parameters(paramLabel = "NAME", description = "Who shares.") String name) {
        Player coach = context.player();
        // Nobody learns from the answer whether a player is there at all.
        int asked = context.records().player(name).map(Player::id).orElse(-1);
        Player shown = context.records().plans().shown(coach.id(), asked);
        LocalDate today = LocalDate.now(context.surroundings().clock());
        Skill skill = Skills.of(context.records(), shown.id(), today);
        Texts texts = Texts.in("en");
        FormAnswer answer = skill.form(TREND);
        Map<String, Object> json = new LinkedHashMap<>();
        List<String> lines = new ArrayList<>(List.of(answer.sentence()));
        if (answer instanceof Form form) {
            json.put("pointsPerRound", form.pointsPerRound());
            json.put("level", form.level());
        }
        json.put("sentence", answer.sentence());
        GoalWords goalWords = new GoalWords(texts);
        List<Map<String, Object>> goals = new ArrayList<>();
        for (SetGoal set : context.records().plans().goals(shown.id())) {
            List<String> says = goalWords.says(set.goal(), Goals.of(skill, set.goal(), today));
            goals.add(Map.of("goal", goalWords.name(set.goal()), "sentences", says));
            lines.add(goalWords.name(set.goal()));
            says.forEach(line -> lines.add("  " + line));
        }
        json.put("goals", goals);
        json.put("plan", plan(shown, today, new PlanWords(texts), lines));
        context.answer(json, String.join("\n", lines));
        return Cli.DONE;
    }

    private List<Map<String, Object>> plan(Player shown, LocalDate today, PlanWords words, List<String> lines) {
        Optional<SessionPlan> plan = context.records()
                .plans()
                .latest(shown.id())
                .filter(one -> one.day().equals(today.toString()));
        List<Map<String, Object>> blocks = new ArrayList<>();
        plan.ifPresent(one -> one.blocks().forEach(placed -> {
            Map<String, Object> block = new LinkedHashMap<>();
            block.put("name", words.name(placed.block()));
            block.put("minutes", placed.block().minutes());
            block.put("does", words.does(placed.block()));
            block.put("reason", placed.block().why());
            block.put("begun", placed.taken());
            blocks.add(block);
            lines.add(placed.block().minutes() + " min " + words.name(placed.block()) + ": "
                    + words.does(placed.block()));
        }));
        return blocks;
    }
}
