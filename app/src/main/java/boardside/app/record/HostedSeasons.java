package boardside.app.record;

import boardside.app.json.Json;
import boardside.app.practice.Account;
import boardside.app.practice.Failure;
import boardside.app.practice.Ids;
import boardside.app.practice.Player;
import boardside.app.practice.Role;
import boardside.app.season.Arrangement;
import boardside.app.season.Organiser;
import boardside.app.season.SeasonChange;
import boardside.app.season.SeasonChange.Kind;
import boardside.app.season.SeasonParts;
import boardside.app.season.SeasonSettings;
import boardside.app.season.StoredSeasonChange;
import boardside.app.store.AccountRows;
import boardside.app.store.Database;
import boardside.app.store.SeasonRows;
import boardside.app.store.Transaction;
import boardside.engine.league.MatchResult.Award;
import boardside.engine.league.season.Entrant;
import boardside.engine.league.season.GameScore;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonChanges;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.league.season.SeasonMatch.Stage;
import boardside.engine.league.season.SeasonRules;
import boardside.engine.league.season.TotalsSoFar;
import boardside.engine.league.season.Voice;
import boardside.engine.league.season.Weeks;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Seasons that are run here. Every method is one transaction; what it changes is kept with what was before and can be
 * undone. Nothing is kept of a change that changes nothing, so that the same may be said again. Thread safe.
 *
 * <p>All throw {@link Failure.NotFound} for a season or change that does not exist, and {@link Failure.BadInput} for what
 * cannot be.
 */
public final class HostedSeasons {
    /** Of forecasts, so that page and command say the same. */
    public static final long SEED = 20_261_125;

    private static final int LONGEST_NAME = 60;
    private static final int LONGEST_NOTE = 2000;

    /** A name begins with a letter or a digit, so that no table program takes it for a formula. */
    private static final Pattern NAME = Pattern.compile("[\\p{L}\\p{N}][^\\p{Cntrl}]*");

    private final Database database;
    private final InstantSource clock;
    private final Ids ids;

    HostedSeasons(Database database, InstantSource clock, Ids ids) {
        this.database = database;
        this.clock = clock;
        this.ids = ids;
    }

    /** Settings of all seasons that are not deleted, the newest first. */
    public List<SeasonSettings> all() {
        List<SeasonSettings> all = new ArrayList<>();
        for (SeasonSettings settings : database.read(rows -> rows.seasons().settings())) {
            if (!settings.deleted()) {
                all.add(0, settings);
            }
        }
        return all;
    }

    /** The seasons a player is in, as they stand, the newest first. */
    public List<Season> of(int player) {
        List<Season> seasons = new ArrayList<>(database.read(rows -> rows.seasons().of(player).stream()
                .map(SeasonRows.Linked::season)
                .distinct()
                .flatMap(id -> rows.seasons().find(id).stream())
                .filter(season -> !season.deleted())
                .toList()));
        Collections.reverse(seasons);
        return seasons;
    }

    /** A season as it stands; empty if there is none, or it was deleted. */
    public Optional<Season> find(String id) {
        return database.read(rows -> rows.seasons().find(id)).filter(season -> !season.deleted());
    }

    /**
     * How a season has changed so far.
     *
     * @param count how often
     * @param last when it last was, or was made
     */
    public record Version(long count, Instant last) {}

    /** How often a season has been changed, and when it last was. */
    public Version version(String id) {
        return database.read(rows -> new Version(
                rows.seasons().version(id), Instant.parse(rows.seasons().changedAt(id))));
    }

    /**
     * Makes a season with its schedule. Entrants with the name of a player of the household are that player; whose account an
     * entrant is has to be said by {@link #link}, since a name is no proof.
     */
    public Season add(NewSeason draft) {
        return add(draft, null);
    }

