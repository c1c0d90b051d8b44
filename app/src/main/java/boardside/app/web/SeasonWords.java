package boardside.app.web;

import boardside.app.season.MatchMarks;
import boardside.app.season.SeasonChange;
import boardside.app.season.SeasonParts;
import boardside.app.season.SeasonSettings;
import boardside.app.transfer.ICalendar;
import boardside.engine.league.Bracket;
import boardside.engine.league.Standings;
import boardside.engine.league.season.Entrant;
import boardside.engine.league.season.PlayOff;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.league.season.SeasonMatch.Stage;
import boardside.engine.league.season.SeasonRules;
import boardside.engine.league.season.Window;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Seasons that are run here in words, for pages and the command line alike. */
public final class SeasonWords {
    private static final int MOST_TOLD = 3;

    /** A match whose latest round is younger is being thrown. */
    private static final Duration NOW = Duration.ofMinutes(5);

    private final Texts texts;

    public SeasonWords(Texts texts) {
        this.texts = texts;
    }

    /** Both names. */
    public String match(Season season, SeasonMatch match) {
        return texts.of("league.match", season.name(match.first()), season.name(match.second()));
    }

    /** Both names, with whoever throws for one of them. */
    public String throwers(Season season, SeasonMatch match) {
        return texts.of(
                "league.match",
                thrower(season.name(match.first()), match.firstSubstitute()),
                thrower(season.name(match.second()), match.secondSubstitute()));
    }

    private String thrower(String name, String substitute) {
        return substitute.isEmpty() ? name : texts.of("hosted.substitute.for", substitute, name);
    }

    /** The week, or the round of the play-off. */
    public String week(Season season, SeasonMatch match) {
        return match.stage() == Stage.LEAGUE
                ? texts.of("league.week", match.week())
                : round(PlayOff.bracket(season).map(Bracket::rounds).orElse(match.week()), match.week());
    }

    /** A round of a play-off of so many rounds. */
    public String round(int rounds, int round) {
        int left = rounds - round;
        return left <= 2 ? texts.of("hosted.round." + left) : texts.of("hosted.round", round);
    }

    /** When something closes, as the season's clocks show it: the last minute of it, which nobody takes for the day after. */
    public String closes(Season season, Window window) {
        return texts.when(season.weeks().local(window.closes().minusSeconds(60)));
    }

    /** When something begins, as the season's clocks show it. */
    public String opens(Season season, Window window) {
        return texts.when(season.weeks().local(window.opens()));
    }

    /** Totals by game, the first name's first; empty where nothing is known. */
    public String totals(SeasonMatch match) {
        return match.games().stream()
                .map(game -> LeaguesPage.total(game.first()) + "\u2013" + LeaguesPage.total(game.second()))
                .collect(Collectors.joining(", "));
    }

    /** What a match came to so far. */
    public String result(Season season, SeasonMatch match) {
        List<String> parts = new ArrayList<>();
        String totals = totals(match);
        if (!totals.isEmpty()) {
            parts.add(totals);
        }
        if (!season.counts(match)) {
            parts.add(texts.of("hosted.state.struck"));
        } else if (match.state() == SeasonMatch.State.FORFEITED && match.forfeit() != null) {
            parts.add(
                    switch (match.forfeit()) {
                        case FIRST -> texts.of("hosted.forfeit.to", season.name(match.first()));
                        case SECOND -> texts.of("hosted.forfeit.to", season.name(match.second()));
                        case NEITHER -> texts.of("hosted.forfeit.neither");
                    });
        } else if (match.state() != SeasonMatch.State.CONFIRMED || totals.isEmpty()) {
            parts.add(texts.of("hosted.state." + match.state().word()));
        }
        if (match.headStart() != 0) {
            parts.add(headStart(season, match, match.headStart()));
        }
        return String.join("; ", parts);
    }

    /** How the rounds of a match came in, and whether it is thrown just now. */
    public String marks(MatchMarks marks, Instant now) {
        List<String> parts = new ArrayList<>();
        if (Duration.between(marks.latest(), now).compareTo(NOW) < 0) {
            parts.add(texts.of("hosted.marks.now"));
        }
        count(parts, "hosted.marks.live", marks.live());
        count(parts, "hosted.marks.late", marks.late());
        count(parts, "hosted.marks.typed", marks.typed());
        count(parts, "hosted.marks.edits", marks.edits());
        return texts.of("hosted.marks", String.join(", ", parts));
    }

    private void count(List<String> parts, String key, int count) {
        if (count > 0) {
            parts.add(texts.of(key, count));
        }
    }

