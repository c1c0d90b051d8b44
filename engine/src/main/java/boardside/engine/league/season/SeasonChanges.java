package boardside.engine.league.season;

import boardside.engine.league.MatchResult.Award;
import boardside.engine.league.Schedule;
import boardside.engine.league.Schedule.Meetings;
import boardside.engine.league.Schedule.Pairing;
import boardside.engine.league.season.Entrant.Standing;
import boardside.engine.league.season.SeasonMatch.Stage;
import boardside.engine.league.season.SeasonMatch.State;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * What may happen to a season. Every change makes another season, and brings the play-off up to date. All throw
 * {@link IllegalArgumentException}, in words for the person who asked, where something cannot be.
 *
 * <p><b>Who leaves</b> (as in the FIDE Tournament Rules, 2011, 06 V.4, for round robins): with half their matches or more
 * settled, what they threw counts and the rest goes to the others by forfeit; with fewer, nothing of theirs counts for
 * anybody.
 *
 * <p><b>Who comes late</b> takes the place of the bye, in a division with an odd number of players; matches whose week is over
 * may be thrown until the end of the last week.
 */
public final class SeasonChanges {
    private static final int MOST_DIVISIONS = 50;
    private static final String SETTLED = "this match is settled; the organiser can change it or open it again";

    private SeasonChanges() {}

    /**
     * The schedule of a new season: in each division the Berger tables, players numbered in the order given.
     *
     * @param season without matches; its entrants are in their divisions, numbered from 1
     * @param ids ids for matches
     */
    public static Season planned(Season season, Supplier<String> ids) {
        if (season.divisions().size() > MOST_DIVISIONS) {
            throw new IllegalArgumentException("a season has at most " + MOST_DIVISIONS + " divisions, not "
                    + season.divisions().size());
        }
        List<SeasonMatch> matches = new ArrayList<>();
        for (int division = 0; division < season.divisions().size(); division++) {
            List<Entrant> players = season.of(division);
            if (players.size() < Schedule.FEWEST || players.size() > Schedule.MOST) {
                throw new IllegalArgumentException(
                        "division " + season.divisions().get(division) + " has " + players.size()
                                + " players; a division has " + Schedule.FEWEST + " to " + Schedule.MOST);
            }
            List<List<Pairing>> weeks =
                    Schedule.of(players.size(), season.rules().meetings()).weeks();
            for (int week = 1; week <= weeks.size(); week++) {
                int place = 0;
                for (Pairing pair : weeks.get(week - 1)) {
                    place++;
                    matches.add(SeasonMatch.open(
                            ids.get(),
                            Stage.LEAGUE,
                            division,
                            week,
                            place,
                            players.get(pair.first() - 1).id(),
                            players.get(pair.second() - 1).id()));
                }
            }
        }
        return season.with(season.entrants(), matches);
    }

    /** Whether any total has been told yet. */
    public static boolean begun(Season season) {
        return season.matches().stream().anyMatch(match -> !match.games().isEmpty() || match.state() != State.OPEN);
    }

    /**
     * The totals of a match as somebody tells them; those of the organiser count at once when all are known, those of a
     * player once the other says so too.
     *
     * @param games by game, game 1 first
     */
    public static Season told(Season season, String match, List<GameScore> games, Voice by, Supplier<String> ids) {
        SeasonRules rules = season.rules();
        if (games.size() > rules.games()) {
            throw new IllegalArgumentException(
                    "a match of this season has " + rules.games() + " games, not " + games.size());
        }
        for (int game = 1; game <= games.size(); game++) {
            GameScore score = games.get(game - 1);
            for (Integer total : Arrays.asList(score.first(), score.second())) {
                if (total != null && !rules.possible(total)) {
                    throw new IllegalArgumentException("game " + game + ": " + rules.rounds() + " rounds give 0 to "
                            + rules.mostPoints() + " points (all but " + (rules.mostPoints() - 1) + "), not " + total);
                }
            }
        }
        return edited(season, match, ids, before -> {
            SeasonMatch after = before.told(games, by, rules.games());
            boolean same = after.games().equals(before.games());
            if (same && before.fixed()) {
                // Said again, whoever says it: what is settled, or was given away, stays so.
                return before;
            }
            if (before.fixed() && by != Voice.ORGANISER) {
                throw new IllegalArgumentException(SETTLED);
            }
            // The same from the other side is agreement.
            return same && before.state() == State.REPORTED && by != Voice.ORGANISER ? before.confirmed(by) : after;
        });
    }

