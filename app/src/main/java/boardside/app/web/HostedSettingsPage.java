package boardside.app.web;

import boardside.app.practice.Failure;
import boardside.app.record.NewSeason;
import boardside.app.transfer.PastedPlayers;
import boardside.engine.league.Schedule.Meetings;
import boardside.engine.league.TieBreak;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonRules;
import boardside.engine.league.season.Weeks;
import boardside.engine.odds.LeaguePoints;
import boardside.engine.rules.Word;
import io.javalin.http.Context;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** A season's one form: everything it takes to start one, and later what can still be changed. */
public final class HostedSettingsPage {
    private static final int MOST_POINTS = 100;
    private static final int LONGEST_TEXT = 100_000;

    /** How many tie-breaks can be chosen one after the other. */
    public static final int TIE_BREAKS = 4;

    private static final String NONE = "none";

    private final Web web;
    private final Hosted hosted;

    HostedSettingsPage(Web web, Hosted hosted) {
        this.web = web;
        this.hosted = hosted;
    }

    void blank(Context ctx) {
        Map<String, String> values = values(SeasonRules.USUAL);
        values.put(
                "starts",
                web.today().with(TemporalAdjusters.next(DayOfWeek.MONDAY)).toString());
        values.put("turn", "00:00");
        values.put("zone", web.zone().getId());
        values.put("meetings", Meetings.SINGLE.word());
        values.put("open", "no");
        show(ctx, null, Fields.filled(web.texts(), values));
    }

    void edit(Context ctx) {
        Season season = hosted.season(ctx);
        Map<String, String> values = values(season.rules());
        values.put("name", season.name());
        values.put("starts", season.weeks().starts().toLocalDate().toString());
        values.put("turn", season.weeks().starts().toLocalTime().toString());
        values.put("zone", season.weeks().zone().getId());
        values.put("open", season.open() ? "yes" : "no");
        values.put("note", season.note());
        show(ctx, season, Fields.filled(web.texts(), values));
    }

    private static Map<String, String> values(SeasonRules rules) {
        Map<String, String> values = new TreeMap<>();
        values.put("games", String.valueOf(rules.games()));
        values.put("rounds", String.valueOf(rules.rounds()));
        values.put("win", String.valueOf(rules.points().win()));
        values.put("tie", String.valueOf(rules.points().tie()));
        values.put("loss", String.valueOf(rules.points().loss()));
        values.put("qualifiers", String.valueOf(rules.qualifiers()));
        values.put("handicap", rules.handicap() ? "yes" : "no");
        for (int i = 0; i < TIE_BREAKS; i++) {
            values.put(
                    "tie-break-" + (i + 1),
                    i < rules.tieBreaks().size() ? rules.tieBreaks().get(i).word() : NONE);
        }
        return values;
    }

    private void show(Context ctx, @Nullable Season season, Fields fields) {
        Map<String, @Nullable Object> values = new HashMap<>();
        values.put("action", season == null ? "/seasons" : Hosted.path(season) + "/settings");
        values.put("remove", season == null ? null : Hosted.path(season) + "/delete");
        values.put("fields", fields);
        values.put("zones", Hosted.zones());
        List<String> tieBreaks = new ArrayList<>(List.of(NONE));
        tieBreaks.addAll(Word.words(TieBreak.class));
        values.put("tieBreaks", tieBreaks);
        web.show(ctx, "hosted_settings", season == null ? web.texts().of("hosted.new") : season.name(), values);
    }

    void add(Context ctx) {
        Fields fields = Fields.sent(ctx, web.texts());
        SeasonRules rules = rules(fields, SeasonRules.USUAL, fields.word("meetings", Meetings.class, Meetings.SINGLE));
        Weeks weeks = weeks(fields);
        List<NewSeason.Division> divisions = divisions(fields);
        if (!fields.faulty()) {
            try {
                Season made = web.records()
                        .seasons()
                        .add(
                                new NewSeason(
                                        fields.value("name"),
                                        Objects.requireNonNull(rules),
                                        Objects.requireNonNull(weeks),
                                        divisions,
                                        fields.value("open").equals("yes"),
                                        fields.value("note")),
                                web.options().hosted() ? web.owner(ctx) : null);
                ctx.redirect(Hosted.path(made) + "?said=hosted.made");
                return;
            } catch (Failure.BadInput e) {
                fields.fault("form", Web.sentence(e));
            }
        }
        ctx.status(422);
        show(ctx, null, fields);
    }

