package boardside.app.record;

import boardside.app.practice.Failure;
import boardside.app.practice.Fixture;
import boardside.app.practice.Ids;
import boardside.app.practice.League;
import boardside.app.store.Database;
import boardside.app.store.Transaction;
import java.time.DateTimeException;
import java.time.InstantSource;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Leagues that somebody else runs: settings, fixtures and what was posted. Every method is one transaction; what it changes
 * is kept in the history and can be undone. Thread safe.
 */
public final class Leagues {
    private static final int LONGEST_NAME = 60;
    private static final int MOST_FIXTURES = 2000;

    private final Database database;
    private final InstantSource clock;
    private final Ids ids;
    private final Corrections corrections;

    Leagues(Database database, InstantSource clock, Ids ids, Corrections corrections) {
        this.database = database;
        this.clock = clock;
        this.ids = ids;
        this.corrections = corrections;
    }

    /** A player's leagues as they stand, the newest first. */
    public List<LeagueState> all(int player) {
        return database.read(rows -> {
            List<LeagueState> states = new ArrayList<>();
            for (League league : rows.leagues().all(player)) {
                if (!league.deleted()) {
                    states.add(0, state(rows, player, league));
                }
            }
            return states;
        });
    }

    /** A league as it stands; empty if there is none, or it was deleted. */
    public Optional<LeagueState> find(int player, String id) {
        return database.read(rows -> rows.leagues()
                .find(player, id)
                .filter(league -> !league.deleted())
                .map(league -> state(rows, player, league)));
    }

    /** The fixture a run was thrown for, with its league. */
    public Optional<OfRun> ofRun(int player, String run) {
        return database.read(rows -> rows.leagues()
                .thrownIn(player, run)
                .flatMap(game -> rows.leagues()
                        .fixture(player, game.fixture())
                        .filter(fixture -> !fixture.deleted())
                        .flatMap(fixture -> rows.leagues()
                                .find(player, fixture.league())
                                .filter(league -> !league.deleted())
                                .map(league -> new OfRun(state(rows, player, league), fixture, game.game())))));
    }

    /** A game of a fixture. */
    public record OfRun(LeagueState state, Fixture fixture, int game) {}

    private static LeagueState state(Transaction rows, int player, League league) {
        return new LeagueState(
                league,
                rows.leagues().fixtures(player, league.id()),
                rows.leagues().thrown(player, league.id()));
    }

    /**
     * Adds a league (its id empty) or edits one. A new name of the player's own goes into its fixtures too.
     *
     * @throws Failure.BadInput if a name is blank, too long or taken, or games would vanish that were thrown
     */
    public League save(int player, League league) {
        return database.write(rows -> {
            change(rows, player);
            List<String> faults = new ArrayList<>();
            String name = name(faults, "the league", league.name());
            String me = name(faults, "you in the league", league.me());
            for (League other : rows.leagues().all(player)) {
                if (!other.deleted()
                        && other.name().equals(name)
                        && !other.id().equals(league.id())
                        && !league.deleted()) {
                    faults.add("the name \"" + name + "\" is taken; give the league another one");
                }
            }
            League checked = new League(
                    league.id().isBlank() ? ids.next() : league.id(),
                    name,
                    me,
                    league.zone(),
                    league.games(),
                    league.rounds(),
                    league.points(),
                    league.note().strip(),
                    league.deleted());
            Optional<League> earlier = rows.leagues().find(player, checked.id());
            for (Fixture fixture : rows.leagues().fixtures(player, checked.id())) {
                faults(checked, fixture).stream().findFirst().ifPresent(faults::add);
            }
            if (!faults.isEmpty()) {
                throw new Failure.BadInput(faults);
            }
            if (earlier.isPresent() && earlier.get().equals(checked)) {
                rows.rollBack();
                return checked;
            }
            earlier.ifPresent(before -> {
                corrections.keepLeague(rows, player, before, checked, now());
                rename(rows, player, before, checked);
            });
            rows.leagues().put(player, checked);
            return checked;
        });
    }

