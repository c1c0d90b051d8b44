package boardside.app.record;

import boardside.app.practice.Exercise;
import boardside.app.practice.Setup;
import boardside.app.practice.Stakes;
import boardside.app.practice.Try;
import boardside.engine.rules.Side;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * How a run's tries stand. The page at the boards does the same ({@code trystanding.js}).
 *
 * @param sums by side; sides that have not thrown may be absent
 * @param end number of the try with which sudden death ended the run, or 0
 */
public record TryStanding(Map<Side, Sum> sums, int end) {
    /**
     * A side's tries, or its goes at a chain that are over.
     *
     * @param last whether the last one worked, or null without any
     */
    public record Sum(int tries, int worked, @Nullable Boolean last) {
        /** Nothing tried. */
        public static final Sum NONE = new Sum(0, 0, null);

        private Sum plus(boolean one) {
            return new Sum(tries + 1, worked + (one ? 1 : 0), one);
        }

        int misses() {
            return tries - worked;
        }
    }

    /** What a side has done. */
    public Sum of(Side side) {
        return sums.getOrDefault(side, Sum.NONE);
    }

    /**
     * After some tries.
     *
     * @param tries in order; those taken back do not count
     */
    public static TryStanding after(Setup setup, List<Try> tries) {
        Stakes stakes = setup.stakes();
        Integer misses = stakes == null ? null : stakes.misses();
        Exercise exercise = setup.exercise();
        boolean alone = exercise == null || exercise.partner().isEmpty();
        Map<Side, Counter> sides = new EnumMap<>(Side.class);
        int end = 0;
        for (Try tried : tries) {
            Try.Played played = tried.played();
            if (played == null) {
                continue;
            }
            sides.computeIfAbsent(played.side(), side -> new Counter()).count(played);
            boolean out = misses != null && sides.values().stream().anyMatch(side -> side.sum.misses() >= misses);
            // Two who take turns throw equally often.
            if (end == 0 && out && (alone || tries(sides, Side.VERSUS) >= tries(sides, Side.ME))) {
                end = tried.number();
            }
        }
        Map<Side, Sum> sums = new EnumMap<>(Side.class);
        sides.forEach((side, counter) -> sums.put(side, counter.sum));
        return new TryStanding(sums, end);
    }

    private static int tries(Map<Side, Counter> sides, Side side) {
        Counter counter = sides.get(side);
        return counter == null ? 0 : counter.sum.tries();
    }

    /** A go at a chain fails with the first shot that does not work or is laid by hand, and works with its last shot. */
    private static final class Counter {
        private Sum sum = Sum.NONE;
        private int go;
        private boolean over;

        private void count(Try.Played played) {
            Try.Link link = played.chain();
            if (link == null) {
                sum = sum.plus(played.worked());
                return;
            }
            if (go != link.go()) {
                go = link.go();
                over = false;
            }
            boolean failed = !played.worked() || link.step() > 1 && played.byHand();
            if (!over && (failed || link.step() == link.steps())) {
                sum = sum.plus(!failed);
                over = true;
            }
        }
    }
}
