package boardside.app.web;

import boardside.app.practice.Change;
import boardside.app.practice.Failure;
import boardside.app.practice.Fixture;
import boardside.app.practice.League;
import boardside.app.practice.Player;
import boardside.app.record.LeagueState;
import boardside.app.record.Leagues;
import boardside.app.transfer.PastedFixtures;
import boardside.engine.league.Standings;
import boardside.engine.league.TieBreak;
import boardside.engine.odds.LeaguePoints;
import io.javalin.http.Context;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Leagues that somebody else runs: their settings, fixtures pasted from a chat, the table. */
public final class LeaguesPage {
    private static final int MOST_POINTS = 100;
    private static final int LONGEST_TEXT = 100_000;

    private final Web web;
    private final Nights nights;

    LeaguesPage(Web web, Nights nights) {
        this.web = web;
        this.nights = nights;
    }

    /** A league in the list. */
    public record Entry(String path, String name, String says) {}

    /**
     * A league.
     *
     * @param next the match to throw next, or null
     * @param weeks fixtures by week
     * @param pasted what was last typed to be pasted, with its faults; empty at first
     */
    public record View(
            String path,
            String name,
            String about,
            String note,
            @Nullable Next next,
            List<Line> table,
            List<Week> weeks,
            List<Change> changes,
            String pasted,
            List<String> faults) {}

    /** The match to throw next. */
    public record Next(String path, String says, String due, String action) {}

    /** A line of the table. */
    public record Line(
            String place,
            String name,
            boolean me,
            int games,
            String record,
            int points,
            String totals,
            String reason) {}

    /** Fixtures of a week. */
    public record Week(String name, String due, List<Match> matches) {}

    /** A fixture in a list. */
    public record Match(String path, String says, String result, boolean mine) {}

    static String path(League league) {
        return "/leagues/" + Numbers.path(league.id());
    }

    void list(Context ctx) {
        List<Entry> entries = web.records().leagues().all(web.player(ctx).id()).stream()
                .map(state -> new Entry(path(state.league()), state.league().name(), says(state)))
                .toList();
        String undo = Objects.requireNonNullElse(ctx.queryParam("undo"), "");
        web.show(
                ctx,
                "leagues",
                web.texts().of("league.title"),
                Map.of(
                        "leagues",
                        entries,
                        "restore",
                        undo.isEmpty() ? "" : "/leagues/" + Numbers.path(undo) + "/restore"));
    }

    private String says(LeagueState state) {
        List<Fixture> open = state.toThrow();
        if (state.fixtures().isEmpty()) {
            return web.texts().of("league.says.empty");
        }
        return open.isEmpty()
                ? web.texts().of("league.says.none", state.fixtures().size())
                : web.texts()
                        .of(
                                "league.says.open",
                                open.size(),
                                open.get(0).against(state.league().me()));
    }

    void show(Context ctx) {
        show(ctx, web.player(ctx), "", List.of());
    }

    LeagueState state(Context ctx, Player player) {
        return web.records()
                .leagues()
                .find(player.id(), ctx.pathParam("league"))
                .orElseThrow(() -> new Refusal(404, web.texts().of("league.nothing", player.name())));
    }

    private void show(Context ctx, Player player, String pasted, List<String> faults) {
        LeagueState state = state(ctx, player);
        League league = state.league();
        List<Change> changes = web.records().changes(player.id(), league.id());
        View view = new View(
                path(league),
                league.name(),
                web.texts()
                        .of(
                                "league.about",
                                league.games(),
                                league.rounds(),
                                league.points().win(),
                                league.points().tie(),
                                league.points().loss(),
                                league.zone()),
                league.note(),
                next(state),
                state.fixtures().isEmpty() ? List.of() : table(state),
                weeks(state),
                changes.size() > 30 ? changes.subList(0, 30) : changes,
                pasted,
                faults);
        web.show(ctx, "league", league.name(), Map.of("view", view));
    }

    private @Nullable Next next(LeagueState state) {
        List<Fixture> open = state.toThrow();
        return open.isEmpty() ? null : next(web, state, open.get(0));
    }

    /** The match to throw next, for the first page too. */
    static Next next(Web web, LeagueState state, Fixture fixture) {
        int game = 1;
        while (state.mine(fixture, game).first() != null) {
            game++;
        }
        boolean begun = state.thrown(fixture.id(), game).isPresent();
        return new Next(
                FixturePage.path(fixture),
                web.texts()
                        .of(
                                "league.next.says",
                                fixture.against(state.league().me()),
                                state.league().name()),
                due(web, state, fixture),
                web.texts().of(begun ? "league.next.continue" : "league.next.throw", game));
    }

