package boardside.bench.physics;

import boardside.engine.physics.Bag;
import boardside.engine.physics.Board;
import boardside.engine.physics.Scene;
import boardside.engine.physics.Simulator;
import boardside.engine.rules.Outcome;

/**
 * A board on top of a general-purpose 2D engine, seen from above: the engine moves discs and lets them meet; before every
 * step each moving disc is given the friction and the slope's pull of the model, after it the model's rules for hole and
 * edge are applied. Bags are numbered from 0, the thrown one. The world is made once and set up anew for each throw.
 */
abstract class SteppedBoard {
    /** Radius of a disc, m. */
    static final double RADIUS = Bag.RADIUS * Simulator.INCH;

    private static final double HOLE_Y = Board.HOLE_Y * Simulator.INCH;
    private static final double HOLE = Board.HOLE_RADIUS * Simulator.INCH;
    private static final double LONGEST = 20;

    private final Scene scene;
    private final double step;
    private final double pull;
    private final double fall;
    private final double halfWidth;
    private final double[] grip;
    private final boolean[] gone;
    private final boolean[] over;
    private final Outcome[] outcome;

    SteppedBoard(Scene scene, Bag thrown, double step) {
        this.scene = scene;
        this.step = step;
        double slope = Math.toRadians(scene.board().slope());
        pull = Simulator.GRAVITY * Math.sin(slope);
        fall = Math.sqrt(2 * scene.contact().drop() * Simulator.INCH / (Simulator.GRAVITY * Math.cos(slope)));
        halfWidth = scene.board().width() / 2 * Simulator.INCH;
        int count = scene.bags().size() + 1;
        grip = new double[count];
        gone = new boolean[count];
        over = new boolean[count];
        outcome = new Outcome[count];
        for (int i = 0; i < count; i++) {
            Bag bag = i == 0 ? thrown : scene.bags().get(i - 1).bag();
            grip[i] = bag.friction() * Simulator.GRAVITY * Math.cos(slope);
        }
    }

    /** Puts a disc back into play at a place, m, and velocity, m/s. */
    abstract void put(int i, double x, double y, double vx, double vy);

    /** Takes a disc out of play. */
    abstract void remove(int i);

    /** Gives a disc a velocity, m/s. */
    abstract void velocity(int i, double vx, double vy);

    abstract double x(int i);

    abstract double y(int i);

    abstract double vx(int i);

    abstract double vy(int i);

    /** Moves the world on by one step. */
    abstract void advance();

    final Outcome outcome(int i) {
        return outcome[i];
    }

    /** A throw as {@link Simulator#slide(double, double, double, double)} takes it. */
    final Outcome slide(double inchesX, double inchesY, double across, double up) {
        for (int i = 0; i < gone.length; i++) {
            gone[i] = false;
            over[i] = false;
            outcome[i] = Outcome.ON;
            if (i == 0) {
                put(i, inchesX * Simulator.INCH, inchesY * Simulator.INCH, across, up);
            } else {
                put(
                        i,
                        scene.bags().get(i - 1).x() * Simulator.INCH,
                        scene.bags().get(i - 1).y() * Simulator.INCH,
                        0,
                        0);
            }
        }
        for (double time = 0; time < LONGEST && slow(); time += step) {
            advance();
            for (int i = 0; i < gone.length; i++) {
                if (!gone[i]) {
                    judge(i);
                }
            }
        }
        return outcome[0];
    }

    /** Friction and slope over one step; whether anything moves. */
    private boolean slow() {
        boolean moving = false;
        for (int i = 0; i < gone.length; i++) {
            if (gone[i]) {
                continue;
            }
            double vx = vx(i);
            double vy = vy(i);
            double speed = Math.sqrt(vx * vx + vy * vy);
            if (speed == 0) {
                continue;
            }
            if (speed <= (grip[i] + pull) * step && grip[i] > pull) {
                velocity(i, 0, 0);
                if (Math.hypot(x(i), y(i) - HOLE_Y) < HOLE) {
                    out(i, Outcome.IN);
                }
                continue;
            }
            moving = true;
            velocity(i, vx - grip[i] * vx / speed * step, vy - grip[i] * vy / speed * step - pull * step);
        }
        return moving;
    }

    private void judge(int i) {
        double x = x(i);
        double y = y(i);
        if (Math.abs(x) > halfWidth || y < 0 || y > Board.LENGTH * Simulator.INCH) {
            out(i, Outcome.OFF);
            return;
        }
        double dy = y - HOLE_Y;
        boolean inside = x * x + dy * dy < HOLE * HOLE;
        if (inside && !over[i]) {
            double vx = vx(i);
            double vy = vy(i);
            double speed = Math.sqrt(vx * vx + vy * vy);
            double off = (x * vy - dy * vx) / speed;
            double chord = -(x * vx + dy * vy) / speed + Math.sqrt(Math.max(0, HOLE * HOLE - off * off));
            if (speed > 0 && chord >= speed * fall) {
                out(i, Outcome.IN);
                return;
            }
        }
        over[i] = inside;
    }

    private void out(int i, Outcome how) {
        outcome[i] = how;
        gone[i] = true;
        remove(i);
    }
}