    /**
     * The same for an account, which runs it.
     *
     * @param owner id of the account, or null where nobody is signed in
     */
    public Season add(NewSeason draft, @Nullable String owner) {
        return database.write(rows -> {
            List<String> faults = new ArrayList<>();
            String name = name(faults, "the season", draft.name());
            taken(rows, faults, name, "");
            note(faults, draft.note());
            List<String> divisions = new ArrayList<>();
            List<Entrant> entrants = new ArrayList<>();
            List<Player> players = rows.players().of(null);
            for (NewSeason.Division division : draft.divisions()) {
                int number = 0;
                for (String written : division.players()) {
                    number++;
                    String player = name(faults, "a player", written);
                    if (!player.isEmpty()) {
                        entrants.add(new Entrant(
                                ids.next(),
                                player,
                                divisions.size(),
                                number,
                                Entrant.Standing.IN,
                                0,
                                player(players, player)));
                    }
                }
                divisions.add(name(faults, "a division", division.name()));
            }
            if (new HashSet<>(divisions).size() < divisions.size()) {
                faults.add("two divisions have the same name; give one of them another");
            }
            refuse(faults);
            Season season = checked(() -> SeasonChanges.planned(
                    new Season(
                            ids.next(),
                            name,
                            draft.rules(),
                            draft.weeks(),
                            divisions,
                            entrants,
                            List.of(),
                            null,
                            draft.open(),
                            ids.next().hashCode(),
                            draft.note().strip(),
                            false),
                    ids::next));
            rows.seasons().add(season, now());
            rows.seasons().own(season.id(), owner);
            return season;
        });
    }

    private static @Nullable Integer player(List<Player> players, String name) {
        return players.stream()
                .filter(player -> player.name().equalsIgnoreCase(name))
                .findFirst()
                .map(Player::id)
                .orElse(null);
    }

    private static String name(List<String> faults, String whose, String written) {
        String name = written.strip().replaceAll("\\s+", " ");
        if (name.isEmpty()) {
            faults.add("the name of " + whose + " is missing");
        } else if (name.length() > LONGEST_NAME || !NAME.matcher(name).matches()) {
            faults.add("\"" + name + "\" is no name of " + whose
                    + ": it begins with a letter or a digit and has at most " + LONGEST_NAME + " characters");
        }
        return name;
    }

    private static void note(List<String> faults, String note) {
        if (note.length() > LONGEST_NOTE) {
            faults.add("a note has at most " + LONGEST_NOTE + " characters, this one has " + note.length());
        }
    }

    private static void taken(Transaction rows, List<String> faults, String name, String itself) {
        for (SeasonSettings other : rows.seasons().settings()) {
            if (!other.deleted() && other.name().equals(name) && !other.id().equals(itself)) {
                faults.add("the name \"" + name + "\" is taken; give the season another one");
            }
        }
    }

    private static void refuse(List<String> faults) {
        if (!faults.isEmpty()) {
            throw new Failure.BadInput(faults);
        }
    }

    private interface Making {
        Season make();
    }

    /** What the engine refuses is told to the person who asked. */
    private static Season checked(Making making) {
        try {
            return making.make();
        } catch (IllegalArgumentException e) {
            throw new Failure.BadInput(String.valueOf(e.getMessage()));
        }
    }

    private Season change(String id, Kind kind, UnaryOperator<Season> change) {
        return database.write(rows -> change(rows, id, kind, change));
    }

    private Season change(Transaction rows, String id, Kind kind, UnaryOperator<Season> change) {
        return change(rows, ids, now(), id, kind, change);
    }

    /** Changes a season within a transaction; whoever looks at one of its matches hears of it. */
    static Season change(Transaction rows, Ids ids, String now, String id, Kind kind, UnaryOperator<Season> change) {
        if (!rows.seasons().changed(id)) {
            throw new Failure.NotFound("there is no season " + id);
        }
        Season before = rows.seasons().find(id).orElseThrow();
        if (before.deleted() && kind != Kind.UNDO) {
            throw new Failure.NotFound("the season " + before.name() + " was deleted");
        }
        Season after = checked(() -> change.apply(before));
        SeasonParts earlier = SeasonParts.of(before, after);
        SeasonParts later = SeasonParts.of(after, before);
        if (earlier.none() && later.none()) {
            rows.rollBack();
            return before;
        }
        rows.seasons()
                .keep(new StoredSeasonChange(id, ids.next(), now, kind, Json.write(earlier), Json.write(later), null));
        rows.seasons().put(before, after);
        if (later.settings() != null || !later.entrants().isEmpty() || before.deleted() != after.deleted()) {
            rows.matches().allChanged(id);
        }
        later.matches().forEach(match -> rows.matches().changed(id, match.id()));
        return after;
    }

