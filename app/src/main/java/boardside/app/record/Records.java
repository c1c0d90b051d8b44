package boardside.app.record;

import boardside.app.account.Accounts;
import boardside.app.account.Departure;
import boardside.app.account.Devices;
import boardside.app.account.Passwords;
import boardside.app.account.SignIns;
import boardside.app.json.Json;
import boardside.app.practice.BagSet;
import boardside.app.practice.Board;
import boardside.app.practice.Change;
import boardside.app.practice.Failure;
import boardside.app.practice.Ids;
import boardside.app.practice.KeptSituation;
import boardside.app.practice.Operation;
import boardside.app.practice.Player;
import boardside.app.practice.Run;
import boardside.app.practice.Session;
import boardside.app.practice.Try;
import boardside.app.practice.TryCounts;
import boardside.app.store.AccountRows;
import boardside.app.store.Database;
import boardside.app.store.RoundRows;
import boardside.app.store.RunRows;
import boardside.app.store.Transaction;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.IntConsumer;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The one door to what is recorded. Every method is one transaction: done and on disk when it returns, or not at all.
 * Thread safe.
 *
 * <p>All throw {@link Failure.NotFound} for a player, run, session or change that does not exist.
 */
public final class Records implements AutoCloseable {
    private static final int USUAL_OF = 20;
    private static final int LATEST = 5;
    private static final int PACE_RUNS = 40;
    private static final int MOST_OPPONENTS = 30;
    private static final int LONGEST_NAME = 100;
    private static final int MOST_SEARCH_WORDS = 8;

    private final Database database;
    private final InstantSource clock;
    private final Ids ids;
    private final Corrections corrections;

    private final Leagues leagues;
    private final HostedSeasons seasons;
    private final Challenges challenges;
    private final Trials trials;
    private final Plans plans;
    private final Passwords passwords;
    private final ThrowFits throwFits = new ThrowFits();

    /** Told when a player leaves with their account, before their records go: whoever shares something with them is listed here. */
    private static final List<Departure> DEPARTURES = List.of(new SeasonDeparture());

    private Records(Database database, InstantSource clock, Ids ids, Passwords passwords) {
        this.passwords = passwords;
        this.database = database;
        this.clock = clock;
        this.ids = ids;
        this.corrections = new Corrections(ids);
        this.leagues = new Leagues(database, clock, ids, corrections);
        this.seasons = new HostedSeasons(database, clock, ids);
        this.challenges = new Challenges(database, ids);
        this.trials = new Trials(database, clock, ids, corrections);
        this.plans = new Plans(database, clock, ids);
    }

    /**
     * Opens a store; a missing file is created.
     *
     * @param location path of an SQLite file, or a {@code jdbc:postgresql:} URL
     * @throws Failure.StoreUnusable if it cannot be opened or was written by a newer program
     */
    public static Records open(String location) {
        return open(location, InstantSource.system(), new Ids(InstantSource.system(), new SecureRandom()));
    }

    /** The same with a clock and ids of the caller's. */
    public static Records open(String location, InstantSource clock, Ids ids) {
        return open(location, clock, ids, new Passwords());
    }

    /** The same, keeping passwords as the caller says. */
    public static Records open(String location, InstantSource clock, Ids ids, Passwords passwords) {
        Database database = Database.open(location);
        if (database.read(rows -> rows.feats().missing())) {
            database.write(rows -> {
                Deriving.fillIn(rows);
                return location;
            });
        }
        return new Records(database, clock, ids, passwords);
    }

    /** New ids for what is recorded here. */
    public Ids ids() {
        return ids;
    }

    /** Where the store lies unless told otherwise, by the process's environment variables. */
    public static String defaultLocation(Map<String, String> environment) {
        return Database.defaultLocation(environment);
    }

    /** The store's location as it may be shown. */
    public String location() {
        return database.location();
    }

    /**
     * Looks whether the file of a store is whole, before it is opened; reads all of it.
     *
     * @throws Failure.StoreUnusable if it is damaged; the file is as it was
     */
    public static void verify(String location) {
        Database.verify(location);
    }

