package boardside.app.record;

import boardside.engine.physics.Bag;
import boardside.engine.physics.Batch;
import boardside.engine.physics.Board;
import boardside.engine.physics.Contact;
import boardside.engine.physics.Frame;
import boardside.engine.physics.Landing;
import boardside.engine.physics.LandingSpread;
import boardside.engine.physics.Lying;
import boardside.engine.physics.Normal;
import boardside.engine.physics.Range;
import boardside.engine.physics.Scene;
import boardside.engine.physics.Simulator;
import boardside.engine.physics.ThrowFit;
import boardside.engine.physics.ThrowModel;
import boardside.engine.rules.BoardKind;
import boardside.engine.tactics.Shot;
import boardside.engine.tactics.Spot;
import boardside.engine.tactics.advice.Call;
import java.util.List;

/**
 * A player's slides at an empty board and pushes through a block in front of the hole: what becomes of them, and how often
 * the block goes in. A push leaves the hand as {@link Call} says.
 */
public final class Pushes {
    /** The deepest block: six bags lie between hole and front edge. */
    public static final int DEEPEST = 6;

    /** Where a push would stop on an empty board, inches up, as the adviser has it. */
    private static final double PUSHED_TO = 47;

    private static final Board BOARD = Board.of(BoardKind.REGULATION);
    private static final int MODELS = 80;
    private static final int THROWS = 500;
    private static final long SEED = 1;
    private static final int NUMBERS = 4;

    /** Time between frames, s. */
    private static final double EVERY = 0.02;

    private Pushes() {}

    private static Scene scene(ThrowModel model, int depth) {
        return depth == 0
                ? Scene.empty(BOARD)
                : new Scene(BOARD, Contact.USUAL, List.of(new Lying(0, blockY(depth), model.bag())));
    }

    private static double blockY(int depth) {
        if (!(depth >= 1 && depth <= DEEPEST)) {
            throw new IllegalArgumentException("a block lies at depth 1 to " + DEEPEST + ", not " + depth);
        }
        return Board.HOLE_Y - 2 * Bag.RADIUS * depth;
    }

    private static Landing meant(ThrowModel model, int depth) {
        return depth == 0 ? model.landing() : new Call(Shot.PUSH, new Spot(0, PUSHED_TO), null, 0).release(model);
    }

    private static LandingSpread spread(ThrowModel model, Landing meant) {
        return new LandingSpread(model.spreadX(), model.spreadY(), model.spreadSpeed() * meant.speed(), 0);
    }

    /**
     * How often a push takes a block in.
     *
     * @param depth of the block, on the centre line, 1..{@link #DEEPEST}
     */
    public static Range collected(ThrowFit fit, int depth) {
        List<ThrowModel> draws = fit.draws();
        double[] shares = new double[MODELS];
        double[] equal = new double[MODELS];
        for (int i = 0; i < MODELS; i++) {
            ThrowModel model = draws.get((int) ((i + 0.5) * draws.size() / MODELS));
            Landing meant = meant(model, depth);
            Batch batch = Batch.landings(
                    new Simulator(scene(model, depth), model.bag()), meant, spread(model, meant), SEED, 0, THROWS);
            shares[i] = batch.bags().get(0).in() / (double) THROWS;
            equal[i] = 1.0 / MODELS;
        }
        return Range.of(shares, equal);
    }

    /**
     * One throw, seen from above.
     *
     * @param depth of the block on the centre line that is pushed, or 0 for a slide at an empty board
     * @param number which throw: 0 for the one meant, else one with the errors of its own
     */
    public static List<Frame> watch(ThrowModel model, int depth, int number) {
        Landing meant = meant(model, depth);
        LandingSpread spread = spread(model, meant);
        Landing thrown = number == 0
                ? meant
                : new Landing(
                        meant.x() + spread.x() * Normal.at(SEED, NUMBERS * number),
                        meant.y() + spread.y() * Normal.at(SEED, NUMBERS * number + 1),
                        Math.max(0, meant.speed() + spread.speed() * Normal.at(SEED, NUMBERS * number + 2)),
                        0);
        return new Simulator(scene(model, depth), model.bag()).watch(thrown, EVERY);
    }
}