    /**
     * Sets what a season is called and how it is counted; how long its games are and when its weeks are only while nothing has
     * been thrown, who goes to the play-off only before there is one.
     */
    public Season settings(String id, String name, SeasonRules rules, Weeks weeks, boolean open, String note) {
        return database.write(rows -> {
            List<String> faults = new ArrayList<>();
            String checked = name(faults, "the season", name);
            taken(rows, faults, checked, id);
            note(faults, note);
            refuse(faults);
            return change(rows, id, Kind.SETTINGS, before -> {
                SeasonRules old = before.rules();
                if (rules.meetings() != old.meetings()) {
                    throw new IllegalArgumentException(
                            "how often every pair meets is part of the schedule; make another season for it");
                }
                boolean length = rules.games() != old.games() || rules.rounds() != old.rounds();
                boolean dates = !weeks.equals(before.weeks());
                if ((length || dates) && SeasonChanges.begun(before)) {
                    throw new IllegalArgumentException("something has been thrown already, so "
                            + (length ? "games and rounds" : "its dates") + " stay as they are");
                }
                if (rules.qualifiers() != old.qualifiers() && before.playOffStarts() != null) {
                    throw new IllegalArgumentException("the play-off has begun, so who is in it stays as it is");
                }
                return before.settings(checked, rules, weeks, open, note.strip());
            });
        });
    }

    /** Deletes a season; it can be brought back by undoing that. */
    public void delete(String id) {
        change(id, Kind.SETTINGS, season -> season.deleted(true));
    }

    /** Brings a season back that was deleted; empty if there is no such one. */
    public Optional<Season> restore(String id) {
        Optional<Season> gone = database.read(rows -> rows.seasons().find(id)).filter(Season::deleted);
        return gone.map(season -> change(id, Kind.UNDO, before -> before.deleted(false)));
    }

    /** Totals of a match as somebody tells them. */
    public Season tell(String id, String match, List<GameScore> games, Voice by) {
        return change(id, Kind.RESULT, season -> SeasonChanges.told(season, match, games, by, ids::next));
    }

    /** Somebody says that a match's totals are right. */
    public Season confirm(String id, String match, Voice by) {
        return change(id, Kind.RESULT, season -> SeasonChanges.confirmed(season, match, by, ids::next));
    }

    /** Somebody says that a match's totals are wrong, and why. */
    public Season dispute(String id, String match, String why) {
        List<String> faults = new ArrayList<>();
        note(faults, why);
        refuse(faults);
        return change(id, Kind.RESULT, season -> SeasonChanges.disputed(season, match, why, ids::next));
    }

    /** Games of a match that were not thrown by both go by forfeit. */
    public Season forfeit(String id, String match, Award to) {
        return change(id, Kind.RESULT, season -> SeasonChanges.forfeited(season, match, to, ids::next));
    }

    /** A match is open again. */
    public Season reopen(String id, String match) {
        return database.write(rows -> {
            change(rows, id, Kind.RESULT, season -> SeasonChanges.reopened(season, match, ids::next));
            // What was thrown while nothing could be added to it is part of it now.
            new MatchRecording(rows, ids, clock.instant()).catchUp(id, match);
            return rows.seasons().find(id).orElseThrow();
        });
    }