    /** A fixture's deadline in words, or empty. */
    static String due(Web web, LeagueState state, Fixture fixture) {
        if (fixture.deadline().isEmpty()) {
            return "";
        }
        boolean here =
                ZoneId.of(state.league().zone()).getRules().equals(web.zone().getRules());
        String due = MatchText.deadline(web.texts(), fixture.deadline());
        boolean passed = state.deadline(fixture).orElseThrow().isBefore(web.now());
        String when = here
                ? web.texts().of("league.due", due)
                : web.texts()
                        .of(
                                "league.due.zone",
                                due,
                                state.league().zone(),
                                web.dayAndTime(
                                        state.deadline(fixture).orElseThrow().toString()));
        return passed ? web.texts().of("league.due.passed", when) : when;
    }

    private List<Line> table(LeagueState state) {
        List<Line> lines = new ArrayList<>();
        String above = "";
        for (Standings.Row row : state.standings().rows()) {
            Standings.Played played = row.record();
            lines.add(new Line(
                    String.valueOf(row.place()),
                    row.player(),
                    row.player().equals(state.league().me()),
                    played.games(),
                    played.won() + "\u2013" + played.tied() + "\u2013" + played.lost(),
                    played.points(),
                    played.thrown() + "\u2013" + played.against(),
                    reason(web.texts(), row.reason(), above)));
            above = row.player();
        }
        return lines;
    }

    /** Why a line stands below the one above. */
    public static String reason(Texts texts, Standings.Reason reason, String above) {
        if (reason instanceof Standings.Reason.Points) {
            return "";
        }
        if (reason instanceof Standings.Reason.Broken broken) {
            // Forfeits are told as negative numbers, since fewer are better.
            int sign = broken.by() == TieBreak.FORFEITS ? -1 : 1;
            return texts.of("league.reason." + broken.by().word(), above, sign * broken.above(), sign * broken.here());
        }
        if (reason instanceof Standings.Reason.Lot) {
            return texts.of("league.reason.lot", above);
        }
        return reason instanceof Standings.Reason.Level ? texts.of("league.reason.level", above) : "";
    }

    private List<Week> weeks(LeagueState state) {
        Map<Integer, List<Fixture>> byWeek = new TreeMap<>();
        state.fixtures()
                .forEach(fixture -> byWeek.computeIfAbsent(fixture.week(), week -> new ArrayList<>())
                        .add(fixture));
        List<Week> weeks = new ArrayList<>();
        byWeek.forEach((week, fixtures) -> {
            List<String> deadlines =
                    fixtures.stream().map(Fixture::deadline).distinct().toList();
            boolean one = deadlines.size() == 1 && !deadlines.get(0).isEmpty();
            weeks.add(new Week(
                    week == 0 ? web.texts().of("league.week.none") : web.texts().of("league.week", week),
                    one ? web.texts().of("league.due", MatchText.deadline(web.texts(), deadlines.get(0))) : "",
                    fixtures.stream().map(fixture -> match(state, fixture)).toList()));
        });
        return weeks;
    }

    private Match match(LeagueState state, Fixture fixture) {
        List<String> games = new ArrayList<>();
        for (int game = 1; game <= state.league().games(); game++) {
            Fixture.Totals totals = state.totals(fixture, game);
            if (totals.first() != null || totals.second() != null) {
                games.add(total(totals.first()) + "\u2013" + total(totals.second()));
            }
        }
        return new Match(
                FixturePage.path(fixture),
                web.texts().of("league.match", fixture.first(), fixture.second()),
                games.isEmpty() ? web.texts().of("league.match.open") : String.join(", ", games),
                fixture.has(state.league().me()));
    }

    static String total(@Nullable Integer total) {
        return total == null ? "?" : total.toString();
    }

    void paste(Context ctx) {
        Player player = web.player(ctx);
        LeagueState state = state(ctx, player);
        String text = Objects.requireNonNullElse(ctx.formParam("text"), "");
        try {
            if (text.length() > LONGEST_TEXT) {
                throw new Failure.BadInput(web.texts().of("league.paste.long", LONGEST_TEXT, text.length()));
            }
            Leagues.Taken taken = web.records()
                    .leagues()
                    .post(player.id(), state.league().id(), PastedFixtures.read(text, web.today()));
            ctx.redirect(path(state.league()) + "?said=league."
                    + (taken.added() + taken.changed() == 0 ? "same" : "pasted"));
        } catch (Failure.BadInput e) {
            ctx.status(422);
            show(ctx, player, text, e.faults());
        }
    }

