package boardside.app.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.app.practice.BagSet;
import boardside.app.practice.Change;
import boardside.app.practice.DayCount;
import boardside.app.practice.Failure;
import boardside.app.practice.Line;
import boardside.app.practice.Operation;
import boardside.app.practice.Player;
import boardside.app.practice.Round;
import boardside.app.practice.Run;
import boardside.app.practice.Setup;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Finish;
import boardside.engine.rules.Outcome;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

@ParameterizedClass
@EnumSource
class RecordsTest {
    private static final Instant NOW = Instant.parse("2026-06-01T18:00:00Z");

    private final Stores kind;

    @TempDir
    Path folder;

    private String location;
    private Records records;
    private int me;
    private int ops;

    RecordsTest(Stores kind) {
        this.kind = kind;
    }

    @BeforeEach
    void open() {
        location = kind.location(folder);
        records = Stores.open(location, 1);
        me = records.firstPlayer().id();
    }

    @AfterEach
    void close() {
        records.close();
    }

    private String op() {
        return "01900000-0000-7000-8000-%012d".formatted(++ops);
    }

    private static Line line(String bag, @Nullable Face face, @Nullable Integer ghost, int in, int on, int off) {
        return new Line(
                bag,
                face,
                null,
                BoardKind.REGULATION,
                Setting.PRACTICE,
                null,
                ghost,
                in + on + off,
                in,
                on,
                off,
                Line.Misses.NONE,
                "",
                "");
    }

    private static Setup setup(@Nullable Integer ghost) {
        return Setup.plain().with(draft -> {
            draft.rounds = 10;
            draft.ghost = ghost;
            draft.target = ghost == null ? null : (Integer) 21;
        });
    }

    private Applied apply(Operation operation) {
        return records.apply(me, List.of(operation), NOW).get(0);
    }

    private void start(String run, Drill drill, String at) {
        Applied applied = apply(new Operation.StartRun(
                op(),
                run,
                "session-" + at.substring(0, 10),
                drill,
                at,
                false,
                "",
                null,
                null,
                setup(drill.needsGhost() ? 6 : null)));
        assertThat(applied).isInstanceOf(Applied.Stored.class);
    }

    private Applied put(String run, int number, int in, int on, int off) {
        return apply(new Operation.PutRound(
                run, new Round(number, Side.ME, op(), List.of(line("", null, null, in, on, off)), List.of())));
    }

    private Applied putRace(String run, int number, int in, int on, int off) {
        return apply(new Operation.PutRound(
                run, new Round(number, Side.ME, op(), List.of(line("", null, 6, in, on, off)), List.of())));
    }

    private Run run(String id) {
        return records.run(me, id).orElseThrow().run();
    }

    @Test
    void firstThrowNeedsNoForm() {
        assertThat(records.players()).extracting(Player::name).containsExactly("Me");
        assertThat(records.firstPlayer().id()).isEqualTo(me);
        assertThat(records.openRun(me)).isEmpty();
        assertThat(records.lastRun(me, null)).isEmpty();
    }

    @Test
    void playersNeedANameOfTheirOwn() {
        Player anna = records.addPlayer(" Änne ", Player.Hand.LEFT, Player.Hand.RIGHT);
        assertThat(records.player("Änne")).contains(anna);
        assertThatThrownBy(() -> records.addPlayer("Änne", Player.Hand.LEFT, Player.Hand.RIGHT))
                .isInstanceOf(Failure.BadInput.class)
                .hasMessage("the name \"Änne\" is taken; give a player another one");
        assertThatThrownBy(() -> records.addPlayer("  ", Player.Hand.LEFT, Player.Hand.RIGHT))
                .hasMessage("a player needs a name");
        Player edited = records.editPlayer(new Player(anna.id(), "Bo", Player.Hand.RIGHT, Player.Hand.RIGHT, 0));
        assertThat(edited.name()).isEqualTo("Bo");
        assertThatThrownBy(() -> records.player(77)).isInstanceOf(Failure.NotFound.class);
    }