    /** Who is given how many points a game; empty for none. */
    public String headStart(Season season, SeasonMatch match, int points) {
        return points == 0
                ? ""
                : texts.of(
                        "hosted.head-start.says",
                        season.name(points > 0 ? match.first() : match.second()),
                        Math.abs(points));
    }

    /** Why somebody stands where they stand, in a sentence. */
    public String place(Standings.Row row, String above) {
        Standings.Played played = row.record();
        String points = texts.of("hosted.place.points", played.points(), played.games());
        if (row.reason() instanceof Standings.Reason.Top) {
            return points;
        }
        return row.reason() instanceof Standings.Reason.Points less
                ? texts.of("hosted.place.behind", played.points(), played.games(), less.above() - less.here(), above)
                : texts.of(
                        "hosted.place.reason",
                        played.points(),
                        played.games(),
                        LeaguesPage.reason(texts, row.reason(), above));
    }

    /** Rules in a sentence. */
    public String rules(Season season) {
        SeasonRules rules = season.rules();
        List<String> says = new ArrayList<>();
        says.add(texts.of(
                "hosted.about",
                rules.games(),
                rules.rounds(),
                rules.points().win(),
                rules.points().tie(),
                rules.points().loss()));
        if (!rules.tieBreaks().isEmpty()) {
            says.add(texts.of(
                    "hosted.about.ties",
                    rules.tieBreaks().stream()
                            .map(by -> texts.of("hosted.tie-break." + by.word()))
                            .collect(Collectors.joining(", "))));
        }
        if (rules.qualifiers() > 0) {
            says.add(texts.of("hosted.about.play-off", rules.qualifiers()));
        }
        if (rules.handicap()) {
            says.add(texts.of("hosted.about.handicap"));
        }
        says.add(texts.of("hosted.about.zone", season.weeks().zone().getId()));
        return String.join(" ", says);
    }

    /** Who has games to throw, as a text to paste into a chat; empty where nobody has. */
    public String reminder(Season season, Instant now) {
        Map<String, List<Season.Waiting>> byEnd = new LinkedHashMap<>();
        for (Season.Waiting one : season.waiting(now)) {
            String closes = closes(season, one.window());
            String head = one.window().over(now)
                    ? texts.of("hosted.remind.over", week(season, one.match()), closes)
                    : texts.of("hosted.remind.week", week(season, one.match()), closes);
            byEnd.computeIfAbsent(head, key -> new ArrayList<>()).add(one);
        }
        List<String> lines = new ArrayList<>();
        byEnd.forEach((head, waiting) -> {
            lines.add(head);
            waiting.forEach(one -> lines.add(texts.of(
                    "hosted.remind.line",
                    one.entrant().name(),
                    season.name(one.match().against(one.entrant().id())),
                    season.rules().games() - one.thrown())));
        });
        if (lines.isEmpty()) {
            return "";
        }
        lines.add(
                0,
                texts.of(
                        "hosted.remind.head",
                        season.name(),
                        season.weeks().zone().getId()));
        return String.join("\n", lines);
    }

    /** Matches as events: of the whole season, or of one player. */
    public List<ICalendar.Event> events(Season season, Optional<Entrant> of, long sequence, Instant changed) {
        List<ICalendar.Event> events = new ArrayList<>();
        for (Stage stage : Stage.values()) {
            for (SeasonMatch match : season.matches(stage)) {
                if (of.isEmpty() || match.has(of.get().id())) {
                    Window window = season.window(match);
                    events.add(new ICalendar.Event(
                            match.id() + "@boardside",
                            sequence,
                            changed,
                            window.opens(),
                            window.closes(),
                            match(season, match),
                            texts.of(
                                    "hosted.calendar.about", season.name(), week(season, match), result(season, match)),
                            !season.counts(match)));
                }
            }
        }
        return events;
    }

    /** The calendar's name. */
    public String calendar(Season season, Optional<Entrant> of) {
        return of.map(entrant -> texts.of("hosted.calendar.of", season.name(), entrant.name()))
                .orElse(season.name());
    }

