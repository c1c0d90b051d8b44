package boardside.bench.trial;

import boardside.engine.skill.Interval;
import boardside.engine.trial.Ending;
import boardside.engine.trial.Outlook;
import boardside.engine.trial.SimulatedTrial;
import boardside.engine.trial.SimulatedTrial.Result;
import boardside.engine.trial.Swings;
import boardside.engine.trial.TrialDesign;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/**
 * What the procedure of trials does, by simulated throwers with good and bad days, streaks, warming up and tiring: winners
 * among equals, errors of "as good as equal", and how often and how soon true differences are found. Prints Markdown
 * tables; the same numbers each time.
 *
 * <pre>
 * mvn -q -B -ntp -pl bench -am -DskipTests package
 * java -cp bench/target/bench.jar boardside.bench.trial.OperatingCharacteristics [trials, 2000] [alike] [tied] [equal] [power]
 * </pre>
 */
public final class OperatingCharacteristics {
    private static final long SEED = 20_261_125;
    private static final double MARGIN = 0.5;
    private static final double MINUTES = 0.7;

    private final int trials;

    private OperatingCharacteristics(int trials) {
        this.trials = trials;
    }

    public static void main(String[] args) {
        boolean counted = args.length > 0 && args[0].matches("\\d+");
        OperatingCharacteristics figures = new OperatingCharacteristics(counted ? Integer.parseInt(args[0]) : 2000);
        List<String> tables = Arrays.asList(args).subList(counted ? 1 : 0, args.length);
        if (tables.isEmpty() || tables.contains("alike")) {
            figures.alike();
        }
        if (tables.isEmpty() || tables.contains("tied")) {
            figures.tied();
        }
        if (tables.isEmpty() || tables.contains("equal")) {
            figures.equal();
        }
        if (tables.isEmpty() || tables.contains("power")) {
            figures.power();
        }
    }

    /** What some trials came to. */
    private static final class Cell {
        private int trials;
        private int winner;
        private int best;
        private int equal;
        private int lostBest;
        private double rounds;
        private double wasted;
        private double bias;
        private int held;
        private int decided;
    }

    private Cell cell(int longest, double margin, double... differences) {
        UniformRandomProvider random =
                RandomSource.XO_RO_SHI_RO_128_PP.create(SEED + 31L * longest + Arrays.hashCode(differences));
        double top = Arrays.stream(differences).max().orElseThrow();
        Cell cell = new Cell();
        cell.trials = trials;
        for (int trial = 0; trial < trials; trial++) {
            TrialDesign design = new TrialDesign(differences.length, longest, margin, random.nextLong());
            Result result = SimulatedTrial.run(design, differences, random);
            cell.rounds += result.rounds() / (double) trials;
            cell.wasted += result.roundsWasted() / (double) trials;
            cell.equal += result.ending() instanceof Ending.AsGoodAsEqual ? 1 : 0;
            cell.lostBest += result.lost().stream().anyMatch(lost -> differences[lost] == top) ? 1 : 0;
            if (result.ending() instanceof Ending.Winner winner) {
                cell.winner++;
                cell.best += differences[winner.candidate()] == top ? 1 : 0;
                int second = result.state().standings().get(1).candidate();
                double truth = differences[winner.candidate()] - differences[second];
                Interval lead = result.state().lead();
                cell.bias += lead.estimate() - truth;
                cell.held += lead.contains(truth) ? 1 : 0;
                cell.decided++;
            }
        }
        return cell;
    }

    private static double percent(int some, int all) {
        return 100.0 * some / all;
    }

    private static void line(String format, Object... values) {
        System.out.printf(Locale.ROOT, format + "%n", values);
    }