    /** Somebody says that a match's totals are right. */
    public static Season confirmed(Season season, String match, Voice by, Supplier<String> ids) {
        return edited(season, match, ids, before -> {
            if (!before.complete(season.rules().games())) {
                throw new IllegalArgumentException(
                        "this match has not all its totals yet; type them in first, or give the rest away by forfeit");
            }
            if (before.state() == State.DISPUTED && by != Voice.ORGANISER) {
                throw new IllegalArgumentException("this match is disputed; the organiser decides");
            }
            return before.fixed() ? before : before.confirmed(by);
        });
    }

    /** Somebody says that a match's totals are wrong, and why. */
    public static Season disputed(Season season, String match, String why, Supplier<String> ids) {
        return edited(season, match, ids, before -> {
            if (before.fixed()) {
                throw new IllegalArgumentException(SETTLED);
            }
            if (before.games().isEmpty()) {
                throw new IllegalArgumentException("nothing has been told of this match that could be wrong");
            }
            return before.disputed(why.strip());
        });
    }

    /** Games of a match that were not thrown by both go by forfeit. */
    public static Season forfeited(Season season, String match, Award to, Supplier<String> ids) {
        return edited(season, match, ids, before -> {
            if (before.complete(season.rules().games())) {
                throw new IllegalArgumentException(
                        "all games of this match were thrown; there is nothing to give away");
            }
            return before.forfeited(to);
        });
    }

    /** A match is open again; its totals stay as told. */
    public static Season reopened(Season season, String match, Supplier<String> ids) {
        return edited(season, match, ids, SeasonMatch::reopened);
    }

    /**
     * A match closes at another time; with null at the end of its week.
     *
     * @param until as the season's clocks show it; after the end of its week
     */
    public static Season extended(Season season, String match, @Nullable LocalDateTime until, Supplier<String> ids) {
        return edited(season, match, ids, before -> {
            Window week = season.window(before.extended(null));
            if (until != null && !season.weeks().instant(until).isAfter(week.closes())) {
                throw new IllegalArgumentException("an extension ends after the match's week, which closes at "
                        + season.weeks().local(week.closes()) + ", not at " + until);
            }
            return before.extended(until);
        });
    }

    /** Who throws for the two sides of a match; empty for themselves. */
    public static Season substituted(Season season, String match, String first, String second, Supplier<String> ids) {
        return edited(season, match, ids, before -> before.substitutes(first.strip(), second.strip()));
    }

    /** What the side named first is given in each game of a match; negative, the other side. */
    public static Season headStart(Season season, String match, int points, Supplier<String> ids) {
        if (!season.rules().handicap()) {
            throw new IllegalArgumentException(
                    "this season is thrown without head starts; its settings can allow them");
        }
        if (Math.abs(points) > season.rules().mostPoints()) {
            throw new IllegalArgumentException(
                    "a head start is at most " + season.rules().mostPoints() + " points, not " + Math.abs(points));
        }
        return edited(season, match, ids, before -> before.headStart(points));
    }

    /** What is to be known of a match. */
    public static Season noted(Season season, String match, String note, Supplier<String> ids) {
        return edited(season, match, ids, before -> before.noted(note.strip()));
    }

    /** The season with its play-off as it follows from what is settled: after something was put back as it was. */
    public static Season upToDate(Season season, Supplier<String> ids) {
        return PlayOff.advanced(season, ids);
    }

    private static Season edited(Season season, String id, Supplier<String> ids, UnaryOperator<SeasonMatch> edit) {
        SeasonMatch before = season.match(id)
                .orElseThrow(() -> new IllegalArgumentException("there is no match " + id + " in this season"));
        if (!season.counts(before)) {
            throw new IllegalArgumentException("this match counts for nobody: "
                    + season.entrants().stream()
                            .filter(one -> before.has(one.id()) && one.standing() == Standing.STRUCK)
                            .map(Entrant::name)
                            .findFirst()
                            .orElse("a player")
                    + " left the season");
        }
        if (before.stage() == Stage.LEAGUE && season.playOffStarts() != null) {
            throw new IllegalArgumentException(
                    "the play-off has begun, so the round robin stands as it is; undo the play-off first");
        }
        List<SeasonMatch> matches = new ArrayList<>(season.matches());
        matches.set(matches.indexOf(before), edit.apply(before));
        return PlayOff.advanced(season.with(season.entrants(), matches), ids);
    }

    /** Somebody has another name, or somebody else takes their place from now on. */
    public static Season renamed(Season season, String entrant, String name) {
        return season.with(replaced(season, found(season, entrant).named(name)), season.matches());
    }

    private static Entrant found(Season season, String entrant) {
        return season.entrant(entrant)
                .orElseThrow(() -> new IllegalArgumentException("there is no player " + entrant + " in this season"));
    }

    private static List<Entrant> replaced(Season season, Entrant by) {
        return season.entrants().stream()
                .map(one -> one.id().equals(by.id()) ? by : one)
                .toList();
    }

