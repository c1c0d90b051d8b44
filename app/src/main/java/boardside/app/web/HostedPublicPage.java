package boardside.app.web;

import boardside.app.record.HostedSeasons;
import boardside.app.season.MatchMarks;
import boardside.app.transfer.ICalendar;
import boardside.app.transfer.SeasonResults;
import boardside.engine.league.Bracket;
import boardside.engine.league.Standings;
import boardside.engine.league.season.Entrant;
import boardside.engine.league.season.PlayOff;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.league.season.SeasonMatch.Stage;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What everybody may see of a season that is open to them: tables, matches, and files for other programs. */
public final class HostedPublicPage {
    private final Web web;
    private final Hosted hosted;

    HostedPublicPage(Web web, Hosted hosted) {
        this.web = web;
        this.hosted = hosted;
    }

    /**
     * A season as everybody sees it.
     *
     * @param desk whether whoever asks may go to the desk
     * @param open whether it is open to everybody
     */
    public record View(
            String path,
            String name,
            String about,
            String note,
            boolean desk,
            boolean open,
            List<Division> divisions,
            List<Group> playOff,
            List<Group> weeks,
            List<Feed> players) {}

    /** A division's table; the name is empty where there is only one. */
    public record Division(String name, List<Line> table, List<String> gone) {}

    /** A line of a table. */
    public record Line(String place, String name, int games, String record, int points, String totals, String reason) {}

    /**
     * Matches that belong together.
     *
     * @param bye who has a bye, in words, or empty
     */
    public record Group(String name, String closes, List<Match> matches, String bye) {}

    /**
     * A match.
     *
     * @param path where it can be changed, or looked at round by round; or empty
     */
    public record Match(String path, String says, String result) {}

    /** A player's calendar. */
    public record Feed(String name, String path) {}

    void show(Context ctx) {
        Season season = hosted.visible(ctx);
        List<Division> divisions = new ArrayList<>();
        for (int division = 0; division < season.divisions().size(); division++) {
            divisions.add(division(season, division));
        }
        View view = new View(
                Hosted.path(season),
                season.name(),
                hosted.words().rules(season),
                season.note(),
                hosted.mayRun(ctx, season.id()),
                season.open(),
                divisions,
                playOff(season),
                groups(season, season.matches(Stage.LEAGUE), false),
                season.entrants().stream()
                        .map(entrant -> new Feed(
                                entrant.name(),
                                Hosted.path(season) + "/players/" + Numbers.path(entrant.id()) + "/calendar.ics"))
                        .toList());
        web.show(ctx, "hosted_table", season.name(), Map.of("view", view));
    }

    private Division division(Season season, int division) {
        List<Line> lines = new ArrayList<>();
        String above = "";
        for (Standings.Row row : season.table(division).rows()) {
            Standings.Played played = row.record();
            lines.add(new Line(
                    String.valueOf(row.place()),
                    row.player(),
                    played.games(),
                    played.won() + "\u2013" + played.tied() + "\u2013" + played.lost(),
                    played.points(),
                    played.thrown() + "\u2013" + played.against(),
                    hosted.words().place(row, above)));
            above = row.player();
        }
        return new Division(
                season.divisions().size() == 1 ? "" : season.divisions().get(division),
                lines,
                season.of(division).stream()
                        .filter(one -> !one.in())
                        .map(one -> web.texts()
                                .of("hosted.standing." + one.standing().word(), one.name()))
                        .toList());
    }

    /** The rounds of the play-off with what is known of them; empty before there is one. */
    List<Group> playOff(Season season) {
        Optional<Bracket> found = PlayOff.bracket(season);
        if (found.isEmpty()) {
            return List.of();
        }
        Bracket bracket = found.get();
        List<Group> rounds = new ArrayList<>();
        for (int round = 1; round <= bracket.rounds(); round++) {
            List<Match> matches = new ArrayList<>();
            for (Bracket.Match at : bracket.matches(round)) {
                Bracket.Sides sides = bracket.sides(at);
                String result = season.matches(Stage.PLAY_OFF).stream()
                        .filter(match -> match.week() == at.round() && match.place() == at.number())
                        .findFirst()
                        .map(match -> hosted.words().result(season, match))
                        .orElse("");
                matches.add(new Match(
                        "",
                        web.texts()
                                .of(
                                        "league.match",
                                        side(season, bracket, sides.upper()),
                                        side(season, bracket, sides.lower())),
                        result));
            }
            rounds.add(new Group(
                    hosted.words().round(bracket.rounds(), round),
                    web.texts()
                            .of(
                                    "hosted.week.closes",
                                    hosted.words()
                                            .closes(
                                                    season,
                                                    season.playOffWeeks().window(round))),
                    matches,
                    round == 1 ? byes(season, bracket) : ""));
        }
        return rounds;
    }