    @Test
    void whatWasStoredIsThereAfterReopening() {
        start("r", Drill.TOTAL, "2026-06-01T18:00:00+02:00");
        assertThat(apply(new Operation.NameBag(op(), "bag-1", "Blue"))).isInstanceOf(Applied.Stored.class);
        Round round = new Round(
                1,
                Side.ME,
                op(),
                List.of(line("bag-1", Face.FAST, null, 1, 1, 0), line("bag-1", Face.SLOW, null, 1, 0, 1)),
                List.of(
                        new Round.Thrown(
                                "bag-1",
                                Face.FAST,
                                Outcome.IN,
                                "",
                                "slide",
                                new Round.Point(0, 39),
                                new Round.Point(-1.5, 20.25),
                                null),
                        new Round.Thrown("bag-1", Face.SLOW, Outcome.OFF, "left", "", null, null, null)));
        assertThat(apply(new Operation.PutRound("r", round))).isInstanceOf(Applied.Stored.class);
        records.close();
        records = Stores.open(location, 2);
        RunDetail detail = records.run(me, "r").orElseThrow();
        assertThat(detail.rounds()).containsExactly(round);
        assertThat(detail.session().day()).isEqualTo("2026-06-01");
        assertThat(detail.run().sum()).isEqualTo(new Run.Sum(1, 4, 2, 7));
        assertThat(detail.run().setup()).isEqualTo(setup(null));
        assertThat(records.openRun(me)).contains(detail.run());
    }

    @Test
    void repeatingAnUploadChangesNothing() {
        start("r", Drill.TOTAL, "2026-06-01T18:00:00+02:00");
        Operation first = new Operation.PutRound(
                "r", new Round(1, Side.ME, op(), List.of(line("", null, null, 3, 1, 0)), List.of()));
        Operation later = new Operation.PutRound(
                "r", new Round(1, Side.ME, op(), List.of(line("", null, null, 2, 2, 0)), List.of()));
        assertThat(apply(first)).isEqualTo(new Applied.Stored(first.op()));
        assertThat(apply(later)).isEqualTo(new Applied.Stored(later.op()));
        long version = records.player(me).version();
        assertThat(apply(first)).isEqualTo(new Applied.Repeated(first.op()));
        assertThat(apply(later)).isEqualTo(new Applied.Repeated(later.op()));
        assertThat(records.player(me).version()).isEqualTo(version);
        assertThat(run("r").sum()).isEqualTo(new Run.Sum(1, 4, 2, 8));
        assertThat(records.changes(me, "r"))
                .singleElement()
                .satisfies(change -> assertThat(change.says())
                        .isEqualTo("round 1: before 3 in, 1 on, 0 off, after 2 in, 2 on, 0 off"));
    }

    @Test
    void roundTakenBackStaysAwayWhenAnOldUploadComesLate() {
        start("r", Drill.TOTAL, "2026-06-01T18:00:00+02:00");
        Operation put = new Operation.PutRound(
                "r", new Round(1, Side.ME, op(), List.of(line("", null, null, 3, 1, 0)), List.of()));
        apply(put);
        apply(new Operation.PutRound("r", new Round(1, Side.ME, op(), List.of(), List.of())));
        assertThat(apply(put)).isInstanceOf(Applied.Repeated.class);
        assertThat(records.run(me, "r").orElseThrow().rounds()).isEmpty();
        assertThat(run("r").sum()).isEqualTo(Run.Sum.NONE);
        assertThat(records.analyses().since(me, -1).counts()).isEmpty();
    }

