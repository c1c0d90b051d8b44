package boardside.engine.physics;

import boardside.engine.physics.Tap.Place;
import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Conditions;
import boardside.engine.rules.Outcome;
import boardside.engine.rules.Tally;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Throws of a known model through the simulator, recorded as a player would: for checks of what {@link ThrowFit} finds in
 * records, and for examples. Same seed, same throws. Mutable.
 */
public final class MadeUpThrows {
    private static final int NUMBERS = 7;

    private final ThrowModel model;
    private final long seed;
    private long next;

    /** Throws of one model, from the first of a seed on. */
    public MadeUpThrows(ThrowModel model, long seed) {
        this.model = model;
        this.seed = seed;
    }

    /**
     * A thrown bag with all there is to know of it.
     *
     * @param outcome how it ended
     * @param landing where it landed, on the board or not
     * @param rest where it rests, or null unless on
     * @param miss left, right, short or long, or empty unless off
     */
    public record Bag(
            Outcome outcome, Place landing, @Nullable Place rest, String miss) {}

    /** The next bag onto an empty board. */
    public Bag bag(Board board) {
        return bag(new Simulator(Scene.empty(board), model.bag()), model);
    }

    private Bag bag(Simulator simulator, ThrowModel today) {
        long k = NUMBERS * next++;
        double x = today.x() + today.spreadX() * Normal.at(seed, k);
        double y = today.landingY() + today.spreadY() * Normal.at(seed, k + 1);
        double speed = today.speed() * Math.max(0, 1 + today.spreadSpeed() * Normal.at(seed, k + 2));
        Outcome outcome = simulator.slide(x, y, 0, speed);
        Board board = simulator.scene().board();
        String miss = outcome != Outcome.OFF
                ? ""
                : x < -board.width() / 2 ? "left" : x > board.width() / 2 ? "right" : y < 0 ? "short" : "long";
        Place rest = outcome == Outcome.ON ? new Place(simulator.restX(0), simulator.restY(0)) : null;
        return new Bag(outcome, new Place(x, y), rest, miss);
    }

    /** Counts of the next bags. */
    public ThrowCount count(Board board, int bags, boolean withMisses) {
        Simulator simulator = new Simulator(Scene.empty(board), model.bag());
        int[] ends = new int[Outcome.values().length];
        int[] misses = new int[4];
        for (int i = 0; i < bags; i++) {
            Bag bag = bag(simulator, model);
            ends[bag.outcome().ordinal()]++;
            if (bag.outcome() == Outcome.OFF && withMisses) {
                misses[List.of("left", "right", "short", "long").indexOf(bag.miss())]++;
            }
        }
        Tally tally = new Tally(ends[Outcome.IN.ordinal()], ends[Outcome.ON.ordinal()], ends[Outcome.OFF.ordinal()]);
        return new ThrowCount(board, tally, misses[0], misses[1], misses[2], misses[3], 0, 0);
    }

    /**
     * The next bags, tapped where they landed and stopped, each with {@link Tap#ERROR}.
     *
     * @param factor of that day's friction against the usual
     */
    public TappedDay taps(@Nullable Conditions conditions, double factor, int bags) {
        ThrowModel today = model.onBoards(factor);
        Simulator simulator = new Simulator(Scene.empty(Board.of(BoardKind.REGULATION)), today.bag());
        List<Tap> taps = new ArrayList<>();
        for (int i = 0; i < bags; i++) {
            taps.add(tap(bag(simulator, today)));
        }
        return new TappedDay(conditions, false, taps);
    }

    private Tap tap(Bag bag) {
        long k = NUMBERS * (next - 1) + 3;
        Board board = Board.of(BoardKind.REGULATION);
        Place landing = board.holds(bag.landing().x(), bag.landing().y()) ? blurred(bag.landing(), k) : null;
        Place rest = bag.rest() == null ? null : blurred(bag.rest(), k + 2);
        return new Tap(bag.outcome(), landing, rest);
    }

    private Place blurred(Place place, long k) {
        return new Place(place.x() + Tap.ERROR * Normal.at(seed, k), place.y() + Tap.ERROR * Normal.at(seed, k + 1));
    }

    /**
     * The next slide test, on boards of which the friction is the usual one times a factor.
     *
     * @param conditions what the player calls them, or null
     * @param bags that landed on the board
     */
    public TappedDay test(@Nullable Conditions conditions, double factor, int bags) {
        ThrowModel today = model.onBoards(factor);
        Simulator simulator = new Simulator(Scene.empty(Board.of(BoardKind.REGULATION)), today.bag());
        List<Tap> taps = new ArrayList<>();
        for (int tries = 0; taps.size() < bags && tries < 20 * bags + 1000; tries++) {
            Tap tap = tap(bag(simulator, today));
            if (tap.landing() != null) {
                taps.add(tap);
            }
        }
        return new TappedDay(conditions, true, taps);
    }

    /** A day's factor on the friction, drawn as days differ. */
    public double day(@Nullable Conditions conditions) {
        long k = NUMBERS * next++;
        return StrictMath.exp(TappedDay.expected(conditions) + TappedDay.DAY_TO_DAY * Normal.at(seed, k));
    }
}
