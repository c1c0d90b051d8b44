package boardside.engine.tactics.advice;

import boardside.engine.physics.Bag;
import boardside.engine.physics.Board;
import boardside.engine.physics.Scene;
import boardside.engine.physics.Simulator;
import boardside.engine.physics.ThrowModel;
import boardside.engine.rules.Approach;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Outcome;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Spot;
import boardside.engine.tactics.Target;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Rounds of real bags: two throwers, the simulator, and base policies. */
final class BoardTurns implements Turns<Lie, Call> {
    private static final Board BOARD = Board.of(BoardKind.REGULATION);

    /** A struck bag counts as moved from this many inches on. */
    private static final double MOVED = 5;

    /** What share of samples of a shot that is not simulated work; {@link Evidence} weighs them as they should be. */
    private static final double HALF = 0.5;

    /** A cut that does not turn stays on the side it set out from, inches from the middle. */
    private static final double SET_OUT = 7;

    private final List<ThrowModel> mine;
    private final ThrowModel theirs;
    private final Bag[] myBags;
    private final Bag theirBag;
    private final Approach myApproach;
    private final Approach theirApproach;

    BoardTurns(Thrower me, Thrower versus) {
        mine = me.draws();
        theirs = versus.usual();
        myBags = mine.stream().map(ThrowModel::bag).toArray(Bag[]::new);
        theirBag = theirs.bag();
        myApproach = me.approach();
        theirApproach = versus.approach();
    }

    @Override
    public int left(Lie lie) {
        return lie.left();
    }

    @Override
    public int turn(Lie lie) {
        return lie.myTurn ? lie.leftMe : Luck.SIDE + lie.leftVersus;
    }

    @Override
    public Call base(Lie lie) {
        return BasePlay.of(lie, lie.myTurn ? myApproach : theirApproach);
    }

    @Override
    public int result(Lie lie) {
        return lie.net() + Lie.MOST;
    }

    @Override
    public int results() {
        return 2 * Lie.MOST + 1;
    }

    @Override
    public int draws() {
        return mine.size();
    }

    @Override
    public Lie play(Lie lie, Call call, int draw, Luck luck) {
        int turn = turn(lie);
        ThrowModel model = lie.myTurn ? mine.get(draw) : theirs;
        if (call.fromTriesAlone()) {
            return tried(lie, call, draw, model, luck, HALF);
        }
        return thrown(lie, call, draw, model, luck.normal(turn, 0), luck.normal(turn, 1), luck.normal(turn, 2));
    }

    /** The state after a shot that works as often as it does before any try; of the first draw. */
    Lie really(Lie lie, Call call, Luck luck) {
        ThrowModel model = lie.myTurn ? mine.get(0) : theirs;
        return call.fromTriesAlone()
                ? tried(lie, call, 0, model, luck, Evidence.statedPrior(call.shot()))
                : play(lie, call, 0, luck);
    }

    /** Bags thrown at an empty board with the usual slide; for one thread. */
    Alone alone() {
        return new Alone();
    }

    /** See {@link #alone}. */
    final class Alone {
        private final Simulator mineAlone = new Simulator(Scene.empty(BOARD), myBags[0]);
        private final Simulator theirsAlone = new Simulator(Scene.empty(BOARD), theirBag);

        /** Points of the next bag, had it been thrown so. */
        int points(Lie lie, Luck luck) {
            ThrowModel model = lie.myTurn ? mine.get(0) : theirs;
            int turn = turn(lie);
            return (lie.myTurn ? mineAlone : theirsAlone)
                    .slide(
                            model.x() + model.spreadX() * luck.normal(turn, 0),
                            model.landingY() + model.spreadY() * luck.normal(turn, 1),
                            0,
                            model.speed() * Math.max(0, 1 + model.spreadSpeed() * luck.normal(turn, 2)))
                    .points();
        }
    }

    private Lie thrown(Lie lie, Call call, int draw, ThrowModel model, double across, double along, double fast) {
        Bag bag = lie.myTurn ? myBags[draw] : theirBag;
        Simulator simulator = new Simulator(lie.scene(BOARD, myBags[draw], theirBag), bag);
        simulator.slide(
                call.x(model) + model.spreadX() * across,
                call.y(model) + model.spreadY() * along,
                0,
                call.speed(model) * Math.max(0, 1 + model.spreadSpeed() * fast));
        return lie.after(new Simulated(simulator));
    }

