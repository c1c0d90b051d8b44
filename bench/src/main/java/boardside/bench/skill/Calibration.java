package boardside.bench.skill;

import boardside.engine.skill.simulated.Drift;
import boardside.engine.skill.simulated.Regime;
import boardside.engine.skill.simulated.Scores;
import boardside.engine.skill.simulated.Scores.Reliability;
import boardside.engine.skill.simulated.Seen;
import boardside.engine.skill.simulated.Spread;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * Holds the skill model against thousands of simulated players (see {@code boardside.engine.skill.simulated}): do 90 %
 * ranges hold the truth, do stated chances come true, are bags that are alike called different, is a rise in skill taken
 * for a better bag. Prints Markdown tables; the same numbers each time.
 *
 * <pre>
 * mvn -q -B -ntp -pl bench -am -DskipTests package
 * java -cp bench/target/bench.jar boardside.bench.skill.Calibration [--share 0.1] [--threads 2] [coverage] [signals] [halves]
 * </pre>
 *
 * {@code --share} takes that share of the players, for a quick look; without a name all three tables are made.
 */
public final class Calibration {
    private static final long SEED = 20_260_630;
    private static final int PLAYERS = 1000;
    private static final int ALIKE = 2000;

    private static final List<Regime> COVERAGE = List.of(
            Regime.usual(10, Drift.SMOOTH, Spread.UNIFORM, 0.15),
            Regime.usual(30, Drift.STEPPED, Spread.TWO_POINT, 0.15),
            Regime.usual(100, Drift.SMOOTH, Spread.HEAVY, 0.2),
            Regime.usual(300, Drift.STEPPED, Spread.UNIFORM, 0.2),
            Regime.usual(300, Drift.NONE, Spread.UNIFORM, 0),
            Regime.usual(600, Drift.SMOOTH, Spread.TWO_POINT, 0.25),
            Regime.usual(1000, Drift.STEPPED, Spread.HEAVY, 0.15),
            Regime.usual(2000, Drift.SMOOTH, Spread.UNIFORM, 0.2));

    private static final List<Integer> BAGS = List.of(2, 4, 8);
    private static final List<Integer> ALIKE_ROUNDS = List.of(100, 500, 2000);
    private static final List<Integer> HALVES_ROUNDS = List.of(300, 1000, 2000);

    private final double share;
    private final ExecutorService workers;

    private Calibration(double share, ExecutorService workers) {
        this.share = share;
        this.workers = workers;
    }

    public static void main(String[] args) throws InterruptedException, ExecutionException {
        double share = 1;
        int threads = 2;
        List<String> tables = new ArrayList<>();
        for (int i = 0; i < args.length; i++) {
            switch (args[i]) {
                case "--share" -> share = Double.parseDouble(args[++i]);
                case "--threads" -> threads = Integer.parseInt(args[++i]);
                default -> tables.add(args[i]);
            }
        }
        ExecutorService workers = Executors.newFixedThreadPool(threads);
        try {
            Calibration calibration = new Calibration(share, workers);
            if (tables.isEmpty() || tables.contains("coverage")) {
                calibration.coverage();
            }
            if (tables.isEmpty() || tables.contains("signals")) {
                calibration.signals();
            }
            if (tables.isEmpty() || tables.contains("halves")) {
                calibration.halves();
            }
        } finally {
            workers.shutdownNow();
        }
    }

    private void coverage() throws InterruptedException, ExecutionException {
        print("| regime | players | points a round | change over 30 days | difference of two bags | next ten rounds |");
        print("| --- | --- | --- | --- | --- | --- |");
        List<Seen> all = new ArrayList<>();
        for (Regime regime : COVERAGE) {
            Scores scores = scores(regime, PLAYERS);
            all.addAll(scores.seen());
            print(
                    "| %s | %d | %s | %s | %s | %s |",
                    regime,
                    scores.seen().size(),
                    percent(scores.points()),
                    percent(scores.change()),
                    percent(scores.difference()),
                    percent(scores.total()));
        }
        print("");
        print("| chance of | stated | slope | offset |");
        print("| --- | --- | --- | --- |");
        for (Seen.Of of : Seen.Of.values()) {
            Reliability found = new Scores(all).reliability(of);
            print(
                    "| %s | %d | %.3f ± %.3f | %+.3f |",
                    of.name().toLowerCase(Locale.ROOT), found.number(), found.slope(), found.error(), found.offset());
        }
        print("");
    }

    private void signals() throws InterruptedException, ExecutionException {
        print("| bags, all alike | rounds | players | called a signal | allowed |");
        print("| --- | --- | --- | --- | --- |");
        for (int bags : BAGS) {
            for (int rounds : ALIKE_ROUNDS) {
                Regime regime =
                        Regime.usual(rounds, Drift.SMOOTH, Spread.UNIFORM, 0.2).withBags(bags, 0);
                Scores scores = scores(regime, ALIKE);
                double error = Math.sqrt(0.05 * 0.95 / scores.seen().size());
                print(
                        "| %d | %d | %d | %s | %s |",
                        bags, rounds, scores.seen().size(), percent(scores.signals()), percent(0.05 + error));
            }
        }
        print("");
    }

    private void halves() throws InterruptedException, ExecutionException {
        print(
                "| rounds | players | error of plain averages | adjusted | closer by | root mean square, plain | adjusted |");
        print("| --- | --- | --- | --- | --- | --- | --- |");
        for (int rounds : HALVES_ROUNDS) {
            Regime regime =
                    Regime.usual(rounds, Drift.RISE, Spread.UNIFORM, 0.15).halves();
            Scores scores = scores(regime, PLAYERS);
            print(
                    "| %d | %d | %+.3f | %+.3f | %s | %.3f | %.3f |",
                    rounds,
                    scores.seen().size(),
                    scores.rawBias(),
                    scores.adjustedBias(),
                    percent(1 - Math.abs(scores.adjustedBias() / scores.rawBias())),
                    scores.rawError(),
                    scores.adjustedError());
        }
        print("");
    }

    private Scores scores(Regime regime, int players) throws InterruptedException, ExecutionException {
        List<Future<Seen>> underway = new ArrayList<>();
        for (int player = 0; player < share * players; player++) {
            long seed = SEED + player;
            underway.add(workers.submit(() -> Seen.of(regime, seed)));
        }
        List<Seen> seen = new ArrayList<>();
        for (Future<Seen> each : underway) {
            seen.add(each.get());
        }
        return new Scores(seen);
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "%.1f %%", 100 * share);
    }

    private static void print(String format, Object... values) {
        System.out.println(String.format(Locale.ROOT, format, values));
    }
}
