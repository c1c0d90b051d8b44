package boardside.app.store;

import boardside.app.practice.Fixture;
import boardside.app.practice.FixtureRun;
import boardside.app.practice.League;
import boardside.engine.odds.LeaguePoints;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jdbi.v3.core.Handle;

/** Leagues that somebody else runs, their fixtures, and what was posted of them. */
public final class LeagueRows {
    private final Handle handle;

    LeagueRows(Handle handle) {
        this.handle = handle;
    }

    /** All leagues of a player, deleted ones too, in the order made. */
    public List<League> all(int player) {
        return handle.createQuery("select * from league where player = :player order by id")
                .bind("player", player)
                .map((row, context) -> league(row))
                .list();
    }

    /** A league, deleted or not. */
    public Optional<League> find(int player, String id) {
        return handle.createQuery("select * from league where player = :player and id = :id")
                .bind("player", player)
                .bind("id", id)
                .map((row, context) -> league(row))
                .findOne();
    }

    private static League league(ResultSet row) throws SQLException {
        return new League(
                row.getString("id"),
                row.getString("name"),
                row.getString("me"),
                row.getString("zone"),
                row.getInt("games"),
                row.getInt("rounds"),
                new LeaguePoints(row.getInt("win_points"), row.getInt("tie_points"), row.getInt("loss_points")),
                row.getString("note"),
                row.getInt("deleted") == 1);
    }

    /** Writes a league, new or known by its id. */
    public void put(int player, League league) {
        handle.createUpdate("insert into league (player, id, name, me, zone, games, rounds, win_points, tie_points,"
                        + " loss_points, note, deleted) values (:player, :id, :name, :me, :zone, :games, :rounds, :win,"
                        + " :tie, :loss, :note, :deleted) on conflict (player, id) do update set name = excluded.name,"
                        + " me = excluded.me, zone = excluded.zone, games = excluded.games, rounds = excluded.rounds,"
                        + " win_points = excluded.win_points, tie_points = excluded.tie_points,"
                        + " loss_points = excluded.loss_points, note = excluded.note, deleted = excluded.deleted")
                .bind("player", player)
                .bind("id", league.id())
                .bind("name", league.name())
                .bind("me", league.me())
                .bind("zone", league.zone())
                .bind("games", league.games())
                .bind("rounds", league.rounds())
                .bind("win", league.points().win())
                .bind("tie", league.points().tie())
                .bind("loss", league.points().loss())
                .bind("note", league.note())
                .bind("deleted", league.deleted() ? 1 : 0)
                .execute();
    }

    /** A game as stored: what was posted, and the run it was thrown in, or an empty text. */
    private record Game(String fixture, int number, Fixture.Totals totals, String run) {}

    /** All fixtures of a player, deleted ones too: by league, week and id. */
    public List<Fixture> fixtures(int player) {
        return fixtures(
                player,
                "",
                Map.of(),
                "select f.* from fixture f where f.player = :player order by f.league, f.week, f.id");
    }

    /** The fixtures of a league that are not deleted: by week, then as they were added. */
    public List<Fixture> fixtures(int player, String league) {
        return fixtures(
                player,
                " and g.fixture in (select f.id from fixture f where f.player = :player and f.league = :league)",
                Map.of("league", league),
                "select f.* from fixture f where f.player = :player and f.league = :league and f.deleted = 0"
                        + " order by f.week, f.id");
    }

    /** A fixture, deleted or not. */
    public Optional<Fixture> fixture(int player, String id) {
        return fixtures(
                        player,
                        " and g.fixture = :id",
                        Map.of("id", id),
                        "select f.* from fixture f where f.player = :player and f.id = :id")
                .stream()
                .findFirst();
    }

    private List<Fixture> fixtures(int player, String of, Map<String, ?> values, String sql) {
        Map<String, SortedMap<Integer, Fixture.Totals>> games = new HashMap<>();
        for (Game game : games(player, of, values)) {
            games.computeIfAbsent(game.fixture(), id -> new TreeMap<>()).put(game.number(), game.totals());
        }
        return handle.createQuery(sql)
                .bind("player", player)
                .bindMap(values)
                .map((row, context) -> fixture(row, games.getOrDefault(row.getString("id"), new TreeMap<>())))
                .list();
    }

    private List<Game> games(int player, String of, Map<String, ?> values) {
        return handle.createQuery("select g.* from fixture_game g where g.player = :player" + of)
                .bind("player", player)
                .bindMap(values)
                .map((row, context) -> new Game(
                        row.getString("fixture"),
                        row.getInt("game"),
                        new Fixture.Totals(PlayerRows.whole(row, "first_total"), PlayerRows.whole(row, "second_total")),
                        row.getString("run")))
                .list();
    }