    /**
     * Puts the native library for files of this machine into a folder, where starts find it when the system property
     * {@code org.sqlite.lib.path} names that; otherwise each start unpacks it.
     */
    public static void unpackDriver(Path folder) throws IOException {
        Database.unpackDriver(folder);
    }

    /** Gives a damaged file another name, which is returned, so that a new store can be made in its place. */
    public static Path setAside(String location, Instant now) {
        return Database.setAside(location, now);
    }

    /** What keeps the store from taking a write now, with what to do; empty if nothing does. */
    public Optional<String> trouble() {
        return database.trouble();
    }

    @Override
    public void close() {
        database.close();
    }

    /** Leagues that somebody else runs. */
    public Leagues leagues() {
        return leagues;
    }

    /** Seasons that are run here. */
    public HostedSeasons seasons() {
        return seasons;
    }

    /** What is thrown live of their matches. */
    public MatchNights matchNights() {
        return new MatchNights(database, clock, ids);
    }

    /** Challenges that were taken up. */
    public Challenges challenges() {
        return challenges;
    }

    /** Fair comparisons of ways to throw. */
    public Trials trials() {
        return trials;
    }

    /** Plans, goals, and who may see whose. */
    public Plans plans() {
        return plans;
    }

    /** Slide tests. */
    public SlideTests slideTests() {
        return new SlideTests(database);
    }

    /** What was worked out of the records of throws. */
    ThrowFits throwFits() {
        return throwFits;
    }

    /** Bests, milestones and bags a day. */
    public Deeds deeds() {
        return new Deeds(database);
    }

    /** Who may ask from elsewhere in the house. */
    public Devices devices() {
        return new Devices(database, clock);
    }

    /** Accounts of hosted mode. */
    public Accounts accounts() {
        return new Accounts(database, clock, ids, passwords, DEPARTURES);
    }

    /** Signing in and out in hosted mode. */
    public SignIns signIns() {
        return new SignIns(database, clock, ids, passwords);
    }

    /** What analyses read. */
    public Analyses analyses() {
        return new Analyses(database);
    }

    // Players

    /** All players of the store, whosever they are, the first one made first. */
    public List<Player> players() {
        return database.read(rows -> rows.players().all());
    }

    /** The players of an account or, with null, of a household without accounts, the first one made first. */
    public List<Player> players(@Nullable String account) {
        return database.ask(rows -> rows.players().of(account));
    }

    /** A player with those of the same account or household, the first one made first; empty if there is no such player. */
    public List<Player> household(int player) {
        return database.read(rows -> rows.players().household(player));
    }

    /** Names by which the players of the store differ: one of an account has the account's name behind the own. */
    public List<String> playerNames() {
        return database.read(rows -> List.copyOf(rows.players().names().values()));
    }

    /** A player by number. */
    public Player player(int id) {
        return database.read(rows -> player(rows, id));
    }

    /** A player by the name of {@link #playerNames}. */
    public Optional<Player> player(String name) {
        return database.read(rows -> rows.players().named(name));
    }

    /**
     * Adds a player to a household without accounts.
     *
     * @throws Failure.BadInput if the name is blank, too long or taken
     */
    public Player addPlayer(String name, Player.Hand hand, Player.Hand throwsFrom) {
        return addPlayer(null, name, hand, throwsFrom);
    }

    /**
     * Adds a player to an account or, with null, to a household without accounts.
     *
     * @throws Failure.BadInput if the name is blank, too long or taken there
     */
    public Player addPlayer(@Nullable String account, String name, Player.Hand hand, Player.Hand throwsFrom) {
        return database.write(rows -> {
            String checked = checkName("a player", name, rows.players().of(account), Player::name, other -> false);
            return rows.players().add(owner(rows, account), checked, hand, throwsFrom, now());
        });
    }