    /** Arranges what is given of a match: when it closes, who throws, what a side is given, what is to be known of it. */
    public Season arrange(String id, String match, Arrangement asked) {
        List<String> faults = new ArrayList<>();
        String first = asked.firstSubstitute().isBlank() ? "" : name(faults, "a substitute", asked.firstSubstitute());
        String second =
                asked.secondSubstitute().isBlank() ? "" : name(faults, "a substitute", asked.secondSubstitute());
        note(faults, asked.note());
        refuse(faults);
        return change(id, Kind.MATCH, season -> {
            Arrangement now = season.match(match).map(Arrangement::of).orElse(asked);
            Season after = season;
            if (!Objects.equals(now.extended(), asked.extended())) {
                after = SeasonChanges.extended(after, match, asked.extended(), ids::next);
            }
            if (now.headStart() != asked.headStart()) {
                after = SeasonChanges.headStart(after, match, asked.headStart(), ids::next);
            }
            after = SeasonChanges.substituted(after, match, first, second, ids::next);
            return SeasonChanges.noted(after, match, asked.note(), ids::next);
        });
    }

    /** Sets the fair head start, by the totals so far, in all matches of a week of which nothing has been told yet. */
    public Season fairHeadStarts(String id, SeasonMatch.Stage stage, int week) {
        return change(id, Kind.MATCH, season -> {
            TotalsSoFar totals = TotalsSoFar.of(season);
            Season after = season;
            for (SeasonMatch match : season.matches(stage)) {
                if (match.week() == week
                        && season.pending(match)
                        && match.games().isEmpty()) {
                    int fair = totals.headStart(season.name(match.first()), season.name(match.second()));
                    after = SeasonChanges.headStart(after, match.id(), fair, ids::next);
                }
            }
            return after;
        });
    }

    /** Somebody leaves the season. */
    public Season leave(String id, String entrant) {
        return change(id, Kind.PLAYERS, season -> SeasonChanges.left(season, entrant, ids::next));
    }

    /** Somebody comes late into a division. */
    public Season join(String id, int division, String name) {
        return database.write(rows -> {
            List<String> faults = new ArrayList<>();
            String checked = name(faults, "a player", name);
            refuse(faults);
            Integer player = player(rows.players().of(null), checked);
            return change(
                    rows,
                    id,
                    Kind.PLAYERS,
                    season -> SeasonChanges.joined(season, division, checked, player, clock.instant(), ids::next));
        });
    }

    /** Somebody has another name, or somebody else takes their place. */
    public Season rename(String id, String entrant, String name) {
        List<String> faults = new ArrayList<>();
        String checked = name(faults, "a player", name);
        refuse(faults);
        return change(id, Kind.PLAYERS, season -> SeasonChanges.renamed(season, entrant, checked));
    }

    /**
     * Says that an entrant is a player whose records are kept here, or with null none: they can then tell their own totals. It
     * is no part of what was changed, since players may have other numbers where that is read again.
     */
    public void link(String id, String entrant, @Nullable Integer player) {
        database.write(rows -> {
            if (!rows.seasons().changed(id)) {
                throw new Failure.NotFound("there is no season " + id);
            }
            rows.seasons().link(id, entrant, player);
            return id;
        });
    }

    /** Accounts that run a season, its owner first; empty where only hosts may. */
    public List<Organiser> organisers(String id) {
        return database.read(rows -> rows.seasons().organisers(id));
    }

    /** Whether an account is a season's owner, or was let in by them. */
    public boolean runs(String account, String id) {
        return database.read(rows -> rows.seasons().runs(account, id));
    }

    /**
     * Lets an account run a season, or no more.
     *
     * @param name to sign in with
     * @throws Failure.BadInput if there is no such account, or it is no organiser's
     */
    public void letRun(String id, String name, boolean let) {
        organiser(id, name, (rows, account) -> {
            if (let) {
                rows.seasons().letRun(id, account);
            } else {
                rows.seasons().letRunNoMore(id, account);
            }
        });
    }

    /** Gives a season to another account, which is then its owner; whoever was it before may still run it. */
    public void give(String id, String name) {
        organiser(id, name, (rows, account) -> {
            for (Organiser before : rows.seasons().organisers(id)) {
                if (before.owner()) {
                    rows.seasons().letRun(id, before.account());
                }
            }
            rows.seasons().letRunNoMore(id, account);
            rows.seasons().own(id, account);
        });
    }

