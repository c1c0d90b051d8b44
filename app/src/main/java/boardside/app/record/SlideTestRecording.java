package boardside.app.record;

import boardside.app.practice.Moment;
import boardside.app.practice.Round;
import boardside.app.practice.SlideTest;
import boardside.app.store.Transaction;
import boardside.engine.physics.Board;
import boardside.engine.rules.Outcome;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** Applies slide tests, within one transaction. Every check comes before the first write. */
final class SlideTestRecording {
    /** Slides a test has at most. */
    static final int MOST = 100;

    private final Transaction rows;
    private final int player;
    private final Corrections corrections;
    private final String now;

    SlideTestRecording(Transaction rows, int player, Corrections corrections, String now) {
        this.rows = rows;
        this.player = player;
        this.corrections = corrections;
        this.now = now;
    }

    /**
     * Sets a slide test, keeping what it replaces.
     *
     * @return whether anything changed
     * @throws IllegalArgumentException if it breaks a rule
     */
    boolean put(SlideTest test) {
        if (test.id().isBlank()) {
            throw new IllegalArgumentException("a slide test needs an id");
        }
        Optional<SlideTest> stored = rows.slideTests().find(player, test.id());
        if (stored.isPresent() && test.op().compareTo(stored.get().op()) <= 0) {
            return false;
        }
        SlideTest.Tapped tapped = test.tapped();
        List<String> faults = tapped == null ? List.of() : faults(rows, player, tapped);
        if (!faults.isEmpty()) {
            throw new IllegalArgumentException(String.join("; ", faults));
        }
        if (stored.isPresent() && !Objects.equals(stored.get().tapped(), tapped)) {
            corrections.keepSlideTest(rows, player, stored.get(), test, now);
        }
        rows.slideTests().put(player, test);
        return true;
    }

    /** What is wrong with a slide test, a sentence each. */
    static List<String> faults(Transaction rows, int player, SlideTest.Tapped tapped) {
        List<String> faults = new ArrayList<>();
        try {
            Moment.of(tapped.at());
        } catch (IllegalArgumentException e) {
            faults.add(String.valueOf(e.getMessage()));
        }
        if (!tapped.bag().isEmpty() && rows.players().bag(player, tapped.bag()).isEmpty()) {
            faults.add("there is no bag set " + tapped.bag() + "; name it first");
        }
        int slides = tapped.slides().size();
        if (!(slides >= 1 && slides <= MOST)) {
            faults.add("a slide test has 1 to " + MOST + " slides, not " + slides);
        }
        Board board = Board.of(tapped.board());
        for (SlideTest.Slid slid : tapped.slides()) {
            if ((slid.outcome() == Outcome.ON) != (slid.rest() != null)) {
                faults.add("a bag that stays on the board stops somewhere there, and no other does");
            }
            on(board, slid.landing(), faults);
            Round.Point rest = slid.rest();
            if (rest != null) {
                on(board, rest, faults);
            }
        }
        return faults;
    }

    private static void on(Board board, Round.Point at, List<String> faults) {
        if (!board.holds(at.x(), at.y())) {
            faults.add("(" + at.x() + ", " + at.y() + ") is not on the board, which is " + -board.width() / 2 + " to "
                    + board.width() / 2 + " in across and 0 to " + Board.LENGTH
                    + " in up; leave out bags that missed it");
        }
    }
}
