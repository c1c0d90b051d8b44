package boardside.app.store;

import java.util.ArrayList;
import java.util.List;
import org.jdbi.v3.core.Handle;

/** One transaction's view of the tables, by concept. Valid only while it runs. */
public final class Transaction {
    private final Handle handle;
    private final Signals.Batch signals;
    private boolean rolledBack;

    Transaction(Handle handle, Signals.Batch signals) {
        this.handle = handle;
        this.signals = signals;
    }

    /** Players and their bag sets. */
    public PlayerRows players() {
        return new PlayerRows(handle);
    }

    /** Sessions and runs. */
    public RunRows runs() {
        return new RunRows(handle);
    }

    /** Rounds with their lines and throws. */
    public RoundRows rounds() {
        return new RoundRows(handle);
    }

    /** Tries at targets and in situations. */
    public TryRows tries() {
        return new TryRows(handle);
    }

    /** Situations kept. */
    public SituationRows situations() {
        return new SituationRows(handle);
    }

    /** Slide tests. */
    public SlideTestRows slideTests() {
        return new SlideTestRows(handle);
    }

    /** Sums and counts derived from rounds. */
    public TallyRows tallies() {
        return new TallyRows(handle);
    }

    /** Where bags went. */
    public MarkRows marks() {
        return new MarkRows(handle);
    }

    /** What fits of the skill model begin with. */
    public LearnedRows learned() {
        return new LearnedRows(handle);
    }

    /** Corrections and deletions. */
    public HistoryRows history() {
        return new HistoryRows(handle);
    }

    /** Leagues that somebody else runs. */
    public LeagueRows leagues() {
        return new LeagueRows(handle);
    }

    /** Seasons that are run here. */
    public SeasonRows seasons() {
        return new SeasonRows(handle);
    }

    /** What is thrown live of matches of those seasons. */
    public MatchRows matches() {
        return new MatchRows(handle, signals);
    }

    /** Trials as they were set up. */
    public TrialRows trials() {
        return new TrialRows(handle);
    }

    /** Challenges that were taken up. */
    public ChallengeRows challenges() {
        return new ChallengeRows(handle);
    }

    /** Plans, refusals, goals, and who may see whose. */
    public PlanRows plans() {
        return new PlanRows(handle);
    }

    /** What runs did that their sums do not show. */
    public FeatRows feats() {
        return new FeatRows(handle);
    }

    /** Devices let in by a pairing code. */
    public DeviceRows devices() {
        return new DeviceRows(handle);
    }

    /** Accounts. */
    public AccountRows accounts() {
        return new AccountRows(handle);
    }

    /** Where accounts are signed in. */
    public LoginRows logins() {
        return new LoginRows(handle);
    }

    /** Links that work once. */
    public TicketRows tickets() {
        return new TicketRows(handle);
    }

    /** Tries to sign in that failed. */
    public AttemptRows attempts() {
        return new AttemptRows(handle);
    }

    /** Tables of accounts and of what players record, those first that others refer to. */
    public static final List<String> RECORDED = List.of(
            "account",
            "login",
            "ticket",
            "player",
            "bag",
            "board",
            "session",
            "run",
            "round",
            "line",
            "throw",
            "tally",
            "try",
            "situation",
            "slide_test",
            "history",
            "learned",
            "league",
            "fixture",
            "fixture_game",
            "challenge",
            "feat",
            "trial",
            "plan",
            "plan_block",
            "refusal",
            "goal",
            "share",
            "season",
            "season_division",
            "season_entrant",
            "season_match",
            "season_game",
            "season_round",
            "season_change",
            "season_organiser",
            "season_run",
            "season_round_edit",
            "season_stream",
            "season_live");

    /** Empties all that players recorded, and removes the accounts; devices stay let in. */
    public void clear() {
        for (int i = RECORDED.size() - 1; i >= 0; i--) {
            handle.execute("delete from " + RECORDED.get(i));
        }
        handle.execute("update player_number set last = 0");
    }

    /** Removes a player with all that they recorded; what others recorded stays. */
    public void removePlayer(int player) {
        handle.execute("delete from share where coach = ?", player);
        // Seasons are nobody's; an entrant who was the player stays in them by name.
        int last = RECORDED.indexOf("season") - 1;
        for (int i = last; i > RECORDED.indexOf("player"); i--) {
            handle.execute("delete from " + RECORDED.get(i) + " where player = ?", player);
        }
        handle.execute("delete from player where id = ?", player);
    }

    /** Asks for everything done in this transaction to be dropped at its end. */
    public void rollBack() {
        rolledBack = true;
    }

    /** What SQLite itself finds wrong with its file, one line a fault. */
    public List<String> damage() {
        List<String> faults = new ArrayList<>(
                handle.createQuery("pragma integrity_check").mapTo(String.class).list());
        faults.remove("ok");
        handle.createQuery("pragma foreign_key_check")
                .map((row, context) ->
                        "a row of " + row.getString(1) + " refers to a missing row of " + row.getString(3))
                .forEach(faults::add);
        return faults;
    }

    /** A setting of SQLite, for checks. */
    String pragma(String name) {
        return handle.createQuery("pragma " + name).mapTo(String.class).one();
    }

    /** Whether the database takes writes; on SQLite, having begun to write already says so. */
    boolean writable(boolean sqlite) {
        if (sqlite) {
            handle.execute("select 1");
            return true;
        }
        return handle.createQuery("select not pg_is_in_recovery() and current_setting('transaction_read_only') = 'off'")
                .mapTo(Boolean.class)
                .one();
    }

    /** Writes one page of an SQLite file as it was. */
    void touch() {
        handle.execute("pragma user_version = " + pragma("user_version"));
    }

    Signals.Batch signals() {
        return signals;
    }

    boolean rolledBack() {
        return rolledBack;
    }
}
