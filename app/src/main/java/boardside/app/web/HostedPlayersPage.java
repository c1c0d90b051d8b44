package boardside.app.web;

import boardside.app.practice.Failure;
import boardside.app.practice.Player;
import boardside.engine.league.season.Entrant;
import boardside.engine.league.season.Season;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Who plays in a season: new names, who leaves, who comes late. */
public final class HostedPlayersPage {
    private final Web web;
    private final Hosted hosted;

    HostedPlayersPage(Web web, Hosted hosted) {
        this.web = web;
        this.hosted = hosted;
    }

    /**
     * Everybody.
     *
     * @param joinable divisions that have a bye to be filled
     * @param accounts whether entrants can be accounts
     */
    public record View(
            String path, String season, List<Division> divisions, List<Joinable> joinable, boolean accounts) {}

    /** A division; the name is empty where there is only one. */
    public record Division(String name, List<Person> people) {}

    /** A division a newcomer can come into. */
    public record Joinable(int number, String name) {}

    /**
     * A player.
     *
     * @param left how they left, in words, or empty
     * @param known whether they can tell their own totals
     */
    public record Person(String id, String path, String name, String left, boolean known) {}

    void show(Context ctx) {
        show(ctx, hosted.season(ctx), Fields.filled(web.texts(), Map.of()));
    }

    private void show(Context ctx, Season season, Fields fields) {
        List<Division> divisions = new ArrayList<>();
        List<Joinable> joinable = new ArrayList<>();
        for (int division = 0; division < season.divisions().size(); division++) {
            String name = season.divisions().get(division);
            List<Entrant> people = season.of(division);
            divisions.add(new Division(
                    season.divisions().size() == 1 ? "" : name,
                    people.stream().map(one -> person(season, one)).toList()));
            boolean over = season.weeks().window(season.length()).over(web.now());
            if (people.size() % 2 == 1 && season.playOffStarts() == null && !over) {
                joinable.add(new Joinable(division, name));
            }
        }
        Map<String, @Nullable Object> values = new HashMap<>();
        values.put(
                "view",
                new View(
                        Hosted.path(season),
                        season.name(),
                        divisions,
                        joinable,
                        web.options().hosted()));
        values.put("fields", fields);
        web.show(ctx, "hosted_players", web.texts().of("hosted.people"), values);
    }

    private Person person(Season season, Entrant entrant) {
        return new Person(
                entrant.id(),
                Hosted.path(season) + "/players/" + Numbers.path(entrant.id()),
                entrant.name(),
                entrant.in()
                        ? ""
                        : web.texts().of("hosted.standing." + entrant.standing().word(), entrant.name()),
                entrant.player() != null);
    }

    /** Says whose account an entrant is; with an empty name, nobody's. */
    void link(Context ctx) {
        String entrant = entrant(ctx);
        String field = "account-" + entrant;
        change(ctx, field, (season, fields) -> {
            String name = fields.value(field);
            Integer player = name.isEmpty() ? null : (Integer) player(name);
            web.records().seasons().link(season.id(), entrant, player);
        });
    }

    /** The first player of an account. */
    private int player(String account) {
        return web.records()
                .accounts()
                .named(account)
                .flatMap(found -> web.records().players(found.id()).stream().findFirst())
                .map(Player::id)
                .orElseThrow(() -> new Failure.BadInput(web.texts().of("hosted.people.account.none", account)));
    }

    /** A change of who plays, by what its form says. */
    private interface Change {
        void make(Season season, Fields fields);
    }

    private void change(Context ctx, String field, Change change) {
        Season season = hosted.season(ctx);
        Fields fields = Fields.sent(ctx, web.texts());
        try {
            change.make(season, fields);
            ctx.redirect(Hosted.path(season) + "/players?said=saved");
        } catch (Failure.BadInput e) {
            fields.fault(field, Web.sentence(e));
            ctx.status(422);
            show(ctx, season, fields);
        }
    }

    void rename(Context ctx) {
        String entrant = entrant(ctx);
        change(
                ctx,
                "name-" + entrant,
                (season, fields) ->
                        web.records().seasons().rename(season.id(), entrant, fields.value("name-" + entrant)));
    }

    void leave(Context ctx) {
        String entrant = entrant(ctx);
        change(
                ctx,
                "name-" + entrant,
                (season, fields) -> web.records().seasons().leave(season.id(), entrant));
    }

    private String entrant(Context ctx) {
        return hosted.season(ctx)
                .entrant(ctx.pathParam("entrant"))
                .map(Entrant::id)
                .orElseThrow(() -> new Refusal(404, web.texts().of("hosted.nothing")));
    }

    void join(Context ctx) {
        change(ctx, "name", (season, fields) -> {
            Integer division = fields.whole("division", 0, season.divisions().size() - 1);
            web.records().seasons().join(season.id(), division == null ? 0 : division, fields.value("name"));
        });
    }
}
