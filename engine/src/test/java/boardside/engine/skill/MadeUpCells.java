package boardside.engine.skill;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;

/** Small made-up structures and counts, for checks of the solver. */
final class MadeUpCells {
    private MadeUpCells() {}

    /**
     * Some nodes with some days with some runs with some cells; the last covariate has values other than 1. After the
     * covariates come {@code daily} more that are the same all day.
     */
    static Cells cells(UniformRandomProvider random, int predictors, int nodes, int covariates, int daily) {
        List<int[]> columns = new ArrayList<>();
        List<double[]> values = new ArrayList<>();
        for (int p = 0; p < 2 * covariates; p++) {
            int a = random.nextInt(covariates);
            int b = random.nextInt(covariates);
            if (p == 0) {
                columns.add(new int[0]);
                values.add(new double[0]);
            } else if (a == b) {
                columns.add(new int[] {a});
                values.add(new double[] {1});
            } else {
                columns.add(new int[] {Math.min(a, b), Math.max(a, b)});
                values.add(new double[] {1, Math.max(a, b) == covariates - 1 ? random.nextDouble() - 0.5 : 1});
            }
        }
        List<Integer> pattern = new ArrayList<>();
        List<Integer> runCells = new ArrayList<>(List.of(0));
        List<Integer> dayRuns = new ArrayList<>(List.of(0));
        List<Integer> nodeDays = new ArrayList<>(List.of(0));
        double[] times = new double[nodes];
        for (int t = 0; t < nodes; t++) {
            times[t] = (t == 0 ? 0 : times[t - 1]) + 1 + random.nextInt(9);
            for (int d = random.nextInt(3); d >= 0; d--) {
                for (int r = random.nextInt(3); r >= 0; r--) {
                    for (int c = random.nextInt(3); c >= 0; c--) {
                        pattern.add(random.nextInt(columns.size()));
                    }
                    runCells.add(pattern.size());
                }
                dayRuns.add(runCells.size() - 1);
            }
            nodeDays.add(dayRuns.size() - 1);
        }
        double[][] dayValues = new double[dayRuns.size() - 1][daily];
        for (double[] day : dayValues) {
            Arrays.setAll(day, i -> random.nextDouble() - 0.3);
        }
        return new Cells(
                predictors,
                covariates + daily,
                columns.toArray(int[][]::new),
                values.toArray(double[][]::new),
                ints(pattern),
                ints(runCells),
                ints(dayRuns),
                ints(nodeDays),
                times,
                dayValues);
    }

    static int[] ints(List<Integer> list) {
        return list.stream().mapToInt(Integer::intValue).toArray();
    }

    /** Counts for each cell; some with bags of which only those in were counted. */
    static BagCounts counts(UniformRandomProvider random, int predictors, int cells, boolean only) {
        double[] thrown = new double[cells];
        double[] kept = new double[cells];
        double[] open = new double[cells];
        double[] in = new double[cells];
        double[] onlyThrown = new double[cells];
        double[] onlyIn = new double[cells];
        for (int c = 0; c < cells; c++) {
            thrown[c] = random.nextInt(40);
            kept[c] = Math.rint(thrown[c] * (0.4 + 0.5 * random.nextDouble()));
            if (predictors == 2) {
                open[c] = kept[c];
                in[c] = Math.rint(kept[c] * random.nextDouble());
                if (only && random.nextInt(3) == 0) {
                    onlyThrown[c] = 1 + random.nextInt(60);
                    onlyIn[c] = Math.rint(onlyThrown[c] * (0.2 + 0.5 * random.nextDouble()));
                }
            }
        }
        return new BagCounts(thrown, kept, open, in, onlyThrown, onlyIn);
    }

    /** Random effects of every kind: the first covariate fixed, the next of kind 0, the rest of kind 1. */
    static Variances variances(Cells cells, double stay) {
        int[] kind = new int[cells.covariates];
        double[] fixed = new double[cells.covariates];
        for (int j = 0; j < kind.length; j++) {
            kind[j] = j == 0 ? -1 : j < kind.length / 2 ? 0 : 1;
            fixed[j] = 0.7;
        }
        Variances.Prior prior = new Variances.Prior(1, 4);
        return new Variances(
                cells,
                true,
                true,
                true,
                kind,
                fixed,
                0.5,
                stay,
                new Variances.Prior[] {new Variances.Prior(1, 30), prior, prior, prior, prior},
                new double[] {0.3, 0.7});
    }

    static double[] theta(UniformRandomProvider random, Variances variances) {
        double[] theta = variances.start();
        for (int i = 0; i < theta.length; i++) {
            theta[i] += 0.6 * (random.nextDouble() - 0.5);
        }
        return theta;
    }
}