    private void rename(Transaction rows, int player, League before, League after) {
        if (before.me().equals(after.me())) {
            return;
        }
        List<Fixture> earlier = rows.leagues().fixtures(player, after.id()).stream()
                .filter(fixture -> fixture.has(before.me()) && !fixture.has(after.me()))
                .toList();
        List<Fixture> later = earlier.stream()
                .map(fixture -> new Fixture(
                        fixture.id(),
                        fixture.league(),
                        fixture.week(),
                        fixture.first().equals(before.me()) ? after.me() : fixture.first(),
                        fixture.second().equals(before.me()) ? after.me() : fixture.second(),
                        fixture.deadline(),
                        fixture.games(),
                        false))
                .toList();
        corrections.putFixtures(rows, player, after.id(), earlier, later, now());
    }

    /** How much of what was posted was new. */
    public record Taken(int added, int changed, int same) {}

    /**
     * Takes fixtures and results as somebody wrote them, all of them or none. A fixture is known by its week and its two
     * names, in either order, capitals and spaces aside; one without a week is the only one of its names. What was not said
     * stays as it was, so that pasting the same again changes nothing.
     *
     * @throws Failure.BadInput if something cannot be, saying what
     */
    public Taken post(int player, String league, List<Posted> posted) {
        return database.write(rows -> {
            change(rows, player);
            League found = found(rows, player, league);
            LeagueState state = state(rows, player, found);
            List<Fixture> now = new ArrayList<>(state.fixtures());
            List<String> names = new ArrayList<>(state.names());
            List<Fixture> earlier = new ArrayList<>();
            List<Fixture> later = new ArrayList<>();
            List<String> faults = new ArrayList<>();
            int same = 0;
            int added = 0;
            for (Posted one : posted) {
                String first = known(names, one.first());
                String second = known(names, one.second());
                int index = place(now, one, first, second);
                Fixture before = index < 0 ? null : now.get(index);
                Fixture after = merged(found, one, first, second, before);
                faults.addAll(faults(found, after));
                if (before == null) {
                    now.add(after);
                    added++;
                    later.add(after);
                    earlier.add(after.withGames(List.of()).deleted(true));
                } else if (before.equals(after)) {
                    same++;
                } else {
                    now.set(index, after);
                    int already = at(later, after.id());
                    if (already < 0) {
                        earlier.add(before);
                        later.add(after);
                    } else {
                        later.set(already, after);
                    }
                }
            }
            if (now.size() > MOST_FIXTURES) {
                faults.add("a league has at most " + MOST_FIXTURES + " fixtures, these would be " + now.size());
            }
            if (!faults.isEmpty()) {
                throw new Failure.BadInput(faults);
            }
            if (later.isEmpty()) {
                rows.rollBack();
            }
            corrections.putFixtures(rows, player, league, earlier, later, now());
            return new Taken(added, later.size() - added, same);
        });
    }

    private static int at(List<Fixture> fixtures, String id) {
        for (int i = 0; i < fixtures.size(); i++) {
            if (fixtures.get(i).id().equals(id)) {
                return i;
            }
        }
        return -1;
    }

    /** The name as it is written already, capitals and spaces aside; a new one joins the known. */
    private static String known(List<String> names, String name) {
        String written = name.strip().replaceAll("\\s+", " ");
        for (String known : names) {
            if (known.toLowerCase(Locale.ROOT).equals(written.toLowerCase(Locale.ROOT))) {
                return known;
            }
        }
        names.add(written);
        return written;
    }

    private static int place(List<Fixture> fixtures, Posted posted, String first, String second) {
        int place = -1;
        for (int i = 0; i < fixtures.size(); i++) {
            Fixture fixture = fixtures.get(i);
            if (!(fixture.has(first) && fixture.has(second))) {
                continue;
            }
            if (fixture.week() == posted.week()) {
                return i;
            }
            if (posted.week() == 0) {
                if (place >= 0) {
                    throw new Failure.BadInput(
                            "there are several fixtures of " + first + " and " + second + "; say which week");
                }
                place = i;
            }
        }
        return place;
    }

