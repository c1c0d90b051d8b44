package boardside.app.store;

import boardside.app.season.Organiser;
import boardside.app.season.SeasonChange;
import boardside.app.season.SeasonParts;
import boardside.app.season.SeasonSettings;
import boardside.app.season.StoredSeasonChange;
import boardside.engine.league.MatchResult.Award;
import boardside.engine.league.Schedule.Meetings;
import boardside.engine.league.TieBreak;
import boardside.engine.league.season.Entrant;
import boardside.engine.league.season.GameScore;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.league.season.SeasonRules;
import boardside.engine.league.season.Weeks;
import boardside.engine.odds.LeaguePoints;
import boardside.engine.rules.Word;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;
import org.jspecify.annotations.Nullable;

/** Seasons that are run here, with their players, matches and changes. */
public final class SeasonRows {
    private final Handle handle;

    SeasonRows(Handle handle) {
        this.handle = handle;
    }

    /** All seasons, deleted ones too, the first made first. */
    public List<Season> all() {
        return settings("").stream().map(this::whole).toList();
    }

    /** Settings of all seasons, deleted ones too, the first made first. */
    public List<SeasonSettings> settings() {
        return settings("");
    }

    /** A season, deleted or not. */
    public Optional<Season> find(String id) {
        return settings(id).stream().findFirst().map(this::whole);
    }

    private List<SeasonSettings> settings(String id) {
        Map<String, List<String>> divisions = new HashMap<>();
        handle.createQuery("select season, name from season_division" + (id.isEmpty() ? "" : " where season = :id")
                        + " order by season, place")
                .bindMap(id.isEmpty() ? Map.of() : Map.of("id", id))
                .map((row, context) -> List.of(row.getString("season"), row.getString("name")))
                .forEach(division -> divisions
                        .computeIfAbsent(division.get(0), season -> new ArrayList<>())
                        .add(division.get(1)));
        return handle.createQuery("select * from season" + (id.isEmpty() ? "" : " where id = :id") + " order by id")
                .bindMap(id.isEmpty() ? Map.of() : Map.of("id", id))
                .map((row, context) -> settings(row, divisions.getOrDefault(row.getString("id"), List.of())))
                .list();
    }

    private static SeasonSettings settings(ResultSet row, List<String> divisions) throws SQLException {
        return new SeasonSettings(
                row.getString("id"),
                row.getString("name"),
                new SeasonRules(
                        row.getInt("games"),
                        row.getInt("rounds"),
                        new LeaguePoints(row.getInt("win_points"), row.getInt("tie_points"), row.getInt("loss_points")),
                        tieBreaks(row.getString("tie_breaks")),
                        Word.of(Meetings.class, row.getString("meetings")),
                        row.getInt("qualifiers"),
                        row.getInt("handicap") == 1),
                new Weeks(LocalDateTime.parse(row.getString("starts")), ZoneId.of(row.getString("zone"))),
                divisions,
                moment(row.getString("playoff_starts")),
                row.getInt("open") == 1,
                row.getLong("seed"),
                row.getString("note"),
                row.getInt("deleted") == 1);
    }

    private static List<TieBreak> tieBreaks(String words) {
        return words.isEmpty()
                ? List.of()
                : Arrays.stream(words.split(",", -1))
                        .map(word -> Word.of(TieBreak.class, word))
                        .toList();
    }

    private static @Nullable LocalDateTime moment(String text) {
        return text.isEmpty() ? null : LocalDateTime.parse(text);
    }

    private static String text(@Nullable LocalDateTime moment) {
        return moment == null ? "" : moment.toString();
    }

    private Season whole(SeasonSettings settings) {
        List<Entrant> entrants = handle.createQuery(
                        "select * from season_entrant where season = :season order by division, number")
                .bind("season", settings.id())
                .map((row, context) -> new Entrant(
                        row.getString("id"),
                        row.getString("name"),
                        row.getInt("division"),
                        row.getInt("number"),
                        Word.of(Entrant.Standing.class, row.getString("standing")),
                        row.getInt("seed"),
                        PlayerRows.whole(row, "player")))
                .list();
        Map<String, List<GameScore>> games = new HashMap<>();
        handle.createQuery("select * from season_game where season = :season order by match_id, game")
                .bind("season", settings.id())
                .map((row, context) -> new Game(
                        row.getString("match_id"),
                        row.getInt("game"),
                        new GameScore(PlayerRows.whole(row, "first_total"), PlayerRows.whole(row, "second_total"))))
                .forEach(game -> {
                    List<GameScore> of = games.computeIfAbsent(game.match(), match -> new ArrayList<>());
                    while (of.size() < game.number() - 1) {
                        of.add(GameScore.NONE);
                    }
                    of.add(game.score());
                });
        List<SeasonMatch> matches = handle.createQuery(
                        "select * from season_match where season = :season order by stage, week, division, place")
                .bind("season", settings.id())
                .map((row, context) -> match(row, games.getOrDefault(row.getString("id"), List.of())))
                .list();
        return settings.with(entrants, matches);
    }