    @Test
    void oneRefusedOperationDoesNotLoseTheOthers() {
        start("r", Drill.TOTAL, "2026-06-01T18:00:00+02:00");
        List<Applied> results = records.apply(
                me,
                List.of(
                        new Operation.PutRound(
                                "r", new Round(1, Side.ME, "1", List.of(line("", null, null, 4, 0, 0)), List.of())),
                        new Operation.PutRound(
                                "r", new Round(2, Side.ME, "2", List.of(line("", null, null, 4, 1, 0)), List.of())),
                        new Operation.PutRound(
                                "no", new Round(2, Side.ME, "3", List.of(line("", null, null, 4, 0, 0)), List.of())),
                        new Operation.PutRound(
                                "r", new Round(3, Side.ME, "4", List.of(line("x", null, null, 4, 0, 0)), List.of())),
                        new Operation.PutRound(
                                "r", new Round(3, Side.ME, " ", List.of(line("", null, null, 4, 0, 0)), List.of())),
                        new Operation.FinishRun("6", "r", "2026-06-01T18:30:00+02:00")),
                NOW);
        assertThat(results)
                .containsExactly(
                        new Applied.Stored("1"),
                        new Applied.Refused("2", "round 2 has 5 bags of one side; a round of total has at most 4"),
                        new Applied.Refused("3", "there is no run no; start it first"),
                        new Applied.Refused("4", "there is no bag set x; name it first"),
                        new Applied.Refused(" ", "an operation needs an id; make it a UUID of version 7"),
                        new Applied.Stored("6"));
        assertThat(run("r").sum()).isEqualTo(new Run.Sum(1, 4, 4, 12));
    }

    @Test
    void raceTakesNoRoundAfterItsEnd() {
        start("r", Drill.RACE, "2026-06-01T18:00:00+02:00");
        for (int number = 1; number <= 4; number++) {
            assertThat(putRace("r", number, 4, 0, 0)).isInstanceOf(Applied.Stored.class);
        }
        // Four times 12 against a ghost of 6 is 24-0.
        assertThat(putRace("r", 5, 4, 0, 0))
                .isEqualTo(new Applied.Refused(
                        op(0),
                        "the game ends 24-0 after round 4, so round 5 cannot be thrown; start another run for"
                                + " it"));
        // With a poorer second round (0 against 6) the game is open again, 18-6.
        assertThat(putRace("r", 2, 0, 0, 4)).isInstanceOf(Applied.Stored.class);
        assertThat(putRace("r", 5, 4, 0, 0)).isInstanceOf(Applied.Stored.class);
        // Then it cannot be corrected back, for round 5 would follow the end.
        assertThat(putRace("r", 2, 4, 0, 0)).isInstanceOf(Applied.Refused.class);
        assertThat(run("r").sum()).isEqualTo(new Run.Sum(5, 20, 16, 48));
    }

    private String op(int back) {
        return "01900000-0000-7000-8000-%012d".formatted(ops + back);
    }

    @Test
    void raceNeedsAGhost() {
        assertThat(apply(new Operation.StartRun(
                        op(), "r", "s", Drill.RACE, "2026-06-01T18:00Z", false, "", null, null, setup(null))))
                .isInstanceOf(Applied.Refused.class);
        assertThat(records.lastRun(me, null)).isEmpty();
    }

    private Applied startGameTo11(String run, int skunk) {
        return apply(new Operation.StartRun(
                op(),
                run,
                "s",
                Drill.RACE,
                "2026-06-01T18:00:00Z",
                false,
                "",
                11,
                null,
                setup(6).with(draft -> draft.skunk = skunk)));
    }

    @Test
    void aLeadToNilBeyondTheTargetIsReadAgainAndOneBelowNothingRefused() {
        assertThat(startGameTo11("far", 32)).isInstanceOf(Applied.Stored.class);
        assertThat(putRace("far", 1, 4, 0, 0)).isInstanceOf(Applied.Stored.class);
        assertThat(putRace("far", 2, 4, 0, 0)).isInstanceOf(Applied.Stored.class);
        assertThat(records.check()).isEmpty();
        assertThat(startGameTo11("below", -1)).isInstanceOf(Applied.Refused.class);
        assertThat(records.run(me, "below")).isEmpty();
    }

    @Test
    void finishingAndReopeningMayBeRepeated() {
        start("r", Drill.TOTAL, "2026-06-01T18:00:00+02:00");
        Operation finish = new Operation.FinishRun(op(), "r", "2026-06-01T18:30:00+02:00");
        assertThat(apply(finish)).isInstanceOf(Applied.Stored.class);
        assertThat(apply(finish)).isInstanceOf(Applied.Repeated.class);
        assertThat(run("r").finishedAt()).isEqualTo("2026-06-01T18:30:00+02:00");
        assertThat(records.openRun(me)).isEmpty();
        Operation reopen = new Operation.ReopenRun(op(), "r");
        assertThat(apply(reopen)).isInstanceOf(Applied.Stored.class);
        assertThat(apply(reopen)).isInstanceOf(Applied.Repeated.class);
        assertThat(records.openRun(me)).isPresent();
    }

