package boardside.app.record;

import boardside.app.practice.BagSet;
import boardside.app.practice.Board;
import boardside.app.practice.Challenge;
import boardside.app.practice.Fixture;
import boardside.app.practice.FixtureRun;
import boardside.app.practice.KeptSituation;
import boardside.app.practice.League;
import boardside.app.practice.Player;
import boardside.app.practice.Refused;
import boardside.app.practice.Run;
import boardside.app.practice.Session;
import boardside.app.practice.SessionPlan;
import boardside.app.practice.SetGoal;
import boardside.app.practice.SlideTest;
import boardside.app.practice.TrialPlan;
import boardside.app.practice.Try;
import boardside.app.season.KeptMatch;
import boardside.app.season.Organiser;
import boardside.app.season.StoredSeasonChange;
import boardside.app.store.RoundRows;
import boardside.app.store.RunRows;
import boardside.app.store.Transaction;
import boardside.engine.league.season.Season;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;

/** All that is recorded, as of one moment. Valid only while the function it was handed to runs. */
public final class Snapshot {
    private static final int RUNS_AT_ONCE = 500;

    private final Transaction rows;

    Snapshot(Transaction rows) {
        this.rows = rows;
    }

    /** All players. */
    public List<Player> players() {
        return rows.players().all();
    }

    /** All accounts, by name. */
    public List<StoredAccount> accounts() {
        return rows.accounts().all().stream()
                .map(stored -> new StoredAccount(stored.account(), stored.signIn(), stored.password()))
                .toList();
    }

    /** Whose a player is: id of an account, or empty for one of a household without accounts. */
    public Optional<String> account(int player) {
        return rows.players().account(player);
    }

    /** The name by which each player differs from all others, by number. */
    public Map<Integer, String> playerNames() {
        return rows.players().names();
    }

    /** A player's preferences as JSON. */
    public String preferences(int player) {
        return rows.players().preferences(player);
    }

    /** A player's bag sets. */
    public List<BagSet> bags(int player) {
        return rows.players().bags(player);
    }

    /** A player's boards. */
    public List<Board> boards(int player) {
        return rows.players().boards(player);
    }

    /** A player's kept situations. */
    public List<KeptSituation> situations(int player) {
        return rows.situations().all(player);
    }

    /** A player's slide tests, deleted ones too. */
    public List<SlideTest> slideTests(int player) {
        return rows.slideTests().all(player);
    }

    /** A player's sessions, in order of their ids. */
    public List<Session> sessions(int player) {
        List<Session> sessions = new ArrayList<>(rows.runs().sessions(player));
        sessions.sort(Comparator.comparing(Session::id));
        return sessions;
    }

    /** Number of a player's runs, deleted ones too. */
    public int runs(int player) {
        return rows.runs().heads(player).size();
    }

    /** Hands over a player's runs one by one, deleted ones too: by start, then id. */
    public void eachRun(int player, Consumer<StoredRun> visitor) {
        List<RunRows.Head> heads = new ArrayList<>(rows.runs().heads(player));
        heads.sort(Comparator.comparingLong(RunRows.Head::startedMillis)
                .thenComparing(RunRows.Head::startedAt)
                .thenComparing(RunRows.Head::id));
        for (int from = 0; from < heads.size(); from += RUNS_AT_ONCE) {
            List<RunRows.Head> some = heads.subList(from, Math.min(heads.size(), from + RUNS_AT_ONCE));
            List<String> ids = some.stream().map(RunRows.Head::id).toList();
            Map<String, Run> runs =
                    rows.runs().withIds(player, ids).stream().collect(Collectors.toMap(Run::id, Function.identity()));
            Map<String, List<RoundRows.Stored>> rounds = rows.rounds().of(player, ids);
            Map<String, List<Try>> tries = rows.tries().of(player, ids);
            for (RunRows.Head head : some) {
                Run run = runs.get(head.id());
                if (run != null) {
                    visitor.accept(new StoredRun(
                            run,
                            head.deletedAt(),
                            rounds.getOrDefault(head.id(), List.of()).stream()
                                    .map(stored -> new StoredRun.StoredRound(stored.round(), stored.corrected()))
                                    .toList(),
                            tries.getOrDefault(head.id(), List.of())));
                }
            }
        }
    }

    /** A player's leagues, deleted ones too. */
    public List<League> leagues(int player) {
        return rows.leagues().all(player);
    }

    /** A player's fixtures, deleted ones too. */
    public List<Fixture> fixtures(int player) {
        return rows.leagues().fixtures(player);
    }

    /** Which runs games of fixtures were thrown in; only fixture, game and run are told. */
    public List<FixtureRun> fixtureRuns(int player) {
        return rows.leagues().allThrown(player);
    }

    /** A player's trials, deleted ones too. */
    public List<TrialPlan> trials(int player) {
        return rows.trials().all(player);
    }

    /** The challenges a player took up. */
    public List<Challenge> challenges(int player) {
        return rows.challenges().all(player);
    }

    /** A player's plans. */
    public List<SessionPlan> plans(int player) {
        return rows.plans().all(player);
    }

    /** What a player refused. */
    public List<Refused> refused(int player) {
        return rows.plans().refused(player, "");
    }

    /** A player's goals, put away ones too. */
    public List<SetGoal> goals(int player) {
        return rows.plans().goals(player);
    }

    /** All seasons that are run here, deleted ones too. */
    public List<Season> seasons() {
        return rows.seasons().all();
    }

    /** Who runs a season, its owner first. */
    public List<Organiser> organisers(String season) {
        return rows.seasons().organisers(season);
    }

    /** What is kept of a season's matches as they were thrown, by id; those of which nothing is kept are left out. */
    public List<KeptMatch> keptMatches(String season) {
        return rows.matches().kept(season).stream()
                .map(match -> new KeptMatch(
                        season,
                        match,
                        rows.matches().rounds(season, match),
                        rows.matches().edits(season, match),
                        rows.matches().runs(season, match),
                        rows.matches().streams(season, match)))
                .toList();
    }

    /** A season's changes, the first made first; parts as JSON. */
    public List<StoredSeasonChange> seasonChanges(String season) {
        return rows.seasons().changes(season);
    }

    /** A player's history, the first entry first. */
    public List<StoredChange> changes(int player) {
        return rows.history().all(player).stream()
                .map(entry -> new StoredChange(
                        entry.id(),
                        entry.at(),
                        entry.kind(),
                        entry.subject(),
                        entry.earlier(),
                        entry.later(),
                        entry.undoneAt()))
                .toList();
    }
}
