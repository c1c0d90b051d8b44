package boardside.engine.tactics.advice;

import boardside.engine.physics.Board;
import boardside.engine.rules.Approach;
import boardside.engine.tactics.Depth;
import boardside.engine.tactics.Lane;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Spot;
import boardside.engine.tactics.Target;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** The shots worth a thought on a board. */
final class Candidates {
    private static final double WIDTH = Board.REGULATION_WIDTH;

    /** Two bags touch when their middles are this far apart, inches. */
    private static final double APART = 2 * Spot.RADIUS;

    /** Where a push would stop on an empty board, inches up: well beyond the hole. */
    private static final double PUSHED_TO = 47;

    /** Bags from here up to behind the hole are gone at, inches up from the front edge. */
    private static final double NEAREST = 10;

    private static final double BEYOND = 42;

    /** A bag struck this far off its middle goes aside, inches. */
    private static final double GLANCE = 3.5;

    /** A bag of mine so near the hole's middle may be dragged in, inches. */
    private static final double DRAGGED = 8.5;

    /** A bag so near the centre line bars the way, inches. */
    private static final double HALF_WAY = 6;

    private static final double ASIDE = 6.5;

    private Candidates() {}

    /** All of them, the base policies' own among them, none twice. */
    static List<Call> of(Lie lie) {
        Set<Call> calls = new LinkedHashSet<>();
        calls.add(new Call(Shot.SLIDE, Spot.HOLE, null, -1));
        calls.add(BasePlay.of(lie, Approach.AGGRESSIVE));
        calls.add(new Call(Shot.AIRMAIL, Spot.HOLE, null, -1));
        boolean barred = false;
        boolean dragged = false;
        for (int i = 0; i < lie.count(); i++) {
            boolean before = lie.y[i] < Spot.HOLE.y();
            barred |= before && Math.abs(lie.x[i]) < HALF_WAY && lie.y[i] > NEAREST;
            dragged |= lie.mine[i] && Math.hypot(lie.x[i], lie.y[i] - Spot.HOLE.y()) < DRAGGED;
            if (lie.y[i] > NEAREST && lie.y[i] < BEYOND) {
                pushes(lie, i, calls);
            }
        }
        if (barred) {
            calls.add(BasePlay.aside(lie));
            calls.add(new Call(Shot.CUT_LEFT, Spot.HOLE, null, -1));
            calls.add(new Call(Shot.CUT_RIGHT, Spot.HOLE, null, -1));
            calls.add(new Call(Shot.ROLL, Spot.HOLE, null, -1));
        }
        if (dragged) {
            calls.add(new Call(Shot.DRAG, Spot.HOLE, null, -1));
        }
        for (Depth depth : List.of(Depth.ONE, Depth.TWO, Depth.THREE)) {
            for (Lane lane : Lane.values()) {
                if (lane == Lane.MIDDLE || depth == Depth.TWO) {
                    placed(lie, Shot.BLOCK, new Target(depth, lane), calls);
                }
            }
        }
        for (Lane lane : Lane.values()) {
            placed(lie, Shot.BACK_BLOCK, new Target(Depth.BACK, lane), calls);
        }
        return List.copyOf(calls);
    }

    private static void placed(Lie lie, Shot shot, Target target, Set<Call> calls) {
        Spot middle = target.centre(WIDTH);
        for (int i = 0; i < lie.count(); i++) {
            if (Math.hypot(lie.x[i] - middle.x(), lie.y[i] - middle.y()) < APART - 1) {
                return;
            }
        }
        calls.add(new Call(shot, middle, target, -1));
    }

    private static void pushes(Lie lie, int bag, Set<Call> calls) {
        if (lie.y[bag] < Spot.HOLE.y() - 1) {
            calls.add(through(lie, bag));
        }
        if (!lie.mine[bag]) {
            for (double glance : new double[] {-GLANCE, GLANCE}) {
                calls.add(push(lie.x[bag] + glance, bag));
            }
        }
    }

    /** A push that drives a bag at the hole: the two touch on the line from the hole's middle through the bag's. */
    static Call through(Lie lie, int bag) {
        double dx = -lie.x[bag];
        double dy = Spot.HOLE.y() - lie.y[bag];
        double length = Math.hypot(dx, dy);
        double across = length > 0 ? dx / length * APART : 0;
        return push(lie.x[bag] - Math.max(-ASIDE + 1, Math.min(ASIDE - 1, across)), bag);
    }

    private static Call push(double x, int bag) {
        double aim = Math.max(-Spot.HALF_WIDTH, Math.min(Spot.HALF_WIDTH, x));
        return new Call(Shot.PUSH, new Spot(aim, PUSHED_TO), null, bag);
    }

    /** The calls of one kind are told as one: the same shot at the same bag or target. */
    static List<Object> kind(Call call) {
        List<Object> kind = new ArrayList<>(List.of(call.shot(), call.bag()));
        if (call.target() != null) {
            kind.add(call.target());
        }
        if (call.shot() == Shot.SLIDE) {
            kind.add(call.aim());
        }
        return kind;
    }
}