    @Test
    void bagNamedOfflineUnderATakenNameGetsAFreeOne() {
        apply(new Operation.NameBag(op(), "b1", "Blue"));
        assertThat(apply(new Operation.NameBag(op(), "b2", "Blue"))).isInstanceOf(Applied.Stored.class);
        assertThat(apply(new Operation.NameBag(op(), "b2", "Red"))).isInstanceOf(Applied.Repeated.class);
        assertThat(records.bags(me)).extracting(BagSet::name).containsExactly("Blue", "Blue 2");
    }

    @Test
    void bagEditsAreKeptAndUndone() {
        BagSet blue = records.saveBag(me, BagSet.named("", "Blue"));
        records.saveBag(me, new BagSet(blue.id(), "Sky", 4, 7, 15.5, "resin", "", false));
        assertThatThrownBy(() -> records.saveBag(me, BagSet.named("", "Sky"))).hasMessageContaining("is taken");
        assertThatThrownBy(() -> records.saveBag(me, new BagSet(blue.id(), "Sky", 0, 11, Double.NaN, "", "", false)))
                .hasMessage("a face's speed is 1 to 10, not 0\na face's speed is 1 to 10, not 11\n"
                        + "a bag weighs above 0 and at most 64 oz, not NaN");
        Change change = records.changes(me, blue.id()).get(0);
        assertThat(change.says()).startsWith("name before: \"Blue\", after: \"Sky\"");
        records.undo(me, change.id(), NOW);
        assertThat(records.bags(me)).containsExactly(blue);
    }

    @Test
    void editsAndDeletionsAreUndone() {
        start("r", Drill.TOTAL, "2026-06-01T18:00:00+02:00");
        put("r", 1, 4, 0, 0);
        records.editRun(me, "r", new RunEdit("windy", "Kim", true, null));
        records.editSession(me, "session-2026-06-01", "in the yard");
        assertThat(records.analyses().since(me, -1).counts()).isEmpty();
        String deletion = records.deleteRun(me, "r", NOW);
        assertThat(records.run(me, "r")).isEmpty();
        assertThat(records.lastRun(me, null)).isEmpty();
        assertThat(records.openRun(me)).isEmpty();
        assertThat(records.journal(me, "", 0, 10).total()).isZero();
        assertThat(put("r", 2, 4, 0, 0)).isInstanceOf(Applied.Refused.class);
        records.undo(me, deletion, NOW);
        records.undo(me, deletion, NOW);
        assertThat(run("r").note()).isEqualTo("windy");
        Change edit = records.changes(me, "r").stream()
                .filter(change -> change.kind() == Change.Kind.RUN)
                .findFirst()
                .orElseThrow();
        records.undo(me, edit.id(), NOW);
        assertThat(run("r").opponent()).isEmpty();
        assertThat(records.analyses().since(me, -1).counts()).hasSize(1);
        assertThat(records.changes(me, "r"))
                .extracting(Change::says)
                .containsExactly(
                        "note before: \"windy\", after: \"\"; opponent before: \"Kim\", after: \"\"; no longer a warm-up",
                        "brought back",
                        "deleted",
                        "note before: \"\", after: \"windy\"; opponent before: \"\", after: \"Kim\"; now a warm-up");
        Change note = records.changes(me, "session-2026-06-01").get(0);
        records.undo(me, note.id(), NOW);
        assertThat(records.run(me, "r").orElseThrow().session().note()).isEmpty();
    }

    @Test
    void correctedRoundIsBroughtBackEvenPastAClockRunningAhead() {
        start("r", Drill.TOTAL, "2026-06-01T18:00:00+02:00");
        put("r", 1, 4, 0, 0);
        String ahead = "0fffffff-ffff-7fff-bfff-ffffffffffff";
        apply(new Operation.PutRound(
                "r", new Round(1, Side.ME, ahead, List.of(line("", null, null, 0, 4, 0)), List.of())));
        Change change = records.changes(me, "r").get(0);
        records.undo(me, change.id(), NOW);
        assertThat(run("r").sum()).isEqualTo(new Run.Sum(1, 4, 4, 12));
        assertThat(records.changes(me, "r").get(1).undone()).isTrue();
        assertThat(records.run(me, "r").orElseThrow().rounds().get(0).op()).isGreaterThan(ahead);
    }

