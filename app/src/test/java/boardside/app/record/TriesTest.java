package boardside.app.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.app.practice.Change;
import boardside.app.practice.DayBags;
import boardside.app.practice.Exercise;
import boardside.app.practice.Held;
import boardside.app.practice.Operation;
import boardside.app.practice.Player;
import boardside.app.practice.Setup;
import boardside.app.practice.Stakes;
import boardside.app.practice.Try;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Outcome;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import boardside.engine.tactics.Lying;
import boardside.engine.tactics.Position;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Spot;
import boardside.engine.tactics.Target;
import boardside.engine.tactics.Verdict;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Tries at targets and in situations: stored once, corrected, undone, counted. */
class TriesTest {
    private static final Instant NOW = Instant.parse("2026-06-01T18:00:00Z");
    private static final LocalDate DAY = LocalDate.parse("2026-06-01");
    private static final Position GATE = new Position(List.of(new Lying(0, 33, Side.VERSUS)));

    @TempDir
    Path folder;

    private Records records;
    private int me;
    private int ops;

    @BeforeEach
    void open() {
        records = Records.open(folder.resolve("store.db").toString());
        me = records.addPlayer("Me", Player.Hand.RIGHT, Player.Hand.LEFT).id();
        start("place", Drill.PLACEMENT, null);
        start("play", Drill.SITUATION, null);
    }

    @AfterEach
    void close() {
        records.close();
    }

    private String op() {
        return "01900000-0000-7000-8000-%012d".formatted(++ops);
    }

    private void start(String run, Drill drill, @Nullable Exercise exercise) {
        Setup setup = Setup.plain().with(draft -> draft.exercise = exercise);
        apply(new Operation.StartRun(op(), run, "s", drill, "2026-06-01T18:00:00+02:00", false, "", null, null, setup));
    }

    private Applied apply(Operation operation) {
        return records.apply(me, List.of(operation), NOW).get(0);
    }

    private Applied put(String run, int number, Try.@Nullable Played played) {
        return apply(new Operation.PutTry(op(), run, number, played));
    }

    private static Try.Played block(String target, @Nullable Spot spot, boolean worked) {
        return played(Shot.BLOCK, Target.parse(target), Position.EMPTY, null, false, worked, spot);
    }

    private static Try.Played shot(Shot shot, boolean worked) {
        return played(shot, null, GATE, null, true, worked, null);
    }

    private static Try.Played played(
            Shot shot,
            @Nullable Target target,
            Position position,
            Try.@Nullable Link link,
            boolean byHand,
            boolean worked,
            @Nullable Spot spot) {
        return new Try.Played(
                Side.ME,
                shot,
                target,
                position,
                "",
                link,
                byHand,
                worked,
                spot == null ? null : new Try.Rest(Outcome.ON, "", spot),
                new Try.How("", null, null, BoardKind.REGULATION, Setting.PRACTICE, null),
                "");
    }

    @Test
    void aTryIsStoredOnceAndALateRepeatChangesNothing() {
        Operation.PutTry first = new Operation.PutTry(op(), "place", 1, block("2-left", new Spot(-8, 27), true));
        assertThat(apply(first)).isInstanceOf(Applied.Stored.class);
        assertThat(apply(first)).isInstanceOf(Applied.Repeated.class);
        put("place", 1, block("2-left", new Spot(0, 27), false));
        assertThat(apply(first)).isInstanceOf(Applied.Repeated.class);
        assertThat(records.tries(me, "place")).hasSize(1);
        assertThat(records.tries(me, "place").get(0).played()).isEqualTo(block("2-left", new Spot(0, 27), false));
    }

    /** Tries are bags thrown; the best twenty of them in a row are a best, those taken back and the other's aside. */
    @Test
    void triesCountAsBagsThrownAndMakeABest() {
        for (int number = 1; number <= 26; number++) {
            put("place", number, block("2-left", null, number > 4 && number % 5 != 0));
        }
        put("place", 26, null);
        assertThat(records.deeds().days(me, LocalDate.parse("2026-06-01"), LocalDate.parse("2026-06-01")))
                .containsExactly(new DayBags("2026-06-01", 25, 1));
        assertThat(records.deeds().bests(me))
                .containsExactly(
                        new Deeds.Best(new Deeds.Kind.Tries(Drill.PLACEMENT), new Held(16, "place", "2026-06-01")));
    }

