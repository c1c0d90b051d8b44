package boardside.app.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boardside.app.json.Json;
import boardside.app.practice.BagSet;
import boardside.app.practice.Line;
import boardside.app.practice.Operation;
import boardside.app.practice.Player;
import boardside.app.practice.Round;
import boardside.app.practice.Setup;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Setting;
import boardside.engine.rules.Side;
import boardside.engine.skill.ComparisonAnswer.Comparison;
import boardside.engine.skill.FormAnswer.Form;
import boardside.engine.skill.Learned;
import boardside.engine.skill.Skill;
import boardside.engine.skill.Trait;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is kept between two questions never differs from what the store holds. */
class SkillsTest {
    private static final LocalDate DAY = LocalDate.of(2026, 5, 10);
    private static final Instant NOW = Instant.parse("2026-05-10T12:00:00Z");

    @TempDir
    Path folder;

    private Records records;
    private Skills skills;
    private int me;
    private int ops;

    @BeforeEach
    void open() {
        records = Stores.open(Stores.SQLITE.location(folder), 1);
        me = records.addPlayer("Me", Player.Hand.RIGHT, Player.Hand.LEFT).id();
        records.saveBag(me, BagSet.named("b", "Blue"));
        skills = new Skills(records);
    }

    @AfterEach
    void close() {
        records.close();
    }

    private String op() {
        return "01900000-0000-7000-8000-%012d".formatted(++ops);
    }

    private void run(String id, String start, int rounds, int in) {
        records.applyAll(
                me,
                List.of(new Operation.StartRun(
                        op(), id, "s" + id, Drill.TOTAL, start, false, "", null, null, Setup.plain())),
                NOW);
        for (int round = 1; round <= rounds; round++) {
            put(id, round, in);
        }
    }

    private void put(String id, int round, int in) {
        Line line = new Line(
                "b",
                null,
                null,
                BoardKind.REGULATION,
                Setting.PRACTICE,
                null,
                null,
                4,
                in,
                4 - in,
                0,
                Line.Misses.NONE,
                "",
                "");
        records.applyAll(
                me,
                List.of(new Operation.PutRound(id, new Round(round, Side.ME, op(), List.of(line), List.of()))),
                NOW);
    }

    private Form form() {
        Form form = (Form) skills.skill(me, DAY).form(30);
        Form fresh = (Form) Skills.of(records, me, DAY).form(30);
        assertThat(form.throwsCounted()).isEqualTo(fresh.throwsCounted());
        assertThat(form.rounds()).isEqualTo(fresh.rounds());
        // Moved on from the last answer, or begun with what was learned: to what a fit stops at, the same.
        assertThat(form.pointsPerRound().estimate())
                .isCloseTo(fresh.pointsPerRound().estimate(), within(0.05));
        assertThat(form.pointsPerRound().low()).isCloseTo(fresh.pointsPerRound().low(), within(0.1));
        return form;
    }

    @Test
    void whatIsKeptFollowsTheRecords() {
        run("r1", "2026-05-01T10:00:00Z", 3, 2);
        assertThat(form().rounds()).isEqualTo(3);
        Skill before = skills.skill(me, DAY);
        assertThat(skills.skill(me, DAY)).isSameAs(before);
        run("r2", "2026-05-02T10:00:00Z", 2, 4);
        assertThat(form().throwsCounted()).isEqualTo(20);
        put("r1", 3, 0);
        assertThat(form().throwsCounted()).isEqualTo(20);
        assertThat(form().inHole().estimate()).isLessThan(0.7);
        records.deleteRun(me, "r1", NOW);
        assertThat(form().rounds()).isEqualTo(2);
        records.editRun(me, "r2", new RunEdit("", "", true, null));
        assertThat(skills.skill(me, DAY).form(30).sentence()).contains("No counted throws");
        records.editRun(me, "r2", new RunEdit("", "", false, null));
        assertThat(form().rounds()).isEqualTo(2);
    }

    /** A restart of the program begins with what the last one learned; a file it cannot read is as good as none. */
    @Test
    void whatWasLearnedIsKeptInTheStore() {
        run("r1", "2026-05-01T10:00:00Z", 5, 2);
        assertThat(records.analyses().learned(me)).isEmpty();
        Skill first = skills.skill(me, DAY);
        String kept = records.analyses().learned(me).orElseThrow();
        assertThat(Json.read(kept, Learned.class)).isEqualTo(first.learned().orElseThrow());
        Skill next = new Skills(records).skill(me, DAY);
        assertThat(next.learned()).isEqualTo(first.learned());
        records.analyses().keepLearned(me, "{}");
        assertThat(new Skills(records).skill(me, DAY).form(30)).isInstanceOf(Form.class);
    }

    @Test
    void anEarlierDayLeavesTodaysAnswerAsItIs() {
        run("r1", "2026-05-01T10:00:00Z", 3, 2);
        run("r2", "2026-05-09T10:00:00Z", 3, 3);
        Skill today = skills.skill(me, DAY);
        assertThat(((Form) skills.skill(me, DAY.minusDays(5)).form(30)).rounds())
                .isEqualTo(3);
        assertThat(skills.skill(me, DAY)).isSameAs(today);
    }

    @Test
    void aBagSetsNewNameIsSaid() {
        run("r1", "2026-05-01T10:00:00Z", 3, 2);
        form();
        records.saveBag(me, BagSet.named("b", "Sky"));
        Comparison comparison = (Comparison) skills.skill(me, DAY).compare(List.of(Trait.BAG));
        assertThat(comparison.groups().get(0).key()).containsExactly("Sky");
    }

    @Test
    void aBackupPutBackReplacesWhatWasKept() {
        run("r1", "2026-05-01T10:00:00Z", 3, 2);
        form();
        records.refill(true, refill -> refill.player(restored(), "", "{}"));
        assertThat(skills.skill(me, DAY).form(30).sentence()).contains("No counted throws");
    }

    private static Player restored() {
        return new Player(1, "Me", Player.Hand.RIGHT, Player.Hand.LEFT, 0);
    }

    @Test
    void aRoundOfTwoBagSetsIsOneRound() {
        run("r1", "2026-05-01T10:00:00Z", 1, 4);
        Line two = new Line(
                "b",
                null,
                null,
                BoardKind.REGULATION,
                Setting.PRACTICE,
                null,
                null,
                2,
                1,
                1,
                0,
                Line.Misses.NONE,
                "",
                "");
        Line other = new Line(
                "",
                null,
                null,
                BoardKind.REGULATION,
                Setting.PRACTICE,
                null,
                null,
                2,
                2,
                0,
                0,
                Line.Misses.NONE,
                "",
                "");
        records.applyAll(
                me,
                List.of(new Operation.PutRound("r1", new Round(2, Side.ME, op(), List.of(two, other), List.of()))),
                NOW);
        assertThat(form().rounds()).isEqualTo(2);
    }
}
