package boardside.engine.physics;

import java.util.function.IntToDoubleFunction;

/**
 * How a bag wants to be thrown to reach the hole, against the player's usual bag: thrown at the same elevation from the
 * usual 27 ft, only the speed changed.
 */
public final class SpeedSheet {
    /** From board to board, inches. */
    private static final double DISTANCE = 324;

    /** Where a hand lets go, inches up (common practice, no source; a foot more changes no answer by a tenth). */
    private static final double HEIGHT = 30;

    /** How much slower and faster boards are in the answers: a step of the conditions. */
    private static final double SLOWER = StrictMath.exp(TappedDay.STEP);

    private final ThrowFit usual;
    private final Flight flight;
    private final double elevation;
    private final double usualSpeed;

    /**
     * What to compare with.
     *
     * @param usual the player's usual bag
     */
    public SpeedSheet(ThrowFit usual) {
        this.usual = usual;
        Board board = Board.of(Board.REGULATION_WIDTH, Board.FRONT_HEIGHT);
        flight = new Flight(board, usual.mean().bag(), Air.USUAL);
        double landing = landing(usual.mean());
        double wanted = usual.mean().steepness() - board.slope();
        double low = 15;
        double high = 75;
        for (int step = 0; step < 40; step++) {
            double middle = (low + high) / 2;
            speed(middle, landing);
            if (flight.flightAngle() < wanted) {
                low = middle;
            } else {
                high = middle;
            }
        }
        elevation = (low + high) / 2;
        usualSpeed = speed(elevation, landing);
    }

    /**
     * How one bag is thrown.
     *
     * @param slide how far it slides, inches
     * @param landing where to land it so that it comes to the hole's centre, inches up from the front edge
     * @param friction of bag and board
     * @param harder release speed against the usual bag's, as a share; below 0 softer
     */
    public record Row(Range slide, Range landing, Range friction, Range harder) {}

    /**
     * One bag on three kinds of boards.
     *
     * @param usual on the boards the player usually has
     * @param slower on boards a step slower: friction 15 % more
     * @param faster on boards a step faster: friction 13 % less
     */
    public record Sheet(Row usual, Row slower, Row faster) {}

    /** Elevation of the throw above level that the answers take, degrees. */
    public double elevation() {
        return elevation;
    }

    /** How a bag is thrown. */
    public Sheet of(ThrowFit bag) {
        return new Sheet(row(bag, i -> 1), row(bag, i -> SLOWER), row(bag, i -> 1 / SLOWER));
    }

    /**
     * How a bag is thrown on boards that were measured, with this bag or another.
     *
     * @param factor their friction against the usual, above 0; what is not known of it is taken to be lognormal, and to have
     *     nothing to do with what is not known of the bag
     */
    public Row today(ThrowFit bag, Range factor) {
        double low = StrictMath.log(factor.low());
        double high = StrictMath.log(factor.high());
        double middle = (low + high) / 2;
        double deviation = (high - low) / (2 * Normal.quantile(1 - Range.TAIL));
        return row(bag, i -> StrictMath.exp(middle + deviation * Sampling.aside(i)));
    }

    /**
     * How a bag is thrown on boards of which the friction is the usual one times a factor, by the draw. How much harder is taken from one
     * draw of both beliefs at a time, so what is not known of the player's own bag on its own boards makes no difference to
     * itself.
     */
    private Row row(ThrowFit bag, IntToDoubleFunction factor) {
        int n = bag.draws().size();
        double[] slide = new double[n];
        double[] landing = new double[n];
        double[] friction = new double[n];
        double[] harder = new double[n];
        double[] equal = new double[n];
        for (int i = 0; i < n; i++) {
            ThrowModel then = bag.draws().get(i).onBoards(factor.applyAsDouble(i));
            ThrowModel now = usual.draws().get(i);
            slide[i] = then.slide();
            landing[i] = landing(then);
            friction[i] = then.friction();
            harder[i] = speed(elevation, landing(then)) / speed(elevation, landing(now)) - 1;
            equal[i] = 1.0 / n;
        }
        return new Row(
                Range.of(slide, equal), Range.of(landing, equal), Range.of(friction, equal), Range.of(harder, equal));
    }

    private static double landing(ThrowModel model) {
        return Board.HOLE_Y - model.slide();
    }

    /** The release speed, m/s, that lands a bag at a place up the board, inches: the secant method. */
    private double speed(double degrees, double landing) {
        double before = usualSpeed > 0 ? usualSpeed : 8.5;
        double missedBefore = missed(before, degrees, landing);
        double speed = before * 1.01;
        for (int step = 0; step < 30; step++) {
            double missed = missed(speed, degrees, landing);
            if (Math.abs(missed) < 1e-6 || missed == missedBefore) {
                break;
            }
            double next = speed - missed * (speed - before) / (missed - missedBefore);
            before = speed;
            missedBefore = missed;
            speed = Math.min(20, Math.max(4, next));
        }
        return speed;
    }

    private double missed(double speed, double degrees, double landing) {
        flight.fly(speed, degrees, 0, 0, HEIGHT, DISTANCE, 0);
        return flight.y() - landing;
    }
}
