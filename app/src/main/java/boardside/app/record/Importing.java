package boardside.app.record;

import boardside.app.practice.BagSet;
import boardside.app.practice.Change;
import boardside.app.practice.Contest;
import boardside.app.practice.Ids;
import boardside.app.practice.Line;
import boardside.app.practice.Moment;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.practice.Setup;
import boardside.app.store.HistoryRows;
import boardside.app.store.RoundRows;
import boardside.app.store.RunRows;
import boardside.app.store.Transaction;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.FirstThrow;
import boardside.engine.rules.Side;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntConsumer;
import org.jspecify.annotations.Nullable;

/** Stores runs of a log within one transaction: what is new is added, what is known is compared. */
final class Importing {
    private final Transaction rows;
    private final int player;
    private final Ids ids;
    private final Map<String, String> bagIds = new HashMap<>();
    private final List<String> newBags = new ArrayList<>();
    private final List<String> kept = new ArrayList<>();
    private final List<String> deleted = new ArrayList<>();
    private final List<ImportResult.Fault> faults = new ArrayList<>();
    private int newRuns;
    private int newRounds;
    private int known;

    Importing(Transaction rows, int player, Ids ids) {
        this.rows = rows;
        this.player = player;
        this.ids = ids;
    }

    /** @param progress told the number of rounds dealt with, again and again */
    ImportResult run(List<LogRun> runs, IntConsumer progress) {
        Set<String> stored = new HashSet<>();
        for (RunRows.Head head : rows.runs().heads(player)) {
            stored.add(head.id());
        }
        for (BagSet bag : rows.players().bags(player)) {
            bagIds.put(bag.name(), bag.id());
        }
        List<LogRun> sorted = new ArrayList<>(runs);
        sorted.sort(Comparator.comparingLong(run -> run.start().millis()));
        Set<String> sessions = new HashSet<>();
        int done = 0;
        for (LogRun run : sorted) {
            if (sessions.add(run.session())) {
                session(run);
            }
            if (stored.contains(run.id())) {
                compare(run, rows.runs().find(player, run.id()).orElseThrow());
            } else if (faults.isEmpty()) {
                add(run);
            }
            done += run.rounds().size();
            progress.accept(done);
        }
        if (!faults.isEmpty()) {
            rows.rollBack();
            return new ImportResult.Refused(faults);
        }
        if (newRounds == 0 && newRuns == 0) {
            rows.rollBack();
            newBags.clear();
        }
        return new ImportResult.Stored(newRuns, newRounds, known, newBags, kept, deleted);
    }

    private void session(LogRun first) {
        if (rows.runs().session(player, first.session()).isEmpty()) {
            rows.runs().addSession(player, first.session(), first.start(), "");
        } else {
            rows.runs().startEarlier(player, first.session(), first.start());
        }
    }

    private void add(LogRun log) {
        List<RoundRows.Stored> rounds = new ArrayList<>();
        for (LogRun.LogRound round : log.rounds()) {
            rounds.add(new RoundRows.Stored(
                    new Round(round.number(), round.side(), "", lines(round.lines()), List.of()), false));
        }
        List<Round> plain = rounds.stream().map(RoundRows.Stored::round).toList();
        Run run = new Run(
                log.id(),
                log.session(),
                log.drill(),
                log.start().text(),
                log.warmUp(),
                log.opponent(),
                log.target(),
                log.game(),
                log.trial(),
                "",
                setup(log, plain),
                finishedAt(log),
                false,
                Run.Sum.NONE,
                null);
        rows.runs().add(player, run, log.start());
        rows.rounds().addAll(player, Map.of(log.id(), rounds));
        Deriving.refresh(rows, player, run, plain);
        newRuns++;
        newRounds += rounds.size();
    }

    private List<Line> lines(List<LogRun.LogLine> lines) {
        return lines.stream().map(line -> withBag(line.line())).toList();
    }

    private Line withBag(Line line) {
        return new Line(
                bagId(line.bag()),
                line.face(),
                line.approach(),
                line.board(),
                line.setting(),
                line.conditions(),
                line.ghost(),
                line.thrown(),
                line.in(),
                line.on(),
                line.off(),
                line.misses(),
                line.at(),
                line.note());
    }