    private record Game(String match, int number, GameScore score) {}

    private static SeasonMatch match(ResultSet row, List<GameScore> games) throws SQLException {
        String forfeit = row.getString("forfeit");
        return new SeasonMatch(
                row.getString("id"),
                Word.of(SeasonMatch.Stage.class, row.getString("stage")),
                row.getInt("division"),
                row.getInt("week"),
                row.getInt("place"),
                row.getString("first_entrant"),
                row.getString("second_entrant"),
                moment(row.getString("extended")),
                Word.of(SeasonMatch.State.class, row.getString("state")),
                games,
                Word.of(SeasonMatch.Said.class, row.getString("said")),
                forfeit.isEmpty() ? null : Word.of(Award.class, forfeit),
                row.getString("first_substitute"),
                row.getString("second_substitute"),
                row.getInt("head_start"),
                row.getString("note"));
    }

    /**
     * Marks a season as changed. Comes first in every transaction that changes it: it makes other writers of this season wait.
     *
     * @return whether there is such a season
     */
    public boolean changed(String id) {
        return handle.createUpdate("update season set version = version + 1 where id = :id")
                        .bind("id", id)
                        .execute()
                == 1;
    }

    /** Makes other writers of this season wait until this transaction is over, and this one for them. */
    public void hold(String id) {
        handle.createUpdate("update season set version = version where id = :id")
                .bind("id", id)
                .execute();
    }

    /** How often a season has been changed. */
    public long version(String id) {
        return handle.createQuery("select version from season where id = :id")
                .bind("id", id)
                .mapTo(Long.class)
                .findOne()
                .orElse(0L);
    }

    /** When a season was last changed, or made; ISO-8601. */
    public String changedAt(String id) {
        return handle.createQuery(
                        "select coalesce((select max(c.at) from season_change c where c.season = s.id), s.made_at)"
                                + " from season s where s.id = :id")
                .bind("id", id)
                .mapTo(String.class)
                .one();
    }

    /** Adds a season with all that belongs to it. */
    public void add(Season season, String now) {
        SeasonSettings settings = SeasonSettings.of(season);
        put(settings, now);
        put(season.id(), season.entrants());
        putMatches(season.id(), season.matches());
    }

    /** Writes what differs between two states of a season. */
    public void put(Season before, Season after) {
        SeasonParts gone = SeasonParts.of(before, after);
        SeasonParts come = SeasonParts.of(after, before);
        SeasonSettings settings = come.settings();
        if (settings != null) {
            put(settings, "");
        }
        // Not those of the parts, which do not say whose records they are.
        put(
                after.id(),
                after.entrants().stream()
                        .filter(entrant -> !before.entrant(entrant.id()).equals(Optional.of(entrant)))
                        .toList());
        Set<String> kept = after.matches().stream().map(SeasonMatch::id).collect(Collectors.toCollection(HashSet::new));
        for (SeasonMatch match : gone.matches()) {
            if (!kept.contains(match.id())) {
                delete(after.id(), match.id());
            }
        }
        putMatches(after.id(), come.matches());
        for (Entrant entrant : gone.entrants()) {
            if (after.entrant(entrant.id()).isEmpty()) {
                handle.execute("delete from season_entrant where season = ? and id = ?", after.id(), entrant.id());
            }
        }
    }

    private void delete(String season, String match) {
        new MatchRows(handle, new Signals.Batch()).delete(season, match);
        handle.execute("delete from season_game where season = ? and match_id = ?", season, match);
        handle.execute("delete from season_match where season = ? and id = ?", season, match);
    }

