package boardside.app.store;

import boardside.app.season.MatchEdit;
import boardside.app.season.MatchHead;
import boardside.app.season.MatchId;
import boardside.app.season.MatchMarks;
import boardside.app.season.MatchNight;
import boardside.app.season.MatchRound;
import boardside.app.season.MatchRun;
import boardside.app.season.MatchSide;
import boardside.engine.league.season.GameScore;
import boardside.engine.league.season.SeasonMatch.Stage;
import boardside.engine.league.season.SeasonMatch.State;
import boardside.engine.league.season.Voice;
import boardside.engine.rules.Word;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;

/** What is thrown live of matches of seasons run here: rounds as they came in, later changes, runs, streams. */
public final class MatchRows {
    /** In the place of a match: all of a season. */
    public static final String ALL = "*";

    /** Matches that may be asked for at once. */
    public static final int MOST_AT_ONCE = 32;

    private static final String OF_MATCH = " where season = :season and match_id = :match";

    private static final String HEAD = "m.season, m.id, s.name as season_name, s.open, s.deleted, s.games, s.rounds,"
            + " s.playoff_starts, m.stage, m.week, m.state, m.head_start, m.first_substitute, m.second_substitute,"
            + " a.name as first_name, a.standing as first_standing, a.player as first_player,"
            + " b.name as second_name, b.standing as second_standing, b.player as second_player";

    private static final String OF_HEAD = " join season s on s.id = m.season"
            + " join season_entrant a on a.season = m.season and a.id = m.first_entrant"
            + " join season_entrant b on b.season = m.season and b.id = m.second_entrant";

    private static final String VERSION = ", coalesce(v.version, 0) as live_version";

    private static final String OF_VERSION = " left join season_live v on v.season = m.season and v.match_id = m.id";

    /** Matches that are asked for together; as a table it makes one statement of many. */
    private static final String ASKED = "with asked (season, match_id) as (values <asked>) ";

    private static final String TO_ASKED = " t on t.season = asked.season and t.match_id = asked.match_id";

    /** As many matches are asked for at once, so that few different statements are prepared. */
    private static final int[] SIZES = {1, 8, MOST_AT_ONCE};

    private static final MatchId NOWHERE = new MatchId("", "");

    private final Handle handle;
    private final Signals.Batch signals;

    MatchRows(Handle handle, Signals.Batch signals) {
        this.handle = handle;
        this.signals = signals;
    }

    /** A match of a season, deleted or not. */
    public Optional<MatchHead> head(String season, String match) {
        return handle.createQuery("select " + HEAD + " from season_match m" + OF_HEAD
                        + " where m.season = :season and m.id = :match")
                .bind("season", season)
                .bind("match", match)
                .map((row, context) -> head(row))
                .findOne();
    }

    /** The game that a run is thrown for, with its match and how often what is shown of that has changed. */
    public record Played(MatchRun of, MatchHead head, long version) {}

    /** The same for a player's run; empty where it is for no match. */
    public Optional<Played> played(int player, String run) {
        return handle.createQuery("select r.player, r.run, r.match_id, r.game, r.side, " + HEAD + VERSION
                        + " from season_run r join season_match m on m.season = r.season and m.id = r.match_id"
                        + OF_HEAD
                        + OF_VERSION + " where r.player = :player and r.run = :run")
                .bind("player", player)
                .bind("run", run)
                .map((row, context) -> new Played(run(row), head(row), row.getLong("live_version")))
                .findOne();
    }

