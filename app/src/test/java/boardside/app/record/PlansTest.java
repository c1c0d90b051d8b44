package boardside.app.record;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.practice.Operation;
import boardside.app.practice.PlannedBlock;
import boardside.app.practice.Player;
import boardside.app.practice.SessionPlan;
import boardside.app.practice.SessionPlan.Placed;
import boardside.app.practice.Setup;
import boardside.engine.plan.Activity;
import boardside.engine.plan.Energy;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Blocks of a plan taken at the boards, and sent later. */
@ParameterizedClass
@EnumSource
class PlansTest {
    private static final Instant NOW = Instant.parse("2026-06-01T18:00:00Z");
    private static final LocalDate DAY = LocalDate.of(2026, 6, 1);

    private final Stores kind;

    @TempDir
    Path folder;

    private Records records;
    private int me;
    private SessionPlan plan;

    PlansTest(Stores kind) {
        this.kind = kind;
    }

    @BeforeEach
    void open() {
        records = Stores.open(kind.location(folder), 1);
        me = records.addPlayer("Me", Player.Hand.RIGHT, Player.Hand.LEFT).id();
        plan = records.plans()
                .follow(
                        me,
                        new SessionPlan(
                                "",
                                DAY.toString(),
                                60,
                                Energy.NORMAL,
                                1,
                                Set.of(BoardKind.REGULATION),
                                false,
                                false,
                                null,
                                "",
                                List.of(
                                        placed("total", Activity.TOTAL),
                                        placed("break", Activity.BREAK),
                                        placed("race", Activity.RACE),
                                        placed("total", Activity.TOTAL))));
    }

    @AfterEach
    void close() {
        records.close();
    }

    private static Placed placed(String choice, Activity activity) {
        return new Placed(
                new PlannedBlock(
                        choice, activity, 10, 40, 10, List.of(), null, BoardKind.REGULATION, null, null, "", "", false),
                "",
                "");
    }

    private String run(String id) {
        records.applyAll(
                me,
                List.of(new Operation.StartRun(
                        records.ids().next(),
                        id,
                        "s",
                        Drill.TOTAL,
                        "2026-06-01T18:00:00Z",
                        false,
                        "",
                        null,
                        null,
                        Setup.plain())),
                NOW);
        return id;
    }

    private Applied take(String choice, int place, String run) {
        return records.apply(
                        me, List.of(new Operation.TakeBlock(records.ids().next(), plan.id(), choice, place, run)), NOW)
                .get(0);
    }

    private List<String> runs() {
        return records.plans().find(me, plan.id()).orElseThrow().blocks().stream()
                .map(Placed::run)
                .toList();
    }

    @Test
    void aBlockIsTakenOnceWhereItStood() {
        run("r1");
        assertThat(take("total", 3, "r1")).isInstanceOf(Applied.Stored.class);
        assertThat(take("total", 3, "r1")).isInstanceOf(Applied.Repeated.class);
        assertThat(runs()).containsExactly("", "", "", "r1");
        assertThat(records.plans().of(me, "r1").orElseThrow().id()).isEqualTo(plan.id());
    }

    @Test
    void aPauseIsDoneWithoutARun() {
        assertThat(take("break", 1, "")).isInstanceOf(Applied.Stored.class);
        assertThat(take("break", 1, "")).isInstanceOf(Applied.Repeated.class);
        List<Placed> blocks = records.plans().find(me, plan.id()).orElseThrow().blocks();
        assertThat(blocks.get(1).doneAt()).isNotEmpty();
        // A drill is not done by saying so.
        assertThat(take("race", 2, "")).isInstanceOf(Applied.Refused.class);
    }

    /** The phone was away while another device swapped: the block is found where it stands now. */
    @Test
    void aBlockThatASwapHasMovedIsFoundByItsChoice() {
        records.plans()
                .swap(
                        me,
                        plan.id(),
                        0,
                        List.of(placed("volume", Activity.VOLUME), placed("climb", Activity.CLIMB)),
                        DAY);
        run("r1");
        assertThat(take("race", 2, "r1")).isInstanceOf(Applied.Stored.class);
        assertThat(runs()).containsExactly("", "", "", "r1", "");
        run("r2");
        // The first of the two rounds of four was swapped away: it is the other.
        assertThat(take("total", 0, "r2")).isInstanceOf(Applied.Stored.class);
        assertThat(runs()).containsExactly("", "", "", "r1", "r2");
    }

    @Test
    void whatIsNotThereAnyMoreIsRefusedAndTheRunIsKept() {
        records.plans().swap(me, plan.id(), 2, List.of(), DAY);
        run("r1");
        Applied refused = take("race", 2, "r1");
        assertThat(((Applied.Refused) refused).message())
                .contains("no block \"race\"")
                .contains("what was thrown is kept without it");
        assertThat(records.run(me, "r1")).isPresent();
        Applied gone = records.apply(
                        me, List.of(new Operation.TakeBlock(records.ids().next(), "none", "race", 2, "r1")), NOW)
                .get(0);
        assertThat(((Applied.Refused) gone).message()).contains("there is no plan none");
        // A run that is not there is no block's.
        assertThat(take("total", 0, "nothing")).isInstanceOf(Applied.Refused.class);
    }
}
