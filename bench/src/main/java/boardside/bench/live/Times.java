package boardside.bench.live;

import java.util.Arrays;
import java.util.Locale;

/** Times of one kind of thing, in nanoseconds; safe for several threads. */
final class Times {
    private long[] nanos = new long[1024];
    private int count;

    synchronized void add(long taken) {
        if (count == nanos.length) {
            nanos = Arrays.copyOf(nanos, 2 * count);
        }
        nanos[count++] = taken;
    }

    /** What was added since the last time, in words. */
    synchronized String told(String what) {
        long[] sorted = Arrays.copyOf(nanos, count);
        Arrays.sort(sorted);
        count = 0;
        return sorted.length == 0
                ? what + ": none"
                : String.format(
                        Locale.ROOT,
                        "%-44s n %7d   median %8.1f ms   p99 %8.1f ms   max %8.1f ms",
                        what,
                        sorted.length,
                        sorted[sorted.length / 2] / 1e6,
                        sorted[Math.max(0, (int) Math.ceil(0.99 * sorted.length) - 1)] / 1e6,
                        sorted[sorted.length - 1] / 1e6);
    }
}
