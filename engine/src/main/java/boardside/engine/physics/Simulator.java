package boardside.engine.physics;

import boardside.engine.rules.Outcome;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Throws bags onto a scene, each onto the same bags as they lay, from event to event: a blow, the rim of the hole, an edge,
 * a stop. Between events every bag follows the closed forms of {@link Slide}.
 *
 * <p>Made once and used again and again: {@link #slide(double, double, double, double)} allocates nothing. Not safe for
 * several threads at once; give each its own. Equal arguments give equal bits, on any thread and virtual machine.
 *
 * <p>Bags are numbered from 0, the thrown one; then those of the scene in their order.
 *
 * <p>Where the thrown bag lands on another (centres nearer than 6 in), it strikes it at once along the line of centres, and
 * the two then pass over each other for the rest of the throw; so do bags of the scene that lie on each other. A bag that
 * comes down with its centre over the hole is in.
 */
public final class Simulator {
    /** Standard acceleration of gravity, m/s2 (published). */
    public static final double GRAVITY = 9.80665;

    /** Metres an inch. */
    public static final double INCH = 0.0254;

    private static final double KILOGRAMS_PER_OUNCE = 0.028349523125;
    private static final int MOST = Scene.MOST_BAGS + 1;
    private static final int MOST_EVENTS = 2000;
    private static final double NEVER = Double.POSITIVE_INFINITY;
    private static final double SHORTEST_INTERVAL = 0.001;
    private static final double LONGEST_INTERVAL = 10;
    private static final double HOLE_X = 0;
    private static final double HOLE_Y = Board.HOLE_Y * INCH;
    private static final double HOLE = Board.HOLE_RADIUS * INCH;
    private static final double REACH = 2 * Bag.RADIUS * INCH;

    /** Bags nearer than this to touching share a blow, m. */
    private static final double TOGETHER = 1e-8;

    private enum State {
        MOVING,
        REST,
        IN,
        OFF
    }

    private enum Event {
        STOP,
        HOLE,
        EDGE,
        BLOW
    }

    private final Scene scene;
    private final double halfWidth;
    private final double length = Board.LENGTH * INCH;
    private final double fall;
    private final int count;
    private final double[] lyingX = new double[MOST];
    private final double[] lyingY = new double[MOST];
    private final double[] perMass = new double[MOST];
    private final boolean[][] lyingOn = new boolean[MOST][MOST];
    private final Impacts impacts;

    // This throw.
    private final State[] state = new State[MOST];
    private final Slide[] slides = new Slide[MOST];
    private final double[] x = new double[MOST];
    private final double[] y = new double[MOST];
    private final double[] vx = new double[MOST];
    private final double[] vy = new double[MOST];
    private final boolean[] crossing = new boolean[MOST];
    private final boolean[] onThrown = new boolean[MOST];
    private int moving;
    private double now;

    // What each moving bag comes to by itself.
    private final Event[] event = new Event[MOST];
    private final int[] partner = new int[MOST];
    private final double[] due = new double[MOST];
    private final double[] param = new double[MOST];

    /** When two moving bags meet; NaN where that has not been worked out since either changed course. */
    private final double[][] meet = new double[MOST][MOST];

    private final boolean[] struck = new boolean[MOST];
    private final int[] movers = new int[MOST];

    /** What is seen of a throw that is watched. */
    private @Nullable List<Frame> frames;

    private double interval;
    private final Meeting meeting = new Meeting(REACH);

    /**
     * A simulator of one bag thrown onto one scene.
     *
     * @param scene what lies there
     * @param thrown the bag to throw
     */
    public Simulator(Scene scene, Bag thrown) {
        this.scene = scene;
        double slope = StrictMath.toRadians(scene.board().slope());
        double along = GRAVITY * StrictMath.sin(slope);
        double into = GRAVITY * StrictMath.cos(slope);
        halfWidth = scene.board().width() / 2 * INCH;
        fall = fallTime(scene.contact().drop() * INCH, into);
        count = scene.bags().size() + 1;
        impacts = new Impacts(scene.contact());
        for (int i = 0; i < count; i++) {
            Bag bag = i == 0 ? thrown : scene.bags().get(i - 1).bag();
            slides[i] = new Slide();
            slides[i].ground(bag.friction(), along, into);
            perMass[i] = 1 / (bag.ounces() * KILOGRAMS_PER_OUNCE);
            state[i] = State.OFF;
            if (i > 0) {
                lyingX[i] = scene.bags().get(i - 1).x() * INCH;
                lyingY[i] = scene.bags().get(i - 1).y() * INCH;
            }
        }
        for (int i = 1; i < count; i++) {
            for (int j = 1; j < count; j++) {
                lyingOn[i][j] = i != j && distance2(lyingX[i] - lyingX[j], lyingY[i] - lyingY[j]) < overlap2();
            }
        }
    }

    /** Time to fall through a height from rest, s: sqrt(2 h / g). */
    static double fallTime(double height, double gravity) {
        return Math.sqrt(2 * height / gravity);
    }

    /** Distance squared below which bags lie on each other; a hair less than touching. */
    private static double overlap2() {
        return (REACH - TOGETHER) * (REACH - TOGETHER);
    }

    private static double distance2(double dx, double dy) {
        return dx * dx + dy * dy;
    }

    /** The scene. */
    public Scene scene() {
        return scene;
    }

    /** Bags in play: the thrown one and those of the scene. */
    public int count() {
        return count;
    }

    /** A bag that has just landed slides to the end of the throw. */
    public Thrown slide(Landing landing) {
        slide(landing.x(), landing.y(), landing.across(), landing.up());
        return result();
    }

    /**
     * The same throw as a picture that moves: every bag at each interval from the landing on, and at the end.
     *
     * @param landing on the board
     * @param every time between frames, s, 0.001..10
     * @throws IllegalArgumentException if the interval is out of range or not a number
     */
    public List<Frame> watch(Landing landing, double every) {
        if (!(every >= SHORTEST_INTERVAL && every <= LONGEST_INTERVAL)) {
            throw new IllegalArgumentException(
                    "frames are " + SHORTEST_INTERVAL + " to " + LONGEST_INTERVAL + " s apart, not " + every);
        }
        List<Frame> seen = new ArrayList<>();
        frames = seen;
        interval = every;
        try {
            slide(landing.x(), landing.y(), landing.across(), landing.up());
            seen.add(frame(now));
        } finally {
            frames = null;
        }
        return List.copyOf(seen);
    }

    /** The frames up to a time, not including it. */
    private void look(List<Frame> seen, double until) {
        for (double at = seen.size() * interval; at < until && until < NEVER; at = seen.size() * interval) {
            for (int i = 0; i < count; i++) {
                if (state[i] == State.MOVING) {
                    placeAt(i, at);
                }
            }
            seen.add(frame(at));
        }
    }

    private Frame frame(double at) {
        List<Frame.Spot> spots = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            boolean slides = state[i] == State.MOVING;
            Frame.Doing doing = switch (state[i]) {
                case MOVING -> Frame.Doing.SLIDING;
                case REST -> Frame.Doing.LYING;
                case IN -> Frame.Doing.IN;
                case OFF -> Frame.Doing.OFF;
            };
            spots.add(new Frame.Spot(doing, restX(i), restY(i), slides ? vx[i] : 0, slides ? vy[i] : 0));
        }
        return new Frame(at, spots);
    }

    /** How the last throw ended. */
    public Thrown result() {
        List<End> bags = new ArrayList<>(count - 1);
        for (int i = 1; i < count; i++) {
            bags.add(end(i));
        }
        return new Thrown(end(0), bags);
    }

    private End end(int i) {
        return switch (outcome(i)) {
            case IN -> new End.In();
            case OFF -> new End.Off();
            case ON -> new End.On(restX(i), restY(i));
        };
    }

    /** How a bag ended in the last throw. */
    public Outcome outcome(int i) {
        return switch (state[i]) {
            case IN -> Outcome.IN;
            case OFF -> Outcome.OFF;
            case REST, MOVING -> Outcome.ON;
        };
    }

    /** Where a bag that ended on the board rests, inches; means nothing otherwise. */
    public double restX(int i) {
        return x[i] / INCH;
    }

    /** Where a bag that ended on the board rests, inches; means nothing otherwise. */
    public double restY(int i) {
        return y[i] / INCH;
    }

    /**
     * A bag that has just landed slides to the end of the throw; {@link #outcome}, {@link #restX} and {@link #restY} then
     * say how each bag ended.
     *
     * @param inchesX of its centre; off the board it is off
     * @param inchesY of its centre
     * @param across speed to the right, m/s
     * @param up speed up the board, m/s
     * @return the thrown bag's outcome
     */
    public Outcome slide(double inchesX, double inchesY, double across, double up) {
        for (int i = 1; i < count; i++) {
            state[i] = State.REST;
            x[i] = lyingX[i];
            y[i] = lyingY[i];
            vx[i] = 0;
            vy[i] = 0;
            crossing[i] = false;
            onThrown[i] = false;
        }
        now = 0;
        moving = 0;
        crossing[0] = false;
        x[0] = inchesX * INCH;
        y[0] = inchesY * INCH;
        vx[0] = across;
        vy[0] = up;
        if (!scene.board().holds(inchesX, inchesY)) {
            state[0] = State.OFF;
            return Outcome.OFF;
        }
        state[0] = State.REST;
        boolean over = distance2(x[0] - HOLE_X, y[0] - HOLE_Y) < HOLE * HOLE;
        strikeWhatItLandsOn();
        if (over) {
            if (state[0] == State.MOVING) {
                moving--;
            }
            state[0] = State.IN;
        }
        run();
        return outcome(0);
    }

    private void strikeWhatItLandsOn() {
        impacts.clear();
        boolean onto = false;
        for (int i = 1; i < count; i++) {
            struck[i] = false;
            double dx = x[i] - x[0];
            double dy = y[i] - y[0];
            double apart = distance2(dx, dy);
            if (apart < overlap2()) {
                onThrown[i] = true;
                if (apart > 0) {
                    double distance = Math.sqrt(apart);
                    impacts.add(0, i, dx / distance, dy / distance);
                    struck[i] = true;
                    onto = true;
                }
            }
        }
        struck[0] = true;
        if (onto) {
            for (int i = 1; i < count; i++) {
                if (struck[i]) {
                    gatherTouching(i);
                }
            }
            impacts.solve(vx, vy, perMass);
        }
        setOff();
    }

    /**
     * Adds the contacts of a struck bag with resting bags that it touches, and of those in turn. A moving bag that touches
     * it has a blow of its own at the same instant, next.
     */
    private void gatherTouching(int i) {
        for (int j = 0; j < count; j++) {
            if (j == i || !(state[j] == State.REST || struck[j]) || passes(i, j)) {
                continue;
            }
            double dx = x[j] - x[i];
            double dy = y[j] - y[i];
            double apart = distance2(dx, dy);
            if (apart > (REACH + TOGETHER) * (REACH + TOGETHER)) {
                continue;
            }
            if (!struck[j]) {
                struck[j] = true;
                double distance = Math.sqrt(apart);
                impacts.add(i, j, dx / distance, dy / distance);
                gatherTouching(j);
            } else if (i < j && !impacts.has(i, j)) {
                double distance = Math.sqrt(apart);
                impacts.add(i, j, dx / distance, dy / distance);
            }
        }
    }

    private boolean passes(int i, int j) {
        return i == 0 ? onThrown[j] : j == 0 ? onThrown[i] : lyingOn[i][j];
    }

    /** Puts a moving bag's place and velocity at a time into the arrays. */
    private void placeAt(int i, double when) {
        Slide slide = slides[i];
        slide.seek(when);
        take(i, slide);
    }

    private void take(int i, Slide slide) {
        x[i] = slide.x();
        y[i] = slide.y();
        vx[i] = slide.vx();
        vy[i] = slide.vy();
    }

    /** Sends every struck bag on its new way and works out what it comes to. */
    private void setOff() {
        for (int i = 0; i < count; i++) {
            if (struck[i]) {
                launch(i);
            }
        }
        for (int i = 0; i < count; i++) {
            if (state[i] != State.MOVING) {
                continue;
            }
            if (struck[i]) {
                plan(i, 0);
            } else if (event[i] == Event.BLOW && struck[partner[i]]) {
                plan(i, slides[i].seek(now));
            }
        }
    }

    private void launch(int i) {
        if (state[i] == State.MOVING) {
            moving--;
        }
        double speed2 = vx[i] * vx[i] + vy[i] * vy[i];
        boolean over = distance2(x[i] - HOLE_X, y[i] - HOLE_Y) < HOLE * HOLE;
        crossing[i] = false;
        if (over && falls(i)) {
            state[i] = State.IN;
            return;
        }
        if (!(speed2 > 0)) {
            state[i] = State.REST;
            return;
        }
        crossing[i] = over;
        state[i] = State.MOVING;
        moving++;
        slides[i].start(now, x[i], y[i], vx[i], vy[i]);
        for (int j = 0; j < count; j++) {
            meet[i][j] = Double.NaN;
            meet[j][i] = Double.NaN;
        }
    }

    /** Whether a bag over the hole, or at its rim heading in, falls before it is across. */
    private boolean falls(int i) {
        double speed = Math.sqrt(vx[i] * vx[i] + vy[i] * vy[i]);
        if (speed == 0) {
            return true;
        }
        double along = ((HOLE_X - x[i]) * vx[i] + (HOLE_Y - y[i]) * vy[i]) / speed;
        double off = ((HOLE_X - x[i]) * vy[i] - (HOLE_Y - y[i]) * vx[i]) / speed;
        double chord = along + Math.sqrt(Math.max(0, HOLE * HOLE - off * off));
        return chord >= speed * fall;
    }

    /** Works out what a moving bag comes to by itself from a parameter of its slide on. */
    private void plan(int i, double from) {
        Slide slide = slides[i];
        boolean stays = slide.staysOn(halfWidth, length);
        // Where friction does not hold, the edge bounds the search; else it matters only if nothing comes before it.
        double first = slide.holds() || stays ? NEVER : slide.leaves(halfWidth, length);
        Event kind = first < NEVER ? Event.EDGE : Event.STOP;
        double holeFrom = crossing[i] ? slide.exits(HOLE_X, HOLE_Y, HOLE, from) : from;
        if (holeFrom < first) {
            double hole = slide.enters(HOLE_X, HOLE_Y, HOLE, holeFrom, first);
            if (hole < first) {
                first = hole;
                kind = Event.HOLE;
            }
        }
        for (int j = 0; j < count; j++) {
            if (state[j] == State.REST && j != i && !passes(i, j)) {
                double blow = slide.enters(x[j], y[j], REACH, from, first);
                if (blow < first) {
                    first = blow;
                    kind = Event.BLOW;
                    partner[i] = j;
                }
            }
        }
        if (!stays && slide.holds() && !(first < NEVER && slide.onBoardUpTo(first, halfWidth, length))) {
            if (first == NEVER && moving == 1 && frames == null) {
                // It leaves and nothing else moves: when does not matter.
                event[i] = Event.EDGE;
                due[i] = now;
                return;
            }
            double edge = slide.leaves(halfWidth, length);
            if (edge < first) {
                first = edge;
                kind = Event.EDGE;
            }
        }
        event[i] = kind;
        if (kind == Event.STOP) {
            due[i] = slide.stopTime();
        } else {
            param[i] = first;
            slide.at(first);
            due[i] = Math.max(slide.time(), now);
        }
    }

    private void run() {
        for (int events = 0; moving > 0; events++) {
            if (events == MOST_EVENTS) {
                stopAll();
                return;
            }
            int n = 0;
            int next = -1;
            for (int i = 0; i < count; i++) {
                if (state[i] == State.MOVING) {
                    movers[n++] = i;
                    if (next < 0 || due[i] < due[next]) {
                        next = i;
                    }
                }
            }
            double when = due[next];
            int other = -1;
            for (int a = 0; a < n; a++) {
                for (int b = a + 1; b < n; b++) {
                    int i = movers[a];
                    int j = movers[b];
                    double at = passes(i, j) ? NEVER : meets(i, j);
                    if (at < when) {
                        when = at;
                        next = i;
                        other = j;
                    }
                }
            }
            if (frames != null) {
                look(frames, when);
            }
            if (!(when < NEVER)) {
                stopAll();
                return;
            }
            now = when;
            if (other >= 0) {
                placeAt(next, now);
                placeAt(other, now);
                blow(next, other);
            } else {
                happen(next);
            }
        }
    }

    private double meets(int i, int j) {
        double at = meet[i][j];
        if (Double.isNaN(at)) {
            at = meeting.first(slides[i], slides[j], now, Math.min(due[i], due[j]));
            meet[i][j] = at;
        }
        return at;
    }

    private void happen(int i) {
        Slide slide = slides[i];
        switch (event[i]) {
            case STOP -> {
                slide.atStop();
                take(i, slide);
                rest(i);
            }
            case EDGE -> {
                if (frames != null) {
                    placeAt(i, now);
                }
                gone(i, State.OFF);
            }
            case HOLE -> {
                slide.at(param[i]);
                take(i, slide);
                if (falls(i)) {
                    gone(i, State.IN);
                } else {
                    crossing[i] = true;
                    plan(i, param[i]);
                }
            }
            case BLOW -> {
                slide.at(param[i]);
                take(i, slide);
                blow(i, partner[i]);
            }
        }
    }

    private void gone(int i, State how) {
        state[i] = how;
        moving--;
    }

    /** A bag has stopped: over the hole it falls, on a board too steep for its cloth it slides back, else it lies. */
    private void rest(int i) {
        if (distance2(x[i] - HOLE_X, y[i] - HOLE_Y) < HOLE * HOLE) {
            gone(i, State.IN);
            return;
        }
        if (!slides[i].holds() && slides[i].slopes()) {
            slides[i].start(now, x[i], y[i], 0, 0);
            for (int j = 0; j < count; j++) {
                meet[i][j] = Double.NaN;
                meet[j][i] = Double.NaN;
            }
            plan(i, 0);
            return;
        }
        gone(i, State.REST);
        vx[i] = 0;
        vy[i] = 0;
        for (int j = 0; moving > 0 && j < count; j++) {
            if (state[j] == State.MOVING && !passes(i, j)) {
                planFor(j, i);
            }
        }
    }

    /** A moving bag finds another one newly at rest in its way. */
    private void planFor(int j, int rested) {
        Slide slide = slides[j];
        if (slide.outOfReach(x[rested], y[rested], REACH)) {
            return;
        }
        double from = slide.seek(now);
        double limit = event[j] == Event.STOP ? NEVER : param[j];
        double blow = slide.enters(x[rested], y[rested], REACH, from, limit);
        if (blow < limit) {
            slide.at(blow);
            due[j] = Math.max(slide.time(), now);
            param[j] = blow;
            event[j] = Event.BLOW;
            partner[j] = rested;
        }
    }

    private void blow(int i, int j) {
        impacts.clear();
        for (int k = 0; k < count; k++) {
            struck[k] = false;
        }
        struck[i] = true;
        gatherTouching(i);
        if (!struck[j]) {
            double dx = x[j] - x[i];
            double dy = y[j] - y[i];
            double distance = Math.sqrt(distance2(dx, dy));
            struck[j] = true;
            impacts.add(i, j, dx / distance, dy / distance);
            gatherTouching(j);
        }
        impacts.solve(vx, vy, perMass);
        setOff();
    }

    private void stopAll() {
        for (int i = 0; i < count; i++) {
            if (state[i] == State.MOVING) {
                placeAt(i, now);
                state[i] = State.REST;
            }
        }
        moving = 0;
    }
}
