package boardside.bench.skill;

import boardside.engine.skill.simulated.BagScores;
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
import java.util.function.LongFunction;
import org.jspecify.annotations.Nullable;

/**
 * Holds the skill model against thousands of simulated players (see {@code boardside.engine.skill.simulated}): do 90 %
 * ranges hold the truth, do stated chances come true, are bags that are alike called different, is a rise in skill taken
 * for a better bag. Prints Markdown tables; the same numbers each time.
 *
 * <pre>
 * mvn -q -B -ntp -pl bench -am -DskipTests package
 * java -cp bench/target/bench.jar boardside.bench.skill.Calibration [--share 0.1] [--threads 2] [coverage] [still] [signals] [halves]
 * </pre>
 *
 * {@code --share} takes that share of the players, for a quick look; without a name all tables are made.
 */
public final class Calibration {
    private static final long SEED = 20_261_125;
    private static final int PLAYERS = 1000;
    private static final int ALIKE = 2000;

    private static final List<Regime> USUAL = List.of(
            Regime.usual(10, Drift.SMOOTH, Spread.UNIFORM, 0.15),
            Regime.usual(30, Drift.STEPPED, Spread.TWO_POINT, 0.15),
            Regime.usual(100, Drift.SMOOTH, Spread.HEAVY, 0.2),
            Regime.usual(300, Drift.STEPPED, Spread.UNIFORM, 0.2),
            Regime.usual(600, Drift.SMOOTH, Spread.TWO_POINT, 0.25),
            Regime.usual(1000, Drift.STEPPED, Spread.HEAVY, 0.15),
            Regime.usual(2000, Drift.SMOOTH, Spread.UNIFORM, 0.2));

    /** Players of whom nothing ever moves: no prior that expects movement can be right about them. */
    private static final List<Regime> STILL = List.of(Regime.usual(300, Drift.NONE, Spread.UNIFORM, 0));

    private static final List<Integer> BAGS = List.of(2, 4, 8);
    private static final List<Integer> ALIKE_ROUNDS = List.of(100, 300, 1000);
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
                calibration.coverage(USUAL);
            }
            if (tables.isEmpty() || tables.contains("still")) {
                calibration.coverage(STILL);
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

    private void coverage(List<Regime> regimes) throws InterruptedException, ExecutionException {
        print("| regime | players | points a round | change over 30 days | over 90 days | difference of two bags "
                + "| next ten rounds |");
        print("| --- | --- | --- | --- | --- | --- | --- |");
        List<Scores> all = new ArrayList<>();
        for (Regime regime : regimes) {
            Scores scores = new Scores(ask(PLAYERS, seed -> Seen.of(regime, seed)));
            all.add(scores);
            print(
                    "| %s | %d | %s | %s | %s | %s | %s |",
                    regime,
                    scores.seen().size(),
                    percent(scores.points()),
                    percent(scores.change()),
                    regime.span() >= 90 ? percent(scores.quarter()) : "",
                    percent(scores.bags().difference()),
                    percent(scores.total()));
        }
        print("");
        print("| chance of | stated | slope | offset |");
        print("| --- | --- | --- | --- |");
        for (Seen.Of of : Seen.Of.values()) {
            Reliability found = new Scores(all.stream()
                            .flatMap(scores -> scores.seen().stream())
                            .toList())
                    .reliability(of);
            print(
                    "| %s | %d | %.3f ± %.3f | %+.3f |",
                    of.name().toLowerCase(Locale.ROOT), found.number(), found.slope(), found.error(), found.offset());
        }
        print("");
        print("| slope by regime | best | better | total |");
        print("| --- | --- | --- | --- |");
        for (int i = 0; i < regimes.size(); i++) {
            StringBuilder row = new StringBuilder("| " + regimes.get(i).rounds() + " rounds |");
            for (Seen.Of of : Seen.Of.values()) {
                Reliability found = all.get(i).reliability(of);
                row.append(String.format(Locale.ROOT, " %.2f ± %.2f |", found.slope(), found.error()));
            }
            print("%s", row);
        }
        print("");
    }

    private void signals() throws InterruptedException, ExecutionException {
        print("| bags, all alike | players | called a signal | after %s rounds | allowed |", ALIKE_ROUNDS);
        print("| --- | --- | --- | --- | --- |");
        for (int bags : BAGS) {
            List<Seen.Bags> all = new ArrayList<>();
            List<String> each = new ArrayList<>();
            for (int rounds : ALIKE_ROUNDS) {
                Regime regime =
                        Regime.usual(rounds, Drift.SMOOTH, Spread.UNIFORM, 0.2).withBags(bags, 0);
                List<Seen.Bags> some = ask(ALIKE / ALIKE_ROUNDS.size() + 1, seed -> Seen.Bags.of(regime, seed));
                all.addAll(some);
                each.add(percent(new BagScores(some).signals()));
            }
            print(
                    "| %d | %d | %s | %s | %s |",
                    bags,
                    all.size(),
                    percent(new BagScores(all).signals()),
                    String.join(", ", each),
                    percent(0.05 + Math.sqrt(0.05 * 0.95 / all.size())));
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
            BagScores scores = new BagScores(ask(PLAYERS, seed -> Seen.Bags.of(regime, seed)));
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

    /** What was said of so many players, in the order of their seeds; those of whom nothing was said left out. */
    private <T> List<T> ask(int players, LongFunction<@Nullable T> what)
            throws InterruptedException, ExecutionException {
        List<Future<T>> underway = new ArrayList<>();
        for (int player = 0; player < share * players; player++) {
            long seed = SEED + player;
            underway.add(workers.submit(() -> what.apply(seed)));
        }
        List<T> said = new ArrayList<>();
        for (Future<T> each : underway) {
            T one = each.get();
            if (one != null) {
                said.add(one);
            }
        }
        return said;
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "%.1f %%", 100 * share);
    }

    private static void print(String format, Object... values) {
        System.out.println(String.format(Locale.ROOT, format, values));
    }
}
