package boardside.app.record;

import static org.assertj.core.api.Assertions.assertThat;

import boardside.app.practice.BagSet;
import boardside.app.practice.Change;
import boardside.app.practice.Operation;
import boardside.app.practice.Player;
import boardside.app.practice.Setup;
import boardside.app.practice.SlideTest;
import boardside.engine.physics.ThrowFit.Parameter;
import boardside.engine.plan.Due;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Drill;
import boardside.engine.rules.Face;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Slide tests: stored once, corrected, deleted, brought back, and what they make of the throw model. */
class SlideTestsTest {
    private static final Instant NOW = Instant.parse("2026-06-01T18:00:00Z");
    private static final LocalDate DAY = LocalDate.parse("2026-06-01");
    private static final String SLIDES = "0,14>1,33 -2,11>-2,29 1,16>2,36 -3,12>-3,31 0,20>in 2,13>2,34";

    @TempDir
    Path folder;

    private int ops;

    private String op() {
        return "01900000-0000-7000-8000-%012d".formatted(++ops);
    }

    private static SlideTest.Tapped tapped(String bag, String slides) {
        return tapped("2026-06-01T18:00:00+02:00", bag, slides);
    }

    private static SlideTest.Tapped tapped(String at, String bag, String slides) {
        List<String> faults = new ArrayList<>();
        List<SlideTest.Slid> read = SlideText.read(slides, faults);
        assertThat(faults).isEmpty();
        assertThat(SlideText.of(read)).isEqualTo(slides);
        return new SlideTest.Tapped(
                at, bag, bag.isEmpty() ? null : Face.SLOW, BoardKind.REGULATION, Conditions.NORMAL, read);
    }

    private static Applied apply(Records records, int player, Operation operation) {
        return records.apply(player, List.of(operation), NOW).get(0);
    }

    private static int me(Records records) {
        int me = records.addPlayer("Me", Player.Hand.RIGHT, Player.Hand.LEFT).id();
        records.saveBag(me, BagSet.named("b1", "Barley"));
        records.saveBag(me, BagSet.named("b2", "Rye"));
        return me;
    }

    @ParameterizedTest
    @EnumSource
    void aTestIsStoredOnceCorrectedDeletedAndBroughtBack(Stores kind) {
        try (Records records = Stores.open(kind.location(folder), 1)) {
            int me = me(records);
            String first = op();
            SlideTest.Tapped tapped = tapped("b1", SLIDES);
            Operation keep = new Operation.KeepSlideTest(first, "t1", tapped);
            assertThat(apply(records, me, keep)).isInstanceOf(Applied.Stored.class);
            long version = records.player(me).version();
            assertThat(apply(records, me, keep)).isInstanceOf(Applied.Repeated.class);
            assertThat(records.player(me).version()).isEqualTo(version);
            assertThat(records.slideTests().latest(me, 5)).containsExactly(new SlideTest("t1", first, tapped));

            String older = op();
            SlideTest.Tapped mended = tapped("b1", "0,14>1,33");
            assertThat(apply(records, me, new Operation.KeepSlideTest(op(), "t1", mended)))
                    .isInstanceOf(Applied.Stored.class);
            assertThat(apply(records, me, new Operation.KeepSlideTest(older, "t1", tapped)))
                    .isInstanceOf(Applied.Repeated.class);
            Change correction = records.changes(me, "t1").get(0);
            assertThat(correction.says()).contains("0,20>in").contains("\"0,14>1,33\"");
            records.undo(me, correction.id(), NOW);
            assertThat(records.slideTests().find(me, "t1").orElseThrow().tapped())
                    .isEqualTo(tapped);

            String gone = records.ids()
                    .nextAfter(records.slideTests().find(me, "t1").orElseThrow().op());
            apply(records, me, new Operation.KeepSlideTest(gone, "t1", null));
            assertThat(records.slideTests().latest(me, 5)).isEmpty();
            assertThat(records.slideTests().within(me, "2026-01-01", "2026-12-31"))
                    .isEmpty();
            Change deletion = records.changes(me, "t1").get(0);
            assertThat(deletion.says()).isEqualTo("deleted");
            records.undo(me, deletion.id(), NOW);
            assertThat(records.slideTests().within(me, "2026-06-01", "2026-06-01"))
                    .extracting(SlideTest::tapped)
                    .containsExactly(tapped);
            assertThat(records.check()).isEmpty();
            assertThat(records.isEmpty()).isFalse();
        }
    }