    private static Fixture fixture(ResultSet row, SortedMap<Integer, Fixture.Totals> games) throws SQLException {
        Fixture fixture = new Fixture(
                row.getString("id"),
                row.getString("league"),
                row.getInt("week"),
                row.getString("first_name"),
                row.getString("second_name"),
                row.getString("deadline"),
                List.of(),
                row.getInt("deleted") == 1);
        for (Map.Entry<Integer, Fixture.Totals> game : games.entrySet()) {
            fixture = fixture.withGame(game.getKey(), game.getValue());
        }
        return fixture;
    }

    /** Writes a fixture, new or known by its id; the runs of its games stay as they are. */
    public void put(int player, Fixture fixture) {
        handle.createUpdate("insert into fixture (player, id, league, week, first_name, second_name, deadline, deleted)"
                        + " values (:player, :id, :league, :week, :first, :second, :deadline, :deleted)"
                        + " on conflict (player, id) do update set week = excluded.week,"
                        + " first_name = excluded.first_name, second_name = excluded.second_name,"
                        + " deadline = excluded.deadline, deleted = excluded.deleted")
                .bind("player", player)
                .bind("id", fixture.id())
                .bind("league", fixture.league())
                .bind("week", fixture.week())
                .bind("first", fixture.first())
                .bind("second", fixture.second())
                .bind("deadline", fixture.deadline())
                .bind("deleted", fixture.deleted() ? 1 : 0)
                .execute();
        handle.createUpdate("update fixture_game set first_total = null, second_total = null"
                        + " where player = :player and fixture = :fixture")
                .bind("player", player)
                .bind("fixture", fixture.id())
                .execute();
        for (int number = 1; number <= fixture.games().size(); number++) {
            Fixture.Totals totals = fixture.game(number);
            handle.createUpdate("insert into fixture_game (player, fixture, game, first_total, second_total)"
                            + " values (:player, :fixture, :game, :first, :second)"
                            + " on conflict (player, fixture, game) do update set first_total = excluded.first_total,"
                            + " second_total = excluded.second_total")
                    .bind("player", player)
                    .bind("fixture", fixture.id())
                    .bind("game", number)
                    .bind("first", totals.first())
                    .bind("second", totals.second())
                    .execute();
        }
    }

    /** Says which run a game was thrown in. */
    public void play(int player, String fixture, int game, String run) {
        handle.createUpdate("insert into fixture_game (player, fixture, game, run)"
                        + " values (:player, :fixture, :game, :run)"
                        + " on conflict (player, fixture, game) do update set run = excluded.run")
                .bind("player", player)
                .bind("fixture", fixture)
                .bind("game", game)
                .bind("run", run)
                .execute();
    }

    /** The games of a league that were thrown here, in runs that are not deleted. */
    public List<FixtureRun> thrown(int player, String league) {
        return thrown(player, " and f.league = :league", Map.of("league", league));
    }

    /** All games of a player that were thrown here, also in runs that were deleted: by fixture and game. */
    public List<FixtureRun> allThrown(int player) {
        return handle.createQuery("select g.fixture, g.game, g.run from fixture_game g where g.player = :player"
                        + " and g.run <> '' order by g.fixture, g.game")
                .bind("player", player)
                .map((row, context) -> new FixtureRun(
                        row.getString("fixture"), row.getInt("game"), row.getString("run"), 0, null, false))
                .list();
    }

    /** The game a run was thrown for. */
    public Optional<FixtureRun> thrownIn(int player, String run) {
        return thrown(player, " and g.run = :run", Map.of("run", run)).stream().findFirst();
    }

    private List<FixtureRun> thrown(int player, String of, Map<String, ?> values) {
        return handle.createQuery("select g.fixture, g.game, g.run, r.rounds, r.points, r.finished_at"
                        + " from fixture f join fixture_game g on g.player = f.player and g.fixture = f.id"
                        + " join run r on r.player = g.player and r.id = g.run"
                        + " where f.player = :player and g.run <> '' and r.deleted_at is null" + of
                        + " order by g.fixture, g.game")
                .bind("player", player)
                .bindMap(values)
                .map((row, context) -> new FixtureRun(
                        row.getString("fixture"),
                        row.getInt("game"),
                        row.getString("run"),
                        row.getInt("rounds"),
                        PlayerRows.whole(row, "points"),
                        row.getString("finished_at") != null))
                .list();
    }
}