    @Test
    void correctionsAndTakingBackCanBeUndone() {
        put("place", 1, block("2-left", new Spot(-8, 27), true));
        put("place", 1, null);
        assertThat(records.tries(me, "place")).isEmpty();
        Change change = records.changes(me, "place").get(0);
        assertThat(change.kind()).isEqualTo(Change.Kind.TRY);
        assertThat(change.says()).isEqualTo("try 1: before block worked, after nothing");
        records.undo(me, change.id(), NOW);
        assertThat(records.tries(me, "place")).hasSize(1);
        // A phone that still holds an older upload cannot take it away again.
        assertThat(apply(new Operation.PutTry("01900000-0000-7000-8000-000000000001", "place", 1, null)))
                .isInstanceOf(Applied.Repeated.class);
    }

    @Test
    void situationsAreKeptRenamedAndBroughtBack() {
        apply(new Operation.KeepSituation(op(), "k", "Doorway", GATE, false));
        apply(new Operation.KeepSituation(op(), "k", "Doorstep", Position.EMPTY, true));
        assertThat(records.situations(me).get(0).retired()).isTrue();
        Change change = records.changes(me, "k").get(0);
        assertThat(change.says()).contains("Doorway", "Doorstep", "versus:1-middle", "put away");
        records.undo(me, change.id(), NOW);
        assertThat(records.situations(me).get(0).name()).isEqualTo("Doorway");
        assertThat(records.situations(me).get(0).position()).isEqualTo(GATE);
        assertThat(refusal(new Operation.KeepSituation(op(), "k2", " ", GATE, false)))
                .contains("1 to 60 characters");
    }

    private String refusal(Operation operation) {
        Applied applied = apply(operation);
        assertThat(applied).isInstanceOf(Applied.Refused.class);
        return ((Applied.Refused) applied).message();
    }

    @Test
    void refusesWhatCannotBeAndSaysWhy() {
        assertThat(refusal(new Operation.PutTry(op(), "place", 1, block("2-left", new Spot(0, 27), true))))
                .isEqualTo("try 1: the bag lies not in 2-left, so the try did not work");
        assertThat(refusal(new Operation.PutTry(op(), "place", 1, shot(Shot.SLIDE, true))))
                .contains("needs a target");
        assertThatThrownBy(() -> played(Shot.BLOCK, null, GATE, null, true, true, null))
                .hasMessageContaining("call depth and lane");
        Try.Played narrow = new Try.Played(
                Side.ME,
                Shot.SLIDE,
                null,
                new Position(List.of(new Lying(-8, 20, Side.ME))),
                "",
                null,
                true,
                true,
                null,
                new Try.How("", null, null, BoardKind.NARROW, Setting.PRACTICE, null),
                "");
        assertThat(refusal(new Operation.PutTry(op(), "play", 1, narrow))).contains("beside the narrow board");
        start("total", Drill.TOTAL, null);
        assertThat(refusal(new Operation.PutTry(op(), "total", 1, shot(Shot.SLIDE, true))))
                .contains("rounds, not tries");
        assertThat(records.tries(me, "play")).isEmpty();
    }

    @Test
    void triesNeverTouchTheSkillModel() {
        for (int i = 1; i <= 20; i++) {
            put("place", i, block("2-left", new Spot(-8, 27), true));
            put("play", i, shot(Shot.CUT_LEFT, i % 2 == 0));
        }
        assertThat(records.analyses().since(me, -1).counts()).isEmpty();
    }

    @Test
    void ratesAreByWhatWasAskedAndSayWhatToPrefer() {
        for (int i = 1; i <= 60; i++) {
            put(
                    "play",
                    i,
                    shot(i % 2 == 0 ? Shot.CUT_LEFT : Shot.CUT_RIGHT, i % 2 == 0 ? i % 4 == 0 || i > 20 : i % 5 == 0));
        }
        TryRates.Answer answer = TryRates.of(records, me, Drill.SITUATION, DAY, Set.of());
        assertThat(answer.rows())
                .hasSize(2)
                .allSatisfy(row -> assertThat(row.tries()).isEqualTo(30));
        TryRates.Preference preference = answer.preferences().get(0);
        assertThat(answer.rows().get(preference.better()).shot()).isEqualTo(Shot.CUT_LEFT);
        assertThat(preference.verdict()).isEqualTo(Verdict.SIGNAL);
        assertThat(TryRates.of(records, me, Drill.SITUATION, DAY.minusDays(1), Set.of())
                        .rows())
                .isEmpty();
        assertThat(TryRates.of(records, me, Drill.SITUATION, DAY, Set.of(TryRates.By.BAG))
                        .rows())
                .hasSize(2);
    }