    /** A plan asks for a slide test where there was none, the longer ago it was, and where the boards play otherwise now. */
    @ParameterizedTest
    @EnumSource
    void aPlanGoesByTheLastTestAndByWhatWasSaidSince(Stores kind) {
        try (Records records = Stores.open(kind.location(folder), 1)) {
            int me = me(records);
            assertThat(boards(records, me)).isEqualTo(Due.Boards.UNTESTED);

            SlideTest.Tapped tapped = tapped("2026-05-20T18:00:00+02:00", "b1", SLIDES);
            apply(records, me, new Operation.KeepSlideTest(op(), "t1", tapped));
            assertThat(boards(records, me)).isEqualTo(new Due.Boards(12, false));
            start(records, me, "before", "2026-05-19T18:00:00Z", Conditions.FAST);
            assertThat(boards(records, me)).isEqualTo(new Due.Boards(12, false));
            start(records, me, "unsaid", "2026-05-21T18:00:00Z", null);
            assertThat(boards(records, me)).isEqualTo(new Due.Boards(12, false));
            start(records, me, "damp", "2026-05-22T18:00:00Z", Conditions.SLOW);
            assertThat(boards(records, me)).isEqualTo(new Due.Boards(12, true));
            start(records, me, "dry", "2026-05-23T18:00:00Z", Conditions.NORMAL);
            assertThat(boards(records, me)).isEqualTo(new Due.Boards(12, false));

            apply(records, me, new Operation.KeepSlideTest(op(), "t1", null));
            assertThat(boards(records, me)).isEqualTo(Due.Boards.UNTESTED);
        }
    }

    private static Due.Boards boards(Records records, int me) {
        Player player = records.player(me);
        return Planning.state(records, player, Skills.of(records, me, DAY), DAY)
                .due()
                .boards();
    }

    private void start(Records records, int me, String run, String at, @Nullable Conditions conditions) {
        Setup setup = Setup.plain().with(draft -> draft.conditions = conditions);
        apply(records, me, new Operation.StartRun(op(), run, run, Drill.TOTAL, at, false, "", null, null, setup));
    }

    @Test
    void whatCannotBeIsRefusedWithNothingStored() {
        try (Records records = Stores.open(Stores.SQLITE.location(folder), 1)) {
            int me = me(records);
            for (SlideTest.Tapped wrong : List.of(
                    tapped("b1", "0,14>1,49"),
                    tapped("b1", "13,14>1,30"),
                    tapped("nothing", "0,14>1,30"),
                    tapped("yesterday", "b1", "0,14>1,30"),
                    new SlideTest.Tapped("2026-06-01T18:00:00Z", "b1", null, BoardKind.REGULATION, null, List.of()))) {
                Applied applied = apply(records, me, new Operation.KeepSlideTest(op(), "t1", wrong));
                assertThat(applied).isInstanceOf(Applied.Refused.class);
            }
            SlideTest.Tapped beside = tapped("b1", "7,14>7,30");
            SlideTest.Tapped narrow =
                    new SlideTest.Tapped(beside.at(), "b1", null, BoardKind.NARROW, null, beside.slides());
            assertThat(apply(records, me, new Operation.KeepSlideTest(op(), "t1", narrow)))
                    .isEqualTo(new Applied.Refused(
                            "01900000-0000-7000-8000-%012d".formatted(ops),
                            "(7.0, 14.0) is not on the board, which is -6.0 to 6.0 in across and 0 to 48.0 in up;"
                                    + " leave out bags that missed it; (7.0, 30.0) is not on the board, which is -6.0 to"
                                    + " 6.0 in across and 0 to 48.0 in up; leave out bags that missed it"));
            assertThat(records.slideTests().latest(me, 5)).isEmpty();
        }
    }