    /** Somebody leaves the season; see the class for what becomes of their matches. */
    public static Season left(Season season, String entrant, Supplier<String> ids) {
        Entrant leaver = found(season, entrant);
        if (!leaver.in()) {
            throw new IllegalArgumentException(leaver.name() + " has left the season already");
        }
        int all = 0;
        int settled = 0;
        for (SeasonMatch match : season.matches()) {
            if (match.stage() == Stage.LEAGUE && match.has(entrant) && season.counts(match)) {
                all++;
                settled += match.fixed() ? 1 : 0;
            }
        }
        Standing how = 2 * settled >= all ? Standing.LEFT : Standing.STRUCK;
        List<SeasonMatch> matches = new ArrayList<>();
        for (SeasonMatch match : season.matches()) {
            boolean given = how == Standing.LEFT && match.has(entrant) && season.pending(match);
            matches.add(given ? match.forfeited(award(match, false, true, entrant)) : match);
        }
        return PlayOff.advanced(season.with(replaced(season, leaver.leaving(how)), matches), ids);
    }

    /** Who is given a match's games, of an entrant and the other. */
    static Award award(SeasonMatch match, boolean entrantIn, boolean otherIn, String entrant) {
        if (entrantIn == otherIn) {
            return Award.NEITHER;
        }
        return match.first().equals(entrant) == entrantIn ? Award.FIRST : Award.SECOND;
    }

    /** Somebody comes late into a division; see the class. */
    public static Season joined(
            Season season, int division, String name, @Nullable Integer player, Instant now, Supplier<String> ids) {
        if (season.playOffStarts() != null) {
            throw new IllegalArgumentException("the play-off has begun; nobody can come in any more");
        }
        List<Entrant> there = season.of(division);
        if (there.size() % 2 == 0) {
            throw new IllegalArgumentException("division " + season.divisions().get(division)
                    + " has an even number of players, so that nobody has a bye to be filled; somebody can take over the"
                    + " place of a player under another name");
        }
        int last = season.length();
        if (season.weeks().window(last).over(now)) {
            throw new IllegalArgumentException("the last week is over; nobody can come in any more");
        }
        Entrant entrant = new Entrant(ids.get(), name, division, there.size() + 1, Standing.IN, 0, player);
        List<SeasonMatch> matches = new ArrayList<>(season.matches());
        Meetings meetings = season.rules().meetings();
        List<List<Pairing>> weeks = Schedule.of(there.size() + 1, meetings).weeks();
        for (int week = 1; week <= weeks.size(); week++) {
            int place = weeks.get(week - 1).size();
            for (Pairing pair : weeks.get(week - 1)) {
                Optional<Entrant> other = pair.first() == entrant.number()
                        ? Optional.of(there.get(pair.second() - 1))
                        : pair.second() == entrant.number()
                                ? Optional.of(there.get(pair.first() - 1))
                                : Optional.empty();
                if (other.filter(Entrant::in).isPresent()) {
                    boolean first = pair.first() == entrant.number();
                    SeasonMatch match = SeasonMatch.open(
                            ids.get(),
                            Stage.LEAGUE,
                            division,
                            week,
                            place,
                            first ? entrant.id() : other.get().id(),
                            first ? other.get().id() : entrant.id());
                    boolean over = season.weeks().window(week).over(now);
                    matches.add(over ? match.extended(season.weeks().begins(last + 1)) : match);
                }
            }
        }
        List<Entrant> everybody = new ArrayList<>(season.entrants());
        everybody.add(entrant);
        return season.with(everybody, matches);
    }

    /**
     * The play-off begins, seeded by the tables as they stand.
     *
     * @param starts when its first round does, as the season's clocks show it; null for when the round robin ends
     */
    public static Season playOff(Season season, @Nullable LocalDateTime starts, Supplier<String> ids) {
        if (season.playOffStarts() != null) {
            throw new IllegalArgumentException("the play-off has begun already");
        }
        long open = season.matches().stream().filter(season::pending).count();
        if (open > 0) {
            throw new IllegalArgumentException(open + (open == 1 ? " match is" : " matches are")
                    + " not settled yet; type in results or give games away by forfeit first");
        }
        List<Entrant> seeds = PlayOff.seeds(season);
        if (seeds.size() < 2) {
            throw new IllegalArgumentException(
                    "a play-off needs two players or more, and the settings of this season send " + seeds.size()
                            + " to it");
        }
        List<Entrant> everybody = season.entrants().stream()
                .map(one -> one.seeded(1 + seeds.indexOf(one)))
                .toList();
        LocalDateTime begins = starts == null ? season.weeks().local(season.ends()) : starts;
        return PlayOff.advanced(season.playOff(everybody, begins), ids);
    }
}