    private String bagId(String name) {
        if (name.isEmpty()) {
            return "";
        }
        return bagIds.computeIfAbsent(name, made -> {
            String id = ids.next();
            rows.players().put(player, BagSet.named(id, made));
            newBags.add(made);
            return id;
        });
    }

    /** How the next run starts: as the last round of this one was thrown. */
    private static Setup setup(LogRun log, List<Round> rounds) {
        Optional<Line> mine = last(rounds, Side.ME).or(() -> last(rounds, Side.A));
        if (mine.isEmpty()) {
            return Setup.plain();
        }
        Line line = mine.get();
        int lastRound = rounds.stream()
                .filter(round -> round.side().mine())
                .mapToInt(Round::number)
                .max()
                .orElse(1);
        boolean several = log.drill().mostBags() > 4;
        boolean counted = log.drill() == Drill.TOTAL || log.drill() == Drill.VOLUME;
        return Setup.plain().with(setup -> {
            setup.bags = several ? bags(rounds, lastRound) : line.bag().isEmpty() ? List.of() : List.of(line.bag());
            setup.bagsPerSet = several ? Math.max(1, line.thrown()) : 4;
            setup.face = line.face();
            setup.approach = line.approach();
            setup.board = line.board();
            setup.setting = line.setting();
            setup.conditions = line.conditions();
            setup.rounds = counted ? (Integer) lastRound : null;
            setup.ghost = line.ghost();
            setup.target = log.target();
            setup.onlyIn = line.on() == null;
            setup.contest = contest(log.drill(), rounds);
        });
    }

    /** The last line of a side's last round. */
    private static Optional<Line> last(List<Round> rounds, Side side) {
        return rounds.stream()
                .filter(round -> round.side() == side && !round.lines().isEmpty())
                .max(Comparator.comparingInt(Round::number))
                .map(round -> round.lines().get(round.lines().size() - 1));
    }

    private static List<String> bags(List<Round> rounds, int number) {
        return rounds.stream()
                .filter(round -> round.number() == number && round.side().mine())
                .flatMap(round -> round.lines().stream())
                .map(Line::bag)
                .filter(bag -> !bag.isEmpty())
                .distinct()
                .toList();
    }

    private static @Nullable Contest contest(Drill drill, List<Round> rounds) {
        if (drill != Drill.DUEL && drill != Drill.GAME) {
            return null;
        }
        Optional<Line> second = last(rounds, Side.B);
        return new Contest(
                second.isPresent(),
                second.isPresent() || last(rounds, Side.VERSUS).isPresent(),
                false,
                true,
                FirstThrow.KEEP,
                0,
                second.map(line -> new Contest.Way(line.bag(), line.face(), line.approach()))
                        .orElse(null));
    }

    /** A log tells no end: the last instant it tells, else the start. */
    private static String finishedAt(LogRun log) {
        Moment last = log.start();
        for (LogRun.LogRound round : log.rounds()) {
            for (LogRun.LogLine line : round.lines()) {
                if (!line.line().at().isEmpty()) {
                    Moment at = Moment.of(line.line().at());
                    last = at.millis() >= last.millis() ? at : last;
                }
            }
        }
        return last.text();
    }