    private static AccountRows.@Nullable Stored owner(Transaction rows, @Nullable String account) {
        return account == null
                ? null
                : rows.accounts().find(account).orElseThrow(() -> new Failure.NotFound("there is no such account"));
    }

    /**
     * The first player of a household without accounts; in an empty store, one called "Me" is made, so that the first
     * throw needs no form.
     */
    public Player firstPlayer() {
        return firstPlayer(null);
    }

    /** The first player of an account or, with null, of a household without accounts; made where there is none yet. */
    public Player firstPlayer(@Nullable String account) {
        List<Player> players = players(account);
        if (!players.isEmpty()) {
            return players.get(0);
        }
        return database.write(rows -> {
            // Of several first visits at once, the others wait and find whom the first made.
            rows.accounts().hold();
            return rows.players().of(account).stream()
                    .findFirst()
                    .orElseGet(() ->
                            rows.players().add(owner(rows, account), "Me", Player.Hand.RIGHT, Player.Hand.LEFT, now()));
        });
    }

    /**
     * Sets a player's name, hand and side.
     *
     * @throws Failure.BadInput if the name is blank, too long or taken
     */
    public Player editPlayer(Player player) {
        return database.write(rows -> {
            player(rows, player.id());
            String account = rows.players().account(player.id()).orElse(null);
            String checked = checkName(
                    "a player",
                    player.name(),
                    rows.players().of(account),
                    Player::name,
                    other -> other.id() == player.id());
            rows.players()
                    .edit(
                            owner(rows, account),
                            new Player(player.id(), checked, player.hand(), player.throwsFrom(), player.version()));
            return player(rows, player.id());
        });
    }

    /** A player's preferences, a JSON object. */
    public String preferences(int player) {
        return database.read(rows -> {
            player(rows, player);
            return rows.players().preferences(player);
        });
    }

    /**
     * Sets a player's preferences.
     *
     * @throws Failure.BadInput if the text is no JSON object
     */
    public void savePreferences(int player, String json) {
        try {
            if (!Json.read(json, JsonNode.class).isObject()) {
                throw new Failure.BadInput("preferences are a JSON object, in braces");
            }
        } catch (IllegalArgumentException e) {
            throw new Failure.BadInput("preferences: " + e.getMessage());
        }
        database.write(rows -> {
            player(rows, player);
            rows.players().preferences(player, json);
            return player;
        });
    }

    // Bag sets

    /** A player's bag sets, those in use first. */
    public List<BagSet> bags(int player) {
        return database.read(rows -> {
            player(rows, player);
            return rows.players().bags(player);
        });
    }

    /**
     * Adds a bag set (its id unknown or empty) or edits one; an edit keeps the earlier version.
     *
     * @throws Failure.BadInput if the name is blank, too long or taken, or a number is out of its range
     */
    public BagSet saveBag(int player, BagSet bag) {
        return database.write(rows -> {
            change(rows, player);
            String name = checkName(
                    "a bag set",
                    bag.name(),
                    rows.players().bags(player),
                    BagSet::name,
                    other -> other.id().equals(bag.id()));
            checkBag(bag);
            BagSet checked = new BagSet(
                    bag.id().isBlank() ? ids.next() : bag.id(),
                    name,
                    bag.slowSpeed(),
                    bag.fastSpeed(),
                    bag.weight(),
                    bag.fill(),
                    bag.note(),
                    bag.retired());
            Optional<BagSet> earlier = rows.players().bag(player, checked.id());
            if (earlier.isPresent() && !earlier.get().equals(checked)) {
                corrections.keepBag(rows, player, earlier.get(), checked, now());
            }
            rows.players().put(player, checked);
            return checked;
        });
    }

    private static void checkBag(BagSet bag) {
        List<String> faults = new ArrayList<>();
        for (Integer speed : Arrays.asList(bag.slowSpeed(), bag.fastSpeed())) {
            if (speed != null && !(speed >= 1 && speed <= 10)) {
                faults.add("a face's speed is 1 to 10, not " + speed);
            }
        }
        Double weight = bag.weight();
        if (weight != null && !(weight > 0 && weight <= 64)) {
            faults.add("a bag weighs above 0 and at most 64 oz, not " + weight);
        }
        if (!faults.isEmpty()) {
            throw new Failure.BadInput(faults);
        }
    }

