package boardside.engine.skill;

import org.jspecify.annotations.Nullable;

/**
 * Prior precisions of the effects, all of mean 0. Symmetric 2 x 2 matrices are stored as 00, 01, 11; with a single
 * predictor the second one is idle and has precision 1.
 *
 * @param run of a run's effects, or null where runs have none
 * @param day of a day's effects, or null where days have none
 * @param first of each predictor's level at the first node, or null where there is no chain over time
 * @param step of the step from node t to t + 1, at 2 t + k; empty without a chain
 * @param stay the level at t + 1 is expected to be this much of that at t, at 2 t + k
 * @param border of each scalar of the border
 */
record Precisions(
        double @Nullable [] run,
        double @Nullable [] day,
        double @Nullable [] first,
        double[] step,
        double[] stay,
        double[] border) {

    /** Logarithm of the determinant of all precisions; border scalars of precision 0 (flat) are left out. */
    double logDeterminant(int runs, int days) {
        double sum = 0;
        if (run != null) {
            sum += runs * Math.log(run[0] * run[2] - run[1] * run[1]);
        }
        if (day != null) {
            sum += days * Math.log(day[0] * day[2] - day[1] * day[1]);
        }
        if (first != null) {
            sum += Math.log(first[0]) + Math.log(first[1]);
            for (double s : step) {
                sum += Math.log(s);
            }
        }
        for (double b : border) {
            sum += b > 0 ? Math.log(b) : 0;
        }
        return sum;
    }
}
