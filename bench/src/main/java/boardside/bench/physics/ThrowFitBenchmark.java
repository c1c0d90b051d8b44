package boardside.bench.physics;

import boardside.engine.physics.Board;
import boardside.engine.physics.MadeUpThrows;
import boardside.engine.physics.ThrowChances;
import boardside.engine.physics.ThrowCount;
import boardside.engine.physics.ThrowFit;
import boardside.engine.physics.ThrowKernel;
import boardside.engine.physics.ThrowModel;
import boardside.engine.physics.ThrowPrior;
import boardside.engine.physics.ThrowRecords;
import boardside.engine.rules.BoardKind;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * A throw model from ten years of counts (200,000 bags on a regulation board and 40,000 on a narrow one, misses told of the
 * latter), and the chances of one model, which the fit asks for some ten thousand times.
 *
 * <pre>java -jar bench/target/bench.jar boardside.bench.physics.ThrowFitBenchmark</pre>
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class ThrowFitBenchmark {
    private final ThrowModel model = new ThrowModel(0.8, 3, 39, 6, 0.06, 20, 0.36);
    private final ThrowKernel kernel = new ThrowKernel(Board.of(BoardKind.REGULATION));
    private final ThrowRecords tenYears = tenYears();

    private ThrowRecords tenYears() {
        MadeUpThrows throwing = new MadeUpThrows(model, 1);
        ThrowCount regulation = throwing.count(Board.of(BoardKind.REGULATION), 200_000, false);
        ThrowCount narrow = throwing.count(Board.of(BoardKind.NARROW), 40_000, true);
        return new ThrowRecords(List.of(regulation, narrow), List.of());
    }

    /** A fit with its ranges. */
    @Benchmark
    public Object fit() {
        ThrowFit fit = ThrowFit.of(ThrowPrior.of(5, null), tenYears);
        return fit.range(ThrowFit.Parameter.SPREAD_X);
    }

    /** Six chances. */
    @Benchmark
    public ThrowChances chances() {
        return kernel.chances(model);
    }
}