    // Boards

    /** A player's boards, those in use first. */
    public List<Board> boards(int player) {
        return database.read(rows -> {
            player(rows, player);
            return rows.players().boards(player);
        });
    }

    /**
     * Adds a board (its id unknown or empty) or edits one; an edit keeps the earlier version.
     *
     * @throws Failure.BadInput if the name is blank, too long or taken, or a size is out of its range
     */
    public Board saveBoard(int player, Board board) {
        return database.write(rows -> {
            change(rows, player);
            String name = checkName(
                    "a board",
                    board.name(),
                    rows.players().boards(player),
                    Board::name,
                    other -> other.id().equals(board.id()));
            checkBoard(board);
            Board checked = new Board(
                    board.id().isBlank() ? ids.next() : board.id(),
                    name,
                    board.kind(),
                    board.width(),
                    board.front(),
                    board.note(),
                    board.retired());
            Optional<Board> earlier = rows.players().board(player, checked.id());
            if (earlier.isPresent() && !earlier.get().equals(checked)) {
                corrections.keepBoard(rows, player, earlier.get(), checked, now());
            }
            rows.players().put(player, checked);
            return checked;
        });
    }

    private static void checkBoard(Board board) {
        List<String> faults = new ArrayList<>();
        if (!(board.width() > 0 && board.width() <= Board.REGULATION_WIDTH)) {
            faults.add("a board is above 0 and at most 24 in wide, not " + board.width());
        } else if (board.kind() == BoardKind.REGULATION && board.width() != Board.REGULATION_WIDTH) {
            faults.add("a regulation board is 24 in wide, not " + board.width()
                    + "; a narrower one is of the kind narrow");
        }
        if (!(board.front() >= 2 && board.front() <= 6)) {
            faults.add("a board's front edge is 2 to 6 in high, not " + board.front());
        }
        if (!faults.isEmpty()) {
            throw new Failure.BadInput(faults);
        }
    }

    // Recording

    /**
     * Applies operations in order, in one transaction; one that is refused does not lose the others.
     *
     * @param now told by the caller's clock, for the history
     * @return one result an operation, in the same order
     */
    public List<Applied> apply(int player, List<Operation> operations, Instant now) {
        return apply(player, operations, now, Duration.ZERO);
    }

    /**
     * The same with operations stamped by another clock.
     *
     * @param ahead how far that clock is ahead of the one that tells {@code now}
     */
    public List<Applied> apply(int player, List<Operation> operations, Instant now, Duration ahead) {
        return database.write(rows -> {
            change(rows, player);
            return new Recording(rows, player, corrections, now.toString(), ahead).apply(operations);
        });
    }

    /**
     * Applies operations in order, all of them or none.
     *
     * @throws Failure.BadInput with the message of every operation that was refused
     */
    public void applyAll(int player, List<Operation> operations, Instant now) {
        database.write(rows -> {
            change(rows, player);
            List<String> faults = new ArrayList<>();
            for (Applied applied : new Recording(rows, player, corrections, now.toString()).apply(operations)) {
                if (applied instanceof Applied.Refused refused) {
                    faults.add(refused.message());
                }
            }
            if (!faults.isEmpty()) {
                throw new Failure.BadInput(faults);
            }
            return player;
        });
    }

    /**
     * Stores runs of a log kept elsewhere: all of them or, where they disagree with the store, none.
     *
     * @param progress told the number of rounds dealt with, again and again
     */
    public ImportResult importRuns(int player, List<LogRun> runs, IntConsumer progress) {
        return database.write(rows -> {
            change(rows, player);
            return new Importing(rows, player, ids).run(runs, progress);
        });
    }

    // Leaving and coming back

