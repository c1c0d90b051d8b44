package boardside.bench.physics;

import boardside.engine.physics.Simulator;
import boardside.engine.rules.Outcome;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * One throw's slide, on one thread, onto 0, 1, 3 and 7 resting bags: the engine, and two general-purpose engines at steps of
 * 1/240 s with the same friction, hole and edge. From the project's folder:
 *
 * <pre>mvn -q -B -ntp -pl bench -am -DskipTests package
 * java -jar bench/target/bench.jar boardside.bench.physics.SlideBenchmark</pre>
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
@State(Scope.Thread)
public class SlideBenchmark {
    private static final double STEP = 1.0 / 240;
    private static final long SEED = 1;

    /** How many bags lie there. */
    @Param({"0", "1", "3", "7"})
    public int bags;

    private final Throws throwsMade = new Throws(SEED);
    private Simulator simulator = new Simulator(Throws.scene(0), Throws.BAG);
    private SteppedBoard dyn4j = new Dyn4jBoard(Throws.scene(0), Throws.BAG, STEP);
    private SteppedBoard jbox2d = new Jbox2dBoard(Throws.scene(0), Throws.BAG, STEP);
    private int next;

    /** Sets the boards up. */
    @Setup
    public void prepare() {
        simulator = new Simulator(Throws.scene(bags), Throws.BAG);
        dyn4j = new Dyn4jBoard(Throws.scene(bags), Throws.BAG, STEP);
        jbox2d = new Jbox2dBoard(Throws.scene(bags), Throws.BAG, STEP);
    }

    private int next() {
        next = next + 1 & Throws.COUNT - 1;
        return next;
    }

    /** The engine. */
    @Benchmark
    public Outcome engine() {
        int n = next();
        return simulator.slide(throwsMade.x[n], throwsMade.y[n], throwsMade.across[n], throwsMade.up[n]);
    }

    /** dyn4j. */
    @Benchmark
    public Outcome dyn4j() {
        int n = next();
        return dyn4j.slide(throwsMade.x[n], throwsMade.y[n], throwsMade.across[n], throwsMade.up[n]);
    }

    /** JBox2D. */
    @Benchmark
    public Outcome jbox2d() {
        int n = next();
        return jbox2d.slide(throwsMade.x[n], throwsMade.y[n], throwsMade.across[n], throwsMade.up[n]);
    }
}
