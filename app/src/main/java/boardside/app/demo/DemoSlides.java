package boardside.app.demo;

import boardside.app.practice.BagSet;
import boardside.app.practice.Operation;
import boardside.app.practice.Player;
import boardside.app.practice.Round;
import boardside.app.practice.SlideTest;
import boardside.app.record.Records;
import boardside.engine.physics.Board;
import boardside.engine.physics.MadeUpThrows;
import boardside.engine.physics.Tap;
import boardside.engine.physics.TappedDay;
import boardside.engine.physics.ThrowModel;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Face;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The example player's slide tests, one in a while, on boards that play faster when it is dry. */
final class DemoSlides {
    private static final int TESTS = 5;
    private static final int DAYS_BETWEEN = 16;
    private static final int BAGS = 7;
    private static final ThrowModel THROWS = new ThrowModel(0.6, 2.7, 39.4, 5.2, 0.05, 19, 0.37);

    private DemoSlides() {}

    /** Adds tests to a player with bag sets. */
    static void add(Records records, Player player, LocalDate last, long seed) {
        BagSet bag = records.bags(player.id()).stream()
                .filter(set -> !set.retired())
                .findFirst()
                .orElseThrow();
        MadeUpThrows throwing = new MadeUpThrows(THROWS, seed);
        List<Operation> operations = new ArrayList<>();
        for (int test = TESTS; test > 0; test--) {
            Conditions conditions = Conditions.values()[test % Conditions.values().length];
            TappedDay day = throwing.test(conditions, throwing.day(conditions), BAGS);
            LocalDate date = last.minusDays((long) DAYS_BETWEEN * test - 3);
            operations.add(new Operation.KeepSlideTest(
                    records.ids().next(),
                    records.ids().next(),
                    new SlideTest.Tapped(
                            date + "T18:05:00Z", bag.id(), Face.SLOW, BoardKind.REGULATION, conditions, slides(day))));
        }
        records.applyAll(player.id(), operations, last.atStartOfDay().toInstant(ZoneOffset.UTC));
    }

    /** A tap lies on the drawing of the board. */
    private static List<SlideTest.Slid> slides(TappedDay day) {
        List<SlideTest.Slid> slides = new ArrayList<>();
        for (Tap tap : day.taps()) {
            Round.Point landing = point(tap.landing(), day.board());
            Round.Point rest = point(tap.rest(), day.board());
            if (landing != null && (tap.rest() == null || rest != null)) {
                slides.add(new SlideTest.Slid(tap.outcome(), landing, rest));
            }
        }
        return slides;
    }

    private static Round.@Nullable Point point(Tap.@Nullable Place place, Board board) {
        return place == null || !board.holds(place.x(), place.y())
                ? null
                : new Round.Point(Math.round(10 * place.x()) / 10.0, Math.round(10 * place.y()) / 10.0);
    }
}