    /** Hands over all that is recorded, as of one moment. */
    public <T> T snapshot(Function<Snapshot, T> work) {
        return database.read(rows -> work.apply(new Snapshot(rows)));
    }

    /** Whether nothing is recorded yet: at most one player, without runs and bag sets, and no season. */
    public boolean isEmpty() {
        return database.read(Records::isEmpty);
    }

    private static boolean isEmpty(Transaction rows) {
        List<Player> players = rows.players().all();
        return rows.accounts().all().isEmpty()
                && players.size() <= 1
                && rows.seasons().settings().isEmpty()
                && players.stream()
                        .allMatch(player -> rows.players().bags(player.id()).isEmpty()
                                && rows.situations().all(player.id()).isEmpty()
                                && rows.slideTests().all(player.id()).isEmpty()
                                && rows.runs().heads(player.id()).isEmpty());
    }

    /**
     * Replaces all that is recorded; devices stay let in. If the work throws, the store is as before.
     *
     * @param force also where something is recorded
     * @throws Failure.BadInput if something is recorded and {@code force} is not set
     */
    public <T> T refill(boolean force, Function<Refill, T> work) {
        return database.writeOnce(rows -> {
            if (!force && !isEmpty(rows)) {
                throw new Failure.BadInput("the store " + location()
                        + " holds records, which would be lost; back them up, then add --force, or give another store with"
                        + " --data");
            }
            long version = rows.players().all().stream()
                            .mapToLong(Player::version)
                            .max()
                            .orElse(0)
                    + 1;
            rows.clear();
            return work.apply(new Refill(rows, version, now()));
        });
    }

    /** What is wrong with the store, one line a fault: the file itself, and whether what it says makes sense. */
    public List<String> check() {
        return database.read(rows -> {
            List<String> faults = new ArrayList<>(database.sqlite() ? rows.damage() : List.of());
            if (faults.isEmpty()) {
                new Checking(rows, faults).check();
            }
            return faults;
        });
    }

    // Reading

    /** A run with its rounds; empty if there is none, or it was deleted. */
    public Optional<RunDetail> run(int player, String id) {
        return database.read(rows -> rows.runs()
                .find(player, id)
                .filter(run -> !run.deleted())
                .map(run -> new RunDetail(
                        run,
                        rows.runs().session(player, run.session()).orElseThrow(),
                        rows.rounds().of(player, id).stream()
                                .map(RoundRows.Stored::round)
                                .filter(round -> !round.lines().isEmpty())
                                .toList())));
    }

    /** A run's tries in order; those taken back are there without what was played. */
    public List<Try> allTries(int player, String run) {
        return database.read(rows -> rows.tries().of(player, List.of(run)).getOrDefault(run, List.of()));
    }

    /** A run's tries in order, without those taken back. */
    public List<Try> tries(int player, String run) {
        return allTries(player, run).stream()
                .filter(tried -> tried.played() != null)
                .toList();
    }

    /** A player's tries of a drill up to a day, that day included, sorted and counted; warm-ups left out. */
    public List<TryCounts> tryCounts(int player, Drill drill, String to) {
        return database.read(rows -> rows.tries().counts(player, drill, to));
    }

    /** A player's latest counted tries of a drill up to a day, the newest first. */
    public List<Try> latestTries(int player, Drill drill, String to, int most) {
        return database.read(rows -> rows.tries().latest(player, drill, to, most));
    }

    /** A player's counted tries in chains of shots up to a day, by id of the run, in order. */
    public Map<String, List<Try>> chainTries(int player, String to) {
        return database.read(rows -> rows.tries().chains(player, to));
    }

    /** A player's kept situations, those in use first. */
    public List<KeptSituation> situations(int player) {
        return database.read(rows -> {
            player(rows, player);
            return rows.situations().all(player);
        });
    }

    /** The latest run that is still open. */
    public Optional<Run> openRun(int player) {
        return database.read(rows -> rows.runs().open(player));
    }

    /** The latest run, of a drill or (null) of any. */
    public Optional<Run> lastRun(int player, @Nullable Drill drill) {
        return database.read(rows -> rows.runs().last(player, drill));
    }