    void undo(Context ctx) {
        Player player = web.player(ctx);
        String league = ctx.pathParam("league");
        String change = ctx.pathParam("change");
        boolean ours = web.records().changes(player.id(), league).stream()
                .anyMatch(one -> one.id().equals(change));
        if (!ours) {
            throw new Refusal(404, web.texts().of("league.change.nothing"));
        }
        web.records().undo(player.id(), change, web.now());
        ctx.redirect("/leagues/" + Numbers.path(league) + "?said=undone");
    }

    void blank(Context ctx) {
        Map<String, String> values = new TreeMap<>();
        values.put("me", web.player(ctx).name());
        values.put("zone", web.zone().getId());
        values.put("games", String.valueOf(League.USUAL_GAMES));
        values.put("rounds", String.valueOf(League.USUAL_ROUNDS));
        points(values, LeaguePoints.STANDARD);
        settings(ctx, null, Fields.filled(web.texts(), values));
    }

    private static void points(Map<String, String> values, LeaguePoints points) {
        values.put("win", String.valueOf(points.win()));
        values.put("tie", String.valueOf(points.tie()));
        values.put("loss", String.valueOf(points.loss()));
    }

    void edit(Context ctx) {
        League league = state(ctx, web.player(ctx)).league();
        Map<String, String> values = new TreeMap<>();
        values.put("name", league.name());
        values.put("me", league.me());
        values.put("zone", league.zone());
        values.put("games", String.valueOf(league.games()));
        values.put("rounds", String.valueOf(league.rounds()));
        values.put("note", league.note());
        points(values, league.points());
        settings(ctx, league, Fields.filled(web.texts(), values));
    }

    private void settings(Context ctx, @Nullable League league, Fields fields) {
        Map<String, @Nullable Object> values = new HashMap<>();
        values.put("action", league == null ? "/leagues" : path(league) + "/settings");
        values.put("remove", league == null ? null : path(league) + "/delete");
        values.put("fields", fields);
        values.put("zones", Hosted.zones());
        web.show(ctx, "league_settings", league == null ? web.texts().of("league.new") : league.name(), values);
    }

    void add(Context ctx) {
        save(ctx, null);
    }

    void save(Context ctx) {
        save(ctx, state(ctx, web.player(ctx)).league());
    }

    private void save(Context ctx, @Nullable League before) {
        Player player = web.player(ctx);
        Fields fields = Fields.sent(ctx, web.texts());
        Integer games = fields.whole("games", 1, League.MOST_GAMES);
        Integer rounds = fields.whole("rounds", 1, League.MOST_ROUNDS);
        Integer win = fields.whole("win", 0, MOST_POINTS);
        Integer tie = fields.whole("tie", 0, MOST_POINTS);
        Integer loss = fields.whole("loss", 0, MOST_POINTS);
        String zone = fields.value("zone");
        if (!zone.isEmpty() && !ZoneId.getAvailableZoneIds().contains(zone)) {
            fields.fault("zone", web.texts().of("league.zone.fault"));
        }
        if (!fields.faulty()) {
            try {
                LeaguePoints points = new LeaguePoints(
                        Objects.requireNonNullElse(win, LeaguePoints.STANDARD.win()),
                        Objects.requireNonNullElse(tie, LeaguePoints.STANDARD.tie()),
                        Objects.requireNonNullElse(loss, LeaguePoints.STANDARD.loss()));
                League saved = web.records()
                        .leagues()
                        .save(
                                player.id(),
                                new League(
                                        before == null ? "" : before.id(),
                                        fields.value("name"),
                                        fields.value("me"),
                                        zone.isEmpty() ? web.zone().getId() : zone,
                                        Objects.requireNonNullElse(games, League.USUAL_GAMES),
                                        Objects.requireNonNullElse(rounds, League.USUAL_ROUNDS),
                                        points,
                                        fields.value("note"),
                                        false));
                ctx.redirect(path(saved) + "?said=saved");
                return;
            } catch (IllegalArgumentException e) {
                fields.fault("win", web.texts().of("league.points.fault"));
            } catch (Failure.BadInput e) {
                fields.fault("name", Web.sentence(e));
            }
        }
        ctx.status(422);
        settings(ctx, before, fields);
    }

    void delete(Context ctx) {
        Player player = web.player(ctx);
        League league = state(ctx, player).league();
        web.records().leagues().save(player.id(), league.deleted(true));
        ctx.redirect("/leagues?said=deleted&undo=" + Numbers.path(league.id()));
    }

    /** Brings a league back that was just deleted. */
    void restore(Context ctx) {
        Player player = web.player(ctx);
        String league = ctx.pathParam("league");
        web.records().changes(player.id(), league).stream()
                .filter(change -> change.kind() == Change.Kind.LEAGUE && !change.undone())
                .findFirst()
                .ifPresent(change -> web.records().undo(player.id(), change.id(), web.now()));
        ctx.redirect("/leagues?said=undone");
    }
}
