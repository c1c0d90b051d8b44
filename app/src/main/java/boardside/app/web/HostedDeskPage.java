package boardside.app.web;

import boardside.app.practice.Failure;
import boardside.app.season.SeasonChange.Kind;
import boardside.app.season.SeasonSettings;
import boardside.engine.league.Bracket;
import boardside.engine.league.season.Entrant;
import boardside.engine.league.season.PlayOff;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.league.season.SeasonMatch.Stage;
import boardside.engine.league.season.SeasonMatch.State;
import io.javalin.http.Context;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** The organiser's desk: who has still to throw, what is to be settled, the week's matches, the play-off. */
public final class HostedDeskPage {
    private static final int MOST_CHANGES = 30;

    private final Web web;
    private final Hosted hosted;

    HostedDeskPage(Web web, Hosted hosted) {
        this.web = web;
        this.hosted = hosted;
    }

    /** A season in the list. */
    public record Entry(String path, String name, String says) {}

    /**
     * The desk.
     *
     * @param now where the season is, in words
     * @param waiting who has still to throw
     * @param reminder that as a text for the chat, or empty
     * @param settle matches that wait for somebody's word
     * @param weeks numbers of all weeks, to choose one
     * @param shown the week whose matches are shown, 0 for the play-off
     * @param fair week for which fair head starts can be set, or 0
     * @param accounts whether seasons belong to accounts
     * @param seeds who would be in the play-off, in words; empty where none can be started now
     */
    public record View(
            String path,
            String name,
            String about,
            String note,
            String now,
            boolean open,
            List<Line> waiting,
            String reminder,
            List<Line> settle,
            List<Choice> weeks,
            String shown,
            List<HostedPublicPage.Group> matches,
            int fair,
            String seeds,
            boolean mayStart,
            List<Changed> changes,
            boolean accounts) {}

    /** A link with a line below it. */
    public record Line(String path, String says, String more, boolean late) {}

    /** A week to choose. */
    public record Choice(String path, String label, boolean chosen) {}

    /**
     * A change.
     *
     * @param warns what else goes with it when it is undone, or empty
     */
    public record Changed(String id, String says, boolean undone, String warns) {}

    void list(Context ctx) {
        Instant now = web.now();
        List<Entry> entries = new ArrayList<>();
        for (SeasonSettings settings : web.records().seasons().all()) {
            web.records()
                    .seasons()
                    .find(settings.id())
                    .filter(season -> hosted.mayRun(ctx, season.id()))
                    .ifPresent(season -> entries.add(new Entry(Hosted.path(season), season.name(), says(season, now))));
        }
        String undo = Objects.requireNonNullElse(ctx.queryParam("undo"), "");
        web.show(
                ctx,
                "hosted_list",
                web.texts().of("hosted.title"),
                Map.of(
                        "seasons",
                        entries,
                        "restore",
                        undo.isEmpty() ? "" : "/seasons/" + Numbers.path(undo) + "/restore"));
    }

    private String says(Season season, Instant now) {
        int waiting = season.waiting(now).size();
        return now(season, now) + "; "
                + (waiting == 0
                        ? web.texts().of("hosted.says.none")
                        : web.texts().of("hosted.says.waiting", waiting));
    }

    /** Where a season is, in words. */
    private String now(Season season, Instant now) {
        Optional<Bracket> bracket = PlayOff.bracket(season);
        if (bracket.isPresent()) {
            return bracket.get()
                    .champion()
                    .flatMap(seed -> PlayOff.at(season, new Bracket.Place.Seed(seed)))
                    .map(champion -> web.texts().of("hosted.now.champion", champion.name()))
                    .orElse(web.texts().of("hosted.now.play-off"));
        }
        int week = season.weeks().at(now);
        return week == 0
                ? web.texts()
                        .of(
                                "hosted.now.before",
                                hosted.words().opens(season, season.weeks().window(1)))
                : week > season.length()
                        ? web.texts().of("hosted.now.over")
                        : web.texts().of("hosted.now", week, season.length());
    }

    void show(Context ctx) {
        show(ctx, hosted.season(ctx), Fields.filled(web.texts(), Map.of()));
    }

