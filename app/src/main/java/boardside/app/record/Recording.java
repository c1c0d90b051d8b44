package boardside.app.record;

import boardside.app.practice.BagSet;
import boardside.app.practice.Contest;
import boardside.app.practice.Fixture;
import boardside.app.practice.FixtureRun;
import boardside.app.practice.GhostPlay;
import boardside.app.practice.Line;
import boardside.app.practice.Moment;
import boardside.app.practice.Operation;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.practice.SlideTest;
import boardside.app.store.RoundRows;
import boardside.app.store.Transaction;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.GameRules;
import boardside.engine.rules.Side;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Applies operations within one transaction. */
final class Recording {
    private final Transaction rows;
    private final int player;
    private final Corrections corrections;
    private final String now;
    private final Duration ahead;
    private final Map<String, Thrown> thrown = new HashMap<>();
    private final Map<String, Boolean> touched = new LinkedHashMap<>();
    private boolean several;

    /** A run whose rounds are being put, with all of them as they are by now but for their single throws. */
    private record Thrown(Run run, TreeMap<Place, RoundRows.Stored> rounds) {
        List<Round> list() {
            return rounds.values().stream().map(RoundRows.Stored::round).toList();
        }
    }

    /** A round's place in its run, in order. */
    private record Place(int number, Side side) implements Comparable<Place> {
        private static final Comparator<Place> ORDER =
                Comparator.comparingInt(Place::number).thenComparing(Place::side);

        static Place of(Round round) {
            return new Place(round.number(), round.side());
        }

        @Override
        public int compareTo(Place other) {
            return ORDER.compare(this, other);
        }
    }

    Recording(Transaction rows, int player, Corrections corrections, String now) {
        this(rows, player, corrections, now, Duration.ZERO);
    }

    /** @param ahead how far the clock that stamped the operations is ahead of the one here */
    Recording(Transaction rows, int player, Corrections corrections, String now, Duration ahead) {
        this.ahead = ahead;
        this.rows = rows;
        this.player = player;
        this.corrections = corrections;
        this.now = now;
    }

    List<Applied> apply(List<Operation> operations) {
        List<Applied> results = new ArrayList<>();
        boolean changed = false;
        several =
                operations.stream().filter(Operation.PutRound.class::isInstance).count() > 1;
        for (Operation operation : operations) {
            Applied result;
            try {
                if (operation.op().isBlank()) {
                    throw new IllegalArgumentException("an operation needs an id; make it a UUID of version 7");
                }
                result = apply(operation) ? new Applied.Stored(operation.op()) : new Applied.Repeated(operation.op());
            } catch (IllegalArgumentException e) {
                result = new Applied.Refused(operation.op(), String.valueOf(e.getMessage()));
            }
            changed |= result instanceof Applied.Stored;
            results.add(result);
        }
        if (!changed) {
            rows.rollBack();
        }
        refresh();
        return results;
    }

    /** Writes anew what is derived from the rounds touched. */
    void refresh() {
        touched.forEach((run, grown) -> {
            Thrown now = thrown(run);
            Deriving.refresh(rows, player, now.run(), now.list(), grown);
        });
        touched.clear();
    }

    /** Whether something was stored. Every check comes before the first write. */
    private boolean apply(Operation operation) {
        if (!(operation instanceof Operation.PutRound)) {
            // It may be about any run.
            thrown.clear();
        }
        if (operation instanceof Operation.NameBag name) {
            return nameBag(name);
        } else if (operation instanceof Operation.StartRun start) {
            return startRun(start);
        } else if (operation instanceof Operation.PutRound put) {
            return putRound(put.run(), put.round());
        } else if (operation instanceof Operation.PutTry put) {
            return tries().put(run(put.run()), put.tried());
        } else if (operation instanceof Operation.KeepSituation keep) {
            return tries().keep(keep);
        } else if (operation instanceof Operation.KeepSlideTest keep) {
            return new SlideTestRecording(rows, player, corrections, now)
                    .put(new SlideTest(keep.test(), keep.op(), keep.tapped()));
        } else if (operation instanceof Operation.ChangeSetup change) {
            if (run(change.run()).setup().equals(change.setup())) {
                return false;
            }
            rows.runs().setup(player, change.run(), change.setup());
            return true;
        } else if (operation instanceof Operation.ScoreRun score) {
            Run run = run(score.run());
            if (run.drill() != Drill.GAME) {
                throw new IllegalArgumentException("a final score is told of a game, not of a "
                        + run.drill().word());
            }
            return corrections.editRun(rows, player, run, RunEdit.of(run).with(score.score()), now);
        } else if (operation instanceof Operation.FinishRun finish) {
            Moment at = Moment.of(finish.at());
            if (!run(finish.run()).open()) {
                return false;
            }
            rows.runs().finish(player, finish.run(), at.text());
            return true;
        } else if (operation instanceof Operation.ReopenRun reopen) {
            if (run(reopen.run()).open()) {
                return false;
            }
            rows.runs().finish(player, reopen.run(), null);
            return true;
        } else if (operation instanceof Operation.PlayFixture play) {
            return playFixture(play);
        } else if (operation instanceof Operation.PlayMatch play) {
            return matches().play(player, run(play.run()), play);
        }
        if (operation instanceof Operation.ThrowTrial put) {
            return new TrialRecording(rows, player).put(run(put.run()), put);
        }
        if (operation instanceof Operation.TakeBlock take) {
            if (!take.run().isEmpty()) {
                run(take.run());
            }
            return new PlanRecording(rows, player, now).take(take);
        }
        throw new IllegalStateException("an operation of an unknown kind: " + operation);
    }