    @Test
    void standingTakesFinishedCountedRunsOfTheSameLength() {
        // Totals 12, 8, 4, 0 on four days; one more left open, one shorter.
        for (int day = 1; day <= 4; day++) {
            String run = "r" + day;
            start(run, Drill.TOTAL, "2026-05-0" + day + "T10:00:00Z");
            int in = 5 - day;
            put(run, 1, in, 0, 4 - in);
            put(run, 2, 0, 0, 4);
            apply(new Operation.FinishRun(op(), run, "2026-05-0" + day + "T10:10:00Z"));
        }
        start("open", Drill.TOTAL, "2026-05-05T10:00:00Z");
        put("open", 1, 4, 0, 0);
        put("open", 2, 4, 0, 0);
        start("short", Drill.TOTAL, "2026-05-06T10:00:00Z");
        put("short", 1, 4, 0, 0);
        apply(new Operation.FinishRun(op(), "short", "2026-05-06T10:10:00Z"));
        Standing standing = records.standing(me, Drill.TOTAL, 2, "");
        assertThat(standing.number()).isEqualTo(4);
        assertThat(standing.best()).isEqualTo(new Standing.Result("r1", "2026-05-01", 12, 8));
        assertThat(standing.usual()).isEqualTo(7.5);
        assertThat(standing.latest()).extracting(Standing.Result::total).containsExactly(3, 6, 9, 12);
        assertThat(records.standing(me, Drill.TOTAL, 2, "r1").best())
                .isEqualTo(new Standing.Result("r2", "2026-05-02", 9, 8));
        assertThat(records.standing(me, Drill.RACE, 2, "").number()).isZero();
    }

    @Test
    void journalIsSearchedInAnyScript() {
        start("r1", Drill.TOTAL, "2026-05-01T10:00:00Z");
        records.editRun(me, "r1", new RunEdit("Übung im Garten, 100 % Wind", "", false, null));
        start("r2", Drill.CASUAL, "2026-05-01T11:00:00Z");
        start("r3", Drill.VOLUME, "2026-05-02T11:00:00Z");
        records.saveBag(me, BagSet.named("b", "Grüne Säcke"));
        apply(new Operation.PutRound(
                "r3", new Round(1, Side.ME, op(), List.of(line("b", null, null, 4, 0, 0)), List.of())));
        assertThat(records.journal(me, "", 0, 10).entries())
                .extracting(entry -> entry.runs().stream().map(Run::id).toList())
                .containsExactly(List.of("r3"), List.of("r1", "r2"));
        assertThat(days("ÜBUNG garten")).containsExactly("2026-05-01");
        assertThat(days("grüne")).containsExactly("2026-05-02");
        assertThat(days("casual")).containsExactly("2026-05-01");
        assertThat(days("2026-05")).hasSize(2);
        assertThat(days("100 %")).containsExactly("2026-05-01");
        assertThat(days("_")).isEmpty();
        Journal second = records.journal(me, "", 1, 1);
        assertThat(second.pages()).isEqualTo(2);
        assertThat(records.journal(me, "", 9, 1).total()).isEqualTo(2);
        assertThat(second.entries()).extracting(entry -> entry.session().day()).containsExactly("2026-05-01");
    }

    private List<String> days(String search) {
        return records.journal(me, search, 0, 10).entries().stream()
                .map(entry -> entry.session().day())
                .toList();
    }