    private List<NewSeason.Division> divisions(Fields fields) {
        try {
            String text = fields.value("players");
            if (text.length() > LONGEST_TEXT) {
                throw new Failure.BadInput(web.texts().of("league.paste.long", LONGEST_TEXT, text.length()));
            }
            return PastedPlayers.read(text, web.texts().of("hosted.division.one"));
        } catch (Failure.BadInput e) {
            fields.fault("players", Web.sentence(e));
            return List.of();
        }
    }

    void save(Context ctx) {
        Season season = hosted.season(ctx);
        Fields fields = Fields.sent(ctx, web.texts());
        SeasonRules rules = rules(fields, season.rules(), season.rules().meetings());
        Weeks weeks = weeks(fields);
        if (!fields.faulty()) {
            try {
                web.records()
                        .seasons()
                        .settings(
                                season.id(),
                                fields.value("name"),
                                Objects.requireNonNull(rules),
                                Objects.requireNonNull(weeks),
                                fields.value("open").equals("yes"),
                                fields.value("note"));
                ctx.redirect(Hosted.path(season) + "?said=saved");
                return;
            } catch (Failure.BadInput e) {
                fields.fault("form", Web.sentence(e));
            }
        }
        ctx.status(422);
        show(ctx, season, fields);
    }

    private @Nullable Weeks weeks(Fields fields) {
        LocalDateTime starts = null;
        try {
            starts = LocalDate.parse(fields.value("starts")).atTime(hosted.timeOfDay(fields, "turn"));
        } catch (java.time.DateTimeException e) {
            fields.fault("starts", web.texts().of("hosted.starts.fault"));
        }
        String zone = fields.value("zone");
        if (!zone.isEmpty() && !ZoneId.getAvailableZoneIds().contains(zone)) {
            fields.fault("zone", web.texts().of("league.zone.fault"));
            return null;
        }
        return starts == null ? null : new Weeks(starts, zone.isEmpty() ? web.zone() : ZoneId.of(zone));
    }

    private @Nullable SeasonRules rules(Fields fields, SeasonRules usual, Meetings meetings) {
        Integer games = fields.whole("games", 1, SeasonRules.MOST_GAMES);
        Integer rounds = fields.whole("rounds", 1, SeasonRules.MOST_ROUNDS);
        Integer win = fields.whole("win", 0, MOST_POINTS);
        Integer tie = fields.whole("tie", 0, MOST_POINTS);
        Integer loss = fields.whole("loss", 0, MOST_POINTS);
        Integer qualifiers = fields.whole("qualifiers", 0, SeasonRules.MOST_QUALIFIERS);
        List<TieBreak> tieBreaks = new ArrayList<>();
        for (int i = 1; i <= TIE_BREAKS; i++) {
            String word = fields.value("tie-break-" + i);
            if (Word.words(TieBreak.class).contains(word)) {
                TieBreak by = Word.of(TieBreak.class, word);
                if (tieBreaks.contains(by)) {
                    fields.fault("tie-break-" + i, web.texts().of("hosted.tie-break.fault"));
                } else {
                    tieBreaks.add(by);
                }
            }
        }
        LeaguePoints points = null;
        try {
            points = new LeaguePoints(
                    Objects.requireNonNullElse(win, usual.points().win()),
                    Objects.requireNonNullElse(tie, usual.points().tie()),
                    Objects.requireNonNullElse(loss, usual.points().loss()));
        } catch (IllegalArgumentException e) {
            fields.fault("win", web.texts().of("league.points.fault"));
        }
        return fields.faulty() || points == null
                ? null
                : new SeasonRules(
                        Objects.requireNonNullElse(games, usual.games()),
                        Objects.requireNonNullElse(rounds, usual.rounds()),
                        points,
                        tieBreaks,
                        meetings,
                        Objects.requireNonNullElse(qualifiers, usual.qualifiers()),
                        fields.value("handicap").equals("yes"));
    }

    void delete(Context ctx) {
        Season season = hosted.season(ctx);
        web.records().seasons().delete(season.id());
        ctx.redirect("/seasons?said=deleted&undo=" + Numbers.path(season.id()));
    }

    /** Brings a season back that was just deleted. */
    void restore(Context ctx) {
        if (!hosted.mayRun(ctx, ctx.pathParam("season"))) {
            throw new Refusal(404, web.texts().of("hosted.nothing"));
        }
        Season back = web.records()
                .seasons()
                .restore(ctx.pathParam("season"))
                .orElseThrow(() -> new Refusal(404, web.texts().of("hosted.nothing")));
        ctx.redirect(Hosted.path(back) + "?said=undone");
    }
}