    private boolean playFixture(Operation.PlayFixture play) {
        Run run = run(play.run());
        if (run.drill() != Drill.FIXTURE) {
            throw new IllegalArgumentException("a game of a league is a run of the drill fixture, not of "
                    + run.drill().word());
        }
        Fixture fixture = rows.leagues()
                .fixture(player, play.fixture())
                .filter(found -> !found.deleted())
                .orElseThrow(() -> new IllegalArgumentException(
                        "there is no fixture " + play.fixture() + "; it may have been deleted"));
        int games = rows.leagues().find(player, fixture.league()).orElseThrow().games();
        if (!(play.game() >= 1 && play.game() <= games)) {
            throw new IllegalArgumentException(
                    "a match of this league has games 1 to " + games + ", not " + play.game());
        }
        Optional<FixtureRun> there = rows.leagues().thrownIn(player, play.run());
        if (there.isPresent()) {
            return false;
        }
        rows.leagues().play(player, play.fixture(), play.game(), play.run());
        return true;
    }

    private MatchRecording matches() {
        return new MatchRecording(rows, corrections.ids(), Instant.parse(now));
    }

    private TryRecording tries() {
        return new TryRecording(rows, player, corrections, now);
    }

    private boolean nameBag(Operation.NameBag name) {
        if (name.bag().isBlank()) {
            throw new IllegalArgumentException("a bag set needs an id");
        }
        if (rows.players().bag(player, name.bag()).isPresent()) {
            return false;
        }
        String wanted = name.name().strip();
        if (wanted.isEmpty()) {
            throw new IllegalArgumentException("a bag set needs a name");
        }
        Set<String> taken =
                rows.players().bags(player).stream().map(BagSet::name).collect(Collectors.toSet());
        // Named on a phone that was offline while another device took the name: rounds hang on it, so nothing is
        // refused.
        String free = wanted;
        for (int i = 2; taken.contains(free); i++) {
            free = wanted + " " + i;
        }
        rows.players().put(player, BagSet.named(name.bag(), free));
        return true;
    }

    private boolean startRun(Operation.StartRun start) {
        Moment at = Moment.of(start.startedAt());
        if (start.run().isBlank() || start.session().isBlank()) {
            throw new IllegalArgumentException("a run and its session each need an id");
        }
        if (rows.runs().find(player, start.run()).isPresent()) {
            return false;
        }
        if (start.drill().needsGhost() && start.setup().ghost() == null) {
            throw new IllegalArgumentException(
                    "a " + start.drill().word() + " is thrown against a ghost; give its points a round, 0 to 12");
        }
        Integer game = start.game();
        if (game != null && game < 1) {
            throw new IllegalArgumentException("games are numbered from 1, not " + game);
        }
        Integer target = start.target() == null ? start.setup().target() : start.target();
        GameRules rules = Games.rules(target, start.setup());
        Contest contest = start.setup().contest();
        if (contest != null && Math.abs(contest.headStart()) >= rules.target()) {
            throw new IllegalArgumentException(
                    "a head start lies below the points to reach, not at " + Math.abs(contest.headStart()));
        }
        checkBags(start.setup().bags());
        if (rows.runs().session(player, start.session()).isEmpty()) {
            rows.runs().addSession(player, start.session(), at, "");
        }
        rows.runs()
                .add(
                        player,
                        new Run(
                                start.run(),
                                start.session(),
                                start.drill(),
                                start.startedAt(),
                                start.warmUp(),
                                start.opponent(),
                                target,
                                game,
                                "",
                                "",
                                start.setup(),
                                null,
                                false,
                                Run.Sum.NONE,
                                null),
                        at);
        return true;
    }

