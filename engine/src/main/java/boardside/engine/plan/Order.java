package boardside.engine.plan;

import boardside.engine.plan.Objective.Visit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;

/**
 * The order of a session's visits: pressure last, no two of a theme in a row (mixed rather than blocked: Shea and Morgan
 * 1979, Journal of Experimental Psychology: Human Learning and Memory 5, 179-187), and among such orders the one with the
 * two visits of each theme farthest apart, few changes of bags and board, and the boards tested early. Found exactly, by
 * the dynamic programme over subsets of Held and Karp (1962, Journal of the SIAM 10, 196-210).
 */
final class Order {
    /** Places that the two visits of a theme lie farther apart make up for so many changes of bags or board. */
    private static final double CHANGE = 0.5;

    /** What each place later costs the test of the boards. */
    private static final double EARLY = 4;

    private Order() {}

    /** The best order; there is one (see {@link Planner}). At most 15 visits. */
    static List<Visit> of(List<Visit> unordered) {
        List<Visit> visits = new ArrayList<>(unordered);
        // Between equals, what brings most a bag comes first, while the player is fresh.
        visits.sort(Comparator.comparingDouble((Visit visit) -> -visit.choice().perBag())
                .thenComparing(visit -> visit.choice().id()));
        int n = visits.size();
        if (n < 2) {
            return visits;
        }
        int full = (1 << n) - 1;
        double[][] best = new double[full + 1][n];
        int[][] before = new int[full + 1][n];
        for (double[] row : best) {
            Arrays.fill(row, Double.NEGATIVE_INFINITY);
        }
        for (int i = 0; i < n; i++) {
            best[1 << i][i] = place(visits, 1 << i, i, 0);
            before[1 << i][i] = -1;
        }
        for (int set = 1; set < full; set++) {
            int position = Integer.bitCount(set);
            for (int last = 0; last < n; last++) {
                if (best[set][last] == Double.NEGATIVE_INFINITY) {
                    continue;
                }
                for (int next = 0; next < n; next++) {
                    if ((set & 1 << next) != 0
                            || visits.get(last)
                                    .choice()
                                    .theme()
                                    .equals(visits.get(next).choice().theme())) {
                        continue;
                    }
                    int grown = set | 1 << next;
                    double score = best[set][last]
                            + place(visits, grown, next, position)
                            - CHANGE * changes(visits.get(last), visits.get(next));
                    if (score > best[grown][next] + 1e-12) {
                        best[grown][next] = score;
                        before[grown][next] = last;
                    }
                }
            }
        }
        return read(visits, best, before);
    }

    private static List<Visit> read(List<Visit> visits, double[][] best, int[][] before) {
        int set = best.length - 1;
        boolean closes = visits.stream().anyMatch(Order::pressure);
        int last = -1;
        for (int i = 0; i < visits.size(); i++) {
            if ((!closes || pressure(visits.get(i))) && (last < 0 || best[set][i] > best[set][last] + 1e-12)) {
                last = i;
            }
        }
        if (last < 0 || best[set][last] == Double.NEGATIVE_INFINITY) {
            throw new IllegalArgumentException("these visits cannot be put in an order");
        }
        List<Visit> ordered = new ArrayList<>();
        while (last >= 0) {
            ordered.add(visits.get(last));
            int earlier = before[set][last];
            set &= ~(1 << last);
            last = earlier;
        }
        Collections.reverse(ordered);
        return ordered;
    }

    private static boolean pressure(Visit visit) {
        return visit.choice().theme().kind() == Theme.Kind.PRESSURE;
    }

    /** What a visit's position brings: distance to the other of its theme, which is later or earlier. */
    private static double place(List<Visit> visits, int set, int at, int position) {
        Theme theme = visits.get(at).choice().theme();
        double score = theme.kind() == Theme.Kind.BOARDS ? -EARLY * position : 0;
        for (int other = 0; other < visits.size(); other++) {
            if (other != at && visits.get(other).choice().theme().equals(theme)) {
                score += (set & 1 << other) != 0 ? position : -position;
            }
        }
        return score;
    }

    private static int changes(Visit one, Visit next) {
        return (Objects.equals(one.choice().bags(), next.choice().bags()) ? 0 : 1)
                + (one.choice().board() == next.choice().board() ? 0 : 1);
    }

    /**
     * Where breaks make the times between them most alike (the sum of their squares is least).
     *
     * @return indices of the visits they follow, rising
     */
    static List<Integer> breaks(List<Visit> visits, int number) {
        int n = visits.size();
        int[] sums = new int[n + 1];
        for (int i = 0; i < n; i++) {
            sums[i + 1] = sums[i] + visits.get(i).minutes();
        }
        // least[b][i]: the first i visits with a break after the i-th, which is the b-th.
        long[][] least = new long[number + 2][n + 1];
        int[][] before = new int[number + 2][n + 1];
        for (long[] row : least) {
            Arrays.fill(row, Long.MAX_VALUE / 2);
        }
        least[0][0] = 0;
        for (int b = 1; b <= number + 1; b++) {
            for (int i = 1; i <= n; i++) {
                for (int j = 0; j < i; j++) {
                    long length = sums[i] - sums[j];
                    long sum = least[b - 1][j] + length * length;
                    if (sum < least[b][i]) {
                        least[b][i] = sum;
                        before[b][i] = j;
                    }
                }
            }
        }
        List<Integer> after = new ArrayList<>();
        int at = n;
        for (int b = number + 1; b > 1; b--) {
            at = before[b][at];
            after.add(0, at - 1);
        }
        return after;
    }
}