    /**
     * A shot that is not simulated: works in half of the samples, and then goes in and touches nothing (a drag takes the
     * nearest of the thrower's bags in with it). A cut that fails slid straight on the side it set out from; a drag that fails
     * came down as an airmail does, a roll ran off.
     */
    private Lie tried(Lie lie, Call call, int draw, ThrowModel model, Luck luck, double chance) {
        int turn = turn(lie);
        int taken = call.shot() == Shot.DRAG ? nearest(lie) : -1;
        if (luck.uniform(turn, 3) < chance) {
            return lie.after(new Forced(lie, Outcome.IN, taken));
        }
        if (call.shot() == Shot.ROLL) {
            return lie.after(new Forced(lie, Outcome.OFF, -1));
        }
        Call straight = call.shot() == Shot.DRAG
                ? new Call(Shot.AIRMAIL, Spot.HOLE, null, -1)
                : new Call(
                        Shot.SLIDE,
                        new Spot(call.shot() == Shot.CUT_LEFT ? SET_OUT : -SET_OUT, Spot.HOLE.y()),
                        null,
                        -1);
        Lie after =
                thrown(lie, straight, draw, model, luck.normal(turn, 0), luck.normal(turn, 1), luck.normal(turn, 2));
        // What failed is not to have worked by chance.
        return worked(lie, call, after) ? lie.after(new Forced(lie, Outcome.OFF, -1)) : after;
    }

    private static int nearest(Lie lie) {
        int nearest = -1;
        for (int i = 0; i < lie.count(); i++) {
            if (lie.mine[i] == lie.myTurn && (nearest < 0 || toHole(lie, i) < toHole(lie, nearest))) {
                nearest = i;
            }
        }
        return nearest;
    }

    private static double toHole(Lie lie, int bag) {
        return Math.hypot(lie.x[bag], lie.y[bag] - Spot.HOLE.y());
    }

    @Override
    public boolean worked(Lie before, Call call, Lie after) {
        return switch (call.shot()) {
            case SLIDE, CUT_LEFT, CUT_RIGHT, ROLL, AIRMAIL ->
                call.aim().equals(Spot.HOLE) || call.shot() != Shot.SLIDE
                        ? after.lastIn
                        : after.lastIn || Lie.now(after, -1) >= 0;
            case BLOCK, BACK_BLOCK -> lies(call.target(), after);
            case PUSH -> after.lastIn || moved(before, call.bag(), after);
            case DRAG -> after.lastIn && in(before, after) >= 2;
        };
    }

    private static int in(Lie before, Lie after) {
        return before.myTurn ? after.inMe - before.inMe : after.inVersus - before.inVersus;
    }

    private static boolean lies(@Nullable Target target, Lie after) {
        int at = Lie.now(after, -1);
        if (at < 0 || target == null) {
            return false;
        }
        // Inches from metres may pass the edge by a rounding.
        double x = Math.max(-Spot.HALF_WIDTH, Math.min(Spot.HALF_WIDTH, after.x[at]));
        double y = Math.max(0, Math.min(Spot.LENGTH, after.y[at]));
        return target.holds(new Spot(x, y), Board.REGULATION_WIDTH);
    }

    /** Whether the push did its work: a bag of one's own is in, one of theirs has left its place and is not. */
    private static boolean moved(Lie before, int bag, Lie after) {
        boolean own = before.mine[bag] == before.myTurn;
        int at = Lie.now(after, bag);
        if (own) {
            return in(before, after) > (after.lastIn ? 1 : 0);
        }
        int theirsIn = before.myTurn ? after.inVersus - before.inVersus : after.inMe - before.inMe;
        return theirsIn == 0
                && (at < 0 || Math.hypot(after.x[at] - before.x[bag], after.y[at] - before.y[bag]) >= MOVED);
    }

    private record Simulated(Simulator simulator) implements Lie.Ends {
        @Override
        public boolean in(int bag) {
            return simulator.outcome(bag) == Outcome.IN;
        }

        @Override
        public boolean on(int bag) {
            return simulator.outcome(bag) == Outcome.ON;
        }

        @Override
        public double x(int bag) {
            return simulator.restX(bag);
        }

        @Override
        public double y(int bag) {
            return simulator.restY(bag);
        }
    }

    /** The thrown bag ends as said, a bag may go in with it, the rest lie as they lay. */
    private record Forced(Lie lie, Outcome thrown, int taken) implements Lie.Ends {
        @Override
        public boolean in(int bag) {
            return bag == 0 ? thrown == Outcome.IN : bag - 1 == taken;
        }

        @Override
        public boolean on(int bag) {
            return bag > 0 && bag - 1 != taken;
        }

        @Override
        public double x(int bag) {
            return lie.x[bag - 1];
        }

        @Override
        public double y(int bag) {
            return lie.y[bag - 1];
        }
    }
}
