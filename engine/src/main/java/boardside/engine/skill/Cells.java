package boardside.engine.skill;

import java.util.Arrays;

/**
 * How observations hang together: cells in runs, runs in days, days in nodes of time, and for each cell the covariates
 * of the border. Nothing is counted here. All indices ascend in time, so the last node is the latest.
 *
 * <p>The linear predictor k of cell c is {@code x_c' b_k + u_k(run) + v_k(day) + w_k(node)}: the same covariates for
 * each predictor, and effects of its own for each.
 */
final class Cells {
    /** Linear predictors a cell has: 1 or 2. */
    final int predictors;
    /** Covariates of the border; scalar j * predictors + k of the border is the effect of covariate j on predictor k. */
    final int covariates;
    /** Per pattern: the covariates that are not 0, ascending. */
    final int[][] columns;
    /** Per pattern: their values. */
    final double[][] values;
    /** Per cell: its pattern. */
    final int[] pattern;
    /** Cells of run r are runCells[r] to runCells[r + 1], exclusive. */
    final int[] runCells;
    /** Runs of day d likewise. */
    final int[] dayRuns;
    /** Days of node t likewise. */
    final int[] nodeDays;
    /** Per node: its time in days, strictly ascending. */
    final double[] times;
    /** Covariates of day d, ascending: dayColumns[dayColumnStart[d]] and on. */
    final int[] dayColumnStart;

    final int[] dayColumns;
    /** Per day: values of the covariates that are the same all day, which are the last so many; the patterns lack them. */
    final double[][] dayValues;
    /** How many these are. */
    final int daily;

    Cells(
            int predictors,
            int covariates,
            int[][] columns,
            double[][] values,
            int[] pattern,
            int[] runCells,
            int[] dayRuns,
            int[] nodeDays,
            double[] times) {
        this(
                predictors,
                covariates,
                columns,
                values,
                pattern,
                runCells,
                dayRuns,
                nodeDays,
                times,
                new double[dayRuns.length - 1][0]);
    }

    Cells(
            int predictors,
            int covariates,
            int[][] columns,
            double[][] values,
            int[] pattern,
            int[] runCells,
            int[] dayRuns,
            int[] nodeDays,
            double[] times,
            double[][] dayValues) {
        if (!(predictors == 1 || predictors == 2)) {
            throw new IllegalArgumentException("a cell has 1 or 2 linear predictors, not " + predictors);
        }
        this.predictors = predictors;
        this.covariates = covariates;
        this.columns = columns;
        this.values = values;
        this.pattern = pattern;
        this.runCells = runCells;
        this.dayRuns = dayRuns;
        this.nodeDays = nodeDays;
        this.times = times;
        this.dayValues = dayValues;
        daily = dayValues.length == 0 ? 0 : dayValues[0].length;
        int[] seen = new int[covariates];
        Arrays.fill(seen, -1);
        dayColumnStart = new int[days() + 1];
        int[] found = new int[16];
        int size = 0;
        for (int d = 0; d < days(); d++) {
            int from = size;
            for (int c = runCells[dayRuns[d]]; c < runCells[dayRuns[d + 1]]; c++) {
                for (int j : columns[pattern[c]]) {
                    if (seen[j] != d) {
                        seen[j] = d;
                        found = size == found.length ? Arrays.copyOf(found, 2 * size) : found;
                        found[size++] = j;
                    }
                }
            }
            Arrays.sort(found, from, size);
            if (size + daily > found.length) {
                found = Arrays.copyOf(found, 2 * size + daily);
            }
            for (int j = covariates - daily; j < covariates; j++) {
                found[size++] = j;
            }
            dayColumnStart[d + 1] = size;
        }
        dayColumns = Arrays.copyOf(found, size);
    }

    int cells() {
        return pattern.length;
    }

    int runs() {
        return runCells.length - 1;
    }

    int days() {
        return dayRuns.length - 1;
    }

    int nodes() {
        return nodeDays.length - 1;
    }

    /** The first scalar of the border that belongs to the covariates that are the same all day. */
    int dailyAt() {
        return (covariates - daily) * predictors;
    }

    int patterns() {
        return columns.length;
    }

    /** Scalars in the border. */
    int border() {
        return covariates * predictors;
    }
}
