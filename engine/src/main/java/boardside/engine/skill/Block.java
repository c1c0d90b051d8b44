package boardside.engine.skill;

/** Symmetric 2 x 2 matrices, stored as 00, 01, 11. */
final class Block {
    private Block() {}

    /** The lower triangle of a Cholesky factor, 00, 10, 11, of the matrix that starts there; zeros where it is 0. */
    static double[] root(double[] a, int at) {
        double l00 = Math.sqrt(Math.max(0, a[at]));
        double l10 = l00 > 0 ? a[at + 1] / l00 : 0;
        return new double[] {l00, l10, Math.sqrt(Math.max(0, a[at + 2] - l10 * l10))};
    }
}