    /** Taps narrow what is known of the throws; not the friction, which a slide's length makes together with the steepness. */
    @Test
    void testsSharpenTheThrowModel() {
        try (Records records = Stores.open(Stores.SQLITE.location(folder), 1)) {
            int me = me(records);
            Throws before = Throws.of(records, me, DAY);
            double[] widths = widths(before);
            assertThat(before.recorded()).isFalse();
            for (int i = 1; i <= 4; i++) {
                apply(
                        records,
                        me,
                        new Operation.KeepSlideTest(
                                op(), "t" + i, tapped("2026-05-0" + i + "T18:00:00Z", "b1", SLIDES)));
            }
            Throws after = Throws.of(records, me, DAY);
            assertThat(after.usual().name()).isEqualTo("Barley");
            assertThat(after.usual().tapped()).isEqualTo(24);
            double[] sharper = widths(after);
            assertThat(sharper[0]).isLessThan(0.6 * widths[0]);
            assertThat(sharper[1]).isLessThan(0.7 * widths[1]);
            assertThat(sharper[2]).isLessThan(0.7 * widths[2]);
        }
    }

    private static double[] widths(Throws all) {
        return List.of(Parameter.SPREAD_X, Parameter.SLIDE, Parameter.SPREAD_ALONG).stream()
                .mapToDouble(parameter -> all.usual().fit().range(parameter).width())
                .toArray();
    }

    /** A bag set of which nothing is known yet can be tested all the same; one put away is not offered. */
    @Test
    void aNewBagSetCanBeTested() {
        try (Records records = Stores.open(Stores.SQLITE.location(folder), 1)) {
            int me = me(records);
            assertThat(Throws.of(records, me, DAY).groups())
                    .extracting(Throws.Group::name)
                    .containsExactly("Barley", "Rye");
            records.saveBag(me, new BagSet("b2", "Rye", null, null, null, "", "", true));
            assertThat(Throws.of(records, me, DAY).groups())
                    .extracting(Throws.Group::name)
                    .containsExactly("Barley");
        }
    }

    /** Two tests of one day on boards that play alike are one day; what they say together is what each is answered with. */
    @Test
    void testsOfADayBelongTogether() {
        try (Records records = Stores.open(Stores.SQLITE.location(folder), 1)) {
            int me = me(records);
            SlideTest.Tapped morning = tapped("2026-06-01T09:00:00Z", "b1", "0,14>1,33 -2,11>-2,29");
            SlideTest.Tapped evening = tapped("2026-06-01T19:00:00Z", "b1", "1,16>2,36");
            apply(records, me, new Operation.KeepSlideTest(op(), "t1", morning));
            apply(records, me, new Operation.KeepSlideTest(op(), "t2", evening));
            Throws.Group group = Throws.of(records, me, DAY).usual();
            assertThat(group.day(morning)).isEqualTo(group.day(evening));
            assertThat(group.day(morning).orElseThrow().slides()).isEqualTo(3);
            assertThat(Throws.of(records, me, DAY.plusYears(2)).usual().day(morning))
                    .as("older than a year")
                    .isEmpty();
        }
    }

    /** What a fit rests on decides whether it is made again: nothing else changes, nothing else is worked out. */
    @Test
    void aFitIsKeptAsLongAsItsRecordsStay() {
        try (Records records = Stores.open(Stores.SQLITE.location(folder), 1)) {
            int me = me(records);
            for (int i = 1; i <= 2; i++) {
                apply(
                        records,
                        me,
                        new Operation.KeepSlideTest(
                                op(), "t" + i, tapped("2026-05-0" + i + "T18:00:00Z", "b1", SLIDES)));
            }
            Throws first = Throws.of(records, me, DAY);
            assertThat(first.usual().known())
                    .as("nothing is worked out unasked")
                    .isEmpty();
            assertThat(Throws.of(records, me, DAY)).isSameAs(first);
            apply(records, me, new Operation.KeepSlideTest(op(), "t3", tapped("b2", SLIDES)));
            Throws second = Throws.of(records, me, DAY);
            assertThat(second.groups()).hasSize(2);
            assertThat(second.usual()).isSameAs(first.usual());
            apply(records, me, new Operation.KeepSlideTest(op(), "t4", tapped("b1", SLIDES)));
            Throws third = Throws.of(records, me, DAY);
            assertThat(third.usual()).isNotSameAs(first.usual());
            assertThat(third.groups().get(1))
                    .as("it begins with the usual bag")
                    .isNotSameAs(second.groups().get(1));
        }
    }
}
