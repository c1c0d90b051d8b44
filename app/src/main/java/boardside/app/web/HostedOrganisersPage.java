package boardside.app.web;

import boardside.app.practice.Failure;
import boardside.app.record.HostedSeasons;
import boardside.app.season.Organiser;
import boardside.engine.league.season.Season;
import io.javalin.http.Context;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** In hosted mode, who may run a season beside hosts: its owner and whom they let. */
public final class HostedOrganisersPage {
    private final Web web;
    private final Hosted hosted;

    HostedOrganisersPage(Web web, Hosted hosted) {
        this.web = web;
        this.hosted = hosted;
    }

    /** Who runs the season. */
    public record View(String path, String season, List<Organiser> organisers) {}

    void show(Context ctx) {
        show(ctx, hosted.season(ctx), Fields.filled(web.texts(), Map.of()));
    }

    private void show(Context ctx, Season season, Fields fields) {
        Map<String, @Nullable Object> values = new HashMap<>();
        values.put(
                "view",
                new View(
                        Hosted.path(season),
                        season.name(),
                        web.records().seasons().organisers(season.id())));
        values.put("fields", fields);
        web.show(ctx, "hosted_organisers", web.texts().of("hosted.organisers"), values);
    }

    /** Lets an account in or out, or gives it the season. */
    void change(Context ctx) {
        Season season = hosted.season(ctx);
        HostedSeasons seasons = web.records().seasons();
        Fields fields = Fields.sent(ctx, web.texts());
        String name = fields.value("name");
        try {
            switch (fields.value("what")) {
                case "out" -> seasons.letRun(season.id(), name, false);
                case "give" -> seasons.give(season.id(), name);
                default -> seasons.letRun(season.id(), name, true);
            }
        } catch (Failure.BadInput e) {
            fields.fault("name", Web.sentence(e));
            ctx.status(422);
            show(ctx, season, fields);
            return;
        }
        // Who let themselves out has nothing more to see here.
        ctx.redirect(hosted.mayRun(ctx, season.id()) ? Hosted.path(season) + "/organisers?said=saved" : "/seasons");
    }
}
