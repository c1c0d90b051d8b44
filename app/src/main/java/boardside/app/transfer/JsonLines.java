package boardside.app.transfer;

import boardside.app.json.Json;
import boardside.app.practice.BagSet;
import boardside.app.practice.Board;
import boardside.app.practice.Challenge;
import boardside.app.practice.Failure;
import boardside.app.practice.Fixture;
import boardside.app.practice.FixtureRun;
import boardside.app.practice.KeptSituation;
import boardside.app.practice.League;
import boardside.app.practice.Player;
import boardside.app.practice.Refused;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.practice.Session;
import boardside.app.practice.SessionPlan;
import boardside.app.practice.SetGoal;
import boardside.app.practice.SlideTest;
import boardside.app.practice.TrialPlan;
import boardside.app.practice.Try;
import boardside.app.record.Refill;
import boardside.app.record.Snapshot;
import boardside.app.record.StoredAccount;
import boardside.app.record.StoredChange;
import boardside.app.record.StoredRun;
import boardside.app.season.KeptMatch;
import boardside.app.season.MatchEdit;
import boardside.app.season.MatchRound;
import boardside.app.season.MatchRun;
import boardside.app.season.MatchSide;
import boardside.app.season.Organiser;
import boardside.app.season.SeasonSettings;
import boardside.app.season.StoredSeasonChange;
import boardside.app.transfer.LogFiles.Progress;
import boardside.engine.league.season.Entrant;
import boardside.engine.league.season.Season;
import boardside.engine.league.season.SeasonMatch;
import boardside.engine.plan.Goal;
import boardside.engine.rules.Word;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * All that is recorded as JSON Lines: one value a line, its {@code kind} first. A header, in hosted mode the accounts, then for
 * each player the player,
 * bag sets, boards, situations, slide tests, sessions, runs with their rounds, leagues with their fixtures, challenges, trials, plans,
 * goals, and the history; then the seasons that are run here, each with its matches as they were thrown and its changes;
 * last the counts, by which a whole file is known.
 */
final class JsonLines {
    /** Newest version of this format; what is older is read too. */
    static final int FORMAT = 2;

    /** Before there were accounts; what holds none is still written so, for programs of then. */
    private static final int WITHOUT_ACCOUNTS = 1;

    private static final String KIND = "kind";

    /** Kinds of line that belong to no player. */
    private static final Set<String> OF_NOBODY =
            Set.of("account", "player", "season", "season-change", "season-live", "end");

    private JsonLines() {}

    /**
     * How much of what a file holds.
     *
     * @param bagsThrown bags thrown in rounds, by all sides
     * @param tries tries, or null for none, so that files without them are as they were before there were any
     * @param situations kept situations, or null for none
     * @param seasons seasons that are run here, or null for none
     * @param accounts accounts, or null for none
     */
    record Counts(
            int players,
            int bags,
            int sessions,
            int runs,
            int rounds,
            long bagsThrown,
            @Nullable Integer tries,
            @Nullable Integer situations,
            @Nullable Integer seasons,
            @Nullable Integer accounts) {
        static final Counts NONE = new Counts(0, 0, 0, 0, 0, 0, null, null, null, null);

        Counts plus(int players, int bags, int sessions, int runs, int rounds, long bagsThrown) {
            return new Counts(
                    this.players + players,
                    this.bags + bags,
                    this.sessions + sessions,
                    this.runs + runs,
                    this.rounds + rounds,
                    this.bagsThrown + bagsThrown,
                    tries,
                    situations,
                    seasons,
                    accounts);
        }

        Counts plusTries(int more) {
            return new Counts(
                    players,
                    bags,
                    sessions,
                    runs,
                    rounds,
                    bagsThrown,
                    plus(tries, more),
                    situations,
                    seasons,
                    accounts);
        }

        Counts plusSituations(int more) {
            return new Counts(
                    players,
                    bags,
                    sessions,
                    runs,
                    rounds,
                    bagsThrown,
                    tries,
                    plus(situations, more),
                    seasons,
                    accounts);
        }

        Counts plusSeason() {
            return new Counts(
                    players, bags, sessions, runs, rounds, bagsThrown, tries, situations, plus(seasons, 1), accounts);
        }

        Counts plusAccounts(int more) {
            return new Counts(
                    players,
                    bags,
                    sessions,
                    runs,
                    rounds,
                    bagsThrown,
                    tries,
                    situations,
                    seasons,
                    plus(accounts, more));
        }

        private static @Nullable Integer plus(@Nullable Integer some, int more) {
            return some == null && more == 0 ? null : (Integer) ((some == null ? 0 : some) + more);
        }
    }