    /** A change in plain words. */
    public String told(Season season, SeasonChange change) {
        List<String> parts = new ArrayList<>();
        SeasonSettings before = change.earlier().settings();
        SeasonSettings after = change.later().settings();
        if (before != null && after != null) {
            settings(parts, before, after);
        }
        Map<String, Entrant> entrants = byId(change.earlier());
        for (Entrant entrant : change.later().entrants()) {
            entrant(parts, entrants.get(entrant.id()), entrant);
        }
        Map<String, SeasonMatch> matches = new LinkedHashMap<>();
        change.earlier().matches().forEach(match -> matches.put(match.id(), match));
        for (SeasonMatch match : change.later().matches()) {
            SeasonMatch earlier = matches.get(match.id());
            if (earlier != null) {
                parts.add(match(season, match) + ": " + match(season, earlier, match));
            }
        }
        int more = parts.size() - MOST_TOLD;
        String said = parts.stream().limit(MOST_TOLD).collect(Collectors.joining("; "));
        return texts.of("hosted.change." + change.kind().word())
                + (said.isEmpty() ? "" : ": " + said)
                + (more > 0 ? "; " + texts.of("hosted.change.more", more) : "");
    }

    private static Map<String, Entrant> byId(SeasonParts parts) {
        Map<String, Entrant> byId = new LinkedHashMap<>();
        parts.entrants().forEach(entrant -> byId.put(entrant.id(), entrant));
        return byId;
    }

    private void settings(List<String> parts, SeasonSettings before, SeasonSettings after) {
        part(parts, "hosted.name", before.name(), after.name());
        part(parts, "league.games", before.rules().games(), after.rules().games());
        part(parts, "league.rounds", before.rules().rounds(), after.rules().rounds());
        part(parts, "hosted.points", points(before), points(after));
        part(parts, "hosted.tie-breaks", tieBreaks(before), tieBreaks(after));
        part(
                parts,
                "hosted.qualifiers",
                before.rules().qualifiers(),
                after.rules().qualifiers());
        part(parts, "hosted.starts", before.weeks().starts(), after.weeks().starts());
        part(parts, "hosted.zone", before.weeks().zone(), after.weeks().zone());
        part(parts, "entry.note", before.note(), after.note());
        if (before.rules().handicap() != after.rules().handicap()) {
            parts.add(texts.of(after.rules().handicap() ? "hosted.change.handicap" : "hosted.change.no-handicap"));
        }
        if (before.open() != after.open()) {
            parts.add(texts.of(after.open() ? "hosted.change.open" : "hosted.change.closed"));
        }
        if (before.deleted() != after.deleted()) {
            parts.add(texts.of(after.deleted() ? "hosted.change.deleted" : "hosted.change.back"));
        }
    }

    private static String points(SeasonSettings settings) {
        return settings.rules().points().win() + ", "
                + settings.rules().points().tie() + ", "
                + settings.rules().points().loss();
    }

    private String tieBreaks(SeasonSettings settings) {
        return settings.rules().tieBreaks().stream()
                .map(by -> texts.of("hosted.tie-break." + by.word()))
                .collect(Collectors.joining(", "));
    }

    private void entrant(List<String> parts, @Nullable Entrant before, Entrant after) {
        if (before == null) {
            parts.add(texts.of("hosted.change.joined", after.name()));
        } else if (!before.name().equals(after.name())) {
            parts.add(texts.of("hosted.change.renamed", before.name(), after.name()));
        } else if (before.standing() != after.standing()) {
            parts.add(texts.of("hosted.standing." + after.standing().word(), after.name()));
        }
    }

    private String match(Season season, SeasonMatch before, SeasonMatch after) {
        List<String> parts = new ArrayList<>();
        part(parts, "hosted.totals", totals(before), totals(after));
        part(
                parts,
                "hosted.state",
                texts.of("hosted.state." + before.state().word()),
                texts.of("hosted.state." + after.state().word()));
        part(parts, "hosted.closes", until(season, before), until(season, after));
        part(parts, "hosted.substitutes", substitutes(before), substitutes(after));
        part(
                parts,
                "hosted.head-start",
                headStart(season, before, before.headStart()),
                headStart(season, after, after.headStart()));
        part(parts, "entry.note", before.note(), after.note());
        return parts.isEmpty() ? texts.of("hosted.said." + after.said().word()) : String.join(", ", parts);
    }

    private static String substitutes(SeasonMatch match) {
        return List.of(match.firstSubstitute(), match.secondSubstitute()).stream()
                .filter(name -> !name.isEmpty())
                .collect(Collectors.joining(", "));
    }

    private String until(Season season, SeasonMatch match) {
        LocalDateTime extended = match.extended();
        return texts.when(
                extended == null
                        ? season.weeks()
                                .local(season.window(match.extended(null)).closes())
                        : extended);
    }

    private void part(List<String> parts, String label, Object before, Object after) {
        if (!before.equals(after)) {
            parts.add(texts.of("hosted.change.part", texts.of(label), before, after));
        }
    }
}