    /** The latest counted runs of a drill, the latest first, warm-ups left out. */
    public List<Run> latestRuns(int player, Drill drill, int most) {
        return database.read(rows -> rows.runs().latest(player, drill, most));
    }

    /**
     * What a run is measured against: finished, counted runs of the drill with as many rounds and a total.
     *
     * @param exceptRun id of a run to leave out, or empty
     */
    public Standing standing(int player, Drill drill, int rounds, String exceptRun) {
        RunRows.Results results =
                database.read(rows -> rows.runs().results(player, drill, rounds, exceptRun, USUAL_OF));
        int[] totals = results.latest().stream()
                .mapToInt(result -> total(drill, result).total())
                .sorted()
                .toArray();
        return new Standing(
                results.number(),
                results.best().map(best -> total(drill, best)).orElse(null),
                totals.length == 0
                        ? null
                        : (Double) ((totals[(totals.length - 1) / 2] + totals[totals.length / 2]) / 2.0),
                results.latest().stream()
                        .limit(LATEST)
                        .map(result -> total(drill, result))
                        .toList());
    }

    private static Standing.Result total(Drill drill, RunRows.Result result) {
        Integer points = result.points();
        int total = drill == Drill.VOLUME || points == null ? result.in() : points;
        return new Standing.Result(result.run(), result.day(), total, result.thrown());
    }

    /**
     * A page of sessions, the newest first, each with its runs.
     *
     * @param search words that must all be found in notes, opponents, names of bag sets, drills or the day; may be empty
     * @param page from 0
     * @param size sessions a page, at least 1
     */
    public Journal journal(int player, String search, int page, int size) {
        List<String> words = Arrays.stream(search.strip().split("\\s+"))
                .filter(word -> !word.isEmpty())
                .limit(MOST_SEARCH_WORDS)
                .toList();
        int from = Math.max(0, page);
        return database.read(rows -> {
            RunRows.Page found = rows.runs().sessions(player, words, from * size, size);
            Map<String, List<Run>> runs =
                    rows.runs().of(player, found.sessions()).stream().collect(Collectors.groupingBy(Run::session));
            List<Journal.Entry> entries = found.sessions().stream()
                    .map(session -> new Journal.Entry(session, runs.getOrDefault(session.id(), List.of())))
                    .toList();
            return new Journal(entries, found.total(), from, size);
        });
    }

    /** The latest climbs with their rounds, the latest first, warm-ups left out. */
    public List<RunDetail> climbs(int player, int most) {
        return latest(player, Drill.CLIMB, most);
    }

    /** The latest runs of a drill with their rounds, the latest first, warm-ups left out. */
    public List<RunDetail> latest(int player, Drill drill, int most) {
        return database.read(rows -> {
            List<Run> runs = rows.runs().latest(player, drill, most);
            Map<String, List<RoundRows.Stored>> rounds = runs.isEmpty()
                    ? Map.of()
                    : rows.rounds().of(player, runs.stream().map(Run::id).toList());
            return runs.stream()
                    .map(run -> new RunDetail(
                            run,
                            rows.runs().session(player, run.session()).orElseThrow(),
                            rounds.getOrDefault(run.id(), List.of()).stream()
                                    .map(RoundRows.Stored::round)
                                    .filter(round -> !round.lines().isEmpty())
                                    .toList()))
                    .toList();
        });
    }

    /** Names of those played before, the one met last first. */
    public List<String> opponents(int player) {
        return database.read(rows -> rows.runs().opponents(player, MOST_OPPONENTS));
    }

    /** Full rounds of four that an opponent was seen to throw, by finish; 15 counts, a new array. */
    public double[] theirFinishes(int player, String opponent) {
        return database.read(rows -> rows.tallies().theirFinishes(player, opponent));
    }

