package boardside.engine.league.season;

import boardside.engine.league.MatchResult;
import boardside.engine.league.MatchResult.Award;
import boardside.engine.league.Ranking;
import boardside.engine.league.Standings;
import boardside.engine.league.season.Entrant.Standing;
import boardside.engine.league.season.SeasonMatch.Stage;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;

/** A season as it stands. Immutable; {@link SeasonChanges} makes the next one. */
public final class Season {
    private final String id;
    private final String name;
    private final SeasonRules rules;
    private final Weeks weeks;
    private final List<String> divisions;
    private final List<Entrant> entrants;
    private final List<SeasonMatch> matches;
    private final @Nullable LocalDateTime playOffStarts;
    private final boolean open;
    private final long seed;
    private final String note;
    private final boolean deleted;
    private final Map<String, Entrant> byId = new HashMap<>();

    /**
     * Checked; lists copied.
     *
     * @param id unique among seasons
     * @param name what it is called
     * @param rules how it is thrown and counted
     * @param weeks when its weeks are
     * @param divisions their names, one or more; each plays a round robin of its own
     * @param entrants everybody, also those who left
     * @param matches those of the round robin, and those of the play-off whose two players are known
     * @param playOffStarts when the first round of the play-off begins, as the season's clocks show it; null before there is one
     * @param open whether anyone may see tables, results and calendars
     * @param seed where the lots come from
     * @param note free text for everybody
     * @param deleted whether it was deleted (and can be brought back)
     * @throws IllegalArgumentException if names are taken twice, or something refers to what is not there
     */
    public Season(
            String id,
            String name,
            SeasonRules rules,
            Weeks weeks,
            List<String> divisions,
            List<Entrant> entrants,
            List<SeasonMatch> matches,
            @Nullable LocalDateTime playOffStarts,
            boolean open,
            long seed,
            String note,
            boolean deleted) {
        this.id = id;
        this.name = name;
        this.rules = rules;
        this.weeks = weeks;
        this.divisions = List.copyOf(divisions);
        this.entrants = List.copyOf(entrants);
        this.matches = List.copyOf(matches);
        this.playOffStarts = playOffStarts;
        this.open = open;
        this.seed = seed;
        this.note = note;
        this.deleted = deleted;
        if (divisions.isEmpty()) {
            throw new IllegalArgumentException("a season has one division or more");
        }
        Set<String> names = new HashSet<>();
        for (Entrant entrant : entrants) {
            if (!names.add(plain(entrant.name()))) {
                throw new IllegalArgumentException(
                        "\"" + entrant.name() + "\" is in the season twice; give one of them another name");
            }
            if (byId.put(entrant.id(), entrant) != null || entrant.division() >= divisions.size()) {
                throw new IllegalArgumentException("\"" + entrant.name() + "\" is in no division of the season");
            }
        }
        for (SeasonMatch match : matches) {
            if (!(byId.containsKey(match.first()) && byId.containsKey(match.second()))) {
                throw new IllegalArgumentException(
                        "match " + match.id() + " is between players who are not in the season");
            }
        }
    }

    /** Unique among seasons. */
    public String id() {
        return id;
    }

    /** What it is called. */
    public String name() {
        return name;
    }

    /** How it is thrown and counted. */
    public SeasonRules rules() {
        return rules;
    }

    /** When its weeks are. */
    public Weeks weeks() {
        return weeks;
    }

    /** Names of the divisions. */
    public List<String> divisions() {
        return divisions;
    }

    /** Everybody, also those who left. */
    public List<Entrant> entrants() {
        return entrants;
    }

    /** All matches whose two players are known. */
    public List<SeasonMatch> matches() {
        return matches;
    }

    /** When the first round of the play-off begins, as the season's clocks show it; null before there is one. */
    public @Nullable LocalDateTime playOffStarts() {
        return playOffStarts;
    }

    /** Whether anyone may see tables, results and calendars. */
    public boolean open() {
        return open;
    }

    /** Where the lots come from. */
    public long seed() {
        return seed;
    }

    /** Free text for everybody. */
    public String note() {
        return note;
    }

    /** Whether it was deleted (and can be brought back). */
    public boolean deleted() {
        return deleted;
    }

    /** A name as names are told apart: capitals and spaces aside. */
    static String plain(String name) {
        return name.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    }

    /** An entrant. */
    public Optional<Entrant> entrant(String entrant) {
        return Optional.ofNullable(byId.get(entrant));
    }

    /** The entrant of a name, capitals and spaces aside. */
    public Optional<Entrant> named(String written) {
        return entrants.stream()
                .filter(one -> plain(one.name()).equals(plain(written)))
                .findFirst();
    }

    /** An entrant's name. */
    public String name(String entrant) {
        return entrant(entrant).map(Entrant::name).orElse("?");
    }

    /** Everybody of a division in the order of the schedule. */
    public List<Entrant> of(int division) {
        return entrants.stream()
                .filter(one -> one.division() == division)
                .sorted(Comparator.comparingInt(Entrant::number))
                .toList();
    }

    /** A match. */
    public Optional<SeasonMatch> match(String match) {
        return matches.stream().filter(one -> one.id().equals(match)).findFirst();
    }

    /** Matches of a stage in the order of weeks, divisions and places. */
    public List<SeasonMatch> matches(Stage stage) {
        return matches.stream()
                .filter(match -> match.stage() == stage)
                .sorted(Comparator.comparingInt(SeasonMatch::week)
                        .thenComparingInt(SeasonMatch::division)
                        .thenComparingInt(SeasonMatch::place))
                .toList();
    }