    private void alike() {
        double allowed = 5 + 100 * Math.sqrt(0.05 * 0.95 / trials);
        line("Candidates that are all alike (%d trials a cell; allowed: %.2f %%)%n", trials, allowed);
        line("| candidates | longest, blocks | a winner | as good as equal (within %.1f) | rounds in all |", MARGIN);
        line("| --- | --- | --- | --- | --- |");
        for (int candidates = 2; candidates <= TrialDesign.MOST; candidates++) {
            for (int longest : candidates <= 4 ? TrialDesign.LENGTHS : List.of(25, 50)) {
                Cell cell = cell(longest, MARGIN, new double[candidates]);
                line(
                        "| %d | %d | %.2f %% | %.1f %% | %.0f |",
                        candidates, longest, percent(cell.winner, trials), percent(cell.equal, trials), cell.rounds);
            }
        }
        line("");
    }

    private void tied() {
        line("Some tied for the best, the others behind by 2 (%d trials a cell)%n", trials);
        line("| candidates | tied | longest, blocks | a winner | one of the best dropped out | rounds in all |");
        line("| --- | --- | --- | --- | --- | --- |");
        for (int[] of : new int[][] {{3, 2}, {4, 2}, {4, 3}, {6, 2}, {6, 3}, {8, 2}, {8, 4}}) {
            double[] differences = new double[of[0]];
            Arrays.fill(differences, of[1], of[0], -2);
            Cell cell = cell(50, MARGIN, differences);
            line(
                    "| %d | %d | 50 | %.2f %% | %.2f %% | %.0f |",
                    of[0], of[1], percent(cell.winner, trials), percent(cell.lostBest, trials), cell.rounds);
        }
        line("");
    }

    private void equal() {
        line("Two candidates that differ by a share of the margin (%d trials a cell)%n", trials);
        line("| margin | longest, blocks | true difference | as good as equal | a winner | rounds with each |");
        line("| --- | --- | --- | --- | --- | --- |");
        for (double[] of : new double[][] {{0.5, 100}, {0.5, 200}, {1, 50}, {1, 100}, {1, 200}}) {
            for (double part : new double[] {0, 0.5, 1}) {
                Cell cell = cell((int) of[1], of[0], 0, part * of[0]);
                line(
                        "| %.1f | %.0f | %.2f | %.2f %% | %.1f %% | %.0f |",
                        of[0],
                        of[1],
                        part * of[0],
                        percent(cell.equal, trials),
                        percent(cell.winner, trials),
                        cell.rounds / 2);
            }
        }
        line("");
    }

    private void power() {
        line("The best ahead of all others by a true difference (%d trials a cell)%n", trials);
        line(
                "| candidates | longest | true difference | foretold | the best wins | another wins | rounds in all | of these"
                        + " wasted | stated difference less the true | 90 %% ranges that hold it |");
        line("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        for (int candidates : new int[] {2, 3, 4, 8}) {
            for (int longest : candidates == 8 ? List.of(50) : List.of(50, 200)) {
                List<Outlook.Reach> foretold = Outlook.of(
                                new TrialDesign(candidates, longest, MARGIN, 1), Swings.usual(), MINUTES)
                        .reaches();
                for (int i = 0; i < Outlook.DIFFERENCES.size(); i++) {
                    double[] differences = new double[candidates];
                    differences[candidates - 1] = Outlook.DIFFERENCES.get(i);
                    Cell cell = cell(longest, MARGIN, differences);
                    line(
                            "| %d | %d | %.1f | %.0f %% | %.1f %% | %.2f %% | %.0f | %.0f | %+.2f | %.0f %% |",
                            candidates,
                            longest,
                            Outlook.DIFFERENCES.get(i),
                            100 * foretold.get(i).chance(),
                            percent(cell.best, trials),
                            percent(cell.winner - cell.best, trials),
                            cell.rounds,
                            cell.wasted,
                            cell.decided == 0 ? Double.NaN : cell.bias / cell.decided,
                            cell.decided == 0 ? Double.NaN : percent(cell.held, cell.decided));
                }
            }
        }
        line("");
    }
}
