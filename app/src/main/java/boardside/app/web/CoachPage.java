package boardside.app.web;

import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import boardside.app.record.Plans;
import boardside.engine.skill.FormAnswer;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Letting another player of the store see one's form and plan, and seeing those of whoever lets one; nothing is changed. */
public final class CoachPage {
    private static final int TREND = 30;

    private final Web web;
    private final PlanPage plans;
    private final GoalsPage goals;
    private final Remembered<String> forms;

    CoachPage(Web web, PlanPage plans, GoalsPage goals) {
        this.web = web;
        this.plans = plans;
        this.goals = goals;
        this.forms = web.remembered();
    }

    /**
     * What the page shows.
     *
     * @param coach who may see the player's, or null
     * @param others who else could
     * @param shared who lets the player see theirs
     */
    public record View(@Nullable Player coach, List<Player> others, List<Player> shared) {}

    /**
     * What a coach sees.
     *
     * @param form in a sentence or two
     * @param plan of today, or null
     */
    public record Seen(String name, String form, List<GoalsPage.GoalView> goals, PlanPage.@Nullable Followed plan) {}

    void show(Context ctx) {
        Player player = web.player(ctx);
        Plans sharing = web.records().plans();
        List<Player> coaches = sharing.coaches(player.id());
        List<Player> others = web.records().household(player.id()).stream()
                .filter(other -> other.id() != player.id() && !coaches.contains(other))
                .toList();
        View view = new View(coaches.isEmpty() ? null : coaches.get(0), others, sharing.sharedWith(player.id()));
        web.show(ctx, "coach", web.texts().of("coach.title"), Map.of("view", view));
    }

    private static int number(@Nullable String text) {
        return text != null && text.matches("\\d{1,9}") ? Integer.parseInt(text) : -1;
    }

    void grant(Context ctx) {
        try {
            web.records().plans().grant(web.player(ctx).id(), number(ctx.formParam("coach")));
        } catch (Failure.NotFound | Failure.BadInput e) {
            throw new Refusal(422, Web.sentence(e));
        }
        ctx.redirect("/coach?said=coach.granted");
    }

    void revoke(Context ctx) {
        try {
            web.records().plans().revoke(web.player(ctx).id(), number(ctx.formParam("coach")));
        } catch (Failure.NotFound e) {
            throw new Refusal(404, Web.sentence(e));
        }
        ctx.redirect("/coach?said=coach.revoked");
    }

    /** Form, goals and today's plan of somebody who shares them. */
    void see(Context ctx) {
        Player shown;
        try {
            shown = web.records().plans().shown(web.player(ctx).id(), number(ctx.pathParam("shared")));
        } catch (Failure.NotFound e) {
            throw new Refusal(404, Web.sentence(e));
        }
        PlanPage.Followed plan = web.records()
                .plans()
                .latest(shown.id())
                .filter(one -> one.day().equals(web.today().toString()))
                .map(one -> plans.followed(shown, one))
                .orElse(null);
        String form = forms.get(shown, web.today(), "form", () -> {
                    FormAnswer answer =
                            web.skills().skill(shown.id(), web.today()).form(TREND);
                    return answer.sentence();
                })
                .value();
        web.show(
                ctx,
                "coach_seen",
                web.texts().of("coach.seen", shown.name()),
                Map.of("view", new Seen(shown.name(), form, goals.goals(shown), plan)));
    }
}