    private void put(SeasonSettings settings, String now) {
        SeasonRules rules = settings.rules();
        handle.createUpdate("insert into season (id, name, zone, starts, games, rounds, win_points, tie_points,"
                        + " loss_points, tie_breaks, meetings, qualifiers, handicap, playoff_starts, open, seed, note,"
                        + " made_at, deleted) values (:id, :name, :zone, :starts, :games, :rounds, :win, :tie, :loss,"
                        + " :tieBreaks, :meetings, :qualifiers, :handicap, :playOff, :open, :seed, :note, :now, :deleted)"
                        + " on conflict (id) do update set name = excluded.name, zone = excluded.zone,"
                        + " starts = excluded.starts, games = excluded.games, rounds = excluded.rounds,"
                        + " win_points = excluded.win_points, tie_points = excluded.tie_points,"
                        + " loss_points = excluded.loss_points, tie_breaks = excluded.tie_breaks,"
                        + " qualifiers = excluded.qualifiers, handicap = excluded.handicap,"
                        + " playoff_starts = excluded.playoff_starts, open = excluded.open, note = excluded.note,"
                        + " deleted = excluded.deleted")
                .bind("id", settings.id())
                .bind("name", settings.name())
                .bind("zone", settings.weeks().zone().getId())
                .bind("starts", text(settings.weeks().starts()))
                .bind("games", rules.games())
                .bind("rounds", rules.rounds())
                .bind("win", rules.points().win())
                .bind("tie", rules.points().tie())
                .bind("loss", rules.points().loss())
                .bind(
                        "tieBreaks",
                        rules.tieBreaks().stream().map(TieBreak::word).collect(Collectors.joining(",")))
                .bind("meetings", rules.meetings().word())
                .bind("qualifiers", rules.qualifiers())
                .bind("handicap", rules.handicap() ? 1 : 0)
                .bind("playOff", text(settings.playOffStarts()))
                .bind("open", settings.open() ? 1 : 0)
                .bind("seed", settings.seed())
                .bind("note", settings.note())
                .bind("now", now)
                .bind("deleted", settings.deleted() ? 1 : 0)
                .execute();
        for (int place = 0; place < settings.divisions().size(); place++) {
            handle.createUpdate("insert into season_division (season, place, name) values (:season, :place, :name)"
                            + " on conflict (season, place) do update set name = excluded.name")
                    .bind("season", settings.id())
                    .bind("place", place)
                    .bind("name", settings.divisions().get(place))
                    .execute();
        }
    }

    private void put(String season, List<Entrant> entrants) {
        for (Entrant entrant : entrants) {
            handle.createUpdate(
                            "insert into season_entrant (season, id, division, number, name, standing, seed, player)"
                                    + " values (:season, :id, :division, :number, :name, :standing, :seed, :player)"
                                    + " on conflict (season, id) do update set name = excluded.name,"
                                    + " standing = excluded.standing, seed = excluded.seed, player = excluded.player")
                    .bind("season", season)
                    .bind("id", entrant.id())
                    .bind("division", entrant.division())
                    .bind("number", entrant.number())
                    .bind("name", entrant.name())
                    .bind("standing", entrant.standing().word())
                    .bind("seed", entrant.seed())
                    .bind("player", entrant.player())
                    .execute();
        }
    }

    /** Says which player an entrant is, or with null none. */
    public void link(String season, String entrant, @Nullable Integer player) {
        handle.createUpdate("update season_entrant set player = :player where season = :season and id = :entrant")
                .bind("player", player)
                .bind("season", season)
                .bind("entrant", entrant)
                .execute();
    }

    /** Accounts that run a season, its owner first. */
    public List<Organiser> organisers(String season) {
        return handle.createQuery("select a.id, a.name, 1 as owner from season s join account a on a.id = s.owner"
                        + " where s.id = :season union all select a.id, a.name, 0 as owner from season_organiser o"
                        + " join account a on a.id = o.account where o.season = :season order by owner desc, name")
                .bind("season", season)
                .map((row, context) ->
                        new Organiser(row.getString("id"), row.getString("name"), row.getInt("owner") == 1))
                .list();
    }

    /** Whether an account is a season's owner, or was let in by them. */
    public boolean runs(String account, String season) {
        return handle.createQuery("select count(*) from season s where s.id = :season and (s.owner = :account or exists"
                                + " (select 1 from season_organiser o where o.season = s.id and o.account = :account))")
                        .bind("season", season)
                        .bind("account", account)
                        .mapTo(Integer.class)
                        .one()
                > 0;
    }

    /** Gives a season to an account, or with null to nobody. */
    public void own(String season, @Nullable String account) {
        handle.createUpdate("update season set owner = :account where id = :season")
                .bind("account", account)
                .bind("season", season)
                .execute();
    }

    /** Lets an account run a season. */
    public void letRun(String season, String account) {
        handle.createUpdate("insert into season_organiser (season, account) values (:season, :account)"
                        + " on conflict (season, account) do nothing")
                .bind("season", season)
                .bind("account", account)
                .execute();
    }

    /** Lets an account run a season no more. */
    public void letRunNoMore(String season, String account) {
        handle.createUpdate("delete from season_organiser where season = :season and account = :account")
                .bind("season", season)
                .bind("account", account)
                .execute();
    }

    /** An entrant that is a player of this store. */
    public record Linked(String season, String entrant) {}

    /** The entrants a player is, in all seasons. */
    public List<Linked> of(int player) {
        return handle.createQuery("select season, id from season_entrant where player = :player order by season, id")
                .bind("player", player)
                .map((row, context) -> new Linked(row.getString("season"), row.getString("id")))
                .list();
    }