    /** How many weeks the round robin takes. */
    public int length() {
        return matches(Stage.LEAGUE).stream().mapToInt(SeasonMatch::week).max().orElse(0);
    }

    /** Whether a match counts for anybody: neither side was struck from the season. */
    public boolean counts(SeasonMatch match) {
        return !struck(match.first()) && !struck(match.second());
    }

    private boolean struck(String entrant) {
        return entrant(entrant).map(one -> one.standing() == Standing.STRUCK).orElse(true);
    }

    /** Whether a match is still to be thrown or settled. */
    public boolean pending(SeasonMatch match) {
        return counts(match) && !match.fixed();
    }

    /** When a match is to be thrown. */
    public Window window(SeasonMatch match) {
        Window week = match.stage() == Stage.LEAGUE
                ? weeks.window(match.week())
                : playOffWeeks().window(match.week());
        LocalDateTime until = match.extended();
        return until == null ? week : new Window(week.opens(), weeks.instant(until));
    }

    /** The weeks of the play-off, or those of the season where there is none. */
    public Weeks playOffWeeks() {
        LocalDateTime starts = playOffStarts;
        return starts == null ? weeks : new Weeks(starts, weeks.zone());
    }

    /** When the last match of the round robin closes, extensions included. */
    public Instant ends() {
        return matches(Stage.LEAGUE).stream()
                .map(match -> window(match).closes())
                .max(Comparator.naturalOrder())
                .orElse(weeks.instant(weeks.starts()));
    }

    /** What a match came to, by name; empty while it is not settled, or where it does not count. */
    public Optional<MatchResult> result(SeasonMatch match) {
        if (!match.fixed() || !counts(match)) {
            return Optional.empty();
        }
        return Optional.of(new MatchResult(
                name(match.first()),
                name(match.second()),
                match.totals(),
                awards(match, match.totals().size())));
    }

    private List<Award> awards(SeasonMatch match, int thrown) {
        Award to = match.forfeit();
        return to == null ? List.of() : Collections.nCopies(rules.games() - thrown, to);
    }

    /** The table of a division: all but those who were struck from the season. */
    public Standings table(int division) {
        Set<String> names = new HashSet<>();
        of(division).stream().filter(one -> !struck(one.id())).forEach(one -> names.add(one.name()));
        List<MatchResult> results = new ArrayList<>();
        for (SeasonMatch match : matches) {
            if (match.stage() == Stage.LEAGUE && match.division() == division) {
                result(match).ifPresent(results::add);
            }
        }
        return Standings.of(names, results, ranking());
    }

    /** How tables are made, with the lots. */
    public Ranking ranking() {
        return new Ranking(rules.points(), rules.tieBreaks(), lots());
    }

    /** The lot of everybody by name, 1 standing the highest: the same for the same seed, whatever happens in between. */
    private Map<String, Integer> lots() {
        List<Entrant> order = new ArrayList<>(entrants);
        order.sort(Comparator.comparingLong(
                        (Entrant one) -> new SplittableRandom(seed ^ one.id().hashCode()).nextLong())
                .thenComparing(Entrant::id));
        Map<String, Integer> lots = new HashMap<>();
        order.forEach(one -> lots.put(one.name(), lots.size() + 1));
        return lots;
    }

    /**
     * Somebody who has games to throw.
     *
     * @param thrown games thrown so far, as far as told
     * @param window when the match is to be thrown
     */
    public record Waiting(SeasonMatch match, Entrant entrant, int thrown, Window window) {}

    /** Who has games to throw in matches that have opened by now, those that close first first. */
    public List<Waiting> waiting(Instant now) {
        List<Waiting> waiting = new ArrayList<>();
        for (SeasonMatch match : matches) {
            Window window = window(match);
            if (!pending(match) || now.isBefore(window.opens())) {
                continue;
            }
            for (String side : List.of(match.first(), match.second())) {
                int thrown = match.thrown(side, rules.games());
                if (thrown < rules.games()) {
                    waiting.add(new Waiting(match, entrant(side).orElseThrow(), thrown, window));
                }
            }
        }
        waiting.sort(Comparator.comparing((Waiting one) -> one.window().closes())
                .thenComparing(one -> one.entrant().division())
                .thenComparing(one -> one.match().place())
                .thenComparing(one -> one.entrant().name()));
        return waiting;
    }

    /** Who has a bye in a week of a division; empty where nobody has. */
    public Optional<Entrant> bye(int division, int week) {
        Set<String> play = new HashSet<>();
        for (SeasonMatch match : matches) {
            if (match.stage() == Stage.LEAGUE && match.division() == division && match.week() == week) {
                play.add(match.first());
                play.add(match.second());
            }
        }
        return of(division).stream()
                .filter(one -> one.in() && !play.contains(one.id()))
                .findFirst();
    }

    Season with(List<Entrant> everybody, List<SeasonMatch> all) {
        return new Season(id, name, rules, weeks, divisions, everybody, all, playOffStarts, open, seed, note, deleted);
    }

    Season playOff(List<Entrant> everybody, LocalDateTime starts) {
        return new Season(id, name, rules, weeks, divisions, everybody, matches, starts, open, seed, note, deleted);
    }

    /** The same with other settings. */
    public Season settings(String other, SeasonRules how, Weeks when, boolean all, String text) {
        return new Season(id, other, how, when, divisions, entrants, matches, playOffStarts, all, seed, text, deleted);
    }

    /** The same, deleted or brought back. */
    public Season deleted(boolean gone) {
        return new Season(id, name, rules, weeks, divisions, entrants, matches, playOffStarts, open, seed, note, gone);
    }
}