    /** Matches as they are thrown, {@value #MOST_AT_ONCE} at most; those that do not exist or whose season was deleted are missing. */
    public Map<MatchId, MatchNight> nights(Collection<MatchId> matches) {
        Map<MatchId, Draft> drafts = new LinkedHashMap<>();
        asked(
                        "select " + HEAD + VERSION
                                + " from asked join season_match m on m.season = asked.season and m.id = asked.match_id"
                                + OF_HEAD
                                + OF_VERSION + " where s.deleted = 0",
                        matches)
                .map((row, context) -> new Draft(row.getLong("live_version"), head(row)))
                .forEach(draft -> drafts.put(new MatchId(draft.head.season(), draft.head.match()), draft));
        each("season_game", "", matches, drafts, (draft, row) -> draft.total(row.getInt("game"), score(row)));
        each(
                "season_round",
                " order by t.game, t.round, t.side",
                matches,
                drafts,
                (draft, row) -> draft.rounds.add(round(row)));
        each("season_round_edit", " order by t.id", matches, drafts, (draft, row) -> draft.edits.add(edit(row)));
        each(
                "season_stream",
                "",
                matches,
                drafts,
                (draft, row) ->
                        draft.streams.put(Word.of(MatchSide.class, row.getString("side")), row.getString("address")));
        Map<MatchId, MatchNight> nights = new LinkedHashMap<>();
        drafts.forEach((match, draft) -> nights.put(match, draft.made()));
        return nights;
    }

    /** A match as its parts are read. */
    private static final class Draft {
        private final long version;
        private final MatchHead head;
        private final List<GameScore> totals;
        private final List<MatchRound> rounds = new ArrayList<>();
        private final List<MatchEdit> edits = new ArrayList<>();
        private final Map<MatchSide, String> streams = new EnumMap<>(MatchSide.class);

        Draft(long version, MatchHead head) {
            this.version = version;
            this.head = head;
            this.totals = new ArrayList<>(Collections.nCopies(head.games(), GameScore.NONE));
        }

        void total(int game, GameScore score) {
            if (game <= totals.size()) {
                totals.set(game - 1, score);
            }
        }

        MatchNight made() {
            return new MatchNight(version, head, totals, rounds, edits, streams);
        }
    }

    private interface Reading {
        void read(Draft draft, ResultSet row) throws SQLException;
    }

    private void each(
            String table, String order, Collection<MatchId> matches, Map<MatchId, Draft> drafts, Reading reading) {
        asked("select t.* from asked join " + table + TO_ASKED + order, matches)
                .map((row, context) -> {
                    MatchId match = new MatchId(row.getString("season"), row.getString("match_id"));
                    Draft draft = drafts.get(match);
                    if (draft != null) {
                        reading.read(draft, row);
                    }
                    return match;
                })
                .list();
    }