    /** Gives an entrant another name, and makes them nobody whose records are here. */
    public void forget(Linked entrant, String name) {
        handle.createUpdate("update season_entrant set name = :name, player = null where season = :season and id = :id")
                .bind("name", name)
                .bind("season", entrant.season())
                .bind("id", entrant.entrant())
                .execute();
    }

    /** Writes anew what a change was. */
    public void rewrite(StoredSeasonChange change) {
        handle.createUpdate("update season_change set earlier = :earlier, later = :later"
                        + " where season = :season and id = :id")
                .bind("earlier", change.earlier())
                .bind("later", change.later())
                .bind("season", change.season())
                .bind("id", change.id())
                .execute();
    }

    private void putMatches(String season, List<SeasonMatch> matches) {
        if (matches.isEmpty()) {
            return;
        }
        PreparedBatch batch = handle.prepareBatch("insert into season_match (season, id, stage, division, week, place,"
                + " first_entrant, second_entrant, extended, state, said, forfeit, first_substitute,"
                + " second_substitute, head_start, note) values (:season, :id, :stage, :division, :week, :place,"
                + " :first, :second, :extended, :state, :said, :forfeit, :firstSubstitute, :secondSubstitute,"
                + " :headStart, :note) on conflict (season, id) do update set"
                + " first_entrant = excluded.first_entrant, second_entrant = excluded.second_entrant,"
                + " extended = excluded.extended, state = excluded.state, said = excluded.said,"
                + " forfeit = excluded.forfeit, first_substitute = excluded.first_substitute,"
                + " second_substitute = excluded.second_substitute, head_start = excluded.head_start,"
                + " note = excluded.note");
        for (SeasonMatch match : matches) {
            Award forfeit = match.forfeit();
            batch.bind("season", season)
                    .bind("id", match.id())
                    .bind("stage", match.stage().word())
                    .bind("division", match.division())
                    .bind("week", match.week())
                    .bind("place", match.place())
                    .bind("first", match.first())
                    .bind("second", match.second())
                    .bind("extended", text(match.extended()))
                    .bind("state", match.state().word())
                    .bind("said", match.said().word())
                    .bind("forfeit", forfeit == null ? "" : forfeit.word())
                    .bind("firstSubstitute", match.firstSubstitute())
                    .bind("secondSubstitute", match.secondSubstitute())
                    .bind("headStart", match.headStart())
                    .bind("note", match.note())
                    .add();
        }
        batch.execute();
        for (SeasonMatch match : matches) {
            putGames(season, match);
        }
    }

    private void putGames(String season, SeasonMatch match) {
        handle.createUpdate("delete from season_game where season = :season and match_id = :match and game > :games")
                .bind("season", season)
                .bind("match", match.id())
                .bind("games", match.games().size())
                .execute();
        for (int game = 1; game <= match.games().size(); game++) {
            GameScore score = match.game(game);
            handle.createUpdate("insert into season_game (season, match_id, game, first_total, second_total)"
                            + " values (:season, :match, :game, :first, :second)"
                            + " on conflict (season, match_id, game) do update set"
                            + " first_total = excluded.first_total, second_total = excluded.second_total")
                    .bind("season", season)
                    .bind("match", match.id())
                    .bind("game", game)
                    .bind("first", score.first())
                    .bind("second", score.second())
                    .execute();
        }
    }

    /** Adds a change. */
    public void keep(StoredSeasonChange entry) {
        handle.createUpdate("insert into season_change (season, id, at, kind, earlier, later, undone_at)"
                        + " values (:season, :id, :at, :kind, :earlier, :later, :undone)")
                .bind("season", entry.season())
                .bind("id", entry.id())
                .bind("at", entry.at())
                .bind("kind", entry.what().word())
                .bind("earlier", entry.earlier())
                .bind("later", entry.later())
                .bind("undone", entry.undoneAt())
                .execute();
    }

    /** All changes of a season, the first made first. */
    public List<StoredSeasonChange> changes(String season) {
        return handle.createQuery("select * from season_change where season = :season order by id")
                .bind("season", season)
                .map((row, context) -> new StoredSeasonChange(
                        season,
                        row.getString("id"),
                        row.getString("at"),
                        Word.of(SeasonChange.Kind.class, row.getString("kind")),
                        row.getString("earlier"),
                        row.getString("later"),
                        row.getString("undone_at")))
                .list();
    }

    /** Marks a change as undone. */
    public void undone(String season, String id, String now) {
        handle.createUpdate("update season_change set undone_at = :now where season = :season and id = :id")
                .bind("season", season)
                .bind("id", id)
                .bind("now", now)
                .execute();
    }
}
