package boardside.app.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.app.practice.BagSet;
import boardside.app.practice.Change;
import boardside.app.practice.Contest.Way;
import boardside.app.practice.Failure;
import boardside.app.practice.Line;
import boardside.app.practice.Operation;
import boardside.app.practice.Player;
import boardside.app.practice.Round;
import boardside.app.practice.Setup;
import boardside.app.practice.TrialPlan;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import boardside.engine.skill.Trait;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.stream.LongStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

@ParameterizedClass
@EnumSource
class TrialsTest {
    private static final Instant NOW = Instant.parse("2026-06-01T18:00:00Z");
    private static final String START = "2026-06-01T18:00:00Z";

    private final Stores kind;

    @TempDir
    Path folder;

    private Records records;
    private int me;
    private TrialPlan plan;
    private Way blue;
    private Way red;

    TrialsTest(Stores kind) {
        this.kind = kind;
    }

    @BeforeEach
    void open() {
        records = Stores.open(kind.location(folder), 1);
        me = records.addPlayer("Me", Player.Hand.RIGHT, Player.Hand.LEFT).id();
        blue = new Way(records.saveBag(me, BagSet.named("b1", "Blue")).id(), null, null);
        red = new Way(records.saveBag(me, BagSet.named("b2", "Red")).id(), null, null);
        plan = records.trials().add(me, plan("Blue or Red", List.of(blue, red)));
    }

    @AfterEach
    void close() {
        records.close();
    }

    private static TrialPlan plan(String name, List<Way> candidates) {
        return new TrialPlan("", name, candidates, BoardKind.REGULATION, 25, 0.5, 7, "", TrialPlan.State.OPEN, false);
    }

    private String op() {
        return records.ids().next();
    }

    private String run(String id, String at) {
        records.applyAll(
                me,
                List.of(
                        new Operation.StartRun(
                                op(), id, "s" + id, Drill.TRIAL, at, false, "", null, null, Setup.plain()),
                        new Operation.ThrowTrial(op(), plan.id(), id)),
                NOW);
        return id;
    }

    private Applied put(String run, int number, Way way, String at, int in, int on, int off) {
        Line line = new Line(
                way.bag(),
                way.face(),
                way.approach(),
                BoardKind.REGULATION,
                Setting.PRACTICE,
                null,
                null,
                in + on + off,
                in,
                on,
                off,
                Line.Misses.NONE,
                at,
                "");
        Round round = new Round(number, Side.ME, op(), List.of(line), List.of());
        return records.apply(me, List.of(new Operation.PutRound(run, round)), NOW)
                .get(0);
    }

    private void unit(String run, int first, Way way) {
        assertThat(put(run, first, way, "", 2, 1, 1)).isInstanceOf(Applied.Stored.class);
        assertThat(put(run, first + 1, way, "", 1, 2, 1)).isInstanceOf(Applied.Stored.class);
    }

    private TrialDetail trial() {
        return records.trials().find(me, plan.id()).orElseThrow();
    }

    private static String refused(Applied applied) {
        return ((Applied.Refused) applied).message();
    }

    @Test
    void blocksAreCountedRunByRun() {
        run("r1", START);
        unit("r1", 1, blue);
        unit("r1", 3, red);
        unit("r1", 5, red);
        run("r2", "2026-06-02T18:00:00Z");
        unit("r2", 1, red);
        unit("r2", 3, blue);
        assertThat(trial().state().blocks()).isEqualTo(2);
        assertThat(trial().state().unused()).isEqualTo(1);
        assertThat(trial().unitsBefore("r2").get(0)).hasSize(3);
        // A deleted run and a warm-up are left out.
        records.deleteRun(me, "r1", NOW);
        assertThat(trial().state().blocks()).isEqualTo(1);
        records.editRun(me, "r2", new RunEdit("", "", true, null));
        assertThat(trial().state().blocks()).isZero();
    }

    @Test
    void trialRoundsFeedTheSkillModel() {
        run("r1", START);
        unit("r1", 1, blue);
        unit("r1", 3, red);
        assertThat(records.analyses().since(me, -1).counts())
                .hasSize(2)
                .allSatisfy(count -> assertThat(count.known()).isEqualTo(8));
    }

    @Test
    void whatTheTrialDoesNotHoldIsRefused() {
        run("r1", START);
        assertThat(refused(put("r1", 1, new Way("", null, null), "", 2, 1, 1)))
                .contains("round 1 of a trial is four bags", "Blue; Red");
        assertThat(refused(put("r1", 1, blue, "", 2, 1, 0))).contains("four bags");
        assertThat(put("r1", 1, blue, "", 2, 1, 1)).isInstanceOf(Applied.Stored.class);
        assertThat(refused(put("r1", 2, red, "", 2, 1, 1)))
                .isEqualTo("rounds 1 and 2 of a trial are thrown with the same candidate, Blue");
        records.trials().set(me, plan.id(), TrialPlan.State.PAUSED);
        assertThatThrownBy(() -> run("r2", START)).hasMessageContaining("is paused; resume it first");
        assertThatThrownBy(() -> records.applyAll(
                        me,
                        List.of(
                                new Operation.StartRun(
                                        op(), "r3", "s", Drill.TOTAL, START, false, "", null, null, Setup.plain()),
                                new Operation.ThrowTrial(op(), plan.id(), "r3")),
                        NOW))
                .hasMessageContaining("in runs of the drill trial, not of total");
    }