    private void organiser(String id, String name, BiConsumer<Transaction, String> change) {
        database.write(rows -> {
            if (!rows.seasons().changed(id)) {
                throw new Failure.NotFound("there is no season " + id);
            }
            Account account = rows.accounts().all().stream()
                    .map(AccountRows.Stored::account)
                    .filter(one -> one.name().equalsIgnoreCase(name.strip()))
                    .findFirst()
                    .orElseThrow(() -> new Failure.BadInput("there is no account \"" + name.strip() + "\""));
            if (!account.role().covers(Role.ORGANISER)) {
                throw new Failure.BadInput(
                        "the account " + account.name() + " is a player's; a host can make it an organiser's first");
            }
            change.accept(rows, account.id());
            return id;
        });
    }

    /** The play-off begins; at the end of the round robin unless said. */
    public Season playOff(String id, @Nullable LocalDateTime starts) {
        return change(id, Kind.PLAY_OFF, season -> SeasonChanges.playOff(season, starts, ids::next));
    }

    /** All changes of a season, the latest first; also of one that was deleted. */
    public List<SeasonChange> changes(String id) {
        List<SeasonChange> changes = new ArrayList<>();
        database.read(rows -> rows.seasons().changes(id)).forEach(entry -> changes.add(0, change(entry)));
        return changes;
    }

    private static SeasonChange change(StoredSeasonChange entry) {
        return new SeasonChange(
                entry.id(),
                entry.at(),
                entry.what(),
                Json.read(entry.earlier(), SeasonParts.class),
                Json.read(entry.later(), SeasonParts.class),
                entry.undoneAt() != null);
    }

    /** Undoes a change: the parts it changed are as they were before it. An undo can be undone too. */
    public void undo(String id, String change) {
        database.write(rows -> {
            SeasonChange undone = rows.seasons().changes(id).stream()
                    .filter(entry -> entry.id().equals(change))
                    .findFirst()
                    .map(HostedSeasons::change)
                    .orElseThrow(() -> new Failure.NotFound("there is no change " + change + " of this season"));
            if (undone.undone()) {
                rows.rollBack();
                return id;
            }
            Season after = change(rows, id, Kind.UNDO, season -> {
                Season back = undone.earlier().into(season, undone.later());
                if (season.playOffStarts() != null
                        && back.playOffStarts() != null
                        && !back.matches(Stage.LEAGUE).equals(season.matches(Stage.LEAGUE))) {
                    throw new IllegalArgumentException(
                            "the play-off has begun, so the round robin stands as it is; undo the play-off first");
                }
                return SeasonChanges.upToDate(back, ids::next);
            });
            rows.seasons().undone(id, change, now());
            return after.id();
        });
    }

    private String now() {
        return clock.instant().toString();
    }

    /** What cannot be of a season as it is stored. */
    static List<String> faults(Season season) {
        List<String> faults = new ArrayList<>();
        Set<String> places = new HashSet<>();
        for (SeasonMatch match : season.matches()) {
            String where = "season " + season.name() + ", match " + match.id() + ": ";
            if (!places.add(match.stage() + " " + match.division() + " " + match.week() + " " + match.place())) {
                faults.add(where + "another match stands at its place of the schedule");
            }
            if (match.games().size() > season.rules().games()) {
                faults.add(where + "it has " + match.games().size() + " games, a match of this season has "
                        + season.rules().games());
            }
            for (GameScore game : match.games()) {
                Integer first = game.first();
                Integer second = game.second();
                if (first != null && !season.rules().possible(first)
                        || second != null && !season.rules().possible(second)) {
                    faults.add(where + "a total of " + game + " cannot be thrown");
                }
            }
            if (match.state() == SeasonMatch.State.CONFIRMED
                    && !match.complete(season.rules().games())) {
                faults.add(where + "it is confirmed, but not all its totals are there");
            }
        }
        return faults;
    }
}