    private String side(Season season, Bracket bracket, Bracket.Place place) {
        if (place instanceof Bracket.Place.WinnerOf winner) {
            return web.texts()
                    .of(
                            "hosted.play-off.winner-of",
                            hosted.words()
                                    .round(bracket.rounds(), winner.match().round()),
                            winner.match().number());
        }
        return PlayOff.at(season, place)
                .map(one -> web.texts().of("hosted.play-off.seed", one.name(), one.seed()))
                .orElse("");
    }

    private String byes(Season season, Bracket bracket) {
        List<String> byes = new ArrayList<>();
        for (int seed = 1; seed <= bracket.size() - bracket.entrants(); seed++) {
            PlayOff.at(season, new Bracket.Place.Seed(seed))
                    .ifPresent(one -> byes.add(web.texts().of("hosted.play-off.bye", one.name())));
        }
        return String.join(", ", byes);
    }

    /**
     * Matches by week and division.
     *
     * @param desk with where they can be changed
     */
    List<Group> groups(Season season, List<SeasonMatch> matches, boolean desk) {
        Map<String, MatchMarks> marks = web.records().matchNights().marks(season.id());
        List<Group> groups = new ArrayList<>();
        List<Match> now = new ArrayList<>();
        SeasonMatch before = null;
        for (SeasonMatch match : matches) {
            if (before != null && (before.week() != match.week() || before.division() != match.division())) {
                groups.add(group(season, before, now));
                now = new ArrayList<>();
            }
            MatchMarks mark = marks.get(match.id());
            now.add(new Match(
                    desk ? Hosted.path(season, match) : mark == null ? "" : LivePage.path(season.id(), match.id()),
                    hosted.words().throwers(season, match),
                    mark == null
                            ? hosted.words().result(season, match)
                            : hosted.words().result(season, match) + ". "
                                    + hosted.words().marks(mark, web.now())));
            before = match;
        }
        if (before != null) {
            groups.add(group(season, before, now));
        }
        return groups;
    }

    private Group group(Season season, SeasonMatch one, List<Match> matches) {
        boolean league = one.stage() == Stage.LEAGUE;
        String week = hosted.words().week(season, one);
        String name = league && season.divisions().size() > 1
                ? week + ", " + season.divisions().get(one.division())
                : week;
        return new Group(
                name,
                web.texts()
                        .of(
                                "hosted.week.closes",
                                hosted.words()
                                        .closes(
                                                season,
                                                (league ? season.weeks() : season.playOffWeeks()).window(one.week()))),
                matches,
                league
                        ? season.bye(one.division(), one.week())
                                .map(bye -> web.texts().of("hosted.bye", bye.name()))
                                .orElse("")
                        : "");
    }

    void csv(Context ctx) {
        Season season = hosted.visible(ctx);
        ctx.header("Content-Disposition", "attachment; filename=\"results.csv\"");
        ctx.contentType("text/csv; charset=utf-8").result(SeasonResults.csv(season));
    }

    void json(Context ctx) {
        web.answer(ctx, SeasonResults.whole(hosted.visible(ctx)));
    }

    void calendar(Context ctx) {
        calendar(ctx, hosted.visible(ctx), Optional.empty());
    }

    void playerCalendar(Context ctx) {
        Season season = hosted.visible(ctx);
        Entrant entrant = season.entrant(ctx.pathParam("entrant"))
                .orElseThrow(() -> new Refusal(404, web.texts().of("hosted.nothing")));
        calendar(ctx, season, Optional.of(entrant));
    }

    private void calendar(Context ctx, Season season, Optional<Entrant> of) {
        HostedSeasons.Version version = web.records().seasons().version(season.id());
        ctx.contentType("text/calendar; charset=utf-8")
                .result(ICalendar.of(
                        hosted.words().calendar(season, of),
                        hosted.words().events(season, of, version.count(), version.last())));
    }
}
