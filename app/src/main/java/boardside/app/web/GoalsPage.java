package boardside.app.web;

import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import boardside.app.practice.SessionPlan;
import boardside.app.practice.SetGoal;
import boardside.app.record.Plans;
import boardside.app.record.Seasons;
import boardside.engine.plan.Goal;
import boardside.engine.plan.Goals;
import boardside.engine.rules.Word;
import boardside.engine.skill.Skill;
import io.javalin.http.Context;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** Goals: set, looked at, put away. */
public final class GoalsPage {
    private static final int MONTHS_AHEAD = 4;

    private final Web web;
    private final GoalWords words;
    private final Remembered<List<GoalView>> remembered;

    GoalsPage(Web web) {
        this.web = web;
        this.words = new GoalWords(web.texts());
        this.remembered = web.remembered();
    }

    /**
     * What the page shows.
     *
     * @param goals those set
     * @param more whether another one can be set
     * @param fields the form as filled in
     * @param faults what was wrong with it
     */
    public record View(List<GoalView> goals, boolean more, Fields fields, List<String> faults) {
        public List<String> kinds() {
            return Word.words(Goal.Kind.class);
        }

        public String kind() {
            return fields.value("kind").isEmpty() ? Goal.Kind.IN.word() : fields.value("kind");
        }
    }

    /**
     * A goal.
     *
     * @param blocks what of today's plan serves it, or empty
     */
    public record GoalView(String id, String name, List<String> says, String blocks) {}

    void show(Context ctx) {
        LocalDate by = web.today().plusMonths(MONTHS_AHEAD);
        Fields fields = Fields.filled(web.texts(), Map.of("by", by.toString()));
        show(ctx, web.player(ctx), fields, List.of());
    }

    private void show(Context ctx, Player player, Fields fields, List<String> faults) {
        List<SetGoal> set = web.records().plans().goals(player.id());
        web.show(
                ctx,
                "goals",
                web.texts().of("goals.title"),
                Map.of("view", new View(goals(player), set.size() < Plans.MOST_GOALS, fields, faults)));
    }

    /** A player's goals as they stand, for whoever may see them. */
    List<GoalView> goals(Player player) {
        List<SetGoal> set = web.records().plans().goals(player.id());
        String question = set.stream().map(SetGoal::id).collect(Collectors.joining(" "));
        return remembered
                .get(player, web.today(), question, () -> {
                    Skill skill = web.skills().skill(player.id(), web.today());
                    return set.stream().map(goal -> view(player, skill, goal)).toList();
                })
                .value();
    }

    private GoalView view(Player player, Skill skill, SetGoal goal) {
        String blocks = web.records()
                .plans()
                .current(player.id(), web.today())
                .map(plan -> serving(plan, goal.goal()))
                .orElse("");
        return new GoalView(
                goal.id(),
                words.name(goal.goal()),
                words.says(goal.goal(), Goals.of(skill, goal.goal(), web.today())),
                blocks);
    }

    private String serving(SessionPlan plan, Goal goal) {
        PlanWords named = new PlanWords(web.texts());
        List<String> names = plan.blocks().stream()
                .filter(placed ->
                        placed.block().serves() && goal.servedBy(placed.block().activity()))
                .map(placed -> named.name(placed.block()))
                .distinct()
                .toList();
        return String.join(", ", names);
    }

    void set(Context ctx) {
        Player player = web.player(ctx);
        Fields fields = Fields.sent(ctx, web.texts());
        try {
            Goal.Kind kind = fields.word("kind", Goal.Kind.class, Goal.Kind.IN);
            LocalDate by = day(fields.value("by"));
            web.records().plans().setGoal(player.id(), goal(player, kind, fields, by), web.today());
            ctx.redirect("/goals?said=saved");
        } catch (Failure.BadInput e) {
            ctx.status(422);
            show(
                    ctx,
                    player,
                    fields,
                    e.faults().stream().map(GoalsPage::sentence).toList());
        }
    }

    private Goal goal(Player player, Goal.Kind kind, Fields fields, LocalDate by) {
        double value = value(player, kind, fields);
        List<String> faults = Goal.faults(kind, value, by, web.today());
        if (!faults.isEmpty()) {
            throw new Failure.BadInput(faults);
        }
        return new Goal(kind, value, by);
    }

    private double value(Player player, Goal.Kind kind, Fields fields) {
        if (kind == Goal.Kind.SEASON) {
            OptionalDouble season = Seasons.before(web.skills().skill(player.id(), web.today()), web.today());
            return season.orElseThrow(
                    () -> new Failure.BadInput("there are no rounds of the season before to beat; set another goal"));
        }
        String typed = fields.value("value").replace(',', '.');
        if (!typed.matches("\\d{1,3}(\\.\\d)?")) {
            throw new Failure.BadInput("a goal is a number such as 70, not \"" + fields.value("value") + "\"");
        }
        return Double.parseDouble(typed);
    }

    private static LocalDate day(String text) {
        try {
            return LocalDate.parse(Objects.requireNonNullElse(text, ""));
        } catch (DateTimeException e) {
            throw new Failure.BadInput("\"" + text + "\" is no day; write it like 2027-03-31");
        }
    }

    private static String sentence(String fault) {
        return fault.substring(0, 1).toUpperCase(Locale.ROOT) + fault.substring(1) + ".";
    }

    void drop(Context ctx) {
        Player player = web.player(ctx);
        try {
            web.records().plans().dropGoal(player.id(), ctx.pathParam("goal"), web.today());
        } catch (Failure.NotFound e) {
            throw new Refusal(404, Web.sentence(e));
        }
        ctx.redirect("/goals?said=goal.dropped");
    }
}
