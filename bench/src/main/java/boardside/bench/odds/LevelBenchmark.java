package boardside.bench.odds;

import boardside.engine.odds.BagChances;
import boardside.engine.odds.Level;
import boardside.engine.odds.NetDistribution;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.rules.GameRules;
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
 * A level: the chance to win against all 13 ghosts, from a bag's chances on. From the project's folder:
 *
 * <pre>mvn -q -B -ntp -pl bench -am -DskipTests package
 * java -jar bench/target/bench.jar boardside.bench.odds.LevelBenchmark</pre>
 */
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
@State(Scope.Benchmark)
public class LevelBenchmark {
    private final BagChances me = new BagChances(0.5, 0.3);

    /** The engine. */
    @Benchmark
    public Level backwards() {
        return Level.of(GameRules.STANDARD, RoundDistribution.of(me));
    }

    /** EJML's sparse LU for each ghost. */
    @Benchmark
    public double sparseSolve() {
        double sum = 0;
        for (int ghost = 0; ghost <= 12; ghost++) {
            sum += RacePeers.sparse(NetDistribution.between(RoundDistribution.of(me), RoundDistribution.ghost(ghost)))[
                    0];
        }
        return sum;
    }

    /** Value iteration for each ghost. */
    @Benchmark
    public double valueIteration() {
        double sum = 0;
        for (int ghost = 0; ghost <= 12; ghost++) {
            sum += RacePeers.valueIteration(
                    NetDistribution.between(RoundDistribution.of(me), RoundDistribution.ghost(ghost)))[0];
        }
        return sum;
    }
}