    private void compare(LogRun log, Run run) {
        if (run.deleted()) {
            deleted.add(log.id());
            return;
        }
        boolean edited = rows.history().on(player, run.id()).stream()
                .map(HistoryRows.Entry::kind)
                .anyMatch(Change.Kind.RUN::equals);
        int before = faults.size();
        same(log, "started_at", log.start().text(), run.startedAt());
        same(log, "drill", log.drill().word(), run.drill().word());
        same(log, "session", log.session(), run.session());
        said(log, "target", log.target(), run.target(), false);
        said(log, "game", log.game(), run.game(), false);
        said(log, "trial", log.trial().isEmpty() ? null : log.trial(), run.trial(), false);
        said(log, "opponent", log.opponent().isEmpty() ? null : log.opponent(), run.opponent(), edited);
        said(log, "warm_up", log.warmUp() ? "yes" : null, run.warmUp() ? "yes" : "", edited);
        if (faults.size() > before) {
            return;
        }
        Map<Integer, Map<String, RoundRows.Stored>> stored = new HashMap<>();
        for (RoundRows.Stored round : rows.rounds().of(player, run.id())) {
            stored.computeIfAbsent(round.round().number(), number -> new HashMap<>())
                    .put(round.round().side().word(), round);
        }
        boolean changed = false;
        for (LogRun.LogRound round : log.rounds()) {
            RoundRows.Stored there = stored.getOrDefault(round.number(), Map.of())
                    .get(round.side().word());
            changed |= compare(run, round, Optional.ofNullable(there));
        }
        if (changed) {
            Deriving.refresh(
                    rows,
                    player,
                    run,
                    rows.rounds().of(player, run.id()).stream()
                            .map(RoundRows.Stored::round)
                            .toList());
        }
    }

    private void same(LogRun log, String column, String said, String stored) {
        if (!said.equals(stored)) {
            faults.add(new ImportResult.Fault(
                    log.source(),
                    column,
                    "\"" + said + "\", but the store has \"" + stored + "\" for this run; make them the same"));
        }
    }

    private void said(LogRun log, String column, @Nullable Object said, @Nullable Object stored, boolean edited) {
        if (said == null || said.equals(stored)) {
            return;
        }
        if (edited) {
            kept.add("run " + log.id() + ": " + column + " as edited in the store, not \"" + said + "\"");
        } else {
            same(log, column, said.toString(), Objects.toString(stored, ""));
        }
    }

    private record Key(String bag, @Nullable Face face) {}

    /** Whether the round gained lines. */
    private boolean compare(Run run, LogRun.LogRound log, Optional<RoundRows.Stored> there) {
        List<Line> lines = new ArrayList<>();
        if (there.isPresent()) {
            lines.addAll(there.get().round().lines());
        }
        Map<Key, Line> byKey = new HashMap<>();
        lines.forEach(line -> byKey.put(new Key(line.bag(), line.face()), line));
        List<ImportResult.Fault> differing = new ArrayList<>();
        int added = 0;
        for (LogRun.LogLine line : log.lines()) {
            Line mine = withBag(line.line());
            Line stored = byKey.get(new Key(mine.bag(), mine.face()));
            if (stored == null) {
                lines.add(mine);
                added++;
            } else {
                LineDifference.between(mine, stored, "the store has")
                        .ifPresent(difference -> differing.add(new ImportResult.Fault(
                                line.source(),
                                difference.column(),
                                difference.message()
                                        + " for this run, round, side, bag and face; make them the same")));
            }
        }
        boolean takenBack = there.isPresent() && there.get().round().lines().isEmpty();
        if (there.isPresent() && (takenBack || there.get().corrected()) && (added > 0 || !differing.isEmpty())) {
            kept.add("run " + run.id() + ", round " + log.number() + ": as " + (takenBack ? "taken back" : "corrected")
                    + " in the store");
            return false;
        }
        if (!differing.isEmpty()) {
            faults.addAll(differing);
            return false;
        }
        if (added == 0) {
            known++;
            return false;
        }
        int bags = lines.stream().mapToInt(Line::thrown).sum();
        if (bags > run.drill().mostBags()) {
            faults.add(new ImportResult.Fault(
                    log.lines().get(0).source(),
                    "round",
                    "with what the store has, the round would have " + bags + " bags of one side; a round of "
                            + run.drill().word() + " has at most " + run.drill().mostBags()));
            return false;
        }
        rows.rounds()
                .put(
                        player,
                        run.id(),
                        new Round(
                                log.number(),
                                log.side(),
                                there.map(stored -> stored.round().op()).orElse(""),
                                lines,
                                there.map(stored -> stored.round().thrown()).orElse(List.of())),
                        false,
                        there.isPresent());
        newRounds++;
        return true;
    }
}