    @Test
    void whatThePartnerThrewIsNotMine() {
        put("play", 1, shot(Shot.SLIDE, true));
        Try.Played mine = shot(Shot.SLIDE, false);
        put(
                "play",
                2,
                new Try.Played(Side.VERSUS, mine.shot(), null, GATE, "", null, true, false, null, mine.how(), ""));
        assertThat(records.tries(me, "play")).hasSize(2);
        TryRates.Answer answer = TryRates.of(records, me, Drill.SITUATION, DAY, Set.of());
        assertThat(answer.rows().get(0).tries()).isEqualTo(1);
    }

    @Test
    void suddenDeathEndsTriesAndACorrectionCannotLeaveAnyBehindIt() {
        Setup setup = Setup.plain().with(draft -> {
            draft.stakes = new Stakes(false, null, 2, null, false);
            draft.exercise = new Exercise(
                    List.of(),
                    List.of(new Exercise.Step(Shot.SLIDE, null, GATE)),
                    false,
                    Exercise.Call.MINE,
                    null,
                    null,
                    "",
                    "",
                    "");
        });
        apply(new Operation.StartRun(
                op(), "dead", "s", Drill.SITUATION, "2026-06-01T18:00:00+02:00", false, "", null, null, setup));
        boolean[] worked = {true, false, true, false};
        for (int i = 0; i < worked.length; i++) {
            assertThat(put("dead", i + 1, shot(Shot.SLIDE, worked[i]))).isInstanceOf(Applied.Stored.class);
        }
        assertThat(TryStanding.after(setup, records.tries(me, "dead")))
                .isEqualTo(new TryStanding(java.util.Map.of(Side.ME, new TryStanding.Sum(4, 2, false)), 4));
        assertThat(((Applied.Refused) put("dead", 5, shot(Shot.SLIDE, true))).message())
                .isEqualTo("sudden death ends the run with try 4, so try 5 cannot be thrown; start another run for it");
        assertThat(((Applied.Refused) put("dead", 1, shot(Shot.SLIDE, false))).message())
                .isEqualTo("sudden death ends the run with try 2, so try 3 cannot be thrown; start another run for it");
        put("dead", 4, null);
        put("dead", 3, null);
        assertThat(put("dead", 1, shot(Shot.SLIDE, false))).isInstanceOf(Applied.Stored.class);
    }

    @Test
    void aChainWorksWhenAllItsShotsDoAndNothingWasLaidByHand() {
        List<Exercise.Step> steps = List.of(
                new Exercise.Step(Shot.BLOCK, Target.parse("1-middle"), Position.EMPTY),
                new Exercise.Step(Shot.CUT_LEFT, null, GATE));
        start(
                "chain",
                Drill.SITUATION,
                new Exercise(List.of(), steps, true, Exercise.Call.ORDER, null, 20, "", "", ""));
        boolean[][] goes = {{true, true}, {true, false}, {false, true}, {true, true}};
        int number = 0;
        for (int go = 0; go < goes.length; go++) {
            put("chain", ++number, link(steps.get(0), go + 1, 1, false, goes[go][0]));
            put("chain", ++number, link(steps.get(1), go + 1, 2, !goes[go][0], goes[go][1]));
        }
        put("chain", ++number, link(steps.get(0), 5, 1, false, true));
        assertThat(TryStanding.after(
                                records.run(me, "chain").orElseThrow().run().setup(), records.tries(me, "chain"))
                        .of(Side.ME))
                .isEqualTo(new TryStanding.Sum(4, 2, true));
        Chains.Row row = Chains.of(records, me, DAY).get(0);
        assertThat(row.goes()).isEqualTo(4);
        assertThat(row.worked()).isEqualTo(2);
        assertThat(row.steps()).extracting(Chains.Step::tries).containsExactly(5, 4);
        assertThat(row.steps()).extracting(Chains.Step::worked).containsExactly(4, 3);
    }

    private static Try.Played link(Exercise.Step step, int go, int number, boolean byHand, boolean worked) {
        return played(step.shot(), step.target(), step.position(), new Try.Link(go, number, 2), byHand, worked, null);
    }
}