    private void show(Context ctx, Season season, Fields fields) {
        Instant now = web.now();
        boolean playOff = season.playOffStarts() != null;
        int week = shown(ctx, season, now);
        List<SeasonMatch> shown = season.matches(week == 0 ? Stage.PLAY_OFF : Stage.LEAGUE).stream()
                .filter(match -> week == 0 || match.week() == week)
                .toList();
        boolean fair = season.rules().handicap()
                && week > 0
                && shown.stream()
                        .anyMatch(
                                match -> season.pending(match) && match.games().isEmpty());
        boolean settled = season.matches().stream().noneMatch(season::pending);
        List<Entrant> seeds = playOff || season.rules().qualifiers() == 0 ? List.of() : PlayOff.seeds(season);
        View view = new View(
                Hosted.path(season),
                season.name(),
                hosted.words().rules(season),
                season.note(),
                now(season, now),
                season.open(),
                waiting(season, now),
                hosted.words().reminder(season, now),
                settle(season),
                weeks(season, week),
                week == 0 ? web.texts().of("hosted.play-off") : web.texts().of("league.week", week),
                new HostedPublicPage(web, hosted).groups(season, shown, true),
                fair ? week : 0,
                seeds.size() < 2
                        ? ""
                        : IntStream.rangeClosed(1, seeds.size())
                                .mapToObj(seed -> web.texts()
                                        .of(
                                                "hosted.play-off.seed",
                                                seeds.get(seed - 1).name(),
                                                seed))
                                .collect(Collectors.joining(", ")),
                settled,
                web.records().seasons().changes(season.id()).stream()
                        .limit(MOST_CHANGES)
                        .map(change -> new Changed(
                                change.id(),
                                hosted.words().told(season, change),
                                change.undone(),
                                change.kind() == Kind.PLAY_OFF && !change.undone() ? warns(season) : ""))
                        .toList(),
                web.options().hosted());
        Map<String, @Nullable Object> values = new HashMap<>();
        values.put("view", view);
        values.put("fields", fields);
        web.show(ctx, "hosted_desk", season.name(), values);
    }

    /** Undoing the start of the play-off takes its matches out, and what was thrown in them. */
    private String warns(Season season) {
        int rounds = web.records().matchNights().rounds(season, Stage.PLAY_OFF);
        return rounds == 0 ? "" : web.texts().of("hosted.play-off.undo", rounds);
    }

    /** The week asked for, else the one under way; 0 for the play-off. */
    private static int shown(Context ctx, Season season, Instant now) {
        String asked = ctx.queryParam("week");
        if (asked != null && asked.matches("\\d{1,4}")) {
            return Math.min(Integer.parseInt(asked), season.length());
        }
        return season.playOffStarts() != null
                ? 0
                : Math.max(1, Math.min(season.weeks().at(now), season.length()));
    }

    private List<Choice> weeks(Season season, int shown) {
        List<Choice> weeks = new ArrayList<>();
        for (int week = 1; week <= season.length(); week++) {
            weeks.add(new Choice(Hosted.path(season) + "?week=" + week, String.valueOf(week), week == shown));
        }
        if (season.playOffStarts() != null) {
            weeks.add(new Choice(Hosted.path(season) + "?week=0", web.texts().of("hosted.play-off"), shown == 0));
        }
        return weeks;
    }

    private List<Line> waiting(Season season, Instant now) {
        return season.waiting(now).stream()
                .map(one -> {
                    boolean late = one.window().over(now);
                    String closes = hosted.words().closes(season, one.window());
                    return new Line(
                            Hosted.path(season, one.match()),
                            web.texts()
                                    .of(
                                            "hosted.waiting.line",
                                            one.entrant().name(),
                                            season.name(one.match()
                                                    .against(one.entrant().id())),
                                            one.thrown(),
                                            season.rules().games()),
                            web.texts().of(late ? "hosted.waiting.over" : "hosted.waiting.closes", closes),
                            late);
                })
                .toList();
    }

    private List<Line> settle(Season season) {
        List<Line> settle = new ArrayList<>();
        for (SeasonMatch match : season.matches()) {
            if (season.counts(match) && (match.state() == State.REPORTED || match.state() == State.DISPUTED)) {
                settle.add(new Line(
                        Hosted.path(season, match),
                        hosted.words().match(season, match),
                        web.texts().of("hosted.settle." + match.state().word()),
                        match.state() == State.DISPUTED));
            }
        }
        return settle;
    }

    void startPlayOff(Context ctx) {
        Season season = hosted.season(ctx);
        Fields fields = Fields.sent(ctx, web.texts());
        LocalDateTime starts = hosted.time(fields, "first-day", "hosted.starts.fault");
        if (!fields.faulty()) {
            try {
                web.records().seasons().playOff(season.id(), starts);
                ctx.redirect(Hosted.path(season) + "?said=saved");
                return;
            } catch (Failure.BadInput e) {
                fields.fault("first-day", Web.sentence(e));
            }
        }
        ctx.status(422);
        show(ctx, season, fields);
    }

    void fairHeadStarts(Context ctx) {
        Season season = hosted.season(ctx);
        Fields fields = Fields.sent(ctx, web.texts());
        Integer week = fields.whole("week", 1, Math.max(1, season.length()));
        if (week == null) {
            throw new Refusal(422, web.texts().of("field.whole", 1, season.length()));
        }
        try {
            web.records().seasons().fairHeadStarts(season.id(), Stage.LEAGUE, week);
        } catch (Failure.BadInput e) {
            throw new Refusal(422, Web.sentence(e));
        }
        ctx.redirect(Hosted.path(season) + "?week=" + week + "&said=saved");
    }

    void undo(Context ctx) {
        Season season = hosted.season(ctx);
        try {
            web.records().seasons().undo(season.id(), ctx.pathParam("change"));
        } catch (Failure.NotFound e) {
            throw new Refusal(404, web.texts().of("hosted.change.nothing"));
        } catch (Failure.BadInput e) {
            throw new Refusal(422, Web.sentence(e));
        }
        ctx.redirect(Hosted.path(season) + "?said=undone");
    }
}
