package boardside.bench.serve;

import java.util.Arrays;
import java.util.Locale;

/** Times of one kind of thing, in nanoseconds. */
final class Latencies {
    private final String what;
    private long[] nanos = new long[1024];
    private int count;

    Latencies(String what) {
        this.what = what;
    }

    void add(long taken) {
        if (count == nanos.length) {
            nanos = Arrays.copyOf(nanos, 2 * count);
        }
        nanos[count++] = taken;
    }

    /** The smallest time that so large a share of all do not exceed, milliseconds. */
    double quantile(double share) {
        long[] sorted = Arrays.copyOf(nanos, count);
        Arrays.sort(sorted);
        return sorted[Math.max(0, (int) Math.ceil(share * count) - 1)] / 1e6;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%-44s n %5d   median %7.2f ms   p99 %7.2f ms   max %7.2f ms",
                what,
                count,
                quantile(0.5),
                quantile(0.99),
                quantile(1));
    }
}
