package boardside.bench.odds;

import boardside.engine.odds.BagChances;
import boardside.engine.odds.NetDistribution;
import boardside.engine.odds.Race;
import boardside.engine.odds.RaceAnswer;
import boardside.engine.odds.RoundDistribution;
import boardside.engine.rules.GameRules;
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
 * The whole 21 x 21 table of a race, win chances and expected rounds, from the net distribution on. From the project's
 * folder:
 *
 * <pre>mvn -q -B -ntp -pl bench -am -DskipTests package
 * java -jar bench/target/bench.jar boardside.bench.odds</pre>
 *
 * <p>Single calls are timed, so that the median says what a call takes even where other work shares the machine. The
 * peers are checked against the engine before they are measured.
 */
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
@State(Scope.Benchmark)
public class RaceBenchmark {
    /** Against whom: a ghost's fixed score, or a player like oneself, where every net comes up. */
    @Param({"ghost", "player"})
    public String opponent = "";

    private NetDistribution net = NetDistribution.between(RoundDistribution.ghost(0), RoundDistribution.ghost(0));
    private NetDistribution other = net;

    /** Sets the sides up and compares the ways to a table. */
    @Setup
    public void prepare() {
        RoundDistribution me = RoundDistribution.of(new BagChances(0.5, 0.3));
        net = NetDistribution.between(
                me,
                opponent.equals("ghost")
                        ? RoundDistribution.ghost(7)
                        : RoundDistribution.of(new BagChances(0.45, 0.35)));
        other = NetDistribution.between(RoundDistribution.of(new BagChances(0.51, 0.29)), me);
        Race race = Race.solve(GameRules.STANDARD, net);
        for (double[] peer :
                new double[][] {RacePeers.sparse(net), RacePeers.dense(net), RacePeers.valueIteration(net)}) {
            for (int at = 0; at < RacePeers.STATES; at++) {
                RaceAnswer answer = race.from(at / RacePeers.TARGET, at % RacePeers.TARGET, true);
                double rounds = answer instanceof RaceAnswer.Ends ends ? ends.expectedRounds() : Double.NaN;
                if (!(Math.abs(answer.winOrHalf() - peer[at]) < 1e-11
                        && Math.abs(rounds - peer[RacePeers.STATES + at]) < 1e-9)) {
                    throw new IllegalStateException("a peer disagrees at state " + at);
                }
            }
        }
    }

    /** The engine. */
    @Benchmark
    public Race backwards() {
        return Race.solve(GameRules.STANDARD, net);
    }

    /** The engine where it matters who throws first: two tables. */
    @Benchmark
    public Race backwardsByFirstThrow() {
        return Race.solve(GameRules.STANDARD, net, other);
    }

    /** The engine with an exact target and a fall-back to 15. */
    @Benchmark
    public Race exactWithFallBack() {
        return Race.solve(GameRules.STANDARD.withExact(15), net);
    }

    /** EJML's sparse LU. */
    @Benchmark
    public double[] sparseSolve() {
        return RacePeers.sparse(net);
    }

    /** EJML's dense LU. */
    @Benchmark
    public double[] denseSolve() {
        return RacePeers.dense(net);
    }

    /** Value iteration. */
    @Benchmark
    public double[] valueIteration() {
        return RacePeers.valueIteration(net);
    }
}
