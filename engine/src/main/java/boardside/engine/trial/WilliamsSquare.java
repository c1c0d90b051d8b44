package boardside.engine.trial;

/**
 * Orders of treatments in which each stands in each place equally often and follows each other one equally often
 * (Williams 1949, Australian Journal of Scientific Research A 2, 149-168).
 */
public final class WilliamsSquare {
    private WilliamsSquare() {}

    /**
     * The sequences for a number of treatments: 0, 1, n-1, 2, n-2, ... shifted cyclically; where n is odd, those read
     * backwards too.
     *
     * @param treatments 2 or more
     * @return n sequences where n is even, else 2 n; each holds 0..n-1 once. A new array.
     */
    public static int[][] sequences(int treatments) {
        if (!(treatments >= 2)) {
            throw new IllegalArgumentException("an order needs 2 treatments or more, not " + treatments);
        }
        int n = treatments;
        int[] first = new int[n];
        for (int i = 1; i < n; i++) {
            first[i] = i % 2 == 1 ? (i + 1) / 2 : n - i / 2;
        }
        int[][] sequences = new int[n % 2 == 0 ? n : 2 * n][n];
        for (int shift = 0; shift < n; shift++) {
            for (int i = 0; i < n; i++) {
                int treatment = (first[i] + shift) % n;
                sequences[shift][i] = treatment;
                if (n % 2 == 1) {
                    sequences[n + shift][n - 1 - i] = treatment;
                }
            }
        }
        return sequences;
    }
}