    @Test
    void countsForAnalysesKnowWhatWasThrownHow() {
        start("r", Drill.DUEL, "2026-05-01T10:00:00Z");
        records.saveBag(me, BagSet.named("b", "Blue"));
        for (Side side : Side.values()) {
            apply(new Operation.PutRound(
                    "r",
                    new Round(
                            1,
                            side,
                            op(),
                            List.of(line("", Face.SLOW, null, 1, 1, 0), line("b", Face.FAST, null, 1, 0, 1)),
                            List.of())));
        }
        start("v", Drill.VOLUME, "2026-05-02T10:00:00Z");
        Line onlyIn = new Line(
                "",
                null,
                null,
                BoardKind.NARROW,
                Setting.PRACTICE,
                null,
                null,
                20,
                13,
                null,
                null,
                Line.Misses.NONE,
                "",
                "");
        apply(new Operation.PutRound("v", new Round(1, Side.ME, op(), List.of(onlyIn), List.of())));
        assertThat(run("v").sum()).isEqualTo(new Run.Sum(1, 20, 13, null));
        start("c", Drill.CASUAL, "2026-05-02T11:00:00Z");
        put("c", 1, 4, 0, 0);
        List<DayCount> counts = records.analyses().since(me, -1).counts();
        // Sides me, a and b are the player's own: three rounds; each counts with its first line (bag "").
        List<Integer> finishes = new ArrayList<>(java.util.Collections.nCopies(15, 0));
        finishes.set(new Finish(2, 1, 1).index(), 3);
        assertThat(counts)
                .containsExactly(
                        new DayCount(
                                "2026-05-01",
                                "r",
                                Drill.DUEL,
                                "",
                                Face.SLOW,
                                null,
                                BoardKind.REGULATION,
                                Setting.PRACTICE,
                                null,
                                3,
                                6,
                                3,
                                6,
                                3,
                                3,
                                finishes),
                        new DayCount(
                                "2026-05-01",
                                "r",
                                Drill.DUEL,
                                "b",
                                Face.FAST,
                                null,
                                BoardKind.REGULATION,
                                Setting.PRACTICE,
                                null,
                                0,
                                6,
                                3,
                                6,
                                3,
                                0,
                                java.util.Collections.nCopies(15, 0)),
                        new DayCount(
                                "2026-05-02",
                                "v",
                                Drill.VOLUME,
                                "",
                                null,
                                null,
                                BoardKind.NARROW,
                                Setting.PRACTICE,
                                null,
                                1,
                                20,
                                13,
                                0,
                                0,
                                0,
                                java.util.Collections.nCopies(15, 0)));
    }

    @Test
    void everyPlayerHasRecordsOfTheirOwn() {
        int other =
                records.addPlayer("Kim", Player.Hand.RIGHT, Player.Hand.LEFT).id();
        start("r", Drill.TOTAL, "2026-05-01T10:00:00Z");
        assertThat(records.run(other, "r")).isEmpty();
        assertThat(records.journal(other, "", 0, 10).total()).isZero();
        assertThatThrownBy(() -> records.deleteRun(other, "r", NOW)).isInstanceOf(Failure.NotFound.class);
        records.savePreferences(me, "{\"units\":\"cm\"}");
        assertThat(records.preferences(me)).isEqualTo("{\"units\":\"cm\"}");
        assertThat(records.preferences(other)).isEqualTo("{}");
        assertThatThrownBy(() -> records.savePreferences(me, "[]")).isInstanceOf(Failure.BadInput.class);
        assertThatThrownBy(() -> records.savePreferences(me, "{")).isInstanceOf(Failure.BadInput.class);
    }

    @Test
    void writersAtOnceLoseNothing() throws Exception {
        start("r", Drill.TOTAL, "2026-05-01T10:00:00Z");
        ExecutorService threads = Executors.newFixedThreadPool(4);
        try {
            List<Future<Applied>> results = new ArrayList<>();
            for (int number = 1; number <= 40; number++) {
                Operation put = new Operation.PutRound(
                        "r", new Round(number, Side.ME, op(), List.of(line("", null, null, 1, 1, 2)), List.of()));
                results.add(threads.submit(() -> apply(put)));
            }
            for (Future<Applied> result : results) {
                assertThat(result.get()).isInstanceOf(Applied.Stored.class);
            }
        } finally {
            threads.shutdownNow();
        }
        assertThat(run("r").sum()).isEqualTo(new Run.Sum(40, 160, 40, 160));
    }
}