    /**
     * Points of the player's own full rounds that count, in the order thrown.
     *
     * @param from yyyy-mm-dd, included
     * @param to yyyy-mm-dd, included
     */
    public List<Integer> roundPoints(int player, String from, String to) {
        return database.read(rows -> rows.tallies().roundPoints(player, from, to));
    }

    /**
     * The day on which the player made most points a round, by full rounds that count; of equal ones the latest.
     *
     * @param to yyyy-mm-dd, included
     * @param least full rounds that a day must have
     */
    public Optional<String> bestDay(int player, String to, int least) {
        return database.read(rows -> rows.tallies().bestDay(player, to, least));
    }

    /** How long the player takes for a round, by the latest runs. */
    public Pace pace(int player) {
        return database.read(rows -> Pace.of(rows.rounds().gaps(player, PACE_RUNS)));
    }

    // Correcting

    /** Sets a run's note, opponent and warm-up; the earlier version is kept. */
    public Run editRun(int player, String run, RunEdit edit) {
        return database.write(rows -> {
            change(rows, player);
            Run before = found(rows, player, run);
            if (!corrections.editRun(rows, player, before, edit, now())) {
                rows.rollBack();
            }
            return found(rows, player, run);
        });
    }

    /** Sets a session's note; the earlier version is kept. */
    public Session editSession(int player, String session, String note) {
        return database.write(rows -> {
            change(rows, player);
            Session before = rows.runs()
                    .session(player, session)
                    .orElseThrow(() -> new Failure.NotFound("there is no session " + session));
            if (!corrections.editSession(rows, player, before, note, now())) {
                rows.rollBack();
            }
            return rows.runs().session(player, session).orElseThrow();
        });
    }

    /**
     * Deletes a run; it vanishes from everything but the history.
     *
     * @return id of the history entry, to undo it with
     */
    public String deleteRun(int player, String run, Instant now) {
        return database.write(rows -> {
            change(rows, player);
            return corrections.deleteRun(rows, player, found(rows, player, run), now.toString());
        });
    }

    /**
     * Corrections and deletions of a run (also a deleted one), a session, a bag set, a board, a slide test or a league, the
     * latest first.
     */
    public List<Change> changes(int player, String subject) {
        return database.read(rows -> rows.history().on(player, subject).stream()
                .map(Corrections::told)
                .toList());
    }

    /**
     * Brings back what was before a change, and keeps that as a change of its own. Undone already, nothing happens.
     *
     * @throws Failure.BadInput if what came later forbids it, such as rounds after a game's end
     */
    public void undo(int player, String changeId, Instant now) {
        database.write(rows -> {
            change(rows, player);
            corrections.undo(rows, player, changeId, now.toString());
            return player;
        });
    }

    // Shared

    private String now() {
        return clock.instant().toString();
    }

    private static Player player(Transaction rows, int id) {
        return rows.players().find(id).orElseThrow(() -> noPlayer(id));
    }

    private static void change(Transaction rows, int player) {
        if (!rows.players().changed(player)) {
            throw noPlayer(player);
        }
    }

    private static Failure noPlayer(int id) {
        return new Failure.NotFound("there is no player " + id);
    }

    private static Run found(Transaction rows, int player, String id) {
        return rows.runs()
                .find(player, id)
                .filter(run -> !run.deleted())
                .orElseThrow(() -> new Failure.NotFound("there is no run " + id));
    }

    private static <T> String checkName(
            String what, String name, List<T> others, Function<T, String> nameOf, Predicate<T> itself) {
        String stripped = name.strip();
        if (stripped.isEmpty()) {
            throw new Failure.BadInput(what + " needs a name");
        }
        if (stripped.length() > LONGEST_NAME || stripped.chars().anyMatch(Character::isISOControl)) {
            throw new Failure.BadInput(
                    "the name of " + what + " has at most " + LONGEST_NAME + " characters, in one line");
        }
        for (T other : others) {
            if (nameOf.apply(other).equals(stripped) && !itself.test(other)) {
                throw new Failure.BadInput("the name \"" + stripped + "\" is taken; give " + what + " another one");
            }
        }
        return stripped;
    }
}