    /**
     * Writes records.
     *
     * @param whose which players
     * @param complete with what was deleted and the history
     * @param seasons with the seasons that are run here, which are nobody's
     */
    static Counts write(
            Snapshot snapshot,
            Predicate<Player> whose,
            boolean complete,
            boolean seasons,
            Appendable out,
            Progress progress) {
        Writer writer = new Writer(out);
        ObjectNode header = Json.MAPPER.createObjectNode();
        List<StoredAccount> accounts = complete ? snapshot.accounts() : List.of();
        header.put("format", accounts.isEmpty() ? WITHOUT_ACCOUNTS : FORMAT);
        writer.line("boardside", header);
        accounts.forEach(account -> writer.line("account", AccountLine.write(account)));
        writer.counts = writer.counts.plusAccounts(accounts.size());
        List<Player> players = snapshot.players().stream().filter(whose).toList();
        int all =
                players.stream().mapToInt(player -> snapshot.runs(player.id())).sum();
        for (Player player : players) {
            writer.player(snapshot, player, complete, all, progress);
        }
        if (seasons) {
            writer.seasons(snapshot, complete);
        }
        writer.line("end", Json.MAPPER.valueToTree(writer.counts));
        return writer.counts;
    }

    private static final class Writer {
        private final Appendable out;
        private Counts counts = Counts.NONE;
        private final Set<RunOf> allRuns = new HashSet<>();
        private Set<String> runs = new HashSet<>();

        /** A run that was written. */
        private record RunOf(int player, String run) {}

        Writer(Appendable out) {
            this.out = out;
        }