    /**
     * Sets a round, keeping what it replaces.
     *
     * @return whether anything changed
     * @throws IllegalArgumentException if the round breaks a rule
     */
    boolean putRound(String runId, Round round) {
        Thrown of = thrown(runId);
        Run run = of.run();
        RoundRows.Stored known = of.rounds().get(Place.of(round));
        if (known != null && round.op().compareTo(known.round().op()) <= 0) {
            return false;
        }
        check(of, round);
        Optional<MatchRecording.Checked> match = run.drill() == Drill.FIXTURE && round.side() == Side.ME
                ? matches().check(player, runId, round, ahead)
                : Optional.empty();
        boolean filled = known != null && !known.round().lines().isEmpty();
        boolean replaces = filled && replaces(runId, round);
        boolean corrected = replaces || known != null && known.corrected();
        rows.rounds().put(player, runId, round, corrected, known != null);
        of.rounds().put(Place.of(round), new RoundRows.Stored(round, corrected));
        touched.merge(runId, !filled, Boolean::logicalAnd);
        match.ifPresent(one -> matches().put(one, several));
        return true;
    }

    /** Keeps what a round replaces, where it is not the same. */
    private boolean replaces(String run, Round round) {
        Round before = rows.rounds()
                .find(player, run, round.number(), round.side())
                .orElseThrow()
                .round();
        if (same(before, round)) {
            return false;
        }
        corrections.keepRound(rows, player, run, before, round, now);
        return true;
    }

    private Thrown thrown(String id) {
        Thrown known = thrown.get(id);
        if (known == null) {
            known = new Thrown(run(id), new TreeMap<>());
            for (RoundRows.Stored stored : rows.rounds().counted(player, id)) {
                known.rounds().put(Place.of(stored.round()), stored);
            }
            thrown.put(id, known);
        }
        return known;
    }

    private static boolean same(Round one, Round other) {
        return new HashSet<>(one.lines()).equals(new HashSet<>(other.lines()))
                && one.thrown().equals(other.thrown());
    }

    private void check(Thrown of, Round round) {
        Run run = of.run();
        Drill drill = run.drill();
        if (round.bags() > drill.mostBags()) {
            throw new IllegalArgumentException("round " + round.number() + " has " + round.bags()
                    + " bags of one side; a round of " + drill.word() + " has at most " + drill.mostBags());
        }
        Set<BagAndFace> keys = new HashSet<>();
        for (Line line : round.lines()) {
            if (!keys.add(new BagAndFace(line.bag(), line.face()))) {
                throw new IllegalArgumentException(
                        "round " + round.number() + " has two lines of one bag set and face; add them up");
            }
            if (line.in() == null && drill != Drill.CASUAL) {
                throw new IllegalArgumentException(
                        "round " + round.number() + " lacks the bags in; only casual throws need not be counted");
            }
            checkGame(run, round, line);
            if (!line.at().isEmpty()) {
                Moment.of(line.at());
            }
        }
        checkBags(round.lines().stream()
                .map(Line::bag)
                .filter(bag -> !bag.isEmpty())
                .toList());
        Integer planned = run.setup().rounds();
        if (drill == Drill.FIXTURE
                && planned != null
                && round.number() > planned
                && !round.lines().isEmpty()) {
            throw new IllegalArgumentException(
                    "round " + round.number() + " cannot be thrown: this game of a league has " + planned
                            + " rounds; start the next game for it");
        }
        if (drill == Drill.TRIAL) {
            new TrialRecording(rows, player).check(run, round, of.list());
        }
        if (Games.played(drill) || run.setup().stakes() != null) {
            Games.check(run, of.list(), round);
        }
    }

    private static void checkGame(Run run, Round round, Line line) {
        Drill drill = run.drill();
        String where = "round " + round.number() + " of a " + drill.word();
        if (drill.needsGhost() && round.side().mine() && (line.ghost() == null || line.on() == null)) {
            throw new IllegalArgumentException(where + " needs the ghost's points and all bags counted in, on and off");
        }
        GhostPlay play = run.setup().ghostPlay();
        Integer ghost = line.ghost();
        if (drill.needsGhost() && play != null && ghost != null && ghost != play.in(round.number())) {
            throw new IllegalArgumentException(
                    where + ": its ghost makes " + play.in(round.number()) + " points there, not " + ghost);
        }
        Contest contest = run.setup().contest();
        if (contest != null && !contest.sides().contains(round.side())) {
            throw new IllegalArgumentException(
                    where + " is not thrown by side " + round.side().word()
                            + "; its sides are "
                            + contest.sides().stream().map(Side::word).collect(Collectors.joining(" and ")));
        }
        if (contest != null && line.on() == null) {
            throw new IllegalArgumentException(where + " needs all bags counted in, on and off");
        }
    }

    private record BagAndFace(String bag, @Nullable Face face) {}

    private void checkBags(List<String> bags) {
        for (String bag : bags) {
            if (rows.players().bag(player, bag).isEmpty()) {
                throw new IllegalArgumentException("there is no bag set " + bag + "; name it first");
            }
        }
    }

    private Run run(String id) {
        Run run = rows.runs()
                .find(player, id)
                .orElseThrow(() -> new IllegalArgumentException("there is no run " + id + "; start it first"));
        if (run.deleted()) {
            throw new IllegalArgumentException("the run was deleted; bring it back to go on with it");
        }
        return run;
    }
}