    private Fixture merged(
            League league,
            Posted posted,
            String first,
            String second,
            @org.jspecify.annotations.Nullable Fixture before) {
        if (before == null) {
            String deadline = posted.deadline();
            return new Fixture(
                    ids.next(),
                    league.id(),
                    posted.week(),
                    first,
                    second,
                    deadline == null ? "" : deadline,
                    posted.games(),
                    false);
        }
        Fixture after = before;
        for (int number = 1; number <= posted.games().size(); number++) {
            Fixture.Totals said = posted.games().get(number - 1);
            Fixture.Totals turned = before.first().equals(first) ? said : said.turned();
            Fixture.Totals known = after.game(number);
            after = after.withGame(
                    number,
                    new Fixture.Totals(
                            turned.first() == null ? known.first() : turned.first(),
                            turned.second() == null ? known.second() : turned.second()));
        }
        return new Fixture(
                after.id(),
                after.league(),
                after.week(),
                after.first(),
                after.second(),
                posted.deadline() == null ? after.deadline() : posted.deadline(),
                after.games(),
                false);
    }

    /**
     * Sets a fixture as it now is: its names, week, deadline and posted totals, or that it is deleted.
     *
     * @throws Failure.BadInput if something cannot be, saying what
     */
    public void edit(int player, Fixture fixture) {
        database.write(rows -> {
            change(rows, player);
            League league = found(rows, player, fixture.league());
            Fixture before = rows.leagues()
                    .fixture(player, fixture.id())
                    .orElseThrow(() -> new Failure.NotFound("there is no fixture " + fixture.id()));
            List<String> faults = faults(league, fixture);
            if (!faults.isEmpty()) {
                throw new Failure.BadInput(faults);
            }
            if (before.equals(fixture)) {
                rows.rollBack();
            } else {
                corrections.putFixtures(rows, player, league.id(), List.of(before), List.of(fixture), now());
            }
            return player;
        });
    }

    /** What cannot be of a fixture in its league. */
    static List<String> faults(League league, Fixture fixture) {
        List<String> faults = new ArrayList<>();
        String where = fixture.first() + " v " + fixture.second();
        name(faults, "a player", fixture.first());
        name(faults, "a player", fixture.second());
        if (fixture.games().size() > league.games()) {
            faults.add(where + ": a match of this league has " + league.games() + " games, and totals of game "
                    + fixture.games().size() + " are given");
        }
        for (int number = 1; number <= fixture.games().size(); number++) {
            Fixture.Totals totals = fixture.game(number);
            for (Integer total : new Integer[] {totals.first(), totals.second()}) {
                if (total != null && !(total >= 0 && total <= league.mostPoints())) {
                    faults.add(where + ", game " + number + ": " + league.rounds() + " rounds give 0 to "
                            + league.mostPoints() + " points, not " + total);
                } else if (total != null && total == league.mostPoints() - 1) {
                    faults.add(where + ", game " + number + ": " + total + " points cannot be thrown in "
                            + league.rounds() + " rounds");
                }
            }
        }
        if (!fixture.deadline().isEmpty()) {
            try {
                LocalDateTime.parse(fixture.deadline());
            } catch (DateTimeException e) {
                faults.add(where + ": \"" + fixture.deadline() + "\" is no deadline; write it like 2026-11-29T23:59");
            }
        }
        return faults;
    }

    private static String name(List<String> faults, String whose, String name) {
        String stripped = name.strip();
        if (stripped.isEmpty()) {
            faults.add("the name of " + whose + " is missing");
        } else if (stripped.length() > LONGEST_NAME || stripped.chars().anyMatch(Character::isISOControl)) {
            faults.add("the name of " + whose + " has at most " + LONGEST_NAME + " characters, in one line");
        }
        return stripped;
    }

    private static League found(Transaction rows, int player, String id) {
        return rows.leagues()
                .find(player, id)
                .filter(league -> !league.deleted())
                .orElseThrow(() -> new Failure.NotFound("there is no league " + id));
    }

    private static void change(Transaction rows, int player) {
        if (!rows.players().changed(player)) {
            throw new Failure.NotFound("there is no player " + player);
        }
    }

    private String now() {
        return clock.instant().toString();
    }
}