        void line(String kind, ObjectNode fields) {
            ObjectNode node = Json.MAPPER.createObjectNode();
            node.put(KIND, kind);
            node.setAll(fields);
            try {
                out.append(Json.write(node)).append('\n');
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        void player(Snapshot snapshot, Player player, boolean complete, int all, Progress progress) {
            int id = player.id();
            runs = new HashSet<>();
            ObjectNode node = Json.MAPPER.valueToTree(player);
            node.remove(List.of("id", "version"));
            if (complete) {
                snapshot.account(id).ifPresent(account -> node.put("account", account));
            }
            node.set("preferences", Json.read(snapshot.preferences(id), JsonNode.class));
            line("player", node);
            List<BagSet> bags = snapshot.bags(id);
            bags.forEach(bag -> line("bag", Json.MAPPER.valueToTree(bag)));
            snapshot.boards(id).forEach(board -> line("board", Json.MAPPER.valueToTree(board)));
            List<KeptSituation> situations = snapshot.situations(id);
            situations.forEach(situation -> line("situation", Json.MAPPER.valueToTree(situation)));
            counts = counts.plusSituations(situations.size());
            for (SlideTest test : snapshot.slideTests(id)) {
                if (complete || test.tapped() != null) {
                    line("slide-test", Json.MAPPER.valueToTree(test));
                }
            }
            List<Session> sessions = snapshot.sessions(id);
            sessions.forEach(session -> line("session", Json.MAPPER.valueToTree(session)));
            counts = counts.plus(1, bags.size(), sessions.size(), 0, 0, 0);
            snapshot.eachRun(id, run -> {
                if (complete || run.deletedAt() == null) {
                    run(run, complete);
                    progress.at("writing", counts.runs(), all);
                }
            });
            runs.forEach(run -> allRuns.add(new RunOf(id, run)));
            league(snapshot, id, complete);
            for (TrialPlan plan : snapshot.trials(id)) {
                if (complete || !plan.deleted()) {
                    line("trial", Json.MAPPER.valueToTree(plan));
                }
            }
            snapshot.plans(id).forEach(plan -> line("plan", Json.MAPPER.valueToTree(plan)));
            snapshot.refused(id).forEach(refused -> line("refused", Json.MAPPER.valueToTree(refused)));
            snapshot.goals(id).forEach(goal -> line("goal", goal(goal)));
            if (complete) {
                snapshot.changes(id).forEach(change -> line("change", Json.MAPPER.valueToTree(change)));
            }
        }

        /** Seasons that are run here; a player of this store who is in one is told by name. */
        void seasons(Snapshot snapshot, boolean complete) {
            Map<Integer, String> names = snapshot.playerNames();
            for (Season season : snapshot.seasons()) {
                if (!complete && season.deleted()) {
                    continue;
                }
                ObjectNode node = Json.MAPPER.valueToTree(SeasonSettings.of(season));
                ArrayNode entrants = node.putArray("entrants");
                for (Entrant entrant : season.entrants()) {
                    ObjectNode one = Json.MAPPER.valueToTree(entrant.playedBy(null));
                    String player = entrant.player() == null ? null : names.get(entrant.player());
                    if (player != null) {
                        one.put("player", player);
                    }
                    entrants.add(one);
                }
                node.set("matches", Json.MAPPER.valueToTree(season.matches()));
                if (complete) {
                    organisers(snapshot.organisers(season.id()), node);
                }
                line("season", node);
                counts = counts.plusSeason();
                for (KeptMatch match : snapshot.keptMatches(season.id())) {
                    line("season-live", live(match, names));
                }
                if (complete) {
                    snapshot.seasonChanges(season.id())
                            .forEach(change -> line("season-change", Json.MAPPER.valueToTree(change)));
                }
            }
        }

        /** Who runs a season, by ids of accounts. */
        private static void organisers(List<Organiser> organisers, ObjectNode node) {
            ArrayNode others = Json.MAPPER.createArrayNode();
            for (Organiser one : organisers) {
                if (one.owner()) {
                    node.put("owner", one.account());
                } else {
                    others.add(one.account());
                }
            }
            if (!others.isEmpty()) {
                node.set("organisers", others);
            }
        }

        /** What is kept of a match as it was thrown; a run is named only where it is written too. */
        private ObjectNode live(KeptMatch match, Map<Integer, String> names) {
            ObjectNode node = Json.MAPPER.createObjectNode();
            node.put("season", match.season());
            node.put("match", match.match());
            node.set("rounds", Json.MAPPER.valueToTree(match.rounds()));
            node.set("edits", Json.MAPPER.valueToTree(match.edits()));
            ObjectNode streams = node.putObject("streams");
            for (MatchSide side : MatchSide.values()) {
                if (match.streams().containsKey(side)) {
                    streams.put(side.word(), match.streams().get(side));
                }
            }
            ArrayNode games = node.putArray("runs");
            for (MatchRun run : match.runs()) {
                String player = names.get(run.player());
                if (player != null && allRuns.contains(new RunOf(run.player(), run.run()))) {
                    games.addObject()
                            .put("player", player)
                            .put("run", run.run())
                            .put("game", run.game())
                            .put("side", run.side().word());
                }
            }
            return node;
        }

        /** Leagues and challenges; a game's run, or a challenge's, is named only where it is written too. */
        private void league(Snapshot snapshot, int player, boolean complete) {
            Set<String> leagues = new HashSet<>();
            for (League league : snapshot.leagues(player)) {
                if (complete || !league.deleted()) {
                    leagues.add(league.id());
                    line("league", Json.MAPPER.valueToTree(league));
                }
            }
            Set<String> fixtures = new HashSet<>();
            for (Fixture fixture : snapshot.fixtures(player)) {
                if (leagues.contains(fixture.league()) && (complete || !fixture.deleted())) {
                    fixtures.add(fixture.id());
                    line("fixture", Json.MAPPER.valueToTree(fixture));
                }
            }
            for (FixtureRun game : snapshot.fixtureRuns(player)) {
                if (fixtures.contains(game.fixture()) && runs.contains(game.run())) {
                    ObjectNode node = Json.MAPPER.createObjectNode();
                    node.put("fixture", game.fixture());
                    node.put("game", game.game());
                    node.put("run", game.run());
                    line("fixture-run", node);
                }
            }
            for (Challenge challenge : snapshot.challenges(player)) {
                if (runs.contains(challenge.run())) {
                    line("challenge", challenge(challenge));
                }
            }
        }

        /** What has to be done is called {@code what}, since {@code kind} is the line's. */
        private static ObjectNode challenge(Challenge challenge) {
            ObjectNode node = Json.MAPPER.valueToTree(challenge);
            node.set("what", node.remove(KIND));
            return node;
        }

        private static ObjectNode goal(SetGoal set) {
            ObjectNode node = Json.MAPPER.createObjectNode();
            node.put("id", set.id());
            node.put("what", set.goal().kind().word());
            node.put("value", set.goal().value());
            node.put("by", set.goal().by().toString());
            node.put("setOn", set.setOn());
            node.put("droppedOn", set.droppedOn());
            return node;
        }

        private void run(StoredRun stored, boolean complete) {
            runs.add(stored.run().id());
            ObjectNode node = Json.MAPPER.valueToTree(stored.run());
            node.remove("deleted");
            if (stored.deletedAt() != null) {
                node.put("deletedAt", stored.deletedAt());
            }
            ArrayNode rounds = node.putArray("rounds");
            long bags = 0;
            for (StoredRun.StoredRound round : stored.rounds()) {
                if (complete || !round.round().lines().isEmpty()) {
                    ObjectNode one = Json.MAPPER.valueToTree(round.round());
                    one.put("corrected", round.corrected());
                    rounds.add(one);
                    bags += round.round().bags();
                }
            }
            counts = counts.plus(0, 0, 0, 1, rounds.size(), bags);
            List<Try> tries = stored.tries().stream()
                    .filter(tried -> complete || tried.played() != null)
                    .toList();
            if (!tries.isEmpty()) {
                node.set("tries", Json.MAPPER.valueToTree(tries));
                counts = counts.plusTries(tries.size());
            }
            line("run", node);
        }
    }

    /**
     * Reads what {@link #write} wrote.
     *
     * @param file name to call it by
     * @param refill takes what is read, or null to look at it only
     * @throws Failure.BadInput if the file is not whole and sound, saying where
     */
    static Counts read(String file, BufferedReader in, @Nullable Refill refill, Progress progress) {
        return new Reader(file, refill, progress).read(in);
    }

    private static final class Reader {
        private final String file;
        private final @Nullable Refill refill;
        private final Progress progress;
        private Counts counts = Counts.NONE;
        private final Map<String, Integer> players = new HashMap<>();
        private final Map<String, String> signIns = new HashMap<>();
        private int player;
        private int number;

        Reader(String file, @Nullable Refill refill, Progress progress) {
            this.file = file;
            this.refill = refill;
            this.progress = progress;
        }

        Counts read(BufferedReader in) {
            boolean ended = false;
            try {
                for (String text = in.readLine(); text != null; text = in.readLine()) {
                    number++;
                    if (ended) {
                        throw fault("text follows the end");
                    }
                    ended = line(Json.read(text, JsonNode.class));
                }
            } catch (JsonProcessingException e) {
                throw fault(Json.wrong(e));
            } catch (Failure e) {
                throw e;
            } catch (IllegalArgumentException | DateTimeException e) {
                throw fault(String.valueOf(e.getMessage()));
            } catch (RuntimeException e) {
                // What the store will not have says so in SQL, with all that was to be stored. Where its disk is full
                // or the
                // like, the store tells that instead, by the cause.
                Failure.BadInput fault = fault("it does not go together with the lines before it");
                fault.initCause(e);
                throw fault;
            } catch (IOException e) {
                throw new Failure.BadInput(file + ", after line " + number
                        + ": the file is damaged or cut short; use another backup (" + e.getMessage() + ")");
            }
            if (!ended) {
                throw new Failure.BadInput(
                        file + ", after line " + number + ": the file is cut short; use another backup");
            }
            return counts;
        }

        private Failure.BadInput fault(String what) {
            return new Failure.BadInput(file + ", line " + number + ": " + what + "; use another backup");
        }

        /** Whether this was the last line. */
        private boolean line(JsonNode node) throws JsonProcessingException {
            String kind = node.path(KIND).asText();
            if (number == 1) {
                if (!kind.equals("boardside")) {
                    throw new Failure.BadInput(file + ": this is no backup of Boardside");
                }
                int format = node.path("format").asInt();
                if (format > FORMAT) {
                    throw new Failure.BadInput(file + ": a newer Boardside wrote this backup (format " + format
                            + ", this program knows " + FORMAT + "); restore it with that newer program");
                }
                return false;
            }
            if (player == 0 && !OF_NOBODY.contains(kind)) {
                throw new IllegalArgumentException("a " + kind + " before any player");
            }
            switch (kind) {
                case "account" -> {
                    StoredAccount account = AccountLine.read(node);
                    counts = counts.plusAccounts(1);
                    signIns.put(account.account().id(), account.signIn());
                    if (refill != null) {
                        refill.account(account);
                    }
                }
                case "player" -> player(node);
                case "bag" -> {
                    BagSet bag = Json.MAPPER.treeToValue(node, BagSet.class);
                    counts = counts.plus(0, 1, 0, 0, 0, 0);
                    if (refill != null) {
                        refill.bag(player, bag);
                    }
                }
                case "board" -> {
                    Board board = Json.MAPPER.treeToValue(node, Board.class);
                    if (refill != null) {
                        refill.board(player, board);
                    }
                }
                case "situation" -> {
                    KeptSituation situation = Json.MAPPER.treeToValue(node, KeptSituation.class);
                    counts = counts.plusSituations(1);
                    if (refill != null) {
                        refill.situation(player, situation);
                    }
                }
                case "slide-test" -> {
                    SlideTest test = Json.MAPPER.treeToValue(node, SlideTest.class);
                    if (refill != null) {
                        refill.slideTest(player, test);
                    }
                }
                case "session" -> {
                    Session session = Json.MAPPER.treeToValue(node, Session.class);
                    counts = counts.plus(0, 0, 1, 0, 0, 0);
                    if (refill != null) {
                        refill.session(player, session);
                    }
                }
                case "run" -> run(node);
                case "league" -> {
                    League league = Json.MAPPER.treeToValue(node, League.class);
                    if (refill != null) {
                        refill.league(player, league);
                    }
                }
                case "fixture" -> {
                    Fixture fixture = Json.MAPPER.treeToValue(node, Fixture.class);
                    if (refill != null) {
                        refill.fixture(player, fixture);
                    }
                }
                case "fixture-run" -> {
                    ObjectNode fields = node.deepCopy();
                    fields.put("rounds", 0).put("finished", false);
                    FixtureRun game = Json.MAPPER.treeToValue(fields, FixtureRun.class);
                    if (refill != null) {
                        refill.fixtureRun(player, game);
                    }
                }
                case "trial" -> {
                    TrialPlan plan = Json.MAPPER.treeToValue(node, TrialPlan.class);
                    if (refill != null) {
                        refill.trial(player, plan);
                    }
                }
                case "challenge" -> {
                    ObjectNode fields = node.deepCopy();
                    fields.set(KIND, fields.remove("what"));
                    Challenge challenge = Json.MAPPER.treeToValue(fields, Challenge.class);
                    if (refill != null) {
                        refill.challenge(player, challenge);
                    }
                }
                case "plan" -> {
                    SessionPlan plan = Json.MAPPER.treeToValue(node, SessionPlan.class);
                    if (refill != null) {
                        refill.plan(player, plan);
                    }
                }
                case "refused" -> {
                    Refused refused = Json.MAPPER.treeToValue(node, Refused.class);
                    if (refill != null) {
                        refill.refused(player, refused);
                    }
                }
                case "goal" -> {
                    SetGoal goal = goal(node);
                    if (refill != null) {
                        refill.goal(player, goal);
                    }
                }
                case "change" -> {
                    StoredChange change = Json.MAPPER.treeToValue(node, StoredChange.class);
                    if (refill != null) {
                        refill.change(player, change);
                    }
                }
                case "season" -> season(node);
                case "season-live" -> live(node);
                case "season-change" -> {
                    StoredSeasonChange change = Json.MAPPER.treeToValue(node, StoredSeasonChange.class);
                    if (refill != null) {
                        refill.seasonChange(change);
                    }
                }
                case "end" -> {
                    if (!Json.MAPPER.treeToValue(node, Counts.class).equals(counts)) {
                        throw new IllegalArgumentException(
                                "the file holds " + Json.write(counts) + ", not what its end says");
                    }
                    return true;
                }
                default -> throw new IllegalArgumentException("\"" + kind + "\" is no kind of line");
            }
            return false;
        }

        private static SetGoal goal(JsonNode node) {
            Goal goal = new Goal(
                    Word.of(Goal.Kind.class, node.path("what").asText()),
                    node.path("value").asDouble(),
                    LocalDate.parse(node.path("by").asText()));
            return new SetGoal(
                    node.path("id").asText(),
                    goal,
                    node.path("setOn").asText(),
                    node.path("droppedOn").asText());
        }

        private void season(JsonNode node) throws JsonProcessingException {
            SeasonSettings settings = Json.MAPPER.treeToValue(node, SeasonSettings.class);
            List<Entrant> entrants = new ArrayList<>();
            for (JsonNode one : node.path("entrants")) {
                ObjectNode fields = one.deepCopy();
                JsonNode name = fields.remove("player");
                Entrant entrant = Json.MAPPER.treeToValue(fields, Entrant.class);
                entrants.add(entrant.playedBy(name == null ? null : players.get(name.asText())));
            }
            List<SeasonMatch> matches = new ArrayList<>();
            for (JsonNode one : node.path("matches")) {
                matches.add(Json.MAPPER.treeToValue(one, SeasonMatch.class));
            }
            Season season = settings.with(entrants, matches);
            counts = counts.plusSeason();
            if (refill != null) {
                refill.season(season);
                List<String> organisers = new ArrayList<>();
                node.path("organisers").forEach(one -> organisers.add(one.asText()));
                refill.organisers(season.id(), node.path("owner").asText(""), organisers);
            }
        }

        private void live(JsonNode node) throws JsonProcessingException {
            String season = node.path("season").asText();
            String match = node.path("match").asText();
            List<MatchRun> runs = new ArrayList<>();
            for (JsonNode one : node.path("runs")) {
                Integer player = players.get(one.path("player").asText());
                if (player == null) {
                    throw new IllegalArgumentException("a game of a player who is missing");
                }
                runs.add(new MatchRun(
                        player,
                        one.path("run").asText(),
                        season,
                        match,
                        one.path("game").asInt(),
                        Word.of(MatchSide.class, one.path("side").asText())));
            }
            Map<MatchSide, String> streams = new HashMap<>();
            for (MatchSide side : MatchSide.values()) {
                String address = node.path("streams").path(side.word()).asText("");
                if (!address.isEmpty()) {
                    streams.put(side, address);
                }
            }
            KeptMatch kept = new KeptMatch(
                    season,
                    match,
                    List.of(Json.MAPPER.treeToValue(node.path("rounds"), MatchRound[].class)),
                    List.of(Json.MAPPER.treeToValue(node.path("edits"), MatchEdit[].class)),
                    runs,
                    streams);
            if (refill != null) {
                refill.keptMatch(kept);
            }
        }

        private void player(JsonNode node) throws JsonProcessingException {
            ObjectNode fields = node.deepCopy();
            fields.put("id", player + 1).put("version", 0);
            Player read = Json.MAPPER.treeToValue(fields, Player.class);
            counts = counts.plus(1, 0, 0, 0, 0, 0);
            player = refill == null
                    ? player + 1
                    : refill.player(read, node.path("account").asText(""), Json.write(node.path("preferences")))
                            .id();
            String account = signIns.getOrDefault(node.path("account").asText(""), "");
            players.put(StoredAccount.uniqueName(read.name(), account), player);
        }

        private void run(JsonNode node) throws JsonProcessingException {
            ObjectNode fields = node.deepCopy();
            fields.put("deleted", fields.has("deletedAt"));
            Run run = Json.MAPPER.treeToValue(fields, Run.class);
            List<StoredRun.StoredRound> rounds = new ArrayList<>();
            long bags = 0;
            for (JsonNode one : node.path("rounds")) {
                Round round = Json.MAPPER.treeToValue(one, Round.class);
                bags += round.bags();
                rounds.add(
                        new StoredRun.StoredRound(round, one.path("corrected").asBoolean()));
            }
            List<Try> tries = new ArrayList<>();
            for (JsonNode one : node.path("tries")) {
                tries.add(Json.MAPPER.treeToValue(one, Try.class));
            }
            counts = counts.plus(0, 0, 0, 1, rounds.size(), bags).plusTries(tries.size());
            if (refill != null) {
                String deletedAt = node.path("deletedAt").asText("");
                refill.run(player, new StoredRun(run, deletedAt.isEmpty() ? null : deletedAt, rounds, tries));
            }
            progress.at("reading", counts.runs(), -1);
        }
    }
}
