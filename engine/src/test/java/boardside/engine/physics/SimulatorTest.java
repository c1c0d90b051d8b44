package boardside.engine.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import boardside.engine.rules.BoardKind;
import boardside.engine.rules.Outcome;
import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SimulatorTest {
    private static final Board REGULATION = Board.of(BoardKind.REGULATION);
    private static final Bag BAG = Bag.of(0.35);
    private static final Landing TO_THE_HOLE = new Landing(0, 14, 2.7, 0);

    private static Scene with(double... places) {
        return new Scene(
                REGULATION,
                Contact.USUAL,
                IntStream.range(0, places.length / 2)
                        .mapToObj(i -> new Lying(places[2 * i], places[2 * i + 1], BAG))
                        .toList());
    }

    private static Thrown slide(Scene scene, Landing landing) {
        return new Simulator(scene, BAG).slide(landing);
    }

    /** Textbook incline: v^2 / (2 (g sin + mu g cos)). */
    @ParameterizedTest
    @ValueSource(doubles = {-0.5, 0.5, 1.5})
    void restsWhereStraightUpTheInclineSays(double speed) {
        double angle = Math.asin((12 - 3.5) / 48);
        double slows = 9.80665 * (0.35 * Math.cos(angle) + (speed > 0 ? 1 : -1) * Math.sin(angle));
        double run = Math.signum(speed) * speed * speed / (2 * slows) / 0.0254;
        Thrown thrown = slide(with(), new Landing(5, 20, Math.abs(speed), speed > 0 ? 0 : 180));
        assertThat(thrown.thrown()).isInstanceOfSatisfying(End.On.class, on -> {
            assertThat(on.x()).isEqualTo(5);
            assertThat(on.y()).isEqualTo(20 + run, within(1e-9));
        });
    }

    @Test
    void fallsInWhereItComesToTheHole() {
        assertThat(slide(with(), TO_THE_HOLE).thrown()).isEqualTo(new End.In());
        // Too fast for the hole: it flies over it and off the back.
        assertThat(slide(with(), new Landing(0, 14, 6, 0)).thrown()).isEqualTo(new End.Off());
        // An airmail.
        assertThat(slide(with(), new Landing(0, 40, 4, 10)).thrown()).isEqualTo(new End.In());
        // Level and without friction nothing stops but what is over the hole.
        Scene ice = new Scene(new Board(24, 0), Contact.USUAL, List.of());
        assertThat(new Simulator(ice, Bag.of(0)).slide(new Landing(5, 5, 1, 0)).thrown())
                .isEqualTo(new End.Off());
        assertThat(new Simulator(ice, Bag.of(0)).slide(new Landing(5, 5, 0, 0)).thrown())
                .isEqualTo(new End.On(5, 5));
    }

    /** Common practice, no source: a bag that hangs over the edge of the hole is knocked in by a touch. */
    @Test
    void aHangingBagIsKnockedIn() {
        Thrown thrown = slide(with(0, 35.5), new Landing(0, 20, 1.9, 0));
        assertThat(thrown.bags().get(0)).isEqualTo(new End.In());
        assertThat(thrown.thrown().outcome()).isEqualTo(Outcome.ON);
        // One whose centre is over the hole hangs until it is touched.
        assertThat(slide(with(0, 37), new Landing(8, 20, 1, 0)).bags().get(0)).isEqualTo(new End.On(0, 37));
        assertThat(slide(with(0, 37), new Landing(0, 20, 2, 0)).bags().get(0)).isEqualTo(new End.In());
    }

    @Test
    void aSlickBoardHoldsNothing() {
        // Friction below tan(10.2 degrees): it slides back and off the front.
        assertThat(new Simulator(with(), Bag.of(0.15))
                        .slide(new Landing(5, 10, 1, 0))
                        .thrown())
                .isEqualTo(new End.Off());
        // Past the hole, and back into it.
        assertThat(new Simulator(with(), Bag.of(0.15))
                        .slide(new Landing(0.5, 44, 0.5, 0))
                        .thrown())
                .isEqualTo(new End.In());
    }

    @Test
    void theNarrowBoardEndsSixInchesFromTheMiddle() {
        Landing aside = new Landing(5, 20, 1.5, 10);
        assertThat(slide(Scene.empty(REGULATION), aside).thrown().outcome()).isEqualTo(Outcome.ON);
        assertThat(slide(Scene.empty(Board.of(BoardKind.NARROW)), aside)
                        .thrown()
                        .outcome())
                .isEqualTo(Outcome.OFF);
    }

    /** Left and right are alike: nothing in the model knows them apart. */
    @ParameterizedTest
    @ValueSource(longs = {5, 6, 7})
    void isTheSameInAMirror(long seed) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        for (int n = 0; n < 200; n++) {
            Scene scene = Scenes.of(random, n % (Scene.MOST_BAGS + 1), Contact.USUAL);
            Scene mirror = new Scene(
                    scene.board(),
                    scene.contact(),
                    scene.bags().stream()
                            .map(bag -> new Lying(-bag.x(), bag.y(), bag.bag()))
                            .toList());
            Bag bag = Scenes.bag(random);
            double heading = 30 * random.nextDouble() - 15;
            double speed = 1 + 3 * random.nextDouble();
            Simulator one = new Simulator(scene, bag);
            Simulator other = new Simulator(mirror, bag);
            one.slide(new Landing(0, 10, speed, heading));
            other.slide(new Landing(0, 10, speed, -heading));
            for (int i = 0; i < one.count(); i++) {
                assertThat(other.outcome(i)).isEqualTo(one.outcome(i));
                if (one.outcome(i) == Outcome.ON) {
                    assertThat(other.restX(i)).isEqualTo(-one.restX(i), within(1e-7));
                    assertThat(other.restY(i)).isEqualTo(one.restY(i), within(1e-7));
                }
            }
        }
    }

    /** What moves loses energy to friction all the way, so nothing comes to lie higher than all of it could lift. */
    @ParameterizedTest
    @ValueSource(longs = {8, 9})
    void energyOnlyGoes(long seed) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        for (int n = 0; n < 300; n++) {
            Scene scene = Scenes.of(random, n % (Scene.MOST_BAGS + 1), Contact.USUAL);
            Bag bag = Scenes.bag(random);
            double speed = 1 + 3 * random.nextDouble();
            Simulator simulator = new Simulator(scene, bag);
            List<Frame> frames = simulator.watch(new Landing(0, 10, speed, 20 * random.nextDouble() - 10), 0.01);
            double last = Double.POSITIVE_INFINITY;
            for (Frame frame : frames) {
                double energy = energy(scene, bag, frame);
                // Each blow may part two bags that hardly touch by 1 cm/s: 1.2e-5 J.
                assertThat(energy)
                        .as("seed %s, throw %s, at %s s", seed, n, frame.time())
                        .isLessThan(last + 1e-4);
                last = energy;
            }
        }
    }

    /** Kinetic and potential energy of the bags on the board, J. */
    private static double energy(Scene scene, Bag thrown, Frame frame) {
        double sum = 0;
        for (int i = 0; i < frame.bags().size(); i++) {
            Frame.Spot spot = frame.bags().get(i);
            if (spot.doing() == Frame.Doing.SLIDING || spot.doing() == Frame.Doing.LYING) {
                Bag bag = i == 0 ? thrown : scene.bags().get(i - 1).bag();
                double lift = spot.y()
                        * 0.0254
                        * Math.sin(Math.toRadians(scene.board().slope()));
                sum += bag.ounces()
                        * 0.028349523125
                        * (9.80665 * lift + (spot.across() * spot.across() + spot.up() * spot.up()) / 2);
            }
        }
        return sum;
    }

    /** The scene is as it was for the next throw: a simulator keeps nothing of the last one. */
    @Test
    void throwsDoNotDependOnEarlierOnes() {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(10);
        Simulator used = new Simulator(with(0.5, 30, -1, 22, 8, 20), BAG);
        for (int n = 0; n < 200; n++) {
            Landing landing =
                    new Landing(4 * random.nextDouble() - 2, 12, 4 * random.nextDouble(), 10 * random.nextDouble());
            assertThat(used.slide(landing)).isEqualTo(new Simulator(with(0.5, 30, -1, 22, 8, 20), BAG).slide(landing));
        }
    }

    /** A bag that lands on another strikes it and lies on it: both go on together. */
    @Test
    void aBagMayLandOnAnother() {
        Thrown thrown = slide(with(0, 20), new Landing(0, 17, 3, 0));
        assertThat(thrown.bags().get(0))
                .isInstanceOfSatisfying(End.On.class, on -> assertThat(on.y()).isGreaterThan(22));
        assertThat(thrown.thrown().outcome()).isEqualTo(Outcome.ON);
    }

    /** Tactics throws millions of bags: what a throw allocates would be collected all the time. */
    @Test
    void allocatesNothing() {
        com.sun.management.ThreadMXBean threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
        assumeTrue(threads.isThreadAllocatedMemorySupported() && threads.isThreadAllocatedMemoryEnabled());
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(12);
        Simulator simulator = new Simulator(with(0, 33.5, -1, 25, 8, 20, -8, 14), BAG);
        Flight flight = new Flight(REGULATION, BAG, Air.USUAL);
        long least = Long.MAX_VALUE;
        // The interpreter and the measuring itself may allocate the first time.
        for (int go = 0; go < 5; go++) {
            long before = threads.getCurrentThreadAllocatedBytes();
            for (int n = 0; n < 2000; n++) {
                flight.fly(9.1 + 0.2 * random.nextDouble(), 40, 2 * random.nextDouble() - 1, 0, 36, 320, 0);
                simulator.slide(flight.x(), flight.y(), flight.across(), flight.up());
            }
            least = Math.min(least, threads.getCurrentThreadAllocatedBytes() - before);
        }
        // From Java 21 on StrictMath's sine and cosine, of which a flight takes two each, are written in Java and put
        // two
        // numbers into an array, until a compiler sees that nobody else does.
        long most = Runtime.version().feature() < 21 ? 0 : 2000 * 4 * 32;
        assertThat(least).as("bytes of 2,000 throws").isLessThanOrEqualTo(most);
    }
}