    private Query asked(String select, Collection<MatchId> matches) {
        List<MatchId> asked = new ArrayList<>(new LinkedHashSet<>(matches));
        int size = Arrays.stream(SIZES)
                .filter(one -> one >= asked.size())
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(
                        "at most " + MOST_AT_ONCE + " matches at once, not " + asked.size()));
        while (asked.size() < size) {
            asked.add(NOWHERE);
        }
        return handle.createQuery(ASKED + select).bindMethodsList("asked", asked, List.of("season", "match"));
    }

    private static MatchHead head(ResultSet row) throws SQLException {
        Stage stage = Word.of(Stage.class, row.getString("stage"));
        boolean deleted = row.getInt("deleted") == 1;
        boolean stands = deleted
                || row.getString("first_standing").equals("struck")
                || row.getString("second_standing").equals("struck")
                || stage == Stage.LEAGUE && !row.getString("playoff_starts").isEmpty();
        return new MatchHead(
                row.getString("season"),
                row.getString("id"),
                row.getString("season_name"),
                row.getInt("open") == 1,
                deleted,
                stage,
                row.getInt("week"),
                row.getString("first_name"),
                row.getString("second_name"),
                PlayerRows.whole(row, "first_player"),
                PlayerRows.whole(row, "second_player"),
                row.getString("first_substitute"),
                row.getString("second_substitute"),
                row.getInt("games"),
                row.getInt("rounds"),
                row.getInt("head_start"),
                Word.of(State.class, row.getString("state")),
                stands);
    }

    /** Totals of a match's games as told, game 1 first; as many as a match has. */
    public List<GameScore> totals(String season, String match, int games) {
        List<GameScore> totals = new ArrayList<>();
        for (int game = 1; game <= games; game++) {
            totals.add(GameScore.NONE);
        }
        handle.createQuery("select game, first_total, second_total from season_game" + OF_MATCH)
                .bind("season", season)
                .bind("match", match)
                .map((row, context) -> Map.entry(row.getInt("game"), score(row)))
                .forEach(game -> {
                    if (game.getKey() <= games) {
                        totals.set(game.getKey() - 1, game.getValue());
                    }
                });
        return totals;
    }

    private static GameScore score(ResultSet row) throws SQLException {
        return new GameScore(PlayerRows.whole(row, "first_total"), PlayerRows.whole(row, "second_total"));
    }

    /** Rounds of a match by game, number and side. */
    public List<MatchRound> rounds(String season, String match) {
        return handle.createQuery("select * from season_round" + OF_MATCH + " order by game, round, side")
                .bind("season", season)
                .bind("match", match)
                .map((row, context) -> round(row))
                .list();
    }

    /** Rounds of one side of a game, by number. */
    public List<MatchRound> rounds(String season, String match, int game, MatchSide side) {
        return handle.createQuery(
                        "select * from season_round" + OF_MATCH + " and game = :game and side = :side order by round")
                .bind("season", season)
                .bind("match", match)
                .bind("game", game)
                .bind("side", side.word())
                .map((row, context) -> round(row))
                .list();
    }

    private static MatchRound round(ResultSet row) throws SQLException {
        String thrown = row.getString("thrown_at");
        return new MatchRound(
                row.getInt("game"),
                Word.of(MatchSide.class, row.getString("side")),
                row.getInt("round"),
                row.getString("op"),
                row.getInt("in_count"),
                row.getInt("on_count"),
                row.getInt("off_count"),
                thrown.isEmpty() ? null : Instant.parse(thrown),
                Instant.parse(row.getString("received_at")),
                Word.of(MatchRound.Way.class, row.getString("way")));
    }

    /** Writes a round, new or known by its place. */
    public void put(String season, String match, MatchRound round) {
        Instant thrown = round.thrownAt();
        handle.createUpdate("insert into season_round (season, match_id, game, side, round, op, in_count, on_count,"
                        + " off_count, thrown_at, received_at, way) values (:season, :match, :game, :side, :round, :op,"
                        + " :in, :on, :off, :thrown, :received, :way) on conflict (season, match_id, game, side, round)"
                        + " do update set op = excluded.op, in_count = excluded.in_count, on_count = excluded.on_count,"
                        + " off_count = excluded.off_count")
                .bind("season", season)
                .bind("match", match)
                .bind("game", round.game())
                .bind("side", round.side().word())
                .bind("round", round.number())
                .bind("op", round.op())
                .bind("in", round.in())
                .bind("on", round.on())
                .bind("off", round.off())
                .bind("thrown", thrown == null ? "" : thrown.toString())
                .bind("received", round.receivedAt().toString())
                .bind("way", round.way().word())
                .execute();
    }

    /** Takes a round out. */
    public void remove(String season, String match, int game, MatchSide side, int number) {
        handle.createUpdate(
                        "delete from season_round" + OF_MATCH + " and game = :game and side = :side and round = :round")
                .bind("season", season)
                .bind("match", match)
                .bind("game", game)
                .bind("side", side.word())
                .bind("round", number)
                .execute();
    }

    /** Changes that came late or were the organiser's, the first made first. */
    public List<MatchEdit> edits(String season, String match) {
        return handle.createQuery("select * from season_round_edit" + OF_MATCH + " order by id")
                .bind("season", season)
                .bind("match", match)
                .map((row, context) -> edit(row))
                .list();
    }

    private static MatchEdit edit(ResultSet row) throws SQLException {
        return new MatchEdit(
                row.getString("id"),
                row.getString("at"),
                Word.of(Voice.class, row.getString("said_by")),
                row.getInt("game"),
                Word.of(MatchSide.class, row.getString("side")),
                row.getInt("round"),
                row.getString("earlier"),
                row.getString("later"));
    }

    /** Adds a change. */
    public void keep(String season, String match, MatchEdit edit) {
        handle.createUpdate("insert into season_round_edit (season, match_id, id, at, said_by, game, side, round,"
                        + " earlier, later) values (:season, :match, :id, :at, :by, :game, :side, :round, :earlier,"
                        + " :later)")
                .bind("season", season)
                .bind("match", match)
                .bind("id", edit.id())
                .bind("at", edit.at())
                .bind("by", edit.by().word())
                .bind("game", edit.game())
                .bind("side", edit.side().word())
                .bind("round", edit.round())
                .bind("earlier", edit.earlier())
                .bind("later", edit.later())
                .execute();
    }

    /** The game that a run is thrown for; empty where it is for no match. */
    public Optional<MatchRun> ofRun(int player, String run) {
        return handle.createQuery("select * from season_run where player = :player and run = :run")
                .bind("player", player)
                .bind("run", run)
                .map((row, context) -> run(row))
                .findOne();
    }

    /** The runs that a match is thrown in, by game and side. */
    public List<MatchRun> runs(String season, String match) {
        return handle.createQuery("select * from season_run" + OF_MATCH + " order by game, side")
                .bind("season", season)
                .bind("match", match)
                .map((row, context) -> run(row))
                .list();
    }

    private static MatchRun run(ResultSet row) throws SQLException {
        return new MatchRun(
                row.getInt("player"),
                row.getString("run"),
                row.getString("season"),
                row.getString("match_id"),
                row.getInt("game"),
                Word.of(MatchSide.class, row.getString("side")));
    }

    /** Says which run a side of a game is thrown in. */
    public void play(MatchRun run) {
        handle.createUpdate("insert into season_run (player, run, season, match_id, game, side)"
                        + " values (:player, :run, :season, :match, :game, :side)")
                .bind("player", run.player())
                .bind("run", run.run())
                .bind("season", run.season())
                .bind("match", run.match())
                .bind("game", run.game())
                .bind("side", run.side().word())
                .execute();
    }

    /** Where the two sides show themselves throwing, as far as told. */
    public Map<MatchSide, String> streams(String season, String match) {
        Map<MatchSide, String> streams = new EnumMap<>(MatchSide.class);
        handle.createQuery("select side, address from season_stream" + OF_MATCH)
                .bind("season", season)
                .bind("match", match)
                .map((row, context) ->
                        Map.entry(Word.of(MatchSide.class, row.getString("side")), row.getString("address")))
                .forEach(stream -> streams.put(stream.getKey(), stream.getValue()));
        return streams;
    }

    /** Sets where a side shows itself throwing; empty for nowhere. */
    public void stream(String season, String match, MatchSide side, String address) {
        handle.createUpdate("delete from season_stream" + OF_MATCH + " and side = :side")
                .bind("season", season)
                .bind("match", match)
                .bind("side", side.word())
                .execute();
        if (!address.isEmpty()) {
            handle.createUpdate("insert into season_stream (season, match_id, side, address)"
                            + " values (:season, :match, :side, :address)")
                    .bind("season", season)
                    .bind("match", match)
                    .bind("side", side.word())
                    .bind("address", address)
                    .execute();
        }
    }

    /** Takes out where an entrant of a season showed themselves. */
    public void forgetStreams(String season, String entrant) {
        handle.createUpdate("delete from season_stream where season = :season and exists (select 1 from season_match m"
                        + " where m.season = season_stream.season and m.id = season_stream.match_id and (m.first_entrant"
                        + " = :entrant and side = 'first' or m.second_entrant = :entrant and side = 'second'))")
                .bind("season", season)
                .bind("entrant", entrant)
                .execute();
    }

    /**
     * What is shown of a match has changed: those who look at it hear of it once this is on disk. Comes before whatever else is
     * written of the match, and after the season where that is changed too: it makes other writers of this match wait, all in
     * the same order.
     *
     * @return how often it has changed by now
     */
    public long changed(String season, String match) {
        signals.add(season + " " + match);
        return handle.createQuery("insert into season_live (season, match_id, version) values (:season, :match, 1)"
                        + " on conflict (season, match_id) do update set version = season_live.version + 1"
                        + " returning version")
                .bind("season", season)
                .bind("match", match)
                .mapTo(Long.class)
                .one();
    }

    /** What is shown of all matches of a season has changed. */
    public void allChanged(String season) {
        handle.createUpdate("update season_live set version = version + 1 where season = :season")
                .bind("season", season)
                .execute();
        signals.add(season + " " + ALL);
    }

    /**
     * What changes whenever what is shown of a match changes, or who may look; of {@value #MOST_AT_ONCE} matches at most. Those
     * that do not exist or whose season was deleted are missing.
     */
    public Map<MatchId, String> stamps(Collection<MatchId> matches) {
        Map<MatchId, String> stamps = new HashMap<>();
        asked(
                        "select m.season, m.id, s.open" + VERSION
                                + " from asked join season_match m on m.season = asked.season and m.id = asked.match_id"
                                + " join season s on s.id = m.season" + OF_VERSION + " where s.deleted = 0",
                        matches)
                .map((row, context) -> stamps.put(
                        new MatchId(row.getString("season"), row.getString("id")),
                        stamp(row.getLong("live_version"), row.getInt("open") == 1)))
                .list();
        return stamps;
    }

    /** Whether the season of a match is open to everybody; empty if there is no such match, or its season was deleted. */
    public Optional<Boolean> open(MatchId match) {
        return handle.createQuery("select s.open from season_match m join season s on s.id = m.season"
                        + " where m.season = :season and m.id = :match and s.deleted = 0")
                .bind("season", match.season())
                .bind("match", match.match())
                .map((row, context) -> row.getInt("open") == 1)
                .findOne();
    }

    /** The stamp of a match that was read. */
    public static String stamp(long version, boolean open) {
        return version + (open ? " open" : "");
    }

    /** How rounds came in, by match, of a season's matches that have any. */
    public Map<String, MatchMarks> marks(String season) {
        Map<String, Integer> edits = new HashMap<>();
        handle.createQuery("select match_id, count(*) as edits from season_round_edit where season = :season"
                        + " group by match_id")
                .bind("season", season)
                .map((row, context) -> Map.entry(row.getString("match_id"), row.getInt("edits")))
                .forEach(edit -> edits.put(edit.getKey(), edit.getValue()));
        Map<String, MatchMarks> marks = new HashMap<>();
        handle.createQuery("select match_id, sum(case way when 'live' then 1 else 0 end) as live,"
                        + " sum(case way when 'late' then 1 else 0 end) as late,"
                        + " sum(case way when 'typed' then 1 else 0 end) as typed, max(received_at) as latest"
                        + " from season_round where season = :season group by match_id")
                .bind("season", season)
                .map((row, context) -> Map.entry(
                        row.getString("match_id"),
                        new MatchMarks(
                                row.getInt("live"),
                                row.getInt("late"),
                                row.getInt("typed"),
                                edits.getOrDefault(row.getString("match_id"), 0),
                                Instant.parse(row.getString("latest")))))
                .forEach(mark -> marks.put(mark.getKey(), mark.getValue()));
        return marks;
    }

    /** Ids of a season's matches of which anything is kept here, in order. */
    public List<String> kept(String season) {
        return handle.createQuery("select match_id from season_round where season = :season"
                        + " union select match_id from season_round_edit where season = :season"
                        + " union select match_id from season_run where season = :season"
                        + " union select match_id from season_stream where season = :season order by 1")
                .bind("season", season)
                .mapTo(String.class)
                .list();
    }

    /** Takes out all that is kept here of a match that is taken out itself. */
    void delete(String season, String match) {
        for (String table :
                List.of("season_live", "season_round", "season_round_edit", "season_run", "season_stream")) {
            handle.execute("delete from " + table + " where season = ? and match_id = ?", season, match);
        }
    }
}
