package boardside.bench.odds;

import boardside.engine.odds.NetDistribution;
import org.ejml.data.DMatrixRMaj;
import org.ejml.data.DMatrixSparseCSC;
import org.ejml.data.DMatrixSparseTriplet;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;
import org.ejml.interfaces.linsol.LinearSolverSparse;
import org.ejml.ops.DConvertMatrixStruct;
import org.ejml.sparse.FillReducing;
import org.ejml.sparse.csc.factory.LinearSolverFactory_DSCC;

/**
 * Other ways to the table of a race to 21: win chances in entries 0..440, expected rounds in 441..881, at a * 21 + b. Each
 * starts from the net distribution, as the engine does.
 */
final class RacePeers {
    static final int TARGET = 21;
    static final int STATES = TARGET * TARGET;

    private static final double ENOUGH = 1e-14;

    private RacePeers() {}

    /** A general sparse LU; the natural order has no fill-in, the best case for it. */
    static double[] sparse(NetDistribution net) {
        DMatrixSparseTriplet entries = new DMatrixSparseTriplet(STATES, STATES, STATES * 25);
        DMatrixRMaj right = new DMatrixRMaj(STATES, 2);
        equations(net, entries::addItem, right);
        DMatrixSparseCSC matrix = DConvertMatrixStruct.convert(entries, (DMatrixSparseCSC) null);
        LinearSolverSparse<DMatrixSparseCSC, DMatrixRMaj> solver = LinearSolverFactory_DSCC.lu(FillReducing.NONE);
        if (!solver.setA(matrix)) {
            throw new IllegalStateException("singular");
        }
        DMatrixRMaj solution = new DMatrixRMaj(STATES, 2);
        solver.solve(right, solution);
        return columns(solution);
    }

    /** A general dense LU. */
    static double[] dense(NetDistribution net) {
        DMatrixRMaj matrix = new DMatrixRMaj(STATES, STATES);
        DMatrixRMaj right = new DMatrixRMaj(STATES, 2);
        equations(net, matrix::set, right);
        LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.lu(STATES);
        if (!solver.setA(matrix)) {
            throw new IllegalStateException("singular");
        }
        DMatrixRMaj solution = new DMatrixRMaj(STATES, 2);
        solver.solve(right, solution);
        return columns(solution);
    }

    /** Value iteration in place, in the order of the scores, until no value moves any more. */
    static double[] valueIteration(NetDistribution net) {
        double[] values = new double[2 * STATES];
        double moved = 1;
        while (moved > ENOUGH) {
            moved = 0;
            for (int a = 0; a < TARGET; a++) {
                for (int b = 0; b < TARGET; b++) {
                    double win = 0;
                    double rounds = 1;
                    for (int points = -12; points <= 12; points++) {
                        double chance = net.chance(points);
                        int nextA = a + Math.max(points, 0);
                        int nextB = b + Math.max(-points, 0);
                        if (nextA >= TARGET) {
                            win += chance;
                        } else if (nextB < TARGET) {
                            win += chance * values[nextA * TARGET + nextB];
                            rounds += chance * values[STATES + nextA * TARGET + nextB];
                        }
                    }
                    int at = a * TARGET + b;
                    moved = Math.max(moved, Math.abs(win - values[at]));
                    moved = Math.max(moved, Math.abs(rounds - values[STATES + at]) / rounds);
                    values[at] = win;
                    values[STATES + at] = rounds;
                }
            }
        }
        return values;
    }

    private interface Entry {
        void set(int row, int column, double value);
    }

    private static void equations(NetDistribution net, Entry entry, DMatrixRMaj right) {
        for (int a = 0; a < TARGET; a++) {
            for (int b = 0; b < TARGET; b++) {
                int at = a * TARGET + b;
                entry.set(at, at, 1 - net.chance(0));
                right.set(at, 1, 1);
                for (int points = 1; points <= 12; points++) {
                    if (net.chance(points) > 0) {
                        if (a + points >= TARGET) {
                            right.add(at, 0, net.chance(points));
                        } else {
                            entry.set(at, at + points * TARGET, -net.chance(points));
                        }
                    }
                    if (net.chance(-points) > 0 && b + points < TARGET) {
                        entry.set(at, at + points, -net.chance(-points));
                    }
                }
            }
        }
    }

    private static double[] columns(DMatrixRMaj solution) {
        double[] values = new double[2 * STATES];
        for (int i = 0; i < STATES; i++) {
            values[i] = solution.get(i, 0);
            values[STATES + i] = solution.get(i, 1);
        }
        return values;
    }
}