    /** Gone on with on another day, a block is thrown anew; the day may have changed everything. */
    @Test
    void aBlockWithALongBreakDoesNotCount() {
        run("r1", START);
        put("r1", 1, blue, "2026-06-01T18:00:00Z", 2, 1, 1);
        put("r1", 2, blue, "2026-06-01T18:01:00Z", 2, 1, 1);
        put("r1", 3, red, "2026-06-02T08:00:00Z", 2, 1, 1);
        put("r1", 4, red, "2026-06-02T08:01:00Z", 2, 1, 1);
        assertThat(trial().state().blocks()).isZero();
        put("r1", 5, blue, "2026-06-02T08:02:00Z", 2, 1, 1);
        put("r1", 6, blue, "2026-06-02T08:03:00Z", 2, 1, 1);
        assertThat(trial().state().blocks()).isEqualTo(1);
        assertThat(TrialDetail.lastAt(trial().runs().get(0))).isEqualTo("2026-06-02T08:03:00Z");
    }

    @Test
    void changesAreKeptAndUndone() {
        records.trials().set(me, plan.id(), TrialPlan.State.STOPPED);
        records.trials().delete(me, plan.id(), true);
        assertThat(records.trials().all(me)).isEmpty();
        List<Change> changes = records.changes(me, plan.id());
        assertThat(changes)
                .extracting(Change::says)
                .containsExactly("deleted", "state before: \"open\", after: \"stopped\"");
        records.undo(me, changes.get(0).id(), NOW);
        assertThat(trial().plan().state()).isEqualTo(TrialPlan.State.STOPPED);
        records.undo(me, changes.get(1).id(), NOW);
        assertThat(trial().plan()).isEqualTo(plan);
    }

    @Test
    void whatCannotBeSetUpIsRefused() {
        assertThatThrownBy(() -> records.trials().add(me, plan(" ", List.of(blue, red))))
                .isInstanceOf(Failure.BadInput.class)
                .hasMessageContaining("needs a name");
        assertThatThrownBy(() -> records.trials().add(me, plan("Blue or Red", List.of(blue, red))))
                .hasMessageContaining("is taken");
        assertThatThrownBy(() -> records.trials().add(me, plan("X", List.of(blue, new Way("b9", null, null)))))
                .hasMessageContaining("no bag set b9");
        assertThatThrownBy(() -> plan("X", List.of(blue, blue))).hasMessageContaining("thrown the same way");
        assertThatThrownBy(() -> records.trials().named(me, "Nowhere")).hasMessageContaining("there are Blue or Red");
    }

    @Test
    void candidatesAreCalledByWhatTellsThemApart() {
        List<Way> ways =
                List.of(new Way("b1", Face.SLOW, Approach.AGGRESSIVE), new Way("b1", Face.FAST, Approach.AGGRESSIVE));
        assertThat(TrialDetail.names(ways, Map.of("b1", "Blue"))).containsExactly("slow face", "fast face");
        assertThat(TrialDetail.by(ways)).containsExactly(Trait.FACE);
        assertThat(trial().names()).containsExactly("Blue", "Red");
    }

    @Test
    void aSharedSetUpComesBack() {
        SharedTrial shared = SharedTrial.read(
                SharedTrial.of(plan, Map.of("b1", "Blue", "b2", "Red")).text());
        TrialPlan again = shared.plan(name -> name.equals("Blue") ? "b1" : "b2", 7);
        assertThat(again.candidates()).isEqualTo(plan.candidates());
        assertThat(again.longest()).isEqualTo(25);
        assertThat(again.margin()).isEqualTo(0.5);
        assertThatThrownBy(() -> SharedTrial.read("{}")).hasMessageContaining("no candidates");
    }

    @Test
    void paceIsTheMedianBetweenRounds() {
        assertThat(records.pace(me)).isEqualTo(Pace.USUAL);
        assertThat(Pace.of(LongStream.rangeClosed(1, 11)
                        .mapToObj(i -> 1000 * (25 + i))
                        .toList()))
                .isEqualTo(new Pace(31 / 60.0, 11));
        run("r1", START);
        OffsetDateTime at = OffsetDateTime.parse(START);
        for (int number = 1; number <= 24; number++) {
            put("r1", number, (number - 1) / 2 % 2 == 0 ? blue : red, at.toString(), 1, 1, 2);
            at = at.plus(number == 12 ? Duration.ofHours(1) : Duration.ofSeconds(48));
        }
        assertThat(records.pace(me)).isEqualTo(new Pace(0.8, 22));
        assertThat(TrialOutlook.of(records, me, LocalDate.of(2026, 6, 1), plan.design())
                        .minutesPerRound())
                .isEqualTo(0.8);
    }
}
