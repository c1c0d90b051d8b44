package boardside.app.record;

import boardside.app.practice.BagSet;
import boardside.app.practice.Board;
import boardside.app.practice.Challenge;
import boardside.app.practice.Fixture;
import boardside.app.practice.FixtureRun;
import boardside.app.practice.KeptSituation;
import boardside.app.practice.League;
import boardside.app.practice.Moment;
import boardside.app.practice.Player;
import boardside.app.practice.Refused;
import boardside.app.practice.Session;
import boardside.app.practice.SessionPlan;
import boardside.app.practice.SetGoal;
import boardside.app.practice.SlideTest;
import boardside.app.practice.TrialPlan;
import boardside.app.season.KeptMatch;
import boardside.app.season.StoredSeasonChange;
import boardside.app.store.AccountRows;
import boardside.app.store.HistoryRows;
import boardside.app.store.RoundRows;
import boardside.app.store.Transaction;
import boardside.engine.league.season.Season;
import java.util.List;
import java.util.Map;

/** Puts back what a {@link Snapshot} gave, into an emptied store. Valid only while the function it was handed to runs. */
public final class Refill {
    private final Transaction rows;
    private final long version;
    private final String now;

    /** @param version later than any version a player of the store had, so that nothing derived outlives it */
    Refill(Transaction rows, long version, String now) {
        this.rows = rows;
        this.version = version;
        this.now = now;
    }

    /** Adds an account; nobody is signed in. */
    public void account(StoredAccount stored) {
        rows.accounts().add(new AccountRows.Stored(stored.account(), stored.signIn(), stored.password()));
    }

    /**
     * Adds a player; the number may differ from the one they had.
     *
     * @param account added before, whose the player is; empty for a household without accounts
     */
    public Player player(Player player, String account, String preferences) {
        AccountRows.Stored owner = account.isEmpty()
                ? null
                : rows.accounts()
                        .find(account)
                        .orElseThrow(() -> new IllegalArgumentException("a player of an account that is missing"));
        Player added = rows.players().add(owner, player.name(), player.hand(), player.throwsFrom(), now);
        rows.players().preferences(added.id(), preferences);
        rows.players().version(added.id(), version);
        return added;
    }

    /** Adds a bag set. */
    public void bag(int player, BagSet bag) {
        rows.players().put(player, bag);
    }

    /** Adds a board. */
    public void board(int player, Board board) {
        rows.players().put(player, board);
    }

    /** Adds a kept situation. */
    public void situation(int player, KeptSituation situation) {
        rows.situations().put(player, situation);
    }

    /** Adds a slide test. */
    public void slideTest(int player, SlideTest test) {
        rows.slideTests().put(player, test);
    }

    /** Adds a session. */
    public void session(int player, Session session) {
        rows.runs().addSession(player, session.id(), Moment.of(session.startedAt()), session.note());
    }

    /** Adds a run of a session added before. */
    public void run(int player, StoredRun stored) {
        rows.runs().add(player, stored.run(), Moment.of(stored.run().startedAt()));
        if (stored.deletedAt() != null) {
            rows.runs().delete(player, stored.run().id(), stored.deletedAt());
        }
        List<RoundRows.Stored> rounds = stored.rounds().stream()
                .map(round -> new RoundRows.Stored(round.round(), round.corrected()))
                .toList();
        rows.tries().addAll(player, stored.run().id(), stored.tries());
        rows.rounds().addAll(player, Map.of(stored.run().id(), rounds));
        Deriving.refresh(
                rows,
                player,
                stored.run(),
                rounds.stream().map(RoundRows.Stored::round).toList());
    }

    /** Adds a league. */
    public void league(int player, League league) {
        rows.leagues().put(player, league);
    }

    /** Adds a fixture of a league added before. */
    public void fixture(int player, Fixture fixture) {
        rows.leagues().put(player, fixture);
    }

    /** Says which run a game of a fixture added before was thrown in. */
    public void fixtureRun(int player, FixtureRun game) {
        rows.leagues().play(player, game.fixture(), game.game(), game.run());
    }

    /** Adds a trial. */
    public void trial(int player, TrialPlan plan) {
        rows.trials().put(player, plan);
    }

    /** Adds a challenge; its run was added before. */
    public void challenge(int player, Challenge challenge) {
        rows.challenges().add(player, challenge);
    }

    /** Adds a plan. */
    public void plan(int player, SessionPlan plan) {
        rows.plans().add(player, plan);
    }

    /** Adds a refusal. */
    public void refused(int player, Refused refused) {
        rows.plans().refuse(player, refused);
    }

    /** Adds a goal. */
    public void goal(int player, SetGoal goal) {
        rows.plans().put(player, goal);
    }

    /** Adds a season that is run here. */
    public void season(Season season) {
        rows.seasons().add(season, now);
    }

    /**
     * Says who runs a season added before.
     *
     * @param owner id of an account added before, or empty for nobody
     * @param others ids of accounts added before
     */
    public void organisers(String season, String owner, List<String> others) {
        if (!owner.isEmpty()) {
            rows.seasons().own(season, owner);
        }
        others.forEach(account -> rows.seasons().letRun(season, account));
    }

    /** Adds what is kept of a match of a season added before, as it was thrown; runs were added before too. */
    public void keptMatch(KeptMatch kept) {
        kept.rounds().forEach(round -> rows.matches().put(kept.season(), kept.match(), round));
        kept.edits().forEach(edit -> rows.matches().keep(kept.season(), kept.match(), edit));
        kept.runs().forEach(run -> rows.matches().play(run));
        kept.streams().forEach((side, address) -> rows.matches().stream(kept.season(), kept.match(), side, address));
        rows.matches().changed(kept.season(), kept.match());
    }

    /** Adds a change of a season added before. */
    public void seasonChange(StoredSeasonChange change) {
        rows.seasons().keep(change);
    }

    /** Adds an entry of the history. */
    public void change(int player, StoredChange change) {
        rows.history()
                .add(
                        player,
                        new HistoryRows.Entry(
                                change.id(),
                                change.at(),
                                change.what(),
                                change.subject(),
                                change.earlier(),
                                change.later(),
                                change.undoneAt()));
    }
}
